#include "core/quantity/digits.h"

#include <charconv>
#include <cmath>

namespace stemwright {

std::string shortestDigits(double number) {
    if (number == 0)
        return "0";
    char digits[64];
    const double size = std::fabs(number);
    // Without a form asked for, 100000 would come out as 1e+05.
    const auto [end, error] =
        size >= 1e-5 && size < 1e16
            ? std::to_chars(digits, digits + sizeof digits, number, std::chars_format::fixed)
            : std::to_chars(digits, digits + sizeof digits, number);
    return error == std::errc() ? std::string(digits, end) : std::string("?");
}

std::string oneDecimal(double number) {
    char digits[64];
    const auto [end, error] = std::to_chars(digits, digits + sizeof digits, std::round(number * 10) / 10 + 0.0,
                                            std::chars_format::fixed, 1);
    return error == std::errc() ? std::string(digits, end) : std::string("?");
}

} // namespace stemwright
