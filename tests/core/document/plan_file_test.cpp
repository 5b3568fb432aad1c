#include "core/document/history.h"
#include "core/document/plan_file.h"
#include "tests/support/boards.h"
#include "tests/support/random_edits.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>

namespace stemwright {
namespace {

Plan fullPlan() {
    Plan plan = test::smallBoard();
    plan.about = {"A full plan", "Every part set, nothing as it comes.\nTwo lines, \"quoted\", ünd more.",
                  "2024-02-29", ""};
    plan.units = {LengthUnit::inch, MassUnit::ounce, ""};
    plan.kinds[0].tipEnd = LeafEnd::pointed;
    plan.kinds[0].gauge = GaugeNumber{GaugeSystem::swg, 30};
    plan.kinds[0].minutes = 12.5;
    plan.binding.wraps[0] = {WrapWith::tape,
                             1,
                             millimetres(12.7),
                             millimetres(0.1),
                             std::nullopt,
                             0.25,
                             1.5,
                             millimetres(5),
                             millimetres(6),
                             millimetres(7),
                             millimetres(27'000),
                             ""};
    plan.binding.wraps.push_back({});
    plan.binding.wraps[1].with = WrapWith::wire;
    plan.binding.wraps[1].gauge = GaugeNumber{GaugeSystem::steel, 28};
    plan.pot.name = "Bowl";
    plan.pot.shape = PotShape::bowl;
    plan.pot.opening = PotOpening::oval;
    plan.pot.topBreadth = millimetres(77.5);
    plan.pot.stake.metal = Metal::hardBrass;
    plan.pot.clay.density = 1234.5;
    plan.pot.footDiameter = millimetres(61.25);
    plan.pot.feet = 5;
    plan.stems[0].core = CoreWire{millimetres(0.9), GaugeNumber{GaugeSystem::awg, 19}, Metal::hardCopper, ""};
    plan.stems[0].locked = true;
    plan.stems[0].standing = Standing{millimetres(-12.25), millimetres(3), ""};
    plan.stems[1].arrangement = Arrangement::whorled;
    plan.stems[1].whorl = 5;
    plan.binding.minutesPerTier = 3.25;
    plan.stems[1].bench = {3, ""};
    plan.stems[0].tiers[0].spacing = millimetres(1.0 / 3);
    plan.stems[0].tiers[0].turn = degrees(137.50776405003785);
    plan.stems[0].tiers[0].progress = {true, 4.5, ""};
    plan.stems[0].tiers[1].slots[0].pinned = true;
    plan.stems[0].tiers[1].slots[1].leaf = {KindId{1}, MixId{}};
    plan.stems[0].tiers[2].slots[1] = {};
    return plan;
}

void expectRoundTrip(const Plan& plan) {
    const std::string text = planText(plan);
    const Result<Plan> back = planFromText(text);
    ASSERT_TRUE(back) << back.problem().place << "\n" << text;
    EXPECT_EQ(back.value(), plan);
    EXPECT_EQ(planText(back.value()), text);
}

TEST(PlanFile, ReadsBackWhatItWrote) {
    ASSERT_FALSE(firstProblem(fullPlan())) << firstProblem(fullPlan())->place;
    expectRoundTrip(Plan{});
    expectRoundTrip(test::smallBoard());
    expectRoundTrip(fullPlan());
    for (std::uint32_t seed = 0; seed < 200; ++seed)
        expectRoundTrip(
            test::randomBoard(seed, 1 + static_cast<int>(seed % 7), 8, 2 + static_cast<int>(seed % 5)));
}

TEST(PlanFile, WritesALineATier) {
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.stems[0].tiers.resize(2);
    plan.stems[0].tiers[1].slots[1] = {{KindId{1}, MixId{}}, true, ""};
    plan.stems[0].tiers[1].progress = {true, 2.5, ""};
    const std::string text = planText(plan);
    EXPECT_EQ(text.substr(text.find("  \"stems\"")), R"(  "stems": [
    {
      "id": 1,
      "name": "Stem 1",
      "arrangement": "decussate",
      "spacing_mm": 8,
      "tail_mm": 30,
      "tiers": [
        {"turn_deg": 0, "slots": [{"kind": 1, "mix": 1}, {"kind": 1, "mix": 1}]},
        {"turn_deg": 90, "progress": {"bound": true, "minutes": 2.5}, "slots": [{"kind": 1, "mix": 2}, {"kind": 1, "pinned": true}]}
      ]
    }
  ]
}
)");
    const std::string large = planText(test::largeBoard());
    EXPECT_LT(std::count(large.begin(), large.end(), '\n'), 8'000) << "8000 leaves, two a tier";
}

TEST(PlanFile, NumbersKeepTheirLastDigit) {
    Plan plan = test::smallBoard();
    const double lengths[] = {0.1 + 0.2, 1.0 / 3, 9'999.999999999999, 1e-5 + 0.1, 0.30000000000000004, 12};
    for (const double length : lengths) {
        plan.stems[0].spacing = millimetres(length);
        const Result<Plan> back = planFromText(planText(plan));
        ASSERT_TRUE(back);
        EXPECT_EQ(inMillimetres(back.value().stems[0].spacing), length);
    }
    plan.stems[0].spacing = millimetres(-0.0);
    EXPECT_EQ(planText(plan), planText(planFromText(planText(plan)).value()));
}

TEST(PlanFile, AsksOnlyForWhatItMust) {
    const Result<Plan> plan = planFromText(R"({"version": 1, "format": "stemplan"})");
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan.value(), Plan{});
}

TEST(PlanFile, SkipsAByteOrderMark) {
    const Result<Plan> plan = planFromText("\xef\xbb\xbf" + planText(fullPlan()));
    ASSERT_TRUE(plan);
    EXPECT_EQ(plan.value(), fullPlan());
}

using Json = nlohmann::ordered_json;

/// Puts unknown keys into every object, before, between and after the known ones.
void addKeys(Json& json, int& objects) {
    if (json.is_array())
        for (Json& item : json)
            addKeys(item, objects);
    if (!json.is_object())
        return;
    Json more;
    more["x first"] = Json::parse(R"([{"deep": [null, true, -0.5, 1e+300, "q\"\u00e9\n"]}])");
    for (auto& [key, value] : json.items()) {
        addKeys(value, objects);
        more[key] = value;
    }
    more["z" + std::to_string(objects++)] = 7;
    json = std::move(more);
}

// The independent parser finds every key again, at every level, with the value it had.
TEST(PlanFile, UnknownKeysSurviveAtEveryLevel) {
    Json json = Json::parse(planText(fullPlan()));
    int objects = 0;
    addKeys(json, objects);
    EXPECT_GT(objects, 40);
    const Result<Plan> plan = planFromText(json.dump());
    ASSERT_TRUE(plan) << plan.problem().place;
    const std::string text = planText(plan.value());
    EXPECT_EQ(nlohmann::json::parse(text), nlohmann::json::parse(json.dump()));
    const Result<Plan> again = planFromText(text);
    ASSERT_TRUE(again);
    EXPECT_EQ(again.value(), plan.value());
    EXPECT_EQ(planText(again.value()), text);
}

TEST(PlanFile, UnknownNumbersKeepTheirDigits) {
    const std::string digits = "{\"a\": 1.10, \"b\": 3.14159265358979323846, \"c\": 123456789012345678901234, "
                               "\"d\": 1E5, \"e\": -18446744073709551616}";
    const Result<Plan> plan = planFromText(R"({"format": "stemplan", "version": 1, "later": )" + digits + "}");
    ASSERT_TRUE(plan);
    EXPECT_NE(planText(plan.value()).find("\"later\": " + digits), std::string::npos);
}

// What one stem of the file carries goes with it through an edit and its undo.
TEST(PlanFile, UnknownKeysGoWithTheirPart) {
    std::string text = planText(test::smallBoard());
    const std::string tier = "{\"turn_deg\": 90, ";
    text.insert(text.find(tier) + 1, "\"thread\": \"grey\", ");
    const Result<Plan> read = planFromText(text);
    ASSERT_TRUE(read);
    History history(read.value());
    const std::string first = planText(history.plan());
    ASSERT_FALSE(history.make(MoveTiers{StemId{1}, 1, 1, StemId{3}, 0}));
    EXPECT_EQ(history.plan().stems[2].tiers[0].extra, "{\"thread\": \"grey\"}");
    EXPECT_FALSE(history.make(Remove<StemId>{StemId{3}}));
    EXPECT_EQ(planText(history.plan()).find("grey"), std::string::npos);
    history.undo();
    history.undo();
    EXPECT_EQ(planText(history.plan()), first);
}

// Whatever is done to a board, its file reads back, and undo leads back to the first byte.
TEST(PlanFileProperty, UndoLeadsBackToTheFirstByte) {
    int made = 0;
    for (std::uint32_t seed = 0; seed < 600; ++seed) {
        History history(test::randomBoard(seed, 3, 6, 3));
        const std::string first = planText(history.plan());
        test::RandomEdits random(seed);
        for (int step = 0; step < 8 && !history.plan().stems.empty(); ++step)
            made += !history.make(random.next(history.plan()));
        expectRoundTrip(history.plan());
        while (history.canUndo())
            history.undo();
        ASSERT_EQ(planText(history.plan()), first) << "seed " << seed;
    }
    EXPECT_GT(made, 1'000);
}

} // namespace
} // namespace stemwright
