#include "core/suggest/start.h"

#include "core/plan/limits.h"
#include "core/suggest/order.h"
#include "core/suggest/plan_counts.h"

#include <algorithm>

namespace stemwright {

namespace {

/// Several suggestions, each made for the plan that the one before it leaves.
class Chain {
public:
    explicit Chain(const Plan& plan) : plan_(plan) {
        whole_.aim = Aim::several;
        whole_.before = unevennessOf(plan);
        whole_.unmatchedBefore = unmatchedPairsOf(plan);
        whole_.inversionsBefore = inversionsOf(plan);
    }

    const Plan& plan() const { return plan_; }
    Suggestion& whole() { return whole_; }

    void add(const Suggestion& part) {
        plan_ = taken(plan_, part);
        whole_.edits.edits.insert(whole_.edits.edits.end(), part.edits.edits.begin(), part.edits.edits.end());
        whole_.proved &= part.proved;
        whole_.stopped |= part.stopped;
        whole_.steps += part.steps;
        whole_.moved += part.moved;
        whole_.filled += part.filled;
        whole_.differenceAsked |= part.differenceAsked;
        whole_.closeBefore += part.closeBefore;
        whole_.closeAfter += part.closeAfter;
        whole_.closeBound += part.closeBound;
        whole_.shortages.insert(whole_.shortages.end(), part.shortages.begin(), part.shortages.end());
    }

    Suggestion finish() {
        whole_.after = unevennessOf(plan_);
        whole_.unmatchedAfter = unmatchedPairsOf(plan_);
        whole_.inversionsAfter = inversionsOf(plan_);
        return std::move(whole_);
    }

private:
    Plan plan_;
    Suggestion whole_;
};

Suggestion newStems(const Plan& plan, const StartOptions& options) {
    Suggestion stems;
    std::uint32_t id = freeStemId(plan).value;
    for (int i = static_cast<int>(plan.stems.size()); i < options.stems; ++i) {
        Stem stem;
        static_cast<StemForm&>(stem) = options.form;
        stem.name += (stem.name.empty() ? "" : " ") + std::to_string(i + 1);
        stem.id = StemId{id++};
        stems.edits.edits.push_back(Insert<Stem>{i, stem});
    }
    return stems;
}

void spreadAndOrder(Chain& chain, const Suggestion& spreading, bool ordered, bool matchedPairs,
                    const Search& search) {
    Suggestion& whole = chain.whole();
    whole.bound = spreading.bound;
    whole.unmatchedBound = spreading.unmatchedBound;
    chain.add(spreading);
    if (!ordered)
        return;
    OrderOptions orderOptions;
    orderOptions.matchedPairs = matchedPairs;
    orderOptions.search.stop = search.stop;
    const Suggestion ordering = order(chain.plan(), orderOptions);
    whole.inversionsBound = ordering.inversionsBound;
    chain.add(ordering);
}

} // namespace

StemForm startForm(const Plan& plan, const std::string& name) {
    StemForm form;
    if (!plan.stems.empty())
        form = plan.stems.front();
    form.name = name;
    form.locked = false;
    form.standing.reset();
    form.pose.reset();
    form.extra.clear();
    return form;
}

Result<Suggestion> startMeOff(const Plan& plan, const StartOptions& options) {
    if (options.stems > static_cast<int>(limits::stems))
        return Problem{
            ProblemCode::tooMany, "", {std::to_string(options.stems), std::to_string(limits::stems)}};
    Chain chain(plan);
    chain.add(newStems(plan, options));
    const auto tiers = heights(chain.plan(), options.heights);
    if (!tiers)
        return tiers.problem();
    chain.add(tiers.value());
    SpreadOptions spreadOptions = options.spread;
    spreadOptions.trayUse = TrayUse::likeStock;
    const auto spreading = spread(chain.plan(), spreadOptions);
    if (!spreading)
        return spreading.problem();
    spreadAndOrder(chain, spreading.value(), options.ordered, spreadOptions.matchedPairs, spreadOptions.search);
    return chain.finish();
}

Result<Suggestion> heightsFilled(const Plan& plan, const HeightsOptions& options,
                                 const SpreadOptions& spreading) {
    Chain chain(plan);
    const auto tiers = heights(plan, options);
    if (!tiers)
        return tiers.problem();
    chain.add(tiers.value());
    SpreadOptions filling = spreading;
    filling.trayUse = TrayUse::keep;
    const auto filled = spread(chain.plan(), filling);
    if (!filled)
        return filled.problem();
    spreadAndOrder(chain, filled.value(), false, filling.matchedPairs, filling.search);
    return chain.finish();
}

Plan withNewStems(const Plan& plan, const StartOptions& options) {
    return taken(plan, newStems(plan, options));
}

Result<Suggestion> shuffle(const Plan& plan, std::uint32_t seed, bool matchedPairs, const Search& search) {
    SpreadOptions options;
    options.matchedPairs = matchedPairs;
    options.trayUse = TrayUse::keep;
    options.seed = seed;
    options.search = search;
    const auto spreading = spread(plan, options);
    if (!spreading)
        return spreading.problem();
    OrderOptions orderOptions;
    orderOptions.matchedPairs = matchedPairs;
    orderOptions.search.stop = search.stop;
    const bool ordered = order(plan, orderOptions).edits.edits.empty();
    Chain chain(plan);
    spreadAndOrder(chain, spreading.value(), ordered, matchedPairs, search);
    Suggestion other = chain.finish();
    other.aim = spreading.value().aim;
    return other;
}

} // namespace stemwright
