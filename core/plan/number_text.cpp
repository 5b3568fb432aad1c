#include "core/plan/number_text.h"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <numeric>

namespace stemwright {

namespace {

struct Fraction {
    std::string_view sign;
    std::string_view spelled;
};
constexpr std::array<Fraction, 9> fractions{{{"¼", "1/4"},
                                             {"½", "1/2"},
                                             {"¾", "3/4"},
                                             {"⅛", "1/8"},
                                             {"⅜", "3/8"},
                                             {"⅝", "5/8"},
                                             {"⅞", "7/8"},
                                             {"⅓", "1/3"},
                                             {"⅔", "2/3"}}};

/// Signs that mean the same as one of ASCII; spaces of any width are a space.
constexpr std::array<Fraction, 9> plainer{{{"\u00a0", " "},
                                           {"\u202f", " "},
                                           {"\u2009", " "},
                                           {"\t", " "},
                                           {"−", "-"},
                                           {"⁄", "/"},
                                           {"″", "\""},
                                           {"”", "\""},
                                           {"′", "'"}}};

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && text.front() == ' ')
        text.remove_prefix(1);
    while (!text.empty() && text.back() == ' ')
        text.remove_suffix(1);
    return text;
}

/// ASCII where there is a way to say it so: "6½" becomes "6 1/2".
std::string plain(std::string_view text) {
    std::string out;
    const auto replace = [&](const auto& table, bool spaced) {
        for (const Fraction& entry : table)
            if (text.starts_with(entry.sign)) {
                if (spaced)
                    out += ' ';
                out += entry.spelled;
                text.remove_prefix(entry.sign.size());
                return true;
            }
        return false;
    };
    while (!text.empty()) {
        if (replace(fractions, true) || replace(plainer, false))
            continue;
        out += text.front();
        text.remove_prefix(1);
    }
    return std::string(trimmed(out));
}

std::optional<double> fromDigits(std::string_view digits) {
    double value = 0;
    const auto [end, error] =
        std::from_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed);
    if (error != std::errc() || end != digits.data() + digits.size() || !std::isfinite(value))
        return std::nullopt;
    return value;
}

/// Takes the group marks out of a whole number; nothing where they do not set off threes.
std::optional<std::string> ungrouped(std::string_view whole, char group) {
    std::string digits;
    std::size_t run = 0;
    bool grouped = false;
    for (const char c : whole) {
        if (isDigit(c)) {
            digits += c;
            ++run;
        } else if (c == group || c == ' ') {
            if (grouped ? run != 3 : run < 1 || run > 3)
                return std::nullopt;
            grouped = true;
            run = 0;
        } else {
            return std::nullopt;
        }
    }
    if (digits.empty() || (grouped && run != 3))
        return std::nullopt;
    return digits;
}

/// Digits with marks, without sign or fraction.
std::optional<double> parseDecimal(std::string_view text, DecimalMark mark) {
    const char local = mark == DecimalMark::point ? '.' : ',';
    const char other = mark == DecimalMark::point ? ',' : '.';
    const std::size_t localAt = text.find(local);
    const std::size_t otherAt = text.find(other);
    char decimal = local;
    if (otherAt != std::string_view::npos) {
        // The mark that stands last is the decimal one; alone it is so too, unless it sets off threes.
        const bool alone = localAt == std::string_view::npos;
        const bool threes = text[0] != '0' && ungrouped(text, other).has_value();
        if (alone ? !threes : text.rfind(other) > text.rfind(local))
            decimal = other;
    }
    const std::size_t at = text.find(decimal);
    const std::string_view whole = text.substr(0, at);
    const std::string_view rest = at == std::string_view::npos ? std::string_view{} : text.substr(at + 1);
    for (const char c : rest)
        if (!isDigit(c))
            return std::nullopt;
    if (whole.empty() && rest.empty())
        return std::nullopt;
    const auto digits = whole.empty() ? "0" : ungrouped(whole, decimal == local ? other : local);
    if (!digits)
        return std::nullopt;
    return fromDigits(rest.empty() ? *digits : *digits + "." + std::string(rest));
}

std::optional<double> parsePlain(std::string_view text, DecimalMark mark) {
    text = trimmed(text);
    bool negative = false;
    if (!text.empty() && (text.front() == '-' || text.front() == '+')) {
        negative = text.front() == '-';
        text = trimmed(text.substr(1));
    }
    std::optional<double> value;
    if (const std::size_t slash = text.find('/'); slash != std::string_view::npos) {
        const std::string_view before = trimmed(text.substr(0, slash));
        const std::size_t gap = before.rfind(' ');
        const std::string_view whole = gap == std::string_view::npos ? "0" : before.substr(0, gap);
        const std::string_view upper = gap == std::string_view::npos ? before : before.substr(gap + 1);
        const std::string_view lower = trimmed(text.substr(slash + 1));
        for (const std::string_view part : {upper, lower})
            for (const char c : part)
                if (!isDigit(c))
                    return std::nullopt;
        const auto w = parseDecimal(trimmed(whole), mark), u = fromDigits(upper), l = fromDigits(lower);
        if (w && u && l && *l > 0 && whole.find_first_of(".,") == std::string_view::npos)
            value = *w + *u / *l;
    } else if (!text.empty()) {
        value = parseDecimal(text, mark);
    }
    if (value && negative)
        value = -*value;
    return value;
}

struct Unit {
    std::string_view name;
    double mm;
};
constexpr std::array<Unit, 10> units{{{"mm", 1},
                                      {"cm", 10},
                                      {"inches", millimetresPerInch},
                                      {"inch", millimetresPerInch},
                                      {"in", millimetresPerInch},
                                      {"\"", millimetresPerInch},
                                      {"feet", 12 * millimetresPerInch},
                                      {"ft", 12 * millimetresPerInch},
                                      {"'", 12 * millimetresPerInch},
                                      {"m", 1000}}};

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

/// Splits the unit off the end of the text; none where there is none that is known.
const Unit* takeUnit(std::string_view& text) {
    for (const Unit& unit : units) {
        if (text.size() < unit.name.size())
            continue;
        const std::string_view tail = text.substr(text.size() - unit.name.size());
        bool same = true;
        for (std::size_t i = 0; i < tail.size(); ++i)
            same = same && lower(tail[i]) == unit.name[i];
        if (same) {
            text = trimmed(text.substr(0, text.size() - tail.size()));
            return &unit;
        }
    }
    return nullptr;
}

/// The end of the feet in "2 ft 3 in", past their unit; npos where no feet come first.
std::size_t endOfFeet(std::string_view text) {
    for (const std::string_view name :
         {std::string_view("feet"), std::string_view("ft"), std::string_view("'")})
        if (const std::size_t at = text.find(name); at != std::string_view::npos)
            return at + name.size();
    return std::string_view::npos;
}

} // namespace

std::optional<double> parseNumber(std::string_view text, DecimalMark mark) {
    return parsePlain(plain(text), mark);
}

std::optional<Length> parseLength(std::string_view text, LengthUnit unit, DecimalMark mark) {
    const std::string readable = plain(text);
    std::string_view rest = readable;
    if (const std::size_t feet = endOfFeet(rest); feet != std::string_view::npos && feet < rest.size()) {
        const auto upper = parseLength(rest.substr(0, feet), unit, mark);
        const auto lower = parseLength(rest.substr(feet), LengthUnit::inch, mark);
        if (!upper || !lower || inMillimetres(*lower) < 0)
            return std::nullopt;
        return inMillimetres(*upper) < 0 ? *upper - *lower : *upper + *lower;
    }
    const Unit* named = takeUnit(rest);
    const auto value = parsePlain(rest, mark);
    if (!value)
        return std::nullopt;
    const double mm = *value * (named ? named->mm : unit == LengthUnit::inch ? millimetresPerInch : 1.0);
    return std::isfinite(mm) ? std::optional(millimetres(mm)) : std::nullopt;
}

std::string numberText(double value, int decimals, DecimalMark mark) {
    char text[400];
    std::snprintf(text, sizeof text, "%.*f", decimals, value);
    std::string out = text;
    // The C library may write either mark, by the locale it was set to.
    const std::size_t at = out.find_first_of(".,");
    if (at != std::string::npos) {
        out[at] = mark == DecimalMark::point ? '.' : ',';
        while (out.back() == '0')
            out.pop_back();
        if (out.size() == at + 1)
            out.pop_back();
    }
    return out == "-0" ? "0" : out;
}

std::string lengthNumberText(Length length, LengthUnit unit, DecimalMark mark) {
    if (unit == LengthUnit::millimetre)
        return numberText(inMillimetres(length), 3, mark);
    const double value = inInches(length);
    const double parts = std::round(value * 64);
    // Far below what a ruler shows; beyond 2^40 a double still holds every 64th.
    if (std::abs(parts / 64 - value) > 2e-6 || std::abs(parts) > 1e12)
        return numberText(value, 4, mark);
    const auto count = static_cast<long long>(std::abs(parts));
    const long long whole = count / 64, over = count % 64;
    const long long divisor = std::gcd(over, 64LL);
    std::string out = parts < 0 ? "-" : "";
    if (whole > 0 || over == 0)
        out += std::to_string(whole);
    if (over > 0)
        out += (whole > 0 ? " " : "") + std::to_string(over / divisor) + "/" + std::to_string(64 / divisor);
    return out;
}

} // namespace stemwright
