#include "core/plan/edit.h"

#include "core/plan/edit_obstacles.h"
#include "core/plan/limits.h"
#include "core/plan/lookup.h"

#include <algorithm>
#include <cassert>
#include <concepts>

namespace stemwright {

bool operator==(const Batch& a, const Batch& b) {
    return a.deed == b.deed && a.edits == b.edits;
}
bool operator==(const Edit& a, const Edit& b) {
    return a.what == b.what;
}

namespace {

std::string text(std::integral auto v) {
    return std::to_string(v);
}

bool inList(int index, std::size_t size) {
    return index >= 0 && static_cast<std::size_t>(index) < size;
}
bool inGaps(int index, std::size_t size) {
    return index >= 0 && static_cast<std::size_t>(index) <= size;
}

Tier& tierAt(Plan& plan, StemId stem, int tier) {
    return find(plan, stem)->tiers[static_cast<std::size_t>(tier)];
}

auto& listOf(Plan& plan, const Colour*) {
    return plan.colours;
}
auto& listOf(Plan& plan, const Mix*) {
    return plan.mixes;
}
auto& listOf(Plan& plan, const Kind*) {
    return plan.kinds;
}
auto& listOf(Plan& plan, const Stem*) {
    return plan.stems;
}

About& singlePart(Plan& plan, const About*) {
    return plan.about;
}
Units& singlePart(Plan& plan, const Units*) {
    return plan.units;
}
Binding& singlePart(Plan& plan, const Binding*) {
    return plan.binding;
}
Pot& singlePart(Plan& plan, const Pot*) {
    return plan.pot;
}
Buying& singlePart(Plan& plan, const Buying*) {
    return plan.buying;
}
OwnTables& singlePart(Plan& plan, const OwnTables*) {
    return plan.own;
}

template <class AnyId> struct PartOf;
template <> struct PartOf<ColourId> { using Type = Colour; };
template <> struct PartOf<MixId> { using Type = Mix; };
template <> struct PartOf<KindId> { using Type = Kind; };
template <> struct PartOf<StemId> { using Type = Stem; };

const char* sortOf(const Colour*) {
    return "colour";
}
const char* sortOf(const Mix*) {
    return "mix";
}
const char* sortOf(const Kind*) {
    return "kind";
}
const char* sortOf(const Stem*) {
    return "stem";
}

std::optional<Problem> inUse(const Plan&, const Stem&) {
    return std::nullopt;
}

std::optional<Problem> unfitPart(const Plan&, const Colour&) {
    return std::nullopt;
}
std::optional<Problem> unfitPart(const Plan&, const Mix&) {
    return std::nullopt;
}
std::optional<Problem> unfitPart(const Plan&, const Kind&) {
    return std::nullopt;
}
std::optional<Problem> unfitPart(const Plan& plan, const Stem& stem) {
    return unfit(plan, stem.tiers);
}

/// Edits that carry values from outside (a form, a colour, a whole part) are tried first and taken back where
/// the plan would no longer be valid: the rules then stand in one place, firstProblem.
bool carriesValues(const Edit& edit) {
    return std::visit(
        [](const auto& e) {
            using E = std::remove_cvref_t<decltype(e)>;
            return !(std::is_same_v<E, FillSlot> || std::is_same_v<E, SwapSlots> ||
                     std::is_same_v<E, PinSlot> || std::is_same_v<E, CloseTier> ||
                     std::is_same_v<E, TurnTier> || std::is_same_v<E, MoveTiers> || std::is_same_v<E, Batch> ||
                     std::is_same_v<E, Move<ColourId>> || std::is_same_v<E, Move<MixId>> ||
                     std::is_same_v<E, Move<KindId>> || std::is_same_v<E, Move<StemId>>);
        },
        edit.what);
}

class Applier {
public:
    explicit Applier(Plan& plan) : plan_(plan) {}

    Result<Edit> operator()(const FillSlot& e) {
        if (auto problem = missingSlot(plan_, e.at))
            return *problem;
        Slot& slot = *find(plan_, e.at);
        // The leaf that is there already may stay: it is not asked of the tray again.
        if (!(slot.leaf == e.leaf))
            if (auto problem = unfit(plan_, e.leaf))
                return *problem;
        return Edit(FillSlot{e.at, std::exchange(slot.leaf, e.leaf)});
    }

    Result<Edit> operator()(const SwapSlots& e) {
        if (auto problem = missingSlot(plan_, e.a))
            return *problem;
        if (auto problem = missingSlot(plan_, e.b))
            return *problem;
        std::swap(find(plan_, e.a)->leaf, find(plan_, e.b)->leaf);
        return Edit(e);
    }

    Result<Edit> operator()(const PinSlot& e) {
        if (auto problem = missingSlot(plan_, e.at))
            return *problem;
        return Edit(PinSlot{e.at, std::exchange(find(plan_, e.at)->pinned, e.pinned)});
    }

    Result<Edit> operator()(const OpenTier& e) {
        Stem* stem = find(plan_, e.stem);
        if (!stem)
            return noStem(e.stem);
        if (!inGaps(e.index, stem->tiers.size()))
            return noPlace(e.index, stem->tiers.size());
        if (auto problem = unfit(plan_, std::vector<Tier>{e.tier}))
            return *problem;
        stem->tiers.insert(stem->tiers.begin() + e.index, e.tier);
        return Edit(CloseTier{e.stem, e.index});
    }

    Result<Edit> operator()(const CloseTier& e) {
        if (auto problem = missingTier(plan_, e.stem, e.index))
            return *problem;
        std::vector<Tier>& tiers = find(plan_, e.stem)->tiers;
        OpenTier back{e.stem, e.index, std::move(tiers[static_cast<std::size_t>(e.index)])};
        tiers.erase(tiers.begin() + e.index);
        return Edit(std::move(back));
    }

    Result<Edit> operator()(const MoveTiers& e) {
        Stem* from = find(plan_, e.from);
        Stem* to = find(plan_, e.to);
        if (!from || !to)
            return noStem(from ? e.to : e.from);
        if (e.count < 0 || !inGaps(e.index, from->tiers.size()) ||
            static_cast<std::size_t>(e.count) > from->tiers.size() - static_cast<std::size_t>(e.index))
            return noPlace(e.index, from->tiers.size());
        const std::size_t room = to->tiers.size() - (from == to ? static_cast<std::size_t>(e.count) : 0);
        if (!inGaps(e.toIndex, room))
            return noPlace(e.toIndex, room);
        if (room + static_cast<std::size_t>(e.count) > limits::tiers)
            return Problem{ProblemCode::tooMany,
                           "",
                           {text(room + static_cast<std::size_t>(e.count)), text(limits::tiers)}};
        const auto first = from->tiers.begin() + e.index;
        std::vector<Tier> moved(std::make_move_iterator(first), std::make_move_iterator(first + e.count));
        from->tiers.erase(first, first + e.count);
        to->tiers.insert(to->tiers.begin() + e.toIndex, std::make_move_iterator(moved.begin()),
                         std::make_move_iterator(moved.end()));
        return Edit(MoveTiers{e.to, e.toIndex, e.count, e.from, e.index});
    }

    Result<Edit> operator()(const TurnTier& e) {
        if (auto problem = missingTier(plan_, e.stem, e.index))
            return *problem;
        // Asked here and not of the whole plan, since a drag turns many tiers at every move of the mouse.
        if (!(e.turn >= degrees(0) && e.turn < degrees(360)))
            return Problem{ProblemCode::outOfRange, "", {std::to_string(inDegrees(e.turn)), "0", "360"}};
        return Edit(TurnTier{e.stem, e.index, std::exchange(tierAt(plan_, e.stem, e.index).turn, e.turn)});
    }

    Result<Edit> operator()(const SpaceTier& e) {
        if (auto problem = missingTier(plan_, e.stem, e.index))
            return *problem;
        return Edit(
            SpaceTier{e.stem, e.index, std::exchange(tierAt(plan_, e.stem, e.index).spacing, e.spacing)});
    }

    Result<Edit> operator()(const MarkTier& e) {
        if (auto problem = missingTier(plan_, e.stem, e.index))
            return *problem;
        return Edit(
            MarkTier{e.stem, e.index, std::exchange(tierAt(plan_, e.stem, e.index).progress, e.progress)});
    }

    Result<Edit> operator()(const ReformStem& e) {
        Stem* stem = find(plan_, e.stem);
        if (!stem)
            return noStem(e.stem);
        return Edit(ReformStem{e.stem, std::exchange(static_cast<StemForm&>(*stem), e.form)});
    }

    Result<Edit> operator()(const ReformKind& e) {
        Kind* kind = find(plan_, e.kind);
        if (!kind)
            return Problem{ProblemCode::noSuchId, "", {"kind", text(e.kind.value)}};
        return Edit(ReformKind{e.kind, std::exchange(static_cast<KindForm&>(*kind), e.form)});
    }

    Result<Edit> operator()(const SetStock& e) {
        Kind* kind = find(plan_, e.kind);
        if (!kind)
            return Problem{ProblemCode::noSuchId, "", {"kind", text(e.kind.value)}};
        for (const TrayLine& line : tray(plan_)) {
            if (line.leaf.kind != e.kind || line.placed == 0)
                continue;
            const auto it = std::find_if(e.stock.begin(), e.stock.end(),
                                         [&](const StockLine& l) { return l.mix == line.leaf.mix; });
            const int total = it == e.stock.end() ? 0 : it->total();
            if (total < line.placed)
                return Problem{ProblemCode::stockBelowPlaced,
                               "",
                               {kind->name, nameOf(plan_, line.leaf.mix), text(line.placed), text(total)}};
        }
        return Edit(SetStock{e.kind, std::exchange(kind->stock, e.stock)});
    }

    template <class Part> Result<Edit> operator()(const Insert<Part>& e) {
        auto& list = listOf(plan_, &e.part);
        if (!inGaps(e.index, list.size()))
            return noPlace(e.index, list.size());
        if (find(plan_, e.part.id))
            return Problem{ProblemCode::idTaken, "", {sortOf(&e.part), text(e.part.id.value)}};
        if (auto problem = unfitPart(plan_, e.part))
            return *problem;
        list.insert(list.begin() + e.index, e.part);
        return Edit(Remove<decltype(e.part.id)>{e.part.id});
    }

    template <class AnyId> Result<Edit> operator()(const Remove<AnyId>& e) {
        using Part = typename PartOf<AnyId>::Type;
        auto& list = listOf(plan_, static_cast<const Part*>(nullptr));
        const auto it = std::find_if(list.begin(), list.end(), [&](const Part& p) { return p.id == e.id; });
        if (it == list.end())
            return missingPart<Part>(e.id);
        if (auto problem = inUse(plan_, *it))
            return *problem;
        Insert<Part> back{static_cast<int>(it - list.begin()), std::move(*it)};
        list.erase(it);
        return Edit(std::move(back));
    }

    template <class AnyId> Result<Edit> operator()(const Move<AnyId>& e) {
        using Part = typename PartOf<AnyId>::Type;
        auto& list = listOf(plan_, static_cast<const Part*>(nullptr));
        const auto it = std::find_if(list.begin(), list.end(), [&](const Part& p) { return p.id == e.id; });
        if (it == list.end())
            return missingPart<Part>(e.id);
        if (!inList(e.index, list.size()))
            return noPlace(e.index, list.size() - 1);
        const auto was = it - list.begin();
        if (e.index < was)
            std::rotate(list.begin() + e.index, it, it + 1);
        else
            std::rotate(it, it + 1, list.begin() + e.index + 1);
        return Edit(Move<AnyId>{e.id, static_cast<int>(was)});
    }

    template <class Part> Result<Edit> operator()(const Replace<Part>& e) {
        auto& list = listOf(plan_, &e.part);
        const auto it =
            std::find_if(list.begin(), list.end(), [&](const Part& p) { return p.id == e.part.id; });
        if (it == list.end())
            return missingPart<Part>(e.part.id);
        return Edit(Replace<Part>{std::exchange(*it, e.part)});
    }

    template <class Part> Result<Edit> operator()(const Set<Part>& e) {
        if constexpr (std::is_same_v<Part, OwnTables>)
            if (auto problem = missingOwn(plan_, e.part))
                return *problem;
        return Edit(Set<Part>{std::exchange(singlePart(plan_, &e.part), e.part)});
    }

    Result<Edit> operator()(const Batch& e) {
        Batch back{e.deed, {}};
        back.edits.reserve(e.edits.size());
        for (const Edit& edit : e.edits) {
            Result<Edit> inverse = apply(plan_, edit);
            if (!inverse) {
                takeBack(back);
                return inverse.problem();
            }
            back.edits.push_back(std::move(inverse).value());
        }
        std::reverse(back.edits.begin(), back.edits.end());
        return Edit(std::move(back));
    }

private:
    template <class Part, class AnyId> Problem missingPart(AnyId id) {
        return {ProblemCode::noSuchId, "", {sortOf(static_cast<const Part*>(nullptr)), text(id.value)}};
    }

    void takeBack(Batch& done) {
        for (auto it = done.edits.rbegin(); it != done.edits.rend(); ++it) {
            [[maybe_unused]] const bool undone = std::visit(Applier(plan_), it->what).ok();
            assert(undone);
        }
    }

    Plan& plan_;
};

} // namespace

Result<Edit> apply(Plan& plan, const Edit& edit) {
    Result<Edit> inverse = std::visit(Applier(plan), edit.what);
    if (inverse && carriesValues(edit))
        if (auto problem = firstProblem(plan)) {
            [[maybe_unused]] const bool undone = std::visit(Applier(plan), inverse.value().what).ok();
            assert(undone);
            return *problem;
        }
    return inverse;
}

} // namespace stemwright
