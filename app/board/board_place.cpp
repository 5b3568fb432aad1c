#include "app/board/board_place.h"

namespace stemwright {

std::optional<Target> targetOf(const Plan& plan, const Place& place) {
    switch (place.sort) {
    case Place::Sort::slot:
        return OntoSlot{place.slotRef()};
    case Place::Sort::tier:
        return OntoSlot{{place.stem, place.tier, 0}};
    case Place::Sort::gap:
        return IntoGap{place.stem, place.tier};
    case Place::Sort::stem: // on its name, card or tail: at the stem's end
        if (const Stem* stem = find(plan, place.stem))
            return IntoGap{place.stem, static_cast<int>(stem->tiers.size())};
        return std::nullopt;
    case Place::Sort::trayLine:
    case Place::Sort::tray:
        return OntoTray{};
    case Place::Sort::paper:
        return std::nullopt;
    }
    return std::nullopt;
}

bool exists(const Plan& plan, const Place& place) {
    const Stem* stem = find(plan, place.stem);
    const auto tiers = stem ? static_cast<int>(stem->tiers.size()) : 0;
    switch (place.sort) {
    case Place::Sort::slot:
        return find(plan, place.slotRef()) != nullptr;
    case Place::Sort::tier:
        return place.tier >= 0 && place.tier < tiers;
    case Place::Sort::gap:
        return stem && place.tier >= 0 && place.tier <= tiers;
    case Place::Sort::stem:
        return stem != nullptr;
    case Place::Sort::trayLine: {
        const Kind* kind = find(plan, place.leaf.kind);
        return kind && stockLine(*kind, place.leaf.mix);
    }
    case Place::Sort::tray:
    case Place::Sort::paper:
        return true;
    }
    return false;
}

} // namespace stemwright
