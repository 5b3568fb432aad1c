#pragma once

#include "core/plan/id.h"
#include "core/quantity/gauge.h"
#include "core/quantity/metal.h"
#include "core/quantity/quantity.h"

#include <optional>
#include <string>
#include <vector>

namespace stemwright {

/// Leaf arrangements by their botanical names: Plant Trait Ontology TO:0006014, PATO:0001931 and below.
enum class Arrangement {
    decussate, ///< pairs, each a quarter turn from the one above
    onePlane,  ///< pairs, all facing the same way (opposite distichous)
    alternate, ///< single leaves, each half a turn from the one above (alternate distichous)
    whorled,   ///< three or more a tier, each tier turned by half the angle between its leaves
    spiral,    ///< single leaves, each a golden angle from the one above
};

/// Leaves interchange freely within a kind and mix, so this pair is all there is to know of a placed leaf.
struct Leaf {
    KindId kind;
    MixId mix;

    friend bool operator==(const Leaf&, const Leaf&) = default;
};

/// A place for one leaf.
struct Slot {
    /// With a mix: the leaf that is here. Without: the slot is empty, and the kind, if there is one, is that of
    /// the leaf it waits for. A mix without a kind is never valid.
    Leaf leaf;
    /// No suggestion may touch a pinned slot.
    bool pinned = false;
    std::string extra;

    bool filled() const { return static_cast<bool>(leaf.mix); }
    friend bool operator==(const Slot&, const Slot&) = default;
};

/// What has been done of a tier at the bench.
struct Progress {
    bool bound = false;
    double minutes = 0;
    std::string extra;

    friend bool operator==(const Progress&, const Progress&) = default;
};

/// What has been done of a stem at the bench besides its tiers.
struct Bench {
    /// How many of its steps that bind no tier are done, in their order (core/figures/binding_steps.h).
    int steps = 0;
    std::string extra{};

    friend bool operator==(const Bench&, const Bench&) = default;
};

/// The leaves bound on together at one level.
struct Tier {
    /// Where the first leaf points, counter-clockwise seen from above: 0 to the viewer's left, 90 to the front,
    /// 180 to the right, 270 to the back. The others follow at equal angles in the same sense. In [0, 360).
    Angle turn;
    /// From this tier down to the next; the stem's own spacing where there is none. The last tier's counts only
    /// once another stands below it, since what follows it is the tail.
    std::optional<Length> spacing;
    Progress progress;
    std::vector<Slot> slots;
    std::string extra;

    friend bool operator==(const Tier&, const Tier&) = default;
};

struct CoreWire {
    Length diameter;
    std::optional<GaugeNumber> gauge;
    Metal metal = Metal::softSteel;
    std::string extra{};
    std::string ownMetal{};

    friend bool operator==(const CoreWire&, const CoreWire&) = default;
};

/// Where a stem stands in the pot, from the middle of its opening, x to the right and y to the back.
struct Standing {
    Length x;
    Length y;
    std::string extra;

    friend bool operator==(const Standing&, const Standing&) = default;
};

/// How a stem is bent: from the clay line up it leaves the upright by `lean`, and over its whole height it bows
/// by `bend` more, evenly (an arc of a circle), all in the upright plane that `toward` names.
struct Pose {
    Angle lean; ///< from straight up, 0 to 90
    Angle bend; ///< at the tip as against the clay line, −180 to 180; above 0 it bows over, below it stands up
                ///< again
    Angle toward; ///< as Tier::turn, in [0, 360): 0 to the viewer's left, 90 to the front
    std::string extra;

    friend bool operator==(const Pose&, const Pose&) = default;
};

/// What one layer of the binding really took of a bound stem, without what was cut off in the end.
struct Took {
    int wrap = 0; ///< its place in Binding::wraps, from 0
    Length used;
    std::string extra{};

    friend bool operator==(const Took&, const Took&) = default;
};

/// Everything about a stem but its tiers.
struct StemForm {
    std::string name;
    Arrangement arrangement = Arrangement::decussate;
    /// Leaves a whorl, 3 or more; only whorled stems heed it.
    int whorl = 3;
    Length spacing = millimetres(8);
    /// The wrapped length below the last tier, down to the stem's foot.
    Length tail = millimetres(30);
    std::optional<CoreWire> core;
    /// No suggestion may touch a locked stem.
    bool locked = false;
    std::optional<Standing> standing;
    /// Straight up where there is none.
    std::optional<Pose> pose;
    /// What the maker measured on it, by wrap, each once: overlaps are fitted to these
    /// (core/figures/calibration.h).
    std::vector<Took> took;
    Bench bench;
    std::string extra;

    friend bool operator==(const StemForm&, const StemForm&) = default;
};

/// A stem: its form, and its tiers from tip to base.
struct Stem : StemForm {
    StemId id;
    std::vector<Tier> tiers;

    friend bool operator==(const Stem&, const Stem&) = default;
};

/// How many leaves a full tier of such a stem has.
int leavesPerTier(const StemForm& form);
/// How far each tier is turned from the one above it.
Angle turnStep(const StemForm& form);
/// The turn after which a full tier of such a stem looks the same again: 180 for pairs, 360 for single leaves.
Angle turnPeriod(const StemForm& form);

/// Which way a tier faces. Whorls and single leaves have no more than the side their first leaf is nearest to.
enum class Plane { sideToSide, frontToBack };
Plane planeOf(const Tier& tier);

/// Where the leaf of one slot points: the tier's turn and its slot's part of the circle, in [0, 360).
Angle slotTurn(const Tier& tier, std::size_t slot);

/// The nearest of the four words for where a leaf points.
enum class Side { left, front, right, back };
Side sideOf(Angle turn);

/// An empty tier as the stem's arrangement wants it, turned one step from `above` (from 0 where there is none),
/// its slots waiting for leaves of `kind`.
Tier newTier(const StemForm& form, const Tier* above, KindId kind);

} // namespace stemwright
