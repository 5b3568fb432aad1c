#include "core/document/leaf_presets.h"
#include "core/document/new_plan.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace stemwright {
namespace {

NewPlan wanted(int stems, int tiers, int kinds, int colours) {
    NewPlan plan;
    plan.title = "Windowsill";
    plan.stems = stems;
    plan.tiers = tiers;
    for (int k = 0; k < kinds; ++k) {
        KindForm form = presetForm(leafPresets[static_cast<std::size_t>(k) % leafPresets.size()]);
        form.name = "Kind " + std::to_string(k + 1);
        plan.kinds.push_back({form, std::nullopt});
    }
    const std::vector<std::string> names{"Plum", "Frost", "Sea", "Deep", "Moss", "Rose", "Rust", "Sand"};
    for (int c = 0; c < colours; ++c)
        plan.colours.push_back(
            {names[static_cast<std::size_t>(c)], {static_cast<std::uint8_t>(c * 20), 90, 90}});
    return plan;
}

TEST(NewPlan, MixesAreEachColourAndItsNeighbours) {
    const Plan plan = planFrom(wanted(3, 4, 1, 3)).value();
    ASSERT_EQ(plan.mixes.size(), 5u);
    std::vector<std::string> names, codes;
    for (const Mix& mix : plan.mixes) {
        names.push_back(mix.name);
        codes.push_back(mix.code);
    }
    EXPECT_EQ(names, (std::vector<std::string>{"Plum", "Plum on Frost", "Frost", "Frost on Sea", "Sea"}));
    EXPECT_EQ(codes, (std::vector<std::string>{"P", "PF", "F", "FS", "S"}));
    ASSERT_EQ(plan.mixes[1].colours.size(), 2u);
    EXPECT_EQ(plan.mixes[1].colours[0].colour, plan.colours[0].id) << "the colour nearer to the tip is outside";
    EXPECT_EQ(plan.mixes[1].colours[1].colour, plan.colours[1].id);
}

TEST(NewPlan, TheTrayFillsEverySlot) {
    for (const int kinds : {1, 2, 4})
        for (const bool made : {false, true}) {
            NewPlan from = wanted(7, 9, kinds, 4);
            from.made = made;
            const Plan plan = planFrom(from).value();
            EXPECT_FALSE(firstProblem(plan));
            ASSERT_EQ(plan.kinds.size(), static_cast<std::size_t>(kinds));
            for (const Kind& kind : plan.kinds) {
                int slots = 0, stock = 0, least = 1'000'000, most = 0;
                for (const Stem& stem : plan.stems)
                    for (const Tier& tier : stem.tiers)
                        for (const Slot& slot : tier.slots) {
                            EXPECT_FALSE(slot.filled());
                            slots += slot.leaf.kind == kind.id;
                        }
                for (const StockLine& line : kind.stock) {
                    EXPECT_EQ(made ? line.toMake : line.made, 0);
                    EXPECT_EQ(line.total() % 2, 0) << "pairs can match";
                    stock += line.total();
                    least = std::min(least, line.total());
                    most = std::max(most, line.total());
                }
                EXPECT_GT(slots, 0) << kind.name;
                EXPECT_EQ(stock, slots) << kind.name;
                EXPECT_LE(most - least, 2) << "shared out evenly";
            }
        }
}

// Down a stem the colours run from tip to base once, not once for each kind.
TEST(NewPlan, ColoursRunOnFromTheSmallKindToTheBroad) {
    for (const int kinds : {1, 2, 3, 4})
        for (const int colours : {1, 2, 3, 5, 8}) {
            const Plan plan = planFrom(wanted(7, 9, kinds, colours)).value();
            const auto place = [&](MixId id) {
                return std::find_if(plan.mixes.begin(), plan.mixes.end(),
                                    [&](const Mix& m) { return m.id == id; }) -
                       plan.mixes.begin();
            };
            EXPECT_EQ(place(plan.kinds.front().stock.front().mix), 0);
            EXPECT_EQ(place(plan.kinds.back().stock.back().mix) + 1, std::ssize(plan.mixes));
            for (std::size_t k = 0; k < plan.kinds.size(); ++k) {
                const auto& stock = plan.kinds[k].stock;
                ASSERT_GE(stock.size(), std::min<std::size_t>(2, plan.mixes.size()));
                for (std::size_t i = 1; i < stock.size(); ++i)
                    EXPECT_EQ(place(stock[i].mix), place(stock[i - 1].mix) + 1);
                if (k == 0)
                    continue;
                const auto& above = plan.kinds[k - 1].stock;
                EXPECT_GE(place(stock.front().mix), place(above.front().mix));
                EXPECT_GE(place(stock.back().mix), place(above.back().mix));
                EXPECT_LE(place(stock.front().mix), place(above.back().mix) + 1)
                    << "no mix is left out between";
            }
        }
    const Plan two = planFrom(wanted(7, 10, 2, 4)).value();
    EXPECT_LT(two.kinds[0].stock.size(), two.mixes.size());
    EXPECT_LT(two.kinds[1].stock.size(), two.mixes.size());
}

TEST(NewPlan, LeavesCanBeGivenByKind) {
    NewPlan from = wanted(3, 4, 2, 2);
    from.kinds[0].leaves = 31;
    from.kinds[1].leaves = 0;
    const Plan plan = planFrom(from).value();
    int sums[2] = {};
    for (std::size_t k = 0; k < 2; ++k)
        for (const StockLine& line : plan.kinds[k].stock)
            sums[k] += line.total();
    EXPECT_EQ(sums[0], 31) << "an odd leaf is not lost";
    EXPECT_EQ(sums[1], 0);
}

TEST(NewPlan, SmallerKindsStandAboveAndTiersAlternate) {
    NewPlan from = wanted(5, 12, 0, 2);
    for (const LeafPreset preset : {LeafPreset::large, LeafPreset::tiny, LeafPreset::broad})
        from.kinds.push_back({presetForm(preset), std::nullopt});
    const Plan plan = planFrom(from).value();
    for (const Stem& stem : plan.stems)
        for (std::size_t t = 1; t < stem.tiers.size(); ++t) {
            const Kind& above = *find(plan, stem.tiers[t - 1].slots[0].leaf.kind);
            const Kind& below = *find(plan, stem.tiers[t].slots[0].leaf.kind);
            EXPECT_LE(above.length, below.length);
            EXPECT_NE(planeOf(stem.tiers[t - 1]), planeOf(stem.tiers[t]));
        }
}

TEST(NewPlan, HeightsDiffer) {
    const Plan plan = planFrom(wanted(9, 10, 2, 3)).value();
    std::vector<double> heights;
    int tiers = 0;
    for (const Stem& stem : plan.stems) {
        heights.push_back(inMillimetres(stem.tail) +
                          inMillimetres(stem.spacing) * static_cast<double>(stem.tiers.size() - 1));
        tiers += static_cast<int>(stem.tiers.size());
    }
    EXPECT_NEAR(tiers / 9.0, 10, 0.5) << "as many as were asked for, on the whole";
    for (std::size_t i = 1; i < heights.size(); ++i)
        EXPECT_GT(std::abs(heights[i] - heights[i - 1]), 6) << "neighbours are unlike";
    std::sort(heights.begin(), heights.end());
    for (std::size_t i = 1; i < heights.size(); ++i)
        EXPECT_GT(heights[i] - heights[i - 1], 3) << "no two are alike";
}

TEST(NewPlan, EveryArrangementGivesFullTiers) {
    for (const auto arrangement : {Arrangement::decussate, Arrangement::onePlane, Arrangement::alternate,
                                   Arrangement::whorled, Arrangement::spiral}) {
        NewPlan from = wanted(4, 6, 2, 3);
        from.arrangement = arrangement;
        const Plan plan = planFrom(from).value();
        for (const Stem& stem : plan.stems)
            for (const Tier& tier : stem.tiers)
                EXPECT_EQ(tier.slots.size(), static_cast<std::size_t>(leavesPerTier(stem)));
    }
}

TEST(NewPlan, AbsurdNumbersAreRefusedWithTheirPlace) {
    const auto place = [](auto change) {
        NewPlan from = wanted(3, 4, 2, 2);
        change(from);
        const Result<Plan> plan = planFrom(from);
        return plan ? std::string("accepted") : plan.problem().place;
    };
    EXPECT_EQ(place([](NewPlan& p) { p.stems = 1'000'000'000; }), "stems");
    EXPECT_EQ(place([](NewPlan& p) { p.stems = 0; }), "stems");
    EXPECT_EQ(place([](NewPlan& p) { p.tiers = -1; }), "tiers");
    EXPECT_EQ(place([](NewPlan& p) { p.kinds.clear(); }), "kinds");
    EXPECT_EQ(place([](NewPlan& p) { p.colours.clear(); }), "colours");
    EXPECT_EQ(place([](NewPlan& p) { p.colours.resize(10'000); }), "colours");
    EXPECT_EQ(place([](NewPlan& p) { p.kinds[1].leaves = -4; }), "kinds[1].leaves");
    EXPECT_EQ(place([](NewPlan& p) { p.kinds[0].form.length = millimetres(NAN); }), "kinds[0].length_mm");
    EXPECT_EQ(place([](NewPlan& p) { p.title = std::string(5'000, 'x'); }), "title");
    EXPECT_EQ(place([](NewPlan& p) { p.stems = new_plan_limits::stems; }), "accepted");
}

TEST(NewPlan, OneOfEverythingIsEnough) {
    const Plan plan = planFrom(wanted(1, 1, 1, 1)).value();
    EXPECT_EQ(plan.stems.size(), 1u);
    EXPECT_EQ(plan.mixes.size(), 1u);
    EXPECT_EQ(plan.stems[0].tiers.size(), 1u);
}

TEST(NewPlan, CodesComeFromNamesAndNeverTwice) {
    EXPECT_EQ(freeCode("Plum", {}), "P");
    EXPECT_EQ(freeCode("plum", {"P"}), "PL");
    EXPECT_EQ(freeCode("Plum on frost", {}), "PF");
    EXPECT_EQ(freeCode("Слива", {}), "С");
    EXPECT_EQ(freeCode("", {}), "A");
    EXPECT_EQ(freeCode("42", {"A"}), "B");
    std::vector<std::string> taken;
    for (int i = 0; i < 500; ++i) {
        const std::string code = freeCode("Pp", taken);
        ASSERT_FALSE(code.empty());
        ASSERT_LE(code.size(), 2u);
        taken.push_back(code);
    }
    EXPECT_EQ(std::set<std::string>(taken.begin(), taken.end()).size(), 500u);
}

TEST(NewPlan, NamesThatLookLikePatternsStayWhole) {
    NewPlan from = wanted(1, 1, 1, 2);
    from.colours[0].name = "%2";
    from.colours[1].name = "%1";
    EXPECT_EQ(planFrom(from).value().mixes[1].name, "%2 on %1");
}

TEST(LeafPresets, AreLeavesOfSensibleMake) {
    for (const LeafPreset preset : leafPresets) {
        const KindForm form = presetForm(preset);
        EXPECT_GT(form.beads, 10);
        EXPECT_LT(form.beads, 300);
        EXPECT_GT(form.length, form.width);
        EXPECT_GT(inMillimetres(form.wire), form.beads * 1.3) << "the beads fit on the wire";
        EXPECT_EQ(form.gauge->number, 28);
        // AWG 28 is 0.321 mm by its formula.
        EXPECT_NEAR(inMillimetres(form.wireDiameter), 0.321, 0.005);
    }
    // By hand: 4 on the basic, and each pair of rows longer by 1.6·π = 5.03 beads: 9.03 and 14.05.
    EXPECT_EQ(presetForm(LeafPreset::small).beads, 4 + 2 * 9 + 2 * 14);
}

} // namespace
} // namespace stemwright
