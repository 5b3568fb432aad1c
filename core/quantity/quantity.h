#pragma once

#include <compare>

namespace stemwright {

/// A physical quantity with its own type, so that a length cannot be added to a mass and a number cannot be
/// taken for either. Stored in the unit that the plan's file uses. Construction is only by a named factory.
template <class Tag> class Quantity {
public:
    constexpr Quantity() = default;
    friend constexpr auto operator<=>(Quantity, Quantity) = default;
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.value_ + b.value_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.value_ - b.value_); }
    friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.value_); }
    friend constexpr Quantity operator*(Quantity a, double k) { return Quantity(a.value_ * k); }
    friend constexpr Quantity operator*(double k, Quantity a) { return a * k; }
    friend constexpr Quantity operator/(Quantity a, double k) { return Quantity(a.value_ / k); }
    /// The ratio of two quantities of one sort is a plain number.
    friend constexpr double operator/(Quantity a, Quantity b) { return a.value_ / b.value_; }
    constexpr Quantity& operator+=(Quantity b) {
        value_ += b.value_;
        return *this;
    }
    constexpr Quantity& operator-=(Quantity b) {
        value_ -= b.value_;
        return *this;
    }

protected:
    explicit constexpr Quantity(double value) : value_(value) {}
    double value_ = 0;
    friend Tag;
};

struct LengthTag;
struct MassTag;
struct AngleTag;
using Length = Quantity<LengthTag>;
using Mass = Quantity<MassTag>;
using Angle = Quantity<AngleTag>;

/// Millimetres inside; one inch is 25.4 mm exactly (international inch, 1959).
struct LengthTag {
    static constexpr Length fromMillimetres(double v) { return Length(v); }
    static constexpr double toMillimetres(Length l) { return l.value_; }
};
/// Grams inside; one avoirdupois ounce is 28.349523125 g exactly.
struct MassTag {
    static constexpr Mass fromGrams(double v) { return Mass(v); }
    static constexpr double toGrams(Mass m) { return m.value_; }
};
/// Degrees inside, since that is what makers and files speak.
struct AngleTag {
    static constexpr Angle fromDegrees(double v) { return Angle(v); }
    static constexpr double toDegrees(Angle a) { return a.value_; }
};

inline constexpr double millimetresPerInch = 25.4;
inline constexpr double gramsPerOunce = 28.349523125;

constexpr Length millimetres(double v) {
    return LengthTag::fromMillimetres(v);
}
constexpr Length inches(double v) {
    return LengthTag::fromMillimetres(v * millimetresPerInch);
}
constexpr double inMillimetres(Length l) {
    return LengthTag::toMillimetres(l);
}
constexpr double inMetres(Length l) {
    return LengthTag::toMillimetres(l) / 1000.0;
}
constexpr double inInches(Length l) {
    return LengthTag::toMillimetres(l) / millimetresPerInch;
}
constexpr Mass grams(double v) {
    return MassTag::fromGrams(v);
}
constexpr double inGrams(Mass m) {
    return MassTag::toGrams(m);
}
constexpr double inOunces(Mass m) {
    return MassTag::toGrams(m) / gramsPerOunce;
}
constexpr Angle degrees(double v) {
    return AngleTag::fromDegrees(v);
}
constexpr double inDegrees(Angle a) {
    return AngleTag::toDegrees(a);
}
constexpr double inRadians(Angle a) {
    return AngleTag::toDegrees(a) * 3.14159265358979323846 / 180.0;
}

/// An angle brought into [0, period); for period 0 or less the angle itself.
Angle wrapped(Angle a, Angle period);
/// How far two directions are apart when directions repeat every `period`: in [0, period / 2].
Angle apart(Angle a, Angle b, Angle period);

} // namespace stemwright
