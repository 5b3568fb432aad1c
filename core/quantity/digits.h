#pragma once

#include <string>

namespace stemwright {

/// The shortest decimal digits that read back as the same number, with a point and without an exponent where a
/// person would write none (from 0.00001 up to 10¹⁶); "0" for −0; "inf", "-inf" and "nan" as they are. For
/// files and for the values of problems; what a window shows is worded there.
std::string shortestDigits(double number);

/// The number with one decimal and a point, never "-0.0", for the values of findings; "?" where it is too long
/// for anything that is measured.
std::string oneDecimal(double number);

} // namespace stemwright
