#pragma once

#include "core/plan/plan.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace stemwright {

/// Looks at single values for firstProblem and keeps the first problem it meets. A `place` is that of the file.
class Inspector {
public:
    void fail(ProblemCode code, std::string place, std::vector<std::string> values);
    /// Least and most are both allowed; NaN never is.
    void range(double v, const std::string& place, double least, double most);
    void length(Length v, const std::string& place, double least, double most);
    /// A wire of a leaf, core or stake.
    void wire(Length v, const std::string& place);
    /// That its millimetres are no gauge number in disguise.
    void noGauge(Length v, const std::string& place);
    void text(const std::string& v, const std::string& place, std::size_t most);
    void count(std::size_t v, const std::string& place, std::size_t most);
    void gauge(const std::optional<GaugeNumber>& v, const std::string& place);
    bool failed() const { return problem_.has_value(); }

protected:
    std::optional<Problem> problem_;
};

/// The place of an item in a list: `stems[2]`.
std::string item(std::string_view list, std::size_t i);

/// The entries of the plan's own tables, each for itself.
void inspectOwnTables(Inspector& inspector, const OwnTables& own);
/// What names an entry of them that is not there.
void inspectOwnNames(Inspector& inspector, const Plan& plan);

} // namespace stemwright
