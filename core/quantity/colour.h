#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace stemwright {

/// A colour of the standard RGB space (IEC 61966-2-1), eight bits a channel, as files and screens write it.
struct Srgb {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;

    friend bool operator==(const Srgb&, const Srgb&) = default;
};

/// `#rrggbb`, letters of either case; anything else gives nothing.
std::optional<Srgb> parseSrgb(std::string_view text);
/// `#rrggbb` in small letters.
std::string toText(Srgb colour);

/// The same primaries in proportion to light, 0 none and 1 that of white: what may be added and averaged.
/// Values outside [0, 1] are colours that no screen shows.
struct LinearRgb {
    double red = 0;
    double green = 0;
    double blue = 0;

    friend bool operator==(const LinearRgb&, const LinearRgb&) = default;
};

/// The transfer curve of IEC 61966-2-1 (from memory): c / 12.92 up to 0.04045, else ((c + 0.055) / 1.055)^2.4.
LinearRgb toLinear(Srgb colour);
/// The way back, each channel clamped to [0, 1] and rounded to the nearest of 256; a NaN becomes 0.
/// toSrgb(toLinear(c)) == c for every colour.
Srgb toSrgb(LinearRgb light);

/// CIE 1976 L*a*b* (ISO/CIE 11664-4) under D65: lightness 0–100, then red against green and yellow against
/// blue.
struct Lab {
    double l = 0;
    double a = 0;
    double b = 0;

    friend bool operator==(const Lab&, const Lab&) = default;
};

/// By the rounded matrix of IEC 61966-2-1 (from memory) and, as white, the sums of its rows, so that every grey
/// has a = b = 0. Other libraries carry the matrix to more places and differ by up to 0.02 (recomputed).
Lab toLab(Srgb colour);
/// The way back, each channel clamped where the screen cannot show the colour. toSrgb(toLab(c)) == c for every
/// c.
Srgb toSrgb(const Lab& colour);

/// CIEDE2000 with all weights 1 (ISO/CIE 11664-6; formula as in Sharma, Wu & Dalal, Color Res. Appl. 30, 2005):
/// how different two colours look. 0 for the same colour; symmetric to the last bits; about 1 can just be seen
/// side by side (common practice, no source). It is no metric: the triangle inequality can fail.
double difference(const Lab& one, const Lab& other);

/// Relative luminance of WCAG 2.2 (from memory): 0 for black, 1 for white.
double luminance(Srgb colour);
/// Contrast ratio of WCAG 2.2 (from memory): 1 for equal colours to 21 for black and white, in either order.
/// Text asks 4.5, large text and graphics 3.
double contrast(Srgb one, Srgb other);

/// One colour's part in a mixture.
struct WeightedSrgb {
    Srgb colour;
    double weight = 1;
};

/// What a leaf looks like from afar: the mean in linear light, by weight. Weights are proportions and need not
/// add up to 1; one that is not above 0 counts nothing. No weight at all gives nothing.
std::optional<Srgb> mixed(std::span<const WeightedSrgb> parts);

} // namespace stemwright
