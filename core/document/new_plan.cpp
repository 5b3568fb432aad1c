#include "core/document/new_plan.h"

#include "core/plan/limits.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <numeric>
#include <utility>

namespace stemwright {

namespace {

std::string filled(std::string pattern, const std::string& first, const std::string& second = {}) {
    // The second goes in first: a name that reads "%2" is not filled in again.
    if (const std::size_t at = pattern.rfind("%2"); at != std::string::npos)
        pattern.replace(at, 2, second);
    if (const std::size_t at = pattern.find("%1"); at != std::string::npos)
        pattern.replace(at, 2, first);
    return pattern;
}

std::optional<Problem> outside(int value, int least, int most, std::string place) {
    if (value >= least && value <= most)
        return std::nullopt;
    return Problem{ProblemCode::outOfRange,
                   std::move(place),
                   {std::to_string(value), std::to_string(least), std::to_string(most)}};
}

std::optional<Problem> problemOf(const NewPlan& wanted) {
    namespace most = new_plan_limits;
    const auto size = [](const auto& list) {
        return static_cast<int>(std::min<std::size_t>(list.size(), 1'000'000));
    };
    if (auto problem = outside(wanted.stems, 1, most::stems, "stems"))
        return problem;
    if (auto problem = outside(wanted.tiers, 1, most::tiers, "tiers"))
        return problem;
    if (auto problem = outside(size(wanted.kinds), 1, most::kinds, "kinds"))
        return problem;
    if (auto problem = outside(size(wanted.colours), 1, most::colours, "colours"))
        return problem;
    for (std::size_t i = 0; i < wanted.kinds.size(); ++i) {
        const std::string at = "kinds[" + std::to_string(i) + "]";
        if (wanted.kinds[i].leaves)
            if (auto problem = outside(*wanted.kinds[i].leaves, 0, most::leaves, at + ".leaves"))
                return problem;
        // The kinds are sorted by it before the plan can be asked: no NaN may come that far.
        if (const double length = inMillimetres(wanted.kinds[i].form.length);
            !(length > 0 && length <= limits::longest))
            return Problem{ProblemCode::outOfRange,
                           at + ".length_mm",
                           {std::to_string(length), "0.1", std::to_string(static_cast<int>(limits::longest))}};
    }
    return std::nullopt;
}

/// The letters of a name, each a code point of UTF-8, without spaces and signs of ASCII.
std::vector<std::string> lettersOf(const std::string& name, bool initials) {
    std::vector<std::string> letters;
    bool afterGap = true;
    for (std::size_t i = 0; i < name.size();) {
        std::size_t next = i + 1;
        while (next < name.size() && (static_cast<unsigned char>(name[next]) & 0xc0u) == 0x80u)
            ++next;
        const auto byte = static_cast<unsigned char>(name[i]);
        const bool letter =
            byte >= 0x80u || (name[i] >= 'a' && name[i] <= 'z') || (name[i] >= 'A' && name[i] <= 'Z');
        if (letter && (!initials || afterGap)) {
            std::string one = name.substr(i, next - i);
            if (one[0] >= 'a' && one[0] <= 'z')
                one[0] = static_cast<char>(one[0] - 'a' + 'A');
            letters.push_back(std::move(one));
        }
        afterGap = !letter;
        i = next;
    }
    return letters;
}

void addMixes(Plan& plan, const NewPlan& wanted) {
    std::vector<std::string> taken;
    const auto add = [&](std::string name, const std::string& codeOf, std::vector<BeadShare> shares) {
        Mix mix{freeMixId(plan), std::move(name), freeCode(codeOf, taken), std::move(shares), ""};
        taken.push_back(mix.code);
        plan.mixes.push_back(std::move(mix));
    };
    for (std::size_t i = 0; i < plan.colours.size(); ++i) {
        const Colour& colour = plan.colours[i];
        add(colour.name, colour.name, {{colour.id, 1, ""}});
        if (i + 1 < plan.colours.size()) {
            const Colour& next = plan.colours[i + 1];
            // Its code is that of its two colours, whatever word stands between them.
            add(filled(wanted.words.mix, colour.name, next.name), colour.name + " " + next.name,
                {{colour.id, 1, ""}, {next.id, 1, ""}});
        }
    }
}

void addStems(Plan& plan, const NewPlan& wanted) {
    const auto count = static_cast<std::size_t>(wanted.stems);
    // Neighbours should differ as much as may be: the fractional parts of i times the golden section never lie
    // close for close i. Their ranks are the order of heights, so heights rise by equal steps.
    std::vector<double> part(count);
    std::vector<std::size_t> order(count), rank(count);
    constexpr double golden = 0.6180339887498949;
    for (std::size_t i = 0; i < count; ++i)
        part[i] = std::fmod((static_cast<double>(i) + 1) * golden, 1.0);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return part[a] < part[b]; });
    for (std::size_t r = 0; r < count; ++r)
        rank[order[r]] = r;

    double meanLength = 0;
    for (const Kind& kind : plan.kinds)
        meanLength += inMillimetres(kind.length) / static_cast<double>(plan.kinds.size());
    StemForm form;
    form.arrangement = wanted.arrangement;
    // Leaves cover a good half of the ones below (our own choice).
    form.spacing = millimetres(std::clamp(std::round(meanLength * 0.45), 3.0, 60.0));
    // So many tiers more or less that no two heights look alike, if two fifths can do it.
    constexpr double step = 4; // mm
    const double most = std::clamp(step * static_cast<double>(count - 1) / 2 / inMillimetres(form.spacing),
                                   wanted.tiers * 0.2, wanted.tiers * 0.4);
    for (std::size_t i = 0; i < count; ++i) {
        const double off =
            count > 1 ? most * (2.0 * static_cast<double>(rank[i]) / static_cast<double>(count - 1) - 1) : 0;
        const int tiers =
            std::clamp(static_cast<int>(std::lround(wanted.tiers + off)), 1, new_plan_limits::tiers);
        Stem stem;
        static_cast<StemForm&>(stem) = form;
        stem.id = StemId{static_cast<std::uint32_t>(i + 1)};
        stem.name = filled(wanted.words.stem, std::to_string(i + 1));
        // What whole tiers cannot give, the tail does.
        const double rest = (wanted.tiers + off - tiers) * inMillimetres(form.spacing);
        stem.tail = millimetres(std::max(10.0, std::round(inMillimetres(form.tail) + rest)));
        for (int t = 0; t < tiers; ++t) {
            const std::size_t kind =
                static_cast<std::size_t>(t) * plan.kinds.size() / static_cast<std::size_t>(tiers);
            stem.tiers.push_back(
                newTier(stem, stem.tiers.empty() ? nullptr : &stem.tiers.back(), plan.kinds[kind].id));
        }
        plan.stems.push_back(std::move(stem));
    }
}

/// The stretch of the mixes, tip to base, that a kind takes: the kinds share it out by their slots, smaller
/// ones first, and a mix on the border belongs to both, so that the colours run on from one kind to the next.
/// At least two mixes where there are two, so that no kind is all of one colour.
std::pair<std::size_t, std::size_t> mixesOf(std::size_t kind, const std::vector<int>& slots,
                                            std::size_t mixes) {
    double before = 0, all = 0;
    for (std::size_t k = 0; k < slots.size(); ++k) {
        before += k < kind ? slots[k] : 0;
        all += slots[k];
    }
    if (all <= 0)
        return {0, mixes};
    const double count = static_cast<double>(mixes);
    // A border that falls between two mixes is none of a mix, whatever the last digit says.
    constexpr double whisker = 1e-9;
    auto first = static_cast<std::size_t>(std::floor(before / all * count + whisker));
    auto end = static_cast<std::size_t>(std::ceil((before + slots[kind]) / all * count - whisker));
    first = std::min(first, mixes - 1);
    end = std::clamp(end, first + 1, mixes);
    if (end - first < 2 && mixes >= 2) {
        if (end < mixes)
            ++end;
        else
            --first;
    }
    return {first, end};
}

/// Shares `leaves` out evenly over a stretch of the mixes, in whole pairs as far as they go, so that pairs can
/// match.
void addStock(Kind& kind, const std::vector<Mix>& mixes, std::pair<std::size_t, std::size_t> stretch,
              int leaves, bool made, int together) {
    const int lines = static_cast<int>(stretch.second - stretch.first);
    const int groups = leaves / together;
    int odd = leaves % together;
    for (int i = 0; i < lines; ++i) {
        // The differences of rounded-down multiples sum to the whole and differ by one at most.
        int count = together *
                    static_cast<int>((std::int64_t{i} + 1) * groups / lines - std::int64_t{i} * groups / lines);
        if (i == lines - 1)
            count += std::exchange(odd, 0);
        StockLine line{mixes[stretch.first + static_cast<std::size_t>(i)].id, 0, 0, ""};
        (made ? line.made : line.toMake) = count;
        kind.stock.push_back(std::move(line));
    }
}

} // namespace

std::string freeCode(const std::string& name, const std::vector<std::string>& taken) {
    const auto free = [&](const std::string& code) {
        return std::find(taken.begin(), taken.end(), code) == taken.end();
    };
    const std::vector<std::string> initials = lettersOf(name, true);
    const std::vector<std::string> letters = lettersOf(name, false);
    if (initials.size() >= 2 && free(initials.front() + initials.back()))
        return initials.front() + initials.back();
    if (!letters.empty()) {
        if (initials.size() < 2 && free(letters.front()))
            return letters.front();
        for (std::size_t i = 1; i < letters.size(); ++i)
            if (free(letters.front() + letters[i]))
                return letters.front() + letters[i];
        for (char digit = '2'; digit <= '9'; ++digit)
            if (free(letters.front() + digit))
                return letters.front() + digit;
    }
    for (char first = 'A'; first <= 'Z'; ++first)
        if (const std::string code(1, first); free(code))
            return code;
    for (char first = 'A'; first <= 'Z'; ++first)
        for (char second = 'A'; second <= 'Z'; ++second)
            if (const std::string code{first, second}; free(code))
                return code;
    return {}; // more mixes than any plan may have
}

Result<Plan> planFrom(const NewPlan& wanted) {
    if (auto problem = problemOf(wanted))
        return *problem;
    Plan plan;
    plan.about.title = wanted.title;
    plan.about.date = wanted.date;
    plan.units = wanted.units;
    for (const NewPlan::NewColour& colour : wanted.colours)
        plan.colours.push_back({freeColourId(plan), colour.name, colour.srgb, ""});
    addMixes(plan, wanted);

    std::vector<const NewPlan::NewKind*> kinds;
    for (const NewPlan::NewKind& kind : wanted.kinds)
        kinds.push_back(&kind);
    std::stable_sort(kinds.begin(), kinds.end(),
                     [](const auto* a, const auto* b) { return a->form.length < b->form.length; });
    for (const NewPlan::NewKind* from : kinds) {
        Kind kind;
        static_cast<KindForm&>(kind) = from->form;
        kind.id = freeKindId(plan);
        plan.kinds.push_back(std::move(kind));
    }
    plan.binding.wraps.push_back({});
    addStems(plan, wanted);

    std::vector<int> needed(plan.kinds.size(), 0);
    for (const Stem& stem : plan.stems)
        for (const Tier& tier : stem.tiers)
            needed[tier.slots[0].leaf.kind.value - 1] += static_cast<int>(tier.slots.size());
    for (std::size_t k = 0; k < plan.kinds.size(); ++k)
        addStock(plan.kinds[k], plan.mixes, mixesOf(k, needed, plan.mixes.size()),
                 kinds[k]->leaves.value_or(needed[k]), wanted.made, leavesPerTier(plan.stems[0]));
    if (auto problem = firstProblem(plan))
        return *problem;
    return plan;
}

} // namespace stemwright
