#pragma once

#include "core/plan/plan.h"
#include "core/plan/problem.h"

#include <optional>
#include <string>
#include <vector>

namespace stemwright {

/// All that must be known to begin a plan.
struct NewPlan {
    std::string title;
    std::string date; ///< as About's
    Units units;
    int stems = 7;
    /// Of a middling stem; the others have up to two fifths more or less, so that their heights differ evenly.
    int tiers = 8;
    Arrangement arrangement = Arrangement::decussate;

    struct NewKind {
        KindForm form;
        /// Leaves of it to share out over its mixes; nothing for as many as the stems have slots for.
        std::optional<int> leaves;
    };
    /// In any order: on the stems the smaller ones (by length) stand nearer to the tip.
    std::vector<NewKind> kinds;

    struct NewColour {
        std::string name;
        Srgb srgb;
    };
    /// From tip to base. The mixes are each alone, and between two of them the one around the other; they run
    /// on from the smallest kind to the largest, each kind having its stretch of them in stock.
    std::vector<NewColour> colours;

    /// The leaves are there already, not to be made.
    bool made = false;

    /// Names of what is made of these, in the maker's language: %1 and %2 are filled in.
    struct Words {
        std::string stem = "Stem %1";
        std::string mix = "%1 on %2";
    } words;
};

/// What planFrom accepts: enough for every pot, and no more than can be looked at. Our own, no source.
namespace new_plan_limits {
inline constexpr int stems = 500;
inline constexpr int tiers = 100;
inline constexpr int kinds = 12;
inline constexpr int colours = 24;
inline constexpr int leaves = 100'000; ///< of one kind
} // namespace new_plan_limits

/// A valid plan with empty slots that wait for their kinds, smaller kinds above, and the leaves for them in the
/// tray. The problem of what is out of its limits or empty otherwise, its place a member of NewPlan such as
/// `kinds[1].leaves`, or a path into the plan for what no plan can hold. The same NewPlan gives the same plan.
Result<Plan> planFrom(const NewPlan& wanted);

/// One or two letters for a mix of that name, taken from it where it can be, and different from all of `taken`.
std::string freeCode(const std::string& name, const std::vector<std::string>& taken);

} // namespace stemwright
