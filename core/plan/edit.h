#pragma once

#include "core/plan/plan.h"
#include "core/plan/problem.h"

#include <string>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

namespace stemwright {

// Every change of a plan is one of these values. Applying one gives its inverse, so undo is a list of inverses
// and needs nothing else. Tiers and slots are counted from 0 at the tip, as everywhere in core.

/// Sets what is in a slot: a leaf from the tray, or with no mix an empty slot that waits for `leaf.kind`. What
/// was there goes back to the tray.
struct FillSlot {
    SlotRef at;
    Leaf leaf;
    friend bool operator==(const FillSlot&, const FillSlot&) = default;
};

/// Exchanges what is in two slots, leaves or emptiness; pins stay where they are.
struct SwapSlots {
    SlotRef a;
    SlotRef b;
    friend bool operator==(const SwapSlots&, const SwapSlots&) = default;
};

struct PinSlot {
    SlotRef at;
    bool pinned = false;
    friend bool operator==(const PinSlot&, const PinSlot&) = default;
};

/// Puts a whole tier at `index`, its leaves taken from the tray.
struct OpenTier {
    StemId stem;
    int index = 0;
    Tier tier;
    friend bool operator==(const OpenTier&, const OpenTier&) = default;
};

/// Takes a tier away, its leaves going back to the tray.
struct CloseTier {
    StemId stem;
    int index = 0;
    friend bool operator==(const CloseTier&, const CloseTier&) = default;
};

/// Takes `count` tiers out of `from` and puts them, unchanged and in order, into `to` at `toIndex` (counted
/// after they are taken out, where both are one stem).
struct MoveTiers {
    StemId from;
    int index = 0;
    int count = 1;
    StemId to;
    int toIndex = 0;
    friend bool operator==(const MoveTiers&, const MoveTiers&) = default;
};

struct TurnTier {
    StemId stem;
    int index = 0;
    Angle turn;
    friend bool operator==(const TurnTier&, const TurnTier&) = default;
};

struct SpaceTier {
    StemId stem;
    int index = 0;
    std::optional<Length> spacing;
    friend bool operator==(const SpaceTier&, const SpaceTier&) = default;
};

/// Records what was done of a tier at the bench.
struct MarkTier {
    StemId stem;
    int index = 0;
    Progress progress;
    friend bool operator==(const MarkTier&, const MarkTier&) = default;
};

/// Gives a stem another form; its tiers stay as they are.
struct ReformStem {
    StemId stem;
    StemForm form;
    friend bool operator==(const ReformStem&, const ReformStem&) = default;
};

/// Gives a kind another form; its stock stays as it is.
struct ReformKind {
    KindId kind;
    KindForm form;
    friend bool operator==(const ReformKind&, const ReformKind&) = default;
};

/// The one edit that makes or loses leaves: sets the stock lines of a kind, their counts and their order.
struct SetStock {
    KindId kind;
    std::vector<StockLine> stock;
    friend bool operator==(const SetStock&, const SetStock&) = default;
};

/// Puts a part (Colour, Mix, Kind or Stem) into its list at `index`. A kind brings its stock, which is an edit
/// of the stock too; a stem takes its leaves from the tray.
template <class Part> struct Insert {
    int index = 0;
    Part part;
    friend bool operator==(const Insert&, const Insert&) = default;
};

/// Takes a part out. A colour, mix or kind that is still in use cannot be removed; a mix with a line of stock
/// is in use. A removed stem's leaves go back to the tray.
template <class AnyId> struct Remove {
    AnyId id;
    friend bool operator==(const Remove&, const Remove&) = default;
};

/// Brings a part to another place in its list.
template <class AnyId> struct Move {
    AnyId id;
    int index = 0;
    friend bool operator==(const Move&, const Move&) = default;
};

/// Sets a colour or a mix that is there already, found by its id.
template <class Part> struct Replace {
    Part part;
    friend bool operator==(const Replace&, const Replace&) = default;
};

/// Sets one of the plan's single parts: About, Units, Binding, Pot, Buying or OwnTables. Entries of the plan's
/// own tables that something uses cannot go.
template <class Part> struct Set {
    Part part;
    friend bool operator==(const Set&, const Set&) = default;
};

struct Edit;

/// Why several edits are made as one; the app words it for the undo list.
enum class Deed {
    several,
    moveLeaf,
    moveLeaves,
    moveTiers,
    swapLeaves,
    emptySlots,
    openTier,
    closeTiers,
    turnTiers,
    pinSlots,
    fillFromTray,
    changeArrangement,
    copyStem,
    removeStem,
    changeStock,
    removePart,
    remedy,
    suggestion,
    paste,
    benchStep,
    calibrate,
    changeBinding,
};

/// Several edits as one: all of them or, where one cannot be applied, none.
struct Batch {
    Deed deed = Deed::several;
    std::vector<Edit> edits;
    friend bool operator==(const Batch&, const Batch&);
};

struct Edit {
    using What =
        std::variant<FillSlot, SwapSlots, PinSlot, OpenTier, CloseTier, MoveTiers, TurnTier, SpaceTier,
                     MarkTier, ReformStem, ReformKind, SetStock, Insert<Colour>, Insert<Mix>, Insert<Kind>,
                     Insert<Stem>, Remove<ColourId>, Remove<MixId>, Remove<KindId>, Remove<StemId>,
                     Move<ColourId>, Move<MixId>, Move<KindId>, Move<StemId>, Replace<Colour>, Replace<Mix>,
                     Set<About>, Set<Units>, Set<Binding>, Set<Pot>, Set<Buying>, Set<OwnTables>, Batch>;
    What what;

    template <class Alternative>
    requires(!std::is_same_v<std::remove_cvref_t<Alternative>, Edit>) Edit(Alternative&& alternative)
        : what(std::forward<Alternative>(alternative)) {}
    friend bool operator==(const Edit&, const Edit&);
};

/// Applies the edit and gives the edit that takes the plan back to what it was, to the last bit. Where it
/// cannot be applied the plan is unchanged and the problem says why. A valid plan stays valid (firstProblem of
/// plan.h): no edit but SetStock and Insert or Remove of a Kind changes how many leaves there are.
Result<Edit> apply(Plan& plan, const Edit& edit);

/// Which stems an edit may change, for those who keep figures of stems: `everything` where it reaches beyond
/// single stems (a kind's measure, the list of stems, the binding …).
struct Reach {
    bool everything = false;
    std::vector<StemId> stems; ///< each once, in no order
};
Reach reachOf(const Edit& edit);

} // namespace stemwright
