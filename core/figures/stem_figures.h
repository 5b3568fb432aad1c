#pragma once

#include "core/figures/arrangement.h"
#include "core/figures/figures.h"
#include "core/figures/plan_tables.h"
#include "core/figures/wrap.h"

#include <vector>

namespace stemwright {

/// Works out what a stem's figures owe to the stem alone: all of StemFigures but fair share, unevenness and
/// drift, which compare it with the board. Keeps its buffers from stem to stem.
class StemReckoner {
public:
    /// `plan` lends its binding and pot; its stems are not looked at.
    StemFigures operator()(const Stem& stem, const Plan& plan, const PlanTables& tables);

private:
    void countLeaves(const Stem& stem, const PlanTables& tables, StemFigures& out);
    void measure(const Stem& stem, const Plan& plan, const PlanTables& tables, StemFigures& out);

    struct Row {
        int tier = 0;
        int line = 0;
    };
    std::vector<std::vector<Row>> rows_; ///< the stem's leaves by kind, tip to base
    std::vector<Length> reach_;
    std::vector<Stretch> stretches_;
    InversionCounter order_;
};

} // namespace stemwright
