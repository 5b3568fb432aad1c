#pragma once

#include "core/suggest/suggestion.h"

namespace stemwright {

// Sharing the leaves out so that the pot's unevenness, Σ (x − n·m/M)² as core/figures reports it, is least.
//
// What may change: the mix of every slot that names a kind and is not pinned, on no locked stem and in no bound
// tier. Slots keep their kind. Every such slot gets a leaf while the stock has one of its kind, made or to make
// (see sharesOf for what happens when it has not). So n and M are settled beforehand; m, the board's leaves of
// each mix, is part of the answer wherever the stock holds more leaves than there are slots.
//
// Kinds do not meet in the unevenness, so each is solved by itself. With m given, the problem is separable and
// convex and is solved exactly as a minimum-cost flow (transport.h). Where m is open too, every m that could be
// better is looked at, those that a bound rules out set aside (leaf_choice.h): exact when the search comes to
// its end, and otherwise the answer says how far it is from the bound.

/// Which leaves may be on the board where the stock has more than there are slots.
enum class TrayUse {
    /// Any: those stay in the tray that leave the least unevenness. This is the least that the stock allows;
    /// where the tray is large and the stems differ much it may leave a mix out altogether.
    any,
    /// Leaves in open slots stay on the board, though not in their places; the tray fills empty slots only.
    keep,
    /// Each mix in its part of the stock, rounded up or down, as far as pins allow.
    likeStock,
};

struct SpreadOptions {
    /// First as few unmatched pairs as can be, and only then the least unevenness. A pair is a tier of two
    /// slots of one kind; a pinned leaf opposite an open slot counts, pairs that no answer can change do not.
    bool matchedPairs = false;
    TrayUse trayUse = TrayUse::any;
    /// Among equally good answers, one drawn by this seed rather than the one that moves fewest leaves.
    std::optional<std::uint32_t> seed;
    Search search;
};

/// The suggestion, for a valid plan. `proved` says that no other answer has fewer unmatched pairs (if asked
/// for) or, with as few, less unevenness; `bound` is then `after`. Of the answers that good it takes one in
/// which fewest leaves leave their stem (without a seed; counted exactly for each choice of m, on boards up to
/// some ten thousand leaves of one kind), and within stems it leaves alone what need not move. A second spread
/// moves nothing if the first was proved. A full board never gets worse (but with likeStock, which asks for
/// more); filling empty slots can raise the figure. Stems are taken by their ids, so their order in the file
/// plays no part.
///
/// beyondExact where a kind has too many leaves for 64-bit whole numbers to hold every sum. With M leaves
/// shared over stems of n leaves each, 2 Σn² M² must stay within 10¹⁸, which on S stems alike is M ≤ (S · 5 ·
/// 10¹⁷)^¼: some 26 000 leaves on one stem, 49 000 on 12, 100 000 on 200. Matched pairs need about 3 M times
/// that room: M ≤ (S · 1.6 · 10¹⁷)^⅕, some 2 700 leaves on one stem, 4 500 on 12, 8 000 on 200. The value says
/// about how many it is for the plan's own proportions. The suggestions that spread (start.h) are bound by the
/// same.
Result<Suggestion> spread(const Plan& plan, const SpreadOptions& options = {});

/// What spread would reach, without the way there.
struct LeastUnevenness {
    double found = 0; ///< an answer with this much exists
    double bound = 0; ///< none has less; equal to found where proved
    bool proved = true;
};

/// The least unevenness that the leaves allow, for showing beside the present one after every edit: for usual
/// boards (12 stems, 6 mixes) well under a millisecond. Always proved where the stock has no more leaves than
/// there are slots; else for as long as `steps` last. A plan too large to count gives 0, unproved.
LeastUnevenness leastUnevenness(const Plan& plan, TrayUse trayUse = TrayUse::any, std::uint64_t steps = 25);

} // namespace stemwright
