#include "core/quantity/digits.h"

#include <gtest/gtest.h>

#include <bit>
#include <cstdlib>
#include <random>

namespace stemwright {
namespace {

TEST(Digits, AreAsAPersonWritesThem) {
    EXPECT_EQ(shortestDigits(18), "18");
    EXPECT_EQ(shortestDigits(0.32), "0.32");
    EXPECT_EQ(shortestDigits(-7.5), "-7.5");
    EXPECT_EQ(shortestDigits(100'000), "100000");
    EXPECT_EQ(shortestDigits(1e-5), "0.00001");
    EXPECT_EQ(shortestDigits(-0.0), "0");
    EXPECT_EQ(shortestDigits(1e308), "1e+308");
    EXPECT_EQ(shortestDigits(137.50776405003785), "137.50776405003785");
}

TEST(Digits, ReadBackAsTheSameNumber) {
    std::mt19937_64 random(1);
    for (int i = 0; i < 100'000; ++i) {
        const double number = std::bit_cast<double>(random());
        if (number == number) {
            ASSERT_EQ(std::strtod(shortestDigits(number).c_str(), nullptr), number);
        }
    }
}

TEST(OneDecimal, IsRoundedAndNeverMinusNothing) {
    EXPECT_EQ(oneDecimal(2.25), "2.3");
    EXPECT_EQ(oneDecimal(-0.04), "0.0");
    EXPECT_EQ(oneDecimal(1e6), "1000000.0");
    EXPECT_EQ(oneDecimal(1e300), "?");
}

} // namespace
} // namespace stemwright
