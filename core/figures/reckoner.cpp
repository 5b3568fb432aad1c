// Figures that follow the plan's edits: Reckoner of figures.h.
#include "core/figures/board_figures.h"
#include "core/figures/figures.h"
#include "core/figures/skyline.h"

#include <algorithm>
#include <cassert>
#include <unordered_map>

namespace stemwright {

struct Reckoner::State {
    explicit State(Plan p)
        : plan(std::move(p)),
          tables(plan),
          figures(figuresOf(plan, tables, reckoner, mover)),
          board(countBoard(figures.stems, tables)) {
        keepShares();
    }

    void keepShares() {
        shares.clear();
        for (const StemFigures& stem : figures.stems)
            shares.push_back(shareOf(stem));
    }

    std::vector<std::size_t> placesOf(const Reach& reach) const {
        std::vector<std::size_t> places;
        for (std::size_t i = 0; i < plan.stems.size(); ++i)
            if (std::find(reach.stems.begin(), reach.stems.end(), plan.stems[i].id) != reach.stems.end())
                places.push_back(i);
        return places;
    }

    WhatIf whatIfStems(const std::vector<std::size_t>& places);
    WhatIf whatIfAll(const Plan& after);

    Plan plan;
    StemReckoner reckoner;
    EarthMover mover;
    PlanTables tables;
    Figures figures;
    BoardCounts board;
    std::vector<StemShare> shares;
};

Reckoner::Reckoner(Plan plan) : state_(std::make_unique<State>(std::move(plan))) {}
Reckoner::~Reckoner() = default;
Reckoner::Reckoner(Reckoner&&) noexcept = default;
Reckoner& Reckoner::operator=(Reckoner&&) noexcept = default;

const Plan& Reckoner::plan() const {
    return state_->plan;
}
const Figures& Reckoner::figures() const {
    return state_->figures;
}

void Reckoner::follow(const Plan& after, const Reach& reach) {
    State& s = *state_;
    if (reach.everything) {
        s.plan = after;
        s.tables = PlanTables(s.plan, &s.tables);
        s.figures = figuresOf(s.plan, s.tables, s.reckoner, s.mover);
        s.board = countBoard(s.figures.stems, s.tables);
        s.keepShares();
        return;
    }
    const std::vector<std::size_t> places = s.placesOf(reach);
    for (const std::size_t i : places) {
        assert(after.stems[i].id == s.plan.stems[i].id);
        s.plan.stems[i] = after.stems[i];
        s.figures.stems[i] = s.reckoner(s.plan.stems[i], s.plan, s.tables);
    }
    BoardCounts board = countBoard(s.figures.stems, s.tables);
    const auto compare = [&](std::size_t i) {
        compareWithBoard(s.figures.stems[i], board, s.tables, s.mover);
        s.shares[i] = shareOf(s.figures.stems[i]);
    };
    // What a stem is compared with is the same for all others as long as only places were changed.
    if (board == s.board)
        std::for_each(places.begin(), places.end(), compare);
    else
        for (std::size_t i = 0; i < s.plan.stems.size(); ++i)
            compare(i);
    s.board = std::move(board);
    s.figures.lines = linesOf(s.tables, s.board);
    s.figures.pot = potFiguresOf(s.figures.stems, s.plan, s.tables, s.board);
}

namespace {

void putBefore(WhatIf& what, const PotShare& pot, const Skyline& sky) {
    what.potDriftBefore = pot.drift;
    what.potUnevennessBefore = pot.unevenness;
    what.shortestBefore = sky.shortest;
    what.tallestBefore = sky.tallest;
}

void putAfter(WhatIf& what, const PotShare& pot, const Skyline& sky) {
    what.potDriftAfter = pot.drift;
    what.potUnevennessAfter = pot.unevenness;
    what.shortestAfter = sky.shortest;
    what.tallestAfter = sky.tallest;
}

StemWhatIf stemWhatIf(const StemFigures& before, const StemShare& after, const StemFigures& then) {
    StemWhatIf what;
    what.stem = before.stem;
    what.driftBefore = before.drift;
    what.driftAfter = after.drift;
    what.unevennessBefore = before.unevenness;
    what.unevennessAfter = after.unevenness;
    what.heightBefore = before.height;
    what.heightAfter = after.height;
    what.leavesBefore = before.leaves;
    what.leavesAfter = then.leaves;
    what.inversionsBefore = before.inversions;
    what.inversionsAfter = then.inversions;
    what.unmatchedBefore = before.unmatchedPairs;
    what.unmatchedAfter = then.unmatchedPairs;
    return what;
}

/// The counts over all stems; without the figures of after, from what the listed stems have more or less.
void sumCounts(WhatIf& what, const std::vector<StemFigures>& before, const std::vector<StemFigures>* after) {
    for (const StemFigures& stem : before) {
        what.inversionsBefore += stem.inversions;
        what.unmatchedBefore += stem.unmatchedPairs;
    }
    if (after) {
        for (const StemFigures& stem : *after) {
            what.inversionsAfter += stem.inversions;
            what.unmatchedAfter += stem.unmatchedPairs;
        }
        return;
    }
    what.inversionsAfter = what.inversionsBefore;
    what.unmatchedAfter = what.unmatchedBefore;
    for (const StemWhatIf& stem : what.stems) {
        what.inversionsAfter += stem.inversionsAfter - stem.inversionsBefore;
        what.unmatchedAfter += stem.unmatchedAfter - stem.unmatchedBefore;
    }
}

} // namespace

/// The plan's stems at `places` are those of after the edit, the figures still those of before.
WhatIf Reckoner::State::whatIfStems(const std::vector<std::size_t>& places) {
    std::vector<StemFigures> now;
    now.reserve(places.size());
    for (const std::size_t i : places)
        now.push_back(reckoner(plan.stems[i], plan, tables));

    BoardCounts after(tables);
    std::vector<const StemFigures*> all;
    all.reserve(figures.stems.size());
    for (const StemFigures& stem : figures.stems)
        all.push_back(&stem);
    for (std::size_t j = 0; j < places.size(); ++j)
        all[places[j]] = &now[j];
    for (const StemFigures* stem : all)
        after.add(stem->held, tables);

    std::vector<StemShare> then = shares;
    for (std::size_t j = 0; j < places.size(); ++j) {
        compareWithBoard(now[j], after, tables, mover);
        then[places[j]] = shareOf(now[j]);
    }
    if (!(after == board))
        for (std::size_t i = 0; i < all.size(); ++i)
            if (std::find(places.begin(), places.end(), i) == places.end()) {
                then[i].unevenness = unevennessOf(all[i]->held, after, tables);
                then[i].drift = driftOf(mover, all[i]->beads, after, tables);
            }

    WhatIf what;
    for (std::size_t j = 0; j < places.size(); ++j)
        what.stems.push_back(stemWhatIf(figures.stems[places[j]], then[places[j]], now[j]));
    putBefore(what, potShareOf(shares), skylineOf(skylineHeights(shares)));
    putAfter(what, potShareOf(then), skylineOf(skylineHeights(then)));
    sumCounts(what, figures.stems, nullptr);
    return what;
}

WhatIf Reckoner::State::whatIfAll(const Plan& after) {
    const Figures then = figuresOf(after, PlanTables(after, &tables), reckoner, mover);
    std::unordered_map<StemId, std::size_t> before;
    for (std::size_t i = 0; i < figures.stems.size(); ++i)
        before.emplace(figures.stems[i].stem, i);
    WhatIf what;
    std::vector<StemShare> thenShares;
    for (const StemFigures& stem : then.stems) {
        thenShares.push_back(shareOf(stem));
        if (const auto it = before.find(stem.stem); it != before.end())
            what.stems.push_back(stemWhatIf(figures.stems[it->second], thenShares.back(), stem));
    }
    putBefore(what, potShareOf(shares), skylineOf(skylineHeights(shares)));
    putAfter(what, potShareOf(thenShares), skylineOf(skylineHeights(thenShares)));
    sumCounts(what, figures.stems, &then.stems);
    return what;
}

Result<WhatIf> Reckoner::whatIf(const Edit& edit) {
    State& s = *state_;
    const Reach reach = reachOf(edit);
    if (reach.everything) {
        Plan after = s.plan;
        const Result<Edit> back = apply(after, edit);
        if (!back)
            return back.problem();
        return s.whatIfAll(after);
    }
    const std::vector<std::size_t> places = s.placesOf(reach);
    std::vector<Stem> kept;
    kept.reserve(places.size());
    for (const std::size_t i : places)
        kept.push_back(s.plan.stems[i]);
    const Result<Edit> back = apply(s.plan, edit);
    if (!back)
        return back.problem();
    WhatIf what = s.whatIfStems(places);
    for (std::size_t j = 0; j < places.size(); ++j)
        s.plan.stems[places[j]] = std::move(kept[j]);
    return what;
}

} // namespace stemwright
