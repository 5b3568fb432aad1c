#pragma once

#include "core/plan/plan.h"

#include <cstdint>
#include <span>
#include <unordered_map>
#include <vector>

namespace stemwright {

/// What the figures ask of a plan's lists over and over, worked out once: ids as places in the lists, the beads
/// of a leaf of each line of stock, the differences of the colours. It heeds colours, mixes and kinds, never
/// the stems, and holds for as long as those lists stay as they are. The plan must be valid.
class PlanTables {
public:
    static constexpr int none = -1;

    struct ColourBeads {
        std::size_t colour = 0; ///< place in plan.colours
        int beads = 0;
    };
    struct Line {
        Leaf leaf;
        std::size_t kind = 0; ///< place in plan.kinds
        int place = 0;        ///< in the order of its kind's stock
        std::vector<ColourBeads> beads;
        int made = 0;
        int toMake = 0;
    };
    struct KindRow {
        std::size_t firstLine = 0;
        std::size_t lines = 0;
        int beads = 0;
        int wiresAtBase = 0;
        Length wire;
        Length wireDiameter;
        Length reach;
        Mass leafMass;
        double wireStiffness = 0;     ///< E·I of one of its wires, N·mm²
        double wirePlasticMoment = 0; ///< of one of its wires, N·mm
    };

    /// `before` may lend the differences of its colours where they are the same.
    explicit PlanTables(const Plan& plan, const PlanTables* before = nullptr);

    /// The place of a kind in plan.kinds, `none` for an id that is not there.
    int kindOf(KindId kind) const { return placeOf(kinds_, kind.value); }
    /// The line of a kind and mix, as tray(plan) numbers them; `none` where there is none.
    int lineOf(Leaf leaf) const;

    const std::vector<KindRow>& kinds() const { return kindRows_; }
    const std::vector<Line>& lines() const { return lines_; }
    std::size_t colours() const { return shades_.size(); }
    /// ΔE00 between plan.colours, a row and a column a colour.
    std::span<const double> differences() const { return differences_; }

private:
    /// Ids are small numbers in practice; a plan from elsewhere may have any.
    struct Places {
        std::vector<int> small;
        std::unordered_map<std::uint32_t, int> large;
        void put(std::uint32_t id, std::size_t place);
    };
    static int placeOf(const Places& places, std::uint32_t id);

    Places kinds_, mixes_, colours_;
    std::size_t mixCount_ = 0;
    std::vector<int> lineOf_; ///< kinds × mixes
    std::vector<KindRow> kindRows_;
    std::vector<Line> lines_;
    std::vector<Srgb> shades_;
    std::vector<double> differences_;
};

} // namespace stemwright
