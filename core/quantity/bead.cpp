#include "core/quantity/bead.h"

#include <algorithm>
#include <array>
#include <numbers>

namespace stemwright {
namespace {

constexpr Length between(double least, double most) {
    return millimetres((least + most) / 2);
}
constexpr Length perInch(double count) {
    return inches(1 / count);
}
constexpr Mass perGram(double count) {
    return grams(1 / count);
}

/// For sizes whose weight nobody states: soda-lime glass (2.5 g/cm³, Britannica) as a ring with its edges
/// rounded off by 0.85 (own assumption). Within about 20 % of the published counts (recomputed).
constexpr Mass ring(double diameter, double hole, double pitch) {
    return grams(0.85 * std::numbers::pi / 4 * (diameter * diameter - hole * hole) * pitch * 2.5e-3);
}

// Common practice, no source that binds anyone. Diameters: three bead sellers' size pages. Counts to the gram:
// a published list (2715, 1050, 347 and 150 in 10 g for 15/0, 11/0, 8/0 and 6/0).
constexpr std::array sizes = {
    // pitch: from memory
    BeadSize{"6/0", between(3.3, 4.0), between(2.4, 2.9), perGram(15.0)},
    BeadSize{"8/0", between(2.5, 3.1), between(1.9, 2.3), perGram(34.7)},
    // pitch and count: from memory
    BeadSize{"10/0", between(2.0, 2.3), between(1.5, 1.7), perGram(85)},
    BeadSize{"11/0", between(1.8, 2.2), between(1.3, 1.5), perGram(105.0)},
    // pitch: one published count with a caliper; mass: recomputed, hole from memory
    BeadSize{"12/0", between(1.7, 1.9), perInch(22), ring(1.8, 0.78, 1.15)},
    BeadSize{"13/0", between(1.5, 1.7), perInch(25), ring(1.6, 0.75, 1.02)},
    // diameter 1.4 published, the rest from memory; mass: recomputed, hole from memory
    BeadSize{"14/0", between(1.4, 1.6), between(0.95, 1.1), ring(1.5, 0.72, 1.025)},
    // pitch: published counts of 23 to 24 an inch
    BeadSize{"15/0", between(1.3, 1.5), perInch(23.5), perGram(271.5)},
};

} // namespace

std::span<const BeadSize> beadSizes() {
    return sizes;
}

std::optional<BeadSize> beadSizeNamed(std::string_view name) {
    const auto found =
        std::find_if(sizes.begin(), sizes.end(), [&](const BeadSize& s) { return s.name == name; });
    return found == sizes.end() ? std::nullopt : std::optional(*found);
}

} // namespace stemwright
