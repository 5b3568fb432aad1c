#pragma once

#include "core/document/moves.h"
#include "core/plan/plan.h"

#include <optional>

namespace stemwright {

/// Something on the board that can be pointed at.
struct Place {
    enum class Sort {
        paper,
        slot,
        tier, ///< the stem between its leaves, or the tier's number
        gap,  ///< `tier` is the index that a tier opened here would get
        stem, ///< its name, its card or its tail
        trayLine,
        tray,
    };
    Sort sort = Sort::paper;
    StemId stem;
    int tier = -1;
    int slot = -1;
    Leaf leaf; ///< of a line of the tray

    static Place of(SlotRef at) { return {Sort::slot, at.stem, at.tier, at.slot, {}}; }
    static Place ofTier(StemId stem, int tier) { return {Sort::tier, stem, tier, -1, {}}; }
    static Place ofGap(StemId stem, int index) { return {Sort::gap, stem, index, -1, {}}; }
    static Place of(StemId stem) { return {Sort::stem, stem, -1, -1, {}}; }
    static Place of(Leaf line) { return {Sort::trayLine, {}, -1, -1, line}; }
    static Place ofTray() { return {Sort::tray, {}, -1, -1, {}}; }

    SlotRef slotRef() const { return {stem, tier, slot}; }
    bool onSlot() const { return sort == Sort::slot; }
    bool onBoard() const { return static_cast<bool>(stem); }
    bool onTray() const { return sort == Sort::tray || sort == Sort::trayLine; }
    friend bool operator==(const Place&, const Place&) = default;
};

/// Where a thing dropped on the place would go; nothing for places that take no leaves.
std::optional<Target> targetOf(const Plan& plan, const Place& place);

/// Whether the place is still there in the plan.
bool exists(const Plan& plan, const Place& place);

} // namespace stemwright
