#include "core/document/embedded_examples.h"
#include "core/document/examples.h"
#include "core/document/plan_file.h"
#include "core/figures/figures.h"

#include <gtest/gtest.h>

#include <cmath>
#include <fstream>
#include <iterator>
#include <numbers>
#include <set>

namespace stemwright {
namespace {

TEST(Examples, AreThePlanFilesOfTheResources) {
    ASSERT_GE(embeddedExamples().size(), 4u);
    for (const EmbeddedExample& embedded : embeddedExamples()) {
        std::ifstream file(STEMWRIGHT_SOURCE_DIR "/resources/examples/" + std::string(embedded.key) +
                               ".stemplan",
                           std::ios::binary);
        const std::string text(std::istreambuf_iterator<char>(file), {});
        EXPECT_EQ(embedded.text, text) << embedded.key;
        const Result<Plan> plan = planFromText(text);
        ASSERT_TRUE(plan) << embedded.key << ": " << plan.problem().place;
        EXPECT_EQ(planText(plan.value()), text) << embedded.key << " is not as the program would write it";
    }
}

TEST(Examples, AreListedWithTitleAndSentence) {
    const std::vector<ExampleInfo> all = examples();
    ASSERT_EQ(all.size(), embeddedExamples().size());
    std::set<std::string> keys, titles;
    for (const ExampleInfo& info : all) {
        EXPECT_TRUE(keys.insert(info.key).second);
        EXPECT_TRUE(titles.insert(info.title).second);
        EXPECT_EQ(info.title, example(info.key).about.title);
        EXPECT_GT(info.sentence.size(), 20u);
        EXPECT_EQ(info.sentence.find('\n'), std::string::npos);
        EXPECT_EQ(info.sentence.back(), '.');
    }
}

TEST(Examples, DifferInKindAndCoverEveryArrangementAndBinding) {
    std::set<Arrangement> arrangements;
    std::set<std::vector<WrapWith>> bindings;
    std::set<PotShape> pots;
    std::set<PotOpening> openings;
    std::set<ViewedFrom> views;
    std::size_t largest = 0;
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        for (const Stem& stem : plan.stems)
            arrangements.insert(stem.arrangement);
        std::vector<WrapWith> binding;
        for (const Wrap& wrap : plan.binding.wraps)
            binding.push_back(wrap.with);
        bindings.insert(binding);
        pots.insert(plan.pot.shape);
        openings.insert(plan.pot.opening);
        views.insert(plan.pot.viewedFrom);
        largest = std::max(largest, plan.stems.size());
    }
    EXPECT_EQ(arrangements.size(), 5u);
    EXPECT_EQ(pots.size(), 3u);
    EXPECT_TRUE(openings.contains(PotOpening::rectangular));
    EXPECT_EQ(views.size(), 2u);
    EXPECT_GE(largest, 30u);
    for (const auto& binding : {std::vector{WrapWith::wire}, std::vector{WrapWith::floss},
                                std::vector{WrapWith::wire, WrapWith::floss}})
        EXPECT_TRUE(bindings.contains(binding));
}

// Nobody could make a plant of any other numbers: lengths along the thread and across the rows as bead sellers
// give them (common practice, no standard).
TEST(Examples, HaveSizesThatAMakerBelieves) {
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        EXPECT_FALSE(plan.about.date.empty());
        for (const Kind& kind : plan.kinds) {
            const bool eleven = kind.beadSize == "11/0";
            const double bead = eleven ? 1.4 : 1.02, row = eleven ? 2.2 : 1.7;
            const double area = std::numbers::pi / 4 * inMillimetres(kind.length) * inMillimetres(kind.width);
            EXPECT_NEAR(kind.beads, area / (bead * row), 0.02 * area) << info.key << ": " << kind.name;
            EXPECT_GT(inMillimetres(kind.wire), kind.beads * bead) << info.key << ": " << kind.name;
        }
        const Figures all = figures(plan);
        EXPECT_GT(all.pot.inTray, 0) << info.key;
        EXPECT_GE(inMillimetres(all.pot.shortest), 60) << info.key;
        EXPECT_LE(inMillimetres(all.pot.tallest), 210) << info.key;
        for (const Stem& stem : plan.stems) {
            ASSERT_TRUE(stem.standing);
            const double x = inMillimetres(stem.standing->x), y = inMillimetres(stem.standing->y);
            EXPECT_LT(std::hypot(x, y), inMillimetres(plan.pot.topDiameter) / 2)
                << info.key << ": " << stem.name;
            EXPECT_GT(stem.tail, plan.pot.plantingDepth) << info.key << ": " << stem.name;
        }
    }
}

// Spread as a careful maker does it by eye: near to fair, with a stem or two that anybody sees is not.
TEST(Examples, AreFairButNotPerfect) {
    for (const ExampleInfo& info : examples()) {
        const Figures all = figures(example(info.key));
        EXPECT_LT(all.pot.drift, 4) << info.key;
        EXPECT_GT(all.pot.unevenness, 0) << info.key;
        double worst = 0;
        for (const StemFigures& stem : all.stems)
            worst = std::max(worst, stem.drift);
        EXPECT_GT(worst, 1.3 * all.pot.drift) << info.key;
    }
}

} // namespace
} // namespace stemwright
