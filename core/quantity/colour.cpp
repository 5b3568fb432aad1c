#include "core/quantity/colour.h"

#include <charconv>
#include <cstdio>

namespace stemwright {

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

} // namespace stemwright
