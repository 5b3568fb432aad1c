#pragma once

namespace stemwright {

/// The densest part of a plane that equal circles can cover, π/√12 (Thue, Fejes Tóth; textbook).
inline constexpr double densestPacking = 0.90689968211710892530;

/// The last count whose ratio is known from a table.
inline constexpr int largestPackedCount = 61;

/// The diameter of the smallest circle that holds `count` equal circles, in diameters of one of them: a bundle
/// of that many wires measures the ratio times the wire. 0 for a count of 0 or less, 1 for one wire, never
/// falling.
///
/// To 61 by the table of Kravitz 1967, Graham, Lubachevsky, Nurmela & Östergård 1998 and Specht (published;
/// proved smallest for 1 to 14 and 19, best known elsewhere). Beyond it √(count / densestPacking), the least
/// area that could hold them, plus the constant that joins it to the table at 61 (own choice): the ring of
/// waste at the edge keeps its width. At 91 that is 0.9 % below the best packing that has a formula
/// (recomputed).
///
/// This is an ideal, tightly packed bundle: wires as a hand binds them lie no closer.
double packingRatio(int count);

} // namespace stemwright
