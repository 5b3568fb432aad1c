#include "core/plan/inspector.h"

#include "core/plan/limits.h"
#include "core/quantity/digits.h"

#include <cmath>
#include <utility>

namespace stemwright {

void Inspector::fail(ProblemCode code, std::string place, std::vector<std::string> values) {
    if (!problem_)
        problem_ = Problem{code, std::move(place), std::move(values)};
}

void Inspector::range(double v, const std::string& place, double least, double most) {
    if (!(v >= least && v <= most))
        fail(ProblemCode::outOfRange, place, {shortestDigits(v), shortestDigits(least), shortestDigits(most)});
}

void Inspector::length(Length v, const std::string& place, double least, double most) {
    range(inMillimetres(v), place, least, most);
}

void Inspector::noGauge(Length v, const std::string& place) {
    // Nobody winds wire as thick as a finger: whole numbers up there are gauge numbers.
    const double mm = inMillimetres(v);
    if (mm >= thickestGauge && mm <= thinnestGauge && mm == std::floor(mm))
        fail(ProblemCode::gaugeForMillimetres, place, {shortestDigits(mm)});
}

void Inspector::wire(Length v, const std::string& place) {
    noGauge(v, place);
    range(inMillimetres(v), place, limits::thinnestWire, limits::thickestWire);
}

void Inspector::text(const std::string& v, const std::string& place, std::size_t most) {
    if (v.size() > most)
        fail(ProblemCode::tooMany, place, {std::to_string(v.size()), std::to_string(most)});
}

void Inspector::count(std::size_t v, const std::string& place, std::size_t most) {
    if (v > most)
        fail(ProblemCode::tooMany, place, {std::to_string(v), std::to_string(most)});
}

void Inspector::gauge(const std::optional<GaugeNumber>& v, const std::string& place) {
    if (v)
        range(v->number, place + ".number", 0, limits::gaugeNumber);
}

std::string item(std::string_view list, std::size_t i) {
    return std::string(list) + "[" + std::to_string(i) + "]";
}

} // namespace stemwright
