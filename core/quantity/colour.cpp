#include "core/quantity/colour.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <numbers>

namespace stemwright {
namespace {

// Rows of the matrix from linear sRGB to XYZ: IEC 61966-2-1, to its four places (from memory).
constexpr double toX[3] = {0.4124, 0.3576, 0.1805};
constexpr double toY[3] = {0.2126, 0.7152, 0.0722};
constexpr double toZ[3] = {0.0193, 0.1192, 0.9505};

constexpr double whiteX = toX[0] + toX[1] + toX[2];
constexpr double whiteY = toY[0] + toY[1] + toY[2];
constexpr double whiteZ = toZ[0] + toZ[1] + toZ[2];

constexpr double times(const double (&row)[3], const LinearRgb& light) {
    return row[0] * light.red + row[1] * light.green + row[2] * light.blue;
}

double decoded(int channel) {
    const double c = channel / 255.0;
    return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4);
}

std::uint8_t encoded(double light) {
    if (!(light > 0))
        return 0;
    const double c = light <= 0.0031308 ? light * 12.92 : 1.055 * std::pow(light, 1 / 2.4) - 0.055;
    return static_cast<std::uint8_t>(std::lround(std::min(c, 1.0) * 255));
}

// ISO/CIE 11664-4: the cube root, with a straight line near black.
constexpr double knee = 6.0 / 29;

double lightness(double t) {
    return t > knee * knee * knee ? std::cbrt(t) : t / (3 * knee * knee) + 4.0 / 29;
}

double lightnessInverse(double f) {
    return f > knee ? f * f * f : 3 * knee * knee * (f - 4.0 / 29);
}

constexpr double radians(double deg) {
    return deg * std::numbers::pi / 180;
}

/// Hue angle in degrees in [0, 360), 0 for a grey.
double hue(double a, double b) {
    if (a == 0 && b == 0)
        return 0;
    const double h = std::atan2(b, a) * 180 / std::numbers::pi;
    // A tiny negative angle rounds up to the full turn.
    return h < 0 ? (h + 360 < 360 ? h + 360 : 0) : h;
}

/// Whether the shorter way between two hues leads through 0°. At exactly opposite hues the formula takes the
/// way that does not, but the two angles carry rounding that can say either; there the cross product of the
/// given coordinates decides, which comes out as exactly equal products for exactly opposite colours. (The
/// factor that CIEDE2000 puts on both a coordinates does not change the sign.)
bool shorterThroughZero(double h1, double h2, const Lab& one, const Lab& other) {
    const double apart = std::abs(h2 - h1);
    if (std::abs(apart - 180) > 1e-6)
        return apart > 180;
    const double forward = one.a * other.b;
    const double backward = other.a * one.b;
    return h2 >= h1 ? forward < backward : forward > backward;
}

} // namespace

std::optional<Srgb> parseSrgb(std::string_view text) {
    if (text.size() != 7 || text[0] != '#')
        return std::nullopt;
    std::uint8_t channel[3] = {};
    for (std::size_t i = 0; i < 3; ++i) {
        const char* begin = text.data() + 1 + 2 * i;
        const auto [end, error] = std::from_chars(begin, begin + 2, channel[i], 16);
        if (error != std::errc() || end != begin + 2)
            return std::nullopt;
    }
    return Srgb{channel[0], channel[1], channel[2]};
}

std::string toText(Srgb colour) {
    char text[8];
    std::snprintf(text, sizeof text, "#%02x%02x%02x", colour.red, colour.green, colour.blue);
    return text;
}

LinearRgb toLinear(Srgb colour) {
    // Painting and figures ask for the same 256 values all the time, and a power is slow.
    static const std::array<double, 256> light = [] {
        std::array<double, 256> values{};
        for (std::size_t i = 0; i < values.size(); ++i)
            values[i] = decoded(static_cast<int>(i));
        return values;
    }();
    return {light[colour.red], light[colour.green], light[colour.blue]};
}

Srgb toSrgb(LinearRgb light) {
    return {encoded(light.red), encoded(light.green), encoded(light.blue)};
}

Lab toLab(Srgb colour) {
    const LinearRgb light = toLinear(colour);
    const double x = lightness(times(toX, light) / whiteX);
    const double y = lightness(times(toY, light) / whiteY);
    const double z = lightness(times(toZ, light) / whiteZ);
    return {116 * y - 16, 500 * (x - y), 200 * (y - z)};
}

Srgb toSrgb(const Lab& colour) {
    const double fy = (colour.l + 16) / 116;
    const double x = whiteX * lightnessInverse(fy + colour.a / 500);
    const double y = whiteY * lightnessInverse(fy);
    const double z = whiteZ * lightnessInverse(fy - colour.b / 200);
    // Cramer's rule on the one matrix above, so that there is no second matrix to keep in step with it.
    const auto determinant = [](const double(&p)[3], const double(&q)[3], const double(&r)[3]) {
        return p[0] * (q[1] * r[2] - q[2] * r[1]) - p[1] * (q[0] * r[2] - q[2] * r[0]) +
               p[2] * (q[0] * r[1] - q[1] * r[0]);
    };
    const double all = determinant(toX, toY, toZ);
    const auto solved = [&](std::size_t column) {
        double p[3] = {toX[0], toX[1], toX[2]};
        double q[3] = {toY[0], toY[1], toY[2]};
        double r[3] = {toZ[0], toZ[1], toZ[2]};
        p[column] = x;
        q[column] = y;
        r[column] = z;
        return determinant(p, q, r) / all;
    };
    return toSrgb(LinearRgb{solved(0), solved(1), solved(2)});
}

double difference(const Lab& one, const Lab& other) {
    constexpr double seventhPowerOf25 = 6103515625.0;
    const auto seventhPower = [](double c) { return c * c * c * c * c * c * c; };

    const double meanChroma = (std::hypot(one.a, one.b) + std::hypot(other.a, other.b)) / 2;
    const double pale = seventhPower(meanChroma);
    const double g = 0.5 * (1 - std::sqrt(pale / (pale + seventhPowerOf25)));
    const double a1 = (1 + g) * one.a;
    const double a2 = (1 + g) * other.a;
    const double c1 = std::hypot(a1, one.b);
    const double c2 = std::hypot(a2, other.b);
    const double h1 = hue(a1, one.b);
    const double h2 = hue(a2, other.b);

    double turn = 0;
    double meanHue = h1 + h2; // where one of the two is grey, the hue of the other
    if (c1 * c2 != 0) {
        turn = h2 - h1;
        meanHue = (h1 + h2) / 2;
        if (shorterThroughZero(h1, h2, one, other)) {
            turn += turn > 0 ? -360 : 360;
            meanHue += meanHue < 180 ? 180 : -180;
        }
    }
    const double deltaL = other.l - one.l;
    const double deltaC = c2 - c1;
    const double deltaH = 2 * std::sqrt(c1 * c2) * std::sin(radians(turn / 2));

    const double meanL = (one.l + other.l) / 2;
    const double meanC = (c1 + c2) / 2;
    const double t = 1 - 0.17 * std::cos(radians(meanHue - 30)) + 0.24 * std::cos(radians(2 * meanHue)) +
                     0.32 * std::cos(radians(3 * meanHue + 6)) - 0.20 * std::cos(radians(4 * meanHue - 63));
    const double fromMiddle = (meanL - 50) * (meanL - 50);
    const double sl = 1 + 0.015 * fromMiddle / std::sqrt(20 + fromMiddle);
    const double sc = 1 + 0.045 * meanC;
    const double sh = 1 + 0.015 * meanC * t;
    const double fromBlue = (meanHue - 275) / 25;
    const double strong = seventhPower(meanC);
    const double rt = -std::sin(radians(60 * std::exp(-fromBlue * fromBlue))) * 2 *
                      std::sqrt(strong / (strong + seventhPowerOf25));

    const double l = deltaL / sl;
    const double c = deltaC / sc;
    const double h = deltaH / sh;
    // The rotation term can leave a rounding error below 0 for two all but equal colours.
    return std::sqrt(std::max(0.0, l * l + c * c + h * h + rt * c * h));
}

double luminance(Srgb colour) {
    return times(toY, toLinear(colour));
}

double contrast(Srgb one, Srgb other) {
    const auto [dark, bright] = std::minmax({luminance(one), luminance(other)});
    return (bright + 0.05) / (dark + 0.05);
}

std::optional<Srgb> mixed(std::span<const WeightedSrgb> parts) {
    LinearRgb sum;
    double weight = 0;
    for (const WeightedSrgb& part : parts) {
        if (!(part.weight > 0))
            continue;
        const LinearRgb light = toLinear(part.colour);
        sum.red += part.weight * light.red;
        sum.green += part.weight * light.green;
        sum.blue += part.weight * light.blue;
        weight += part.weight;
    }
    if (!(weight > 0))
        return std::nullopt;
    return toSrgb(LinearRgb{sum.red / weight, sum.green / weight, sum.blue / weight});
}

} // namespace stemwright
