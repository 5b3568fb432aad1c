#include "core/quantity/circle_packing.h"
#include "core/quantity/gauge.h"
#include "core/quantity/helix.h"
#include "support/csv.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <numbers>
#include <optional>
#include <string>
#include <vector>

namespace stemwright {
namespace {

constexpr double pi = std::numbers::pi;

/// The millimetres that GNU units finds for each expression; empty where the program is missing.
std::vector<double> unitsInMillimetres(const std::vector<std::string>& expressions) {
    const std::string file = testing::TempDir() + "stemwright_gauges.txt";
    {
        std::ofstream questions(file);
        for (const std::string& expression : expressions)
            questions << expression << "\nmm\n";
    }
    std::vector<double> answers;
    const std::string command = "LC_ALL=C units -q -t -d 15 <'" + file + "' 2>/dev/null";
    if (std::FILE* const pipe = popen(command.c_str(), "r")) {
        double value = 0;
        while (std::fscanf(pipe, "%lf", &value) == 1)
            answers.push_back(value);
        pclose(pipe);
    }
    std::remove(file.c_str());
    return answers;
}

// GNU units has ASTM B258 as a formula and the imperial standard wire gauge as a table of its own.
TEST(GnuUnits, HasTheSameGauges) {
    if (std::system("units --version >/dev/null 2>&1") != 0)
        GTEST_SKIP() << "THE PROGRAM units IS MISSING: gauges are not compared. Install GNU units.";
    const auto compare = [](GaugeSystem system, const std::string& function) {
        std::vector<std::string> expressions;
        for (int number = thickestGauge; number <= thinnestGauge; ++number)
            expressions.push_back(function + "(" + std::to_string(number) + ")");
        const std::vector<double> theirs = unitsInMillimetres(expressions);
        ASSERT_EQ(theirs.size(), expressions.size());
        for (int number = thickestGauge; number <= thinnestGauge; ++number) {
            const double mm = theirs[static_cast<std::size_t>(number - thickestGauge)];
            EXPECT_NEAR(inMillimetres(*diameterOf({system, number})) / mm, 1, 1e-9) << function << number;
        }
    };
    compare(GaugeSystem::awg, "awg");
    compare(GaugeSystem::swg, "brwiregauge");
}

// ASTM B258: 36 is 0.005 in exactly, and every 39 numbers make a factor of 92. Six numbers halve a wire,
// nearly.
TEST(PublishedGauges, AmericanOnesAreAGeometricSeries) {
    const double step = std::pow(92.0, 1 / 39.0);
    for (int number = thickestGauge; number < thinnestGauge; ++number) {
        const Length thick = *diameterOf({GaugeSystem::awg, number});
        EXPECT_NEAR(thick / *diameterOf({GaugeSystem::awg, number + 1}), step, 1e-12);
    }
    EXPECT_NEAR(inInches(*diameterOf({GaugeSystem::awg, 34})) / (step * step), 0.005, 1e-12);
}

// tests/data names the tables.
TEST(PublishedGauges, SteelOnesAreInTheirTable) {
    const auto rows = test::readNumbers("steel_gauges.csv");
    ASSERT_EQ(rows.size(), 25U);
    for (const auto& row : rows) {
        ASSERT_EQ(row.size(), 2U);
        const std::optional<Length> ours = diameterOf({GaugeSystem::steel, static_cast<int>(row[0])});
        ASSERT_TRUE(ours) << row[0];
        EXPECT_NEAR(inInches(*ours), row[1], 1e-12) << row[0];
    }
}

// tests/data names the tables.
TEST(PublishedPackings, AreInTheirTable) {
    const auto rows = test::readNumbers("circle_packing.csv");
    ASSERT_EQ(rows.size(), static_cast<std::size_t>(largestPackedCount));
    for (const auto& row : rows) {
        ASSERT_EQ(row.size(), 2U);
        EXPECT_NEAR(packingRatio(static_cast<int>(row[0])), row[1], 1e-12) << row[0];
    }
}

// Closed forms as published with the packings: textbook for 1 to 4 and 7; Graham 1968 (5, 6); Pirl 1969 (8, 9);
// Melissen 1994 (11); Fodor 2003 (13) and 1999 (19); all proved smallest.
TEST(PublishedPackings, ProvedOnesHaveTheirClosedForms) {
    const auto ratio = [](int n) { return packingRatio(n); };
    constexpr double last = 6e-13; // the table's last place
    EXPECT_NEAR(ratio(3), 1 + 2 / std::sqrt(3.0), last);
    EXPECT_NEAR(ratio(4), 1 + std::sqrt(2.0), last);
    EXPECT_NEAR(ratio(5), 1 + std::sqrt(2 * (1 + 1 / std::sqrt(5.0))), last);
    EXPECT_NEAR(ratio(6), 3, last);
    EXPECT_NEAR(ratio(7), 3, last);
    EXPECT_NEAR(ratio(8), 1 + 1 / std::sin(pi / 7), last);
    EXPECT_NEAR(ratio(9), 1 + std::sqrt(2 * (2 + std::sqrt(2.0))), last);
    EXPECT_NEAR(ratio(11), 1 + 1 / std::sin(pi / 9), last);
    EXPECT_NEAR(ratio(13), 2 + std::sqrt(5.0), last);
    EXPECT_NEAR(ratio(18), ratio(19), last);
    EXPECT_NEAR(ratio(19), 1 + std::sqrt(2.0) + std::sqrt(6.0), last);
}

/// Lubachevsky & Graham's curved hexagonal packing of 3k(k + 1) + 1 circles: each of six curved rows turns by
/// 60°/k from circle to circle, so that the outermost centre lies at 1 / sin(30°/k) (derived from their
/// construction).
double curvedHexagonal(int k) {
    return 1 + 1 / std::sin(pi / (6 * k));
}

TEST(PublishedPackings, HexagonalOnesAreCurved) {
    for (int k = 1; k <= 4; ++k)
        EXPECT_NEAR(packingRatio(3 * k * (k + 1) + 1), curvedHexagonal(k), 6e-13) << k;
    // 91 lies beyond the table: the estimate must stay under a packing that exists, and near it.
    EXPECT_LT(packingRatio(91), curvedHexagonal(5));
    EXPECT_GT(packingRatio(91), curvedHexagonal(5) * 0.99);
}

TEST(PublishedPackings, NeverBeatTheBounds) {
    for (int n = 1; n <= 2000; ++n) {
        // Equal circles cover no more than π/√12 of the plane (Thue 1910, Fejes Tóth 1940), and two or more no
        // more of a circle around them; one alone fills it.
        if (n > 1) {
            EXPECT_GE(packingRatio(n), std::sqrt(n * std::sqrt(12.0) / pi)) << n;
        }
        // Sharper, by Groemer 1960 and Oler 1961 (from memory): points a unit apart in a disc of radius r
        // number at most 2/√3·πr² + πr + 1.
        const double r = (packingRatio(n) - 1) / 2;
        EXPECT_LE(n, 2 / std::sqrt(3.0) * pi * r * r + pi * r + 1 + 1e-9) << n;
    }
}

// Textbook: radius 1.5, pitch 0.5, ten turns (recomputed).
TEST(PublishedHelix, OfTenTurns) {
    EXPECT_NEAR(inMillimetres(helixLength(10, millimetres(1.5), millimetres(0.5))), 94.38032, 5e-6);
}

// The length of the curve itself, added up from short chords: independent of the formula.
TEST(PublishedHelix, IsTheLengthOfItsCurve) {
    const Layer layer{millimetres(2.4), millimetres(0.6), millimetres(0.8), 0.25};
    const Winding winding = wound(layer, millimetres(9));
    constexpr int chords = 200'000;
    double sum = 0;
    for (int i = 0; i < chords; ++i) {
        const auto at = [&](int k) {
            const double t = 2 * pi * winding.turns * k / chords;
            return std::array{1.5 * std::cos(t), 1.5 * std::sin(t), 9.0 * k / chords};
        };
        const auto p = at(i);
        const auto q = at(i + 1);
        sum += std::hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]);
    }
    EXPECT_DOUBLE_EQ(winding.turns, 15);
    EXPECT_NEAR(inMillimetres(winding.length), sum, 1e-5);
}

} // namespace
} // namespace stemwright
