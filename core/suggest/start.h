#pragma once

#include "core/suggest/heights.h"
#include "core/suggest/spread.h"

#include <string>

namespace stemwright {

/// From stock to a complete board.
struct StartOptions {
    /// How many stems the plan shall have; more than it has now are added, none is taken away.
    int stems = 0;
    /// What an added stem is; its name is followed by its number.
    StemForm form;
    HeightsOptions heights;
    /// The tray's leaves are taken in the proportions of the stock, whatever `trayUse` says, so that a pot with
    /// stock to spare still shows every mix.
    SpreadOptions spread{.matchedPairs = true, .trayUse = TrayUse::likeStock, .seed = {}, .search = {}};
    /// Leaves are put in order from tip to base after they are shared out.
    bool ordered = true;
};

/// What an added stem may be: as the plan's first stem, which keeps its tail, spacing and arrangement; without
/// stems a decussate one. Named `name`, not locked, and standing nowhere yet.
StemForm startForm(const Plan& plan, const std::string& name);

/// One suggestion for all: stems, heights (heights.h), colours (spread.h) and order (order.h), each as good as
/// it can be after the ones before it; `proved`, `bound` and the pairs' bound are the spreading's, the
/// inversions' the ordering's. The problems are those of its steps, and tooMany (values: stems, the most) for
/// too many stems.
Result<Suggestion> startMeOff(const Plan& plan, const StartOptions& options);

/// heights(), and then the places that opened filled from the tray as evenly as can be (spread.h, with the
/// options given but TrayUse::keep): leaves on stems may change places for it. `proved` is that of both.
Result<Suggestion> heightsFilled(const Plan& plan, const HeightsOptions& options,
                                 const SpreadOptions& spreading);

/// The plan with the stems that startMeOff() would add, before anything is shared out: what its heights are
/// asked of.
Plan withNewStems(const Plan& plan, const StartOptions& options);

/// Another arrangement with equal figures, drawn by the seed: the colours are shared out anew with as little
/// unevenness (and, if so asked, as few unmatched pairs) as now or less, heights and tiers stay, and each stem
/// is put in order again if it was in order. The same seed gives the same answer.
Result<Suggestion> shuffle(const Plan& plan, std::uint32_t seed, bool matchedPairs = true,
                           const Search& search = {});

} // namespace stemwright
