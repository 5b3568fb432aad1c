#include "core/quantity/metal.h"

#include <algorithm>
#include <numbers>

namespace stemwright {

const MetalFigures& figuresOf(Metal metal) {
    // Annealed. Modulus and yield (oxygen-free 48, tough pitch 54): Smithells Metals Reference Book, 8th ed.,
    // table 22.7; density: copper trade association monograph 144/8. Published.
    static constexpr MetalFigures softCopper{8940, 117'000, 48, 54};
    // Drawn by 60 %: copper trade association monograph 144/8. Published.
    static constexpr MetalFigures hardCopper{8940, 119'000, 323, 323};
    // CuZn37, annealed and hard. Yield: CDA Publication 120, table 16, published; density and modulus from
    // memory.
    static constexpr MetalFigures softBrass{8440, 110'000, 125, 125};
    static constexpr MetalFigures hardBrass{8440, 110'000, 550, 550};
    // As rolled: Halliday, Resnick & Walker, table 13-1; Hibbeler, Mechanics of Materials, appendix. Published.
    static constexpr MetalFigures mildSteel{7850, 200'000, 250, 250};
    // Annealed binding and stem wire has no standard yield. Density and modulus as above; 150 to 300 is an
    // estimate from memory. (One supplier's sheet for bright annealed wire says 250 to 380.)
    static constexpr MetalFigures softSteel{7850, 200'000, 150, 300};
    // 1100-O: Aluminum Association, typical values. Published.
    static constexpr MetalFigures aluminium{2710, 68'900, 34, 34};

    switch (metal) {
    case Metal::softCopper:
        return softCopper;
    case Metal::hardCopper:
        return hardCopper;
    case Metal::softBrass:
        return softBrass;
    case Metal::hardBrass:
        return hardBrass;
    case Metal::mildSteel:
        return mildSteel;
    case Metal::softSteel:
        break;
    case Metal::aluminium:
        return aluminium;
    }
    return softSteel;
}

Mass massOfWire(const MetalFigures& metal, Length diameter, Length length) {
    const double d = std::max(0.0, inMillimetres(diameter));
    const double l = std::max(0.0, inMillimetres(length));
    constexpr double gramsPerCubicMillimetre = 1e-6; // of a density of 1 kg/m³
    return grams(metal.density * gramsPerCubicMillimetre * std::numbers::pi / 4 * d * d * l);
}

Mass massOfWire(Metal metal, Length diameter, Length length) {
    return massOfWire(figuresOf(metal), diameter, length);
}

} // namespace stemwright
