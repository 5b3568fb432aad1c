#pragma once

#include "core/plan/edit.h"

#include <string>
#include <variant>
#include <vector>

namespace stemwright {

// What a maker's hand does, as edits: pure functions from a plan and a gesture to the one edit that it means,
// or the problem that forbids it. A hand, like a suggestion, leaves alone what is pinned or locked. What is
// bound it may take up again: bound_tiers.h says which edits undo work at the bench, for the window to ask.
//
// Where tiers come into a stem, or leave one, whose tiers alternate as its arrangement says, those below are
// turned again in the same edit so that they still do. A stem with any deliberate turn keeps all its turns.

/// One or more leaves, each on a filled slot. `grabbed` is the one under the hand; the others keep their places
/// relative to it.
struct HeldLeaves {
    std::vector<SlotRef> from;
    std::size_t grabbed = 0;
    friend bool operator==(const HeldLeaves&, const HeldLeaves&) = default;
};

/// A run of whole tiers of one stem; `grabbed` of them stand above the one under the hand.
struct HeldTiers {
    StemId stem;
    int first = 0;
    int count = 1;
    int grabbed = 0;
    friend bool operator==(const HeldTiers&, const HeldTiers&) = default;
};

/// A leaf out of the tray.
struct HeldFromTray {
    Leaf leaf;
    friend bool operator==(const HeldFromTray&, const HeldFromTray&) = default;
};

using Held = std::variant<HeldLeaves, HeldTiers, HeldFromTray>;

struct OntoSlot {
    SlotRef at;
    friend bool operator==(const OntoSlot&, const OntoSlot&) = default;
};
/// Between tiers: before tier `index`, from 0 above the tip tier to the number of tiers at the stem's end.
struct IntoGap {
    StemId stem;
    int index = 0;
    friend bool operator==(const IntoGap&, const IntoGap&) = default;
};
struct OntoTray {
    friend bool operator==(const OntoTray&, const OntoTray&) = default;
};

using Target = std::variant<OntoSlot, IntoGap, OntoTray>;

/// What stands in the way of picking the thing up at all.
std::optional<Problem> cannotHold(const Plan& plan, const Held& held);

/// What putting the held thing there does.
/// - Leaves onto slots: swapped with the leaves there, or moved where the slots are empty (what is left behind
///   then waits for the kind that was there).
/// - Leaves into a gap: each tier's worth opens a tier, its other slots waiting for the same kind. Leaves that
///   make up whole tiers go as tiers.
/// - Tiers onto tiers: all they hold is exchanged, slot by slot; tiers of unlike size change places whole.
/// - Tiers into a gap: moved. A tier that is full by its own stem's arrangement is made full by the other's:
/// with
///   slots that wait where it asks for more leaves, or as several tiers where it asks for fewer.
/// - A tray leaf onto a slot: what is there goes back to the tray.
/// - Anything onto the tray: leaves go back, slots stay and wait; tiers go back whole and close.
struct Put {
    Edit edit;
    /// Where what was held stands afterwards: each held leaf, or every slot of the held tiers; none in the
    /// tray.
    std::vector<SlotRef> landed;
};
Result<Put> put(const Plan& plan, const Held& held, const Target& target);

/// Turns a tier by what its arrangement turns from tier to tier, pairs by a quarter.
Result<Edit> turnTier(const Plan& plan, StemId stem, int tier);
Result<Edit> pinSlots(const Plan& plan, const std::vector<SlotRef>& slots, bool pinned);
/// Leaves go back to the tray; the slots wait for their kinds.
Result<Edit> emptySlots(const Plan& plan, const std::vector<SlotRef>& slots);
/// Opens an empty tier before `index` that waits for the kind of the tier above it, or below it.
Result<Edit> openTier(const Plan& plan, StemId stem, int index);
Result<Edit> removeTiers(const Plan& plan, StemId stem, int first, int count);

/// A new stem after `after` (at the end where that is none), in its form, without tiers.
Result<Edit> addStem(const Plan& plan, StemId after, const std::string& name);
/// The copy stands after the stem; it takes its leaves from the tray as far as there are some, from the tip
/// down; other slots wait. Pins, progress and place in the pot are not copied.
Result<Edit> copyStem(const Plan& plan, StemId stem, const std::string& name);
Result<Edit> removeStem(const Plan& plan, StemId stem);
Result<Edit> renameStem(const Plan& plan, StemId stem, const std::string& name);
Result<Edit> moveStem(const Plan& plan, StemId stem, int index);
Result<Edit> lockStem(const Plan& plan, StemId stem, bool locked);
/// Gives the stem another arrangement: every tier gets as many slots as it asks for and its turn from tip to
/// base. Leaves that no longer fit go to the tray. `whorl` counts for whorled stems only.
Result<Edit> rearrangeStem(const Plan& plan, StemId stem, Arrangement arrangement, int whorl);
/// Gives the stem a form as asked for in its settings; another arrangement rearranges its tiers too, in the
/// same edit. A locked stem may be unlocked and changed otherwise, but not rearranged.
Result<Edit> reformStem(const Plan& plan, StemId stem, const StemForm& form);

/// Whether every tier is turned from the one above as the arrangement says, within a degree; true for none.
bool alternates(const StemForm& form, const std::vector<Tier>& tiers);

} // namespace stemwright
