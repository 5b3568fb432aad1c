#include "core/quantity/colour_vision.h"

namespace stemwright {
namespace {

using Matrix = double[3][3];

// Machado, Oliveira & Fernandes, IEEE Trans. Vis. Comput. Graph. 15, 2009, severity 1.0; published values.
constexpr Matrix protanMatrix = {
    {0.152286, 1.052583, -0.204868}, {0.114503, 0.786281, 0.099216}, {-0.003882, -0.048116, 1.051998}};
constexpr Matrix deutanMatrix = {
    {0.367322, 0.860646, -0.227968}, {0.280085, 0.672501, 0.047413}, {-0.011820, 0.042940, 0.968881}};
constexpr Matrix tritanMatrix = {
    {1.255528, -0.076749, -0.178779}, {-0.078411, 0.930809, 0.147602}, {0.004733, 0.691367, 0.303900}};

Srgb seenThrough(const Matrix& matrix, Srgb colour) {
    const LinearRgb light = toLinear(colour);
    const auto row = [&](const double(&r)[3]) {
        return r[0] * light.red + r[1] * light.green + r[2] * light.blue;
    };
    return toSrgb(LinearRgb{row(matrix[0]), row(matrix[1]), row(matrix[2])});
}

} // namespace

Srgb seenBy(ColourVision vision, Srgb colour) {
    switch (vision) {
    case ColourVision::full:
        return colour;
    case ColourVision::protan:
        return seenThrough(protanMatrix, colour);
    case ColourVision::deutan:
        return seenThrough(deutanMatrix, colour);
    case ColourVision::tritan:
        return seenThrough(tritanMatrix, colour);
    case ColourVision::grey: {
        const double y = luminance(colour);
        return toSrgb(LinearRgb{y, y, y});
    }
    }
    return colour;
}

} // namespace stemwright
