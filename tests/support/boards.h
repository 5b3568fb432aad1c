#pragma once

#include "core/plan/plan.h"

#include <cstdint>
#include <string>

namespace stemwright::test {

/// Two colours, three mixes (codes P, O, S), two kinds ("Small" with 4 P, 4 O, 4 S; "Broad" with 4 of each too)
/// and three decussate stems: "Stem 1" with 3 tiers of Small (P P / O O / S S), "Stem 2" with 2 (P S / O O) and
/// "Stem 3" with none. Small enough to reckon by hand.
Plan smallBoard();

/// A valid board of that many stems, `leaves` leaves on each (pairs, decussate), and mixes; some slots empty,
/// some pinned, some leaves in the tray. The same arguments give the same plan.
Plan randomBoard(std::uint32_t seed, int stems, int leaves, int mixes, int kinds = 2);

/// A full board for speed: 200 × 40 leaves is the large one of the design, 12 mixes of 8 colours.
Plan largeBoard(int stems = 200, int leaves = 40);

} // namespace stemwright::test
