#include "core/figures/arrangement.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace stemwright {
namespace {

Tier turned(double by) {
    Tier tier;
    tier.turn = degrees(by);
    return tier;
}

bool alike(Arrangement arrangement, double above, double tier) {
    StemForm form;
    form.arrangement = arrangement;
    return facesLikeAbove(form, turned(above), turned(tier));
}

TEST(Arrangement, APairFacesLikeTheOneAboveWhenItsPlaneIsTheSame) {
    EXPECT_TRUE(alike(Arrangement::decussate, 0, 0));
    EXPECT_TRUE(alike(Arrangement::decussate, 0, 180));
    EXPECT_TRUE(alike(Arrangement::decussate, 350, 200));
    EXPECT_FALSE(alike(Arrangement::decussate, 0, 90));
    EXPECT_FALSE(alike(Arrangement::decussate, 90, 180));
    EXPECT_FALSE(alike(Arrangement::decussate, 0, 50));
}

TEST(Arrangement, SingleLeavesWhorlsAndSpirals) {
    EXPECT_TRUE(alike(Arrangement::alternate, 0, 10));
    EXPECT_FALSE(alike(Arrangement::alternate, 0, 180));
    EXPECT_TRUE(alike(Arrangement::whorled, 0, 120)); // a whorl of three looks the same every 120 degrees
    EXPECT_FALSE(alike(Arrangement::whorled, 0, 60));
    EXPECT_FALSE(alike(Arrangement::spiral, 0, 120)); // a third of a turn is a usual spiral
    EXPECT_TRUE(alike(Arrangement::spiral, 0, 357));
    EXPECT_FALSE(alike(Arrangement::onePlane, 0, 0));
}

TEST(Arrangement, EveryArrangementsOwnTiersFaceApart) {
    for (const Arrangement arrangement :
         {Arrangement::decussate, Arrangement::alternate, Arrangement::whorled, Arrangement::spiral}) {
        StemForm form;
        form.arrangement = arrangement;
        form.whorl = 5;
        Tier above = newTier(form, nullptr, KindId{1});
        for (int i = 0; i < 40; ++i) {
            const Tier next = newTier(form, &above, KindId{1});
            EXPECT_FALSE(facesLikeAbove(form, above, next)) << static_cast<int>(arrangement) << " tier " << i;
            above = next;
        }
    }
}

TEST(Arrangement, ThePlaneOfAStemIsThatOfMostTiers) {
    Stem stem;
    EXPECT_EQ(planeOfStem(stem), degrees(0));
    stem.tiers = {turned(90), turned(0), turned(180), turned(0), turned(45)};
    EXPECT_EQ(planeOfStem(stem), degrees(0));
    EXPECT_TRUE(isOutOfPlane(planeOfStem(stem), stem.tiers[0]));
    EXPECT_FALSE(isOutOfPlane(planeOfStem(stem), stem.tiers[2]));
    EXPECT_FALSE(isOutOfPlane(degrees(0), turned(175)));
}

int slowInversions(const std::vector<std::vector<int>>& tiers) {
    int count = 0;
    for (std::size_t i = 0; i < tiers.size(); ++i)
        for (std::size_t j = i + 1; j < tiers.size(); ++j)
            for (const int above : tiers[i])
                for (const int below : tiers[j])
                    count += above > below;
    return count;
}

TEST(Arrangement, InversionsAsCountedByHand) {
    // Knuth, The Art of Computer Programming 3, 5.1.1 (from memory): 5 9 1 8 2 6 4 7 3 has 20.
    InversionCounter counter;
    counter.begin(10);
    for (const int place : {5, 9, 1, 8, 2, 6, 4, 7, 3}) {
        counter.add(place);
        counter.endTier();
    }
    EXPECT_EQ(counter.inversions(), 20);

    std::mt19937 random(5);
    for (int round = 0; round < 2'000; ++round) {
        std::vector<std::vector<int>> tiers(random() % 8);
        counter.begin(6);
        for (auto& tier : tiers) {
            tier.resize(random() % 4);
            for (int& place : tier)
                counter.add(place = static_cast<int>(random() % 6));
            counter.endTier();
        }
        ASSERT_EQ(counter.inversions(), slowInversions(tiers));
    }
}

} // namespace
} // namespace stemwright
