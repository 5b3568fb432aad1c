#pragma once

#include <cstddef>

namespace stemwright::limits {

// Chosen so that every real plant fits with room to spare and nothing absurd gets in: our own, no source.
inline constexpr std::size_t stems = 10'000;
inline constexpr std::size_t tiers = 1'000;
inline constexpr std::size_t slots = 24;
inline constexpr std::size_t colours = 500;
inline constexpr std::size_t mixes = 500;
inline constexpr std::size_t coloursInMix = 24;
inline constexpr std::size_t kinds = 100;
inline constexpr std::size_t wraps = 4;
inline constexpr std::size_t nameLength = 1'000;   ///< bytes of UTF-8
inline constexpr std::size_t noteLength = 100'000; ///< bytes of UTF-8
inline constexpr int stock = 1'000'000;
inline constexpr int beads = 100'000;
inline constexpr int wiresAtBase = 24;
inline constexpr int whorl = static_cast<int>(slots);
inline constexpr int strands = 24;
inline constexpr int rows = 99; ///< of a leaf
inline constexpr std::size_t bars = 24;
inline constexpr std::size_t leafWires = 24;   ///< diameters sold in a way of their own
inline constexpr std::size_t ownEntries = 100; ///< in each of the plan's own tables
inline constexpr int leastWhorl = 3;
inline constexpr int leastFeet = 3; ///< of a pot that stands on feet
inline constexpr int feet = 12;
inline constexpr int gaugeNumber = 50;
inline constexpr double shortestLeaf = 0.1;      ///< mm, and least width
inline constexpr double thinnestWire = 0.01;     ///< mm: diameters and widths of strands
inline constexpr double thinnestWrap = 0.001;    ///< mm: how much a layer stands out
inline constexpr double smallestPot = 1;         ///< mm: diameters and depth
inline constexpr double shortestSold = 1;        ///< mm
inline constexpr double lightest = 1;            ///< kg/m³
inline constexpr double steepest = 180;          ///< degrees: a leaf that hangs straight down
inline constexpr double longest = 10'000;        ///< mm: leaves, spacings, tails, pots
inline constexpr double longestWire = 1'000'000; ///< mm: cut or sold lengths
inline constexpr double thickestWire = 8;        ///< mm: of leaves, cores and stakes
inline constexpr double thickest = 20;           ///< mm: wires, strands and tapes (width of a tape: see widest)
inline constexpr double widest = 100;            ///< mm: tapes
inline constexpr double densest = 25'000;        ///< kg/m³
inline constexpr double heaviest = 1e6;          ///< g: a pot, a pack
inline constexpr double dearest = 1e6;           ///< a price
inline constexpr double stiffest = 1e6;          ///< N/mm²: moduli and yields
inline constexpr double largestBead = 50;        ///< mm
inline constexpr double heaviestBead = 100;      ///< g
inline constexpr double heaviestMetre = 1'000;   ///< g: of a strand or tape
inline constexpr double mostSpare = 5;
inline constexpr double minutes = 100'000;
inline constexpr double mostOverlap = 0.95;
inline constexpr double mostStretch = 10;
inline constexpr int benchSteps = 100;  ///< of a stem, besides its tiers
inline constexpr double mostLean = 90;  ///< degrees from straight up
inline constexpr double mostBend = 180; ///< degrees from foot to tip

} // namespace stemwright::limits
