#include "core/plan/number_text.h"

#include <gtest/gtest.h>

#include <random>

namespace stemwright {
namespace {

constexpr auto point = DecimalMark::point;
constexpr auto comma = DecimalMark::comma;

TEST(NumberText, ReadsEitherMark) {
    EXPECT_EQ(parseNumber("6.5", point), 6.5);
    EXPECT_EQ(parseNumber("6,5", point), 6.5);
    EXPECT_EQ(parseNumber("6.5", comma), 6.5);
    EXPECT_EQ(parseNumber(" 6,5 ", comma), 6.5);
    EXPECT_EQ(parseNumber(".5", point), 0.5);
    EXPECT_EQ(parseNumber("5.", point), 5.0);
    EXPECT_EQ(parseNumber("-3", point), -3.0);
    EXPECT_EQ(parseNumber("−3", point), -3.0);
}

TEST(NumberText, GroupsAreReadAsTheLanguageHasThem) {
    EXPECT_EQ(parseNumber("1,250", point), 1250.0);
    EXPECT_EQ(parseNumber("1,250", comma), 1.25);
    EXPECT_EQ(parseNumber("1.250", point), 1.25);
    EXPECT_EQ(parseNumber("1.250", comma), 1250.0);
    EXPECT_EQ(parseNumber("0,125", point), 0.125) << "nobody writes 125 with a nought before the group";
    EXPECT_EQ(parseNumber("1.234,5", point), 1234.5) << "the last mark is the decimal one";
    EXPECT_EQ(parseNumber("1,234.5", comma), 1234.5);
    EXPECT_EQ(parseNumber("1 250", point), 1250.0);
    EXPECT_EQ(parseNumber("12\u202f500,25", comma), 12500.25);
    EXPECT_EQ(parseNumber("1,250,000", point), 1250000.0);
}

TEST(NumberText, ReadsFractions) {
    EXPECT_EQ(parseNumber("6 1/4", point), 6.25);
    EXPECT_EQ(parseNumber("3/8", point), 0.375);
    EXPECT_EQ(parseNumber("6½", point), 6.5);
    EXPECT_EQ(parseNumber("-1 1/2", point), -1.5);
}

TEST(NumberText, RefusesWhatIsNoNumber) {
    for (const char* text : {"",       " ",     "-",     ".",   ",",    "abc", "1e5",     "1e308",   "nan",
                             "NaN",    "inf",   "0x10",  "1/0", "1/",   "/2",  "1 1.5/2", "1.5 1/2", "12 34",
                             "1,25,0", "1.2.3", "1,2,3", "--1", "5 mm", "½½",  "1 2 1/2"})
        EXPECT_FALSE(parseNumber(text, point)) << text;
    EXPECT_FALSE(parseNumber(std::string(500, '9'), point)) << "no finite number";
}

TEST(NumberText, LengthsCarryTheirUnit) {
    const auto mm = [](const char* text, LengthUnit unit = LengthUnit::millimetre) {
        const auto length = parseLength(text, unit, point);
        return length ? inMillimetres(*length) : -999.0;
    };
    EXPECT_DOUBLE_EQ(mm("18"), 18);
    EXPECT_DOUBLE_EQ(mm("6,5 mm"), 6.5);
    EXPECT_DOUBLE_EQ(mm("6.5MM"), 6.5);
    EXPECT_DOUBLE_EQ(mm("1.2 cm"), 12);
    EXPECT_DOUBLE_EQ(mm("1,2m"), 1200);
    // One inch is 25.4 mm exactly (international inch, 1959).
    EXPECT_DOUBLE_EQ(mm("6 1/4 in"), 158.75);
    EXPECT_DOUBLE_EQ(mm("6 1/4\""), 158.75);
    EXPECT_DOUBLE_EQ(mm("1/2 inch"), 12.7);
    EXPECT_DOUBLE_EQ(mm("3", LengthUnit::inch), 76.2);
    EXPECT_DOUBLE_EQ(mm("3 mm", LengthUnit::inch), 3);
    EXPECT_DOUBLE_EQ(mm("2 ft"), 609.6);
    EXPECT_DOUBLE_EQ(mm("2 ft 3 1/2 in"), 698.5);
    EXPECT_DOUBLE_EQ(mm("2' 3½″"), 698.5);
    EXPECT_DOUBLE_EQ(mm("-2 mm"), -2) << "what cannot be is for the range to refuse, with its sentence";
    for (const char* text :
         {"", "mm", "in", "5 furlongs", "5 mm 3", "5 mm mm", "3 in 2 ft", "five", "5 ft -3 in"})
        EXPECT_EQ(mm(text), -999) << text;
}

TEST(NumberText, WritesNoIdleDecimals) {
    EXPECT_EQ(numberText(6.5, 3, point), "6.5");
    EXPECT_EQ(numberText(6.5, 3, comma), "6,5");
    EXPECT_EQ(numberText(6, 3, point), "6");
    EXPECT_EQ(numberText(100, 0, point), "100");
    EXPECT_EQ(numberText(-0.0001, 3, point), "0");
    EXPECT_EQ(lengthNumberText(millimetres(158.75), LengthUnit::inch, point), "6 1/4");
    EXPECT_EQ(lengthNumberText(millimetres(12.7), LengthUnit::inch, point), "1/2");
    EXPECT_EQ(lengthNumberText(millimetres(25.4), LengthUnit::inch, point), "1");
    EXPECT_EQ(lengthNumberText(millimetres(0), LengthUnit::inch, point), "0");
    EXPECT_EQ(lengthNumberText(millimetres(18), LengthUnit::inch, point), "0.7087");
    EXPECT_EQ(lengthNumberText(millimetres(18.25), LengthUnit::millimetre, comma), "18,25");
}

TEST(NumberText, WhatIsWrittenIsReadBack) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> size(0, 10'000);
    for (int i = 0; i < 10'000; ++i) {
        const Length length = millimetres(size(random));
        for (const auto mark : {point, comma})
            for (const auto unit : {LengthUnit::millimetre, LengthUnit::inch}) {
                const std::string text = lengthNumberText(length, unit, mark);
                const auto back = parseLength(text, unit, mark);
                ASSERT_TRUE(back) << text;
                // Three decimals of a millimetre, four of an inch.
                ASSERT_NEAR(inMillimetres(*back), inMillimetres(length),
                            unit == LengthUnit::inch ? 0.00128 : 0.00051)
                    << text;
            }
    }
}

} // namespace
} // namespace stemwright
