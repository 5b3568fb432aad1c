#include "core/quantity/bead.h"

#include <gtest/gtest.h>

#include <numbers>
#include <set>
#include <string>

namespace stemwright {
namespace {

TEST(BeadSize, IsFoundByItsExactNameOnly) {
    for (const BeadSize& size : beadSizes()) {
        const std::optional<BeadSize> found = beadSizeNamed(size.name);
        ASSERT_TRUE(found);
        EXPECT_EQ(found->diameter, size.diameter);
    }
    for (const char* name : {"", "11", "11/0 ", "1/0", "11/00"})
        EXPECT_FALSE(beadSizeNamed(name)) << name;
}

TEST(BeadSize, NamesStandOnceAndDiametersFall) {
    std::set<std::string_view> names;
    const std::span<const BeadSize> sizes = beadSizes();
    for (std::size_t i = 0; i < sizes.size(); ++i) {
        EXPECT_TRUE(names.insert(sizes[i].name).second);
        if (i > 0) {
            EXPECT_LT(sizes[i].diameter, sizes[i - 1].diameter);
        }
    }
}

TEST(BeadSize, IsShorterThanWide) {
    for (const BeadSize& size : beadSizes()) {
        EXPECT_LT(size.pitch, size.diameter) << size.name;
        EXPECT_GT(size.pitch, size.diameter * 0.5) << size.name;
    }
}

// A bead cannot weigh more than a full cylinder of its size in the heaviest glass (lead-alkali, 3.02 g/cm³,
// Britannica), nor less than a third of that in soda-lime glass. This is what catches a slipped decimal.
TEST(BeadSize, WeighsWhatItsSizeAllows) {
    for (const BeadSize& size : beadSizes()) {
        const double d = inMillimetres(size.diameter);
        const double cylinder = std::numbers::pi / 4 * d * d * inMillimetres(size.pitch);
        EXPECT_LT(inGrams(size.mass), cylinder * 3.02e-3) << size.name;
        EXPECT_GT(inGrams(size.mass), cylinder * 2.5e-3 / 3) << size.name;
    }
}

TEST(BeadSize, ElevenIsTheMiddleOfItsRanges) {
    const std::optional<BeadSize> size = beadSizeNamed("11/0");
    ASSERT_TRUE(size);
    EXPECT_DOUBLE_EQ(inMillimetres(size->diameter), 2.0);
    EXPECT_DOUBLE_EQ(inMillimetres(size->pitch), 1.4);
    EXPECT_NEAR(1 / inGrams(size->mass), 105, 1e-9);
}

} // namespace
} // namespace stemwright
