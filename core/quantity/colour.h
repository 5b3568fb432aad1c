#pragma once

#include <cstdint>
#include <optional>
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

} // namespace stemwright
