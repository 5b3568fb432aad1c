#pragma once

// Independent solvers of the sharing-out problem, for the checks and for the benchmarks: a general network
// simplex (LEMON) and a general integer program solver (GLPK). They count the plan for themselves.

#include "core/plan/plan.h"

#include <glpk.h>
#include <lemon/network_simplex.h>
#include <lemon/smart_graph.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <vector>

namespace stemwright::outside {

/// One kind's problem. Every slot gets a leaf.
struct Sharing {
    struct Row {
        int open = 0;           ///< slots to fill
        int leaves = 0;         ///< n
        int pairs = 0;          ///< of two open slots
        std::vector<int> fixed; ///< by mix
        std::vector<int> mates; ///< open slots opposite a fixed leaf, by its mix
    };
    std::vector<Row> rows;
    std::vector<int> stock; ///< by mix
    int total = 0;          ///< M

    std::size_t mixes() const { return stock.size(); }
};

inline Sharing sharingOf(const Plan& plan, const Kind& kind) {
    Sharing sharing;
    for (const StockLine& line : kind.stock)
        sharing.stock.push_back(line.total());
    const auto column = [&](const Slot& slot) {
        std::size_t c = 0;
        while (kind.stock[c].mix != slot.leaf.mix)
            ++c;
        return c;
    };
    for (const Stem& stem : plan.stems) {
        Sharing::Row row;
        row.fixed.assign(sharing.mixes(), 0);
        row.mates.assign(sharing.mixes(), 0);
        for (const Tier& tier : stem.tiers) {
            std::vector<const Slot*> open, kept;
            for (const Slot& slot : tier.slots)
                if (slot.leaf.kind == kind.id)
                    (stem.locked || slot.pinned || tier.progress.bound ? kept : open).push_back(&slot);
            row.open += static_cast<int>(open.size());
            for (const Slot* slot : kept)
                if (slot->filled()) {
                    ++row.fixed[column(*slot)];
                    ++row.leaves;
                }
            if (tier.slots.size() == 2 && leavesPerTier(stem) == 2) {
                row.pairs += open.size() == 2;
                if (open.size() == 1 && kept.size() == 1 && kept[0]->filled())
                    ++row.mates[column(*kept[0])];
            }
        }
        row.leaves += row.open;
        sharing.total += row.leaves;
        sharing.rows.push_back(row);
    }
    return sharing;
}

/// The least of Σ (M·x − n·m)² with `placed` leaves of each mix, by LEMON's network simplex: an arc for every
/// leaf that a cell can take, each dearer than the one before. With `within`, each cell is held to the whole
/// numbers beside its fair share. Nothing where there is no answer.
inline std::optional<std::int64_t> leastByNetworkSimplex(const Sharing& sharing, const std::vector<int>& placed,
                                                         bool within = false) {
    using Graph = lemon::SmartDigraph;
    Graph graph;
    const std::int64_t all = sharing.total;
    std::vector<Graph::Node> rows, columns;
    for (std::size_t r = 0; r < sharing.rows.size(); ++r)
        rows.push_back(graph.addNode());
    for (std::size_t c = 0; c < placed.size(); ++c)
        columns.push_back(graph.addNode());
    struct ArcData {
        Graph::Arc arc;
        std::int64_t lower, upper, cost;
    };
    std::vector<ArcData> arcs;
    std::int64_t base = 0;
    for (std::size_t r = 0; r < rows.size(); ++r)
        for (std::size_t c = 0; c < placed.size(); ++c) {
            const Sharing::Row& row = sharing.rows[r];
            const auto off = [&](int y) {
                return all * (row.fixed[c] + y) - std::int64_t{row.leaves} * placed[c];
            };
            base += off(0) * off(0);
            const std::int64_t low = std::int64_t{row.leaves} * placed[c] / all;
            const std::int64_t high = low + (std::int64_t{row.leaves} * placed[c] % all != 0);
            for (int y = 0; y < row.open; ++y) {
                if (within && row.fixed[c] + y >= high)
                    break;
                arcs.push_back({graph.addArc(rows[r], columns[c]), within && row.fixed[c] + y < low ? 1 : 0, 1,
                                off(y + 1) * off(y + 1) - off(y) * off(y)});
            }
        }
    Graph::ArcMap<std::int64_t> lower(graph), upper(graph), cost(graph);
    for (const ArcData& data : arcs) {
        lower[data.arc] = data.lower;
        upper[data.arc] = data.upper;
        cost[data.arc] = data.cost;
    }
    Graph::NodeMap<std::int64_t> supply(graph);
    std::vector<int> fixed(placed.size(), 0);
    for (std::size_t r = 0; r < rows.size(); ++r) {
        supply[rows[r]] = sharing.rows[r].open;
        for (std::size_t c = 0; c < placed.size(); ++c)
            fixed[c] += sharing.rows[r].fixed[c];
    }
    for (std::size_t c = 0; c < placed.size(); ++c)
        supply[columns[c]] = fixed[c] - placed[c];
    lemon::NetworkSimplex<Graph, std::int64_t, std::int64_t> simplex(graph);
    simplex.lowerMap(lower).upperMap(upper).costMap(cost).supplyMap(supply);
    if (simplex.run() != lemon::NetworkSimplex<Graph, std::int64_t, std::int64_t>::OPTIMAL)
        return std::nullopt;
    return base + simplex.totalCost<std::int64_t>();
}

/// What an integer program found.
struct ProgramAnswer {
    int unmatched = 0;
    double unevenness = 0;
};

/// The sharing-out problem as a mixed integer program. With m given the cost of a cell is the sum of its
/// leaves' costs, each a variable of its own; with m open it is held above the lines through neighbouring
/// values of (M·x − n·m)², which are added as they are needed.
class SharingProgram {
public:
    SharingProgram(const Sharing& sharing, bool matchedPairs) : sharing_(sharing), pairs_(matchedPairs) {
        glp_term_out(GLP_OFF);
        problem_ = glp_create_prob();
        glp_set_obj_dir(problem_, GLP_MIN);
    }
    ~SharingProgram() { glp_delete_prob(problem_); }
    SharingProgram(const SharingProgram&) = delete;
    SharingProgram& operator=(const SharingProgram&) = delete;

    /// Nothing where the solver gives up within the time.
    std::optional<ProgramAnswer> solve(const std::vector<int>* placed, int milliseconds = 60'000) {
        build(placed);
        ProgramAnswer answer;
        if (pairs_) {
            // First the unmatched pairs alone, and then, held to as few, the unevenness.
            for (const auto& [column, weight] : unmatchedCosts_)
                glp_set_obj_coef(problem_, column, weight);
            if (!run(milliseconds))
                return std::nullopt;
            answer.unmatched = static_cast<int>(std::lround(glp_mip_obj_val(problem_)));
            std::vector<std::pair<int, double>> terms;
            for (const auto& [column, weight] : unmatchedCosts_) {
                terms.emplace_back(column, weight);
                glp_set_obj_coef(problem_, column, 0);
            }
            addRow(terms, GLP_UP, 0, answer.unmatched);
        }
        for (const auto& [column, weight] : unevenCosts_)
            glp_set_obj_coef(problem_, column, weight);
        do {
            if (!run(milliseconds))
                return std::nullopt;
        } while (!placed && addLines());
        answer.unevenness = glp_mip_obj_val(problem_) + base_;
        return answer;
    }

private:
    int addColumn(double low, double high, bool whole) {
        const int c = glp_add_cols(problem_, 1);
        glp_set_col_kind(problem_, c, whole ? GLP_IV : GLP_CV);
        if (high < low)
            glp_set_col_bnds(problem_, c, GLP_LO, low, 0);
        else
            glp_set_col_bnds(problem_, c, low == high ? GLP_FX : GLP_DB, low, high);
        return c;
    }
    void addRow(const std::vector<std::pair<int, double>>& terms, int kind, double low, double high) {
        const int r = glp_add_rows(problem_, 1);
        glp_set_row_bnds(problem_, r, kind, low, high);
        std::vector<int> columns{0};
        std::vector<double> weights{0};
        for (const auto& [column, weight] : terms) {
            columns.push_back(column);
            weights.push_back(weight);
        }
        glp_set_mat_row(problem_, r, static_cast<int>(terms.size()), columns.data(), weights.data());
    }

    void build(const std::vector<int>* placed) {
        const std::size_t rows = sharing_.rows.size(), mixes = sharing_.mixes();
        const double all = sharing_.total;
        std::vector<int> fixed(mixes, 0);
        for (const Sharing::Row& row : sharing_.rows)
            for (std::size_t c = 0; c < mixes; ++c)
                fixed[c] += row.fixed[c];
        cells_.assign(rows, std::vector<int>(mixes));
        for (std::size_t r = 0; r < rows; ++r) {
            std::vector<std::pair<int, double>> terms;
            for (std::size_t c = 0; c < mixes; ++c) {
                cells_[r][c] = addColumn(0, sharing_.rows[r].open, true);
                terms.emplace_back(cells_[r][c], 1);
            }
            addRow(terms, GLP_FX, sharing_.rows[r].open, sharing_.rows[r].open);
        }
        for (std::size_t c = 0; c < mixes; ++c) {
            std::vector<std::pair<int, double>> terms;
            for (std::size_t r = 0; r < rows; ++r)
                terms.emplace_back(cells_[r][c], 1);
            if (placed)
                addRow(terms, GLP_FX, (*placed)[c] - fixed[c], (*placed)[c] - fixed[c]);
            else
                addRow(terms, GLP_UP, 0, sharing_.stock[c] - fixed[c]);
        }
        for (std::size_t r = 0; r < rows; ++r)
            for (std::size_t c = 0; c < mixes; ++c)
                if (placed)
                    addLeaves(r, c, (*placed)[c]);
                else
                    costs_.push_back({r, c, addColumn(0, -1, false)});
        if (!placed)
            for (const OpenCost& cost : costs_)
                unevenCosts_.emplace_back(cost.column, 1 / (all * all));
        if (pairs_)
            for (std::size_t r = 0; r < rows; ++r)
                addPairs(r);
    }

    void addLeaves(std::size_t r, std::size_t c, int placed) {
        const Sharing::Row& row = sharing_.rows[r];
        const double all = sharing_.total;
        const auto off = [&](int y) { return row.fixed[c] + y - row.leaves * placed / all; };
        base_ += off(0) * off(0);
        std::vector<std::pair<int, double>> terms{{cells_[r][c], -1}};
        for (int y = 0; y < row.open; ++y) {
            const int leaf = addColumn(0, 1, false);
            terms.emplace_back(leaf, 1);
            unevenCosts_.emplace_back(leaf, off(y + 1) * off(y + 1) - off(y) * off(y));
        }
        addRow(terms, GLP_FX, 0, 0);
    }

    /// Leaves beside fixed ones of their mix, and whole pairs of one mix, come out of the cell's leaves; what a
    /// stem's pairs lack is unmatched.
    void addPairs(std::size_t r) {
        const Sharing::Row& row = sharing_.rows[r];
        std::vector<std::pair<int, double>> matched;
        for (std::size_t c = 0; c < sharing_.mixes(); ++c) {
            const int beside = addColumn(0, row.mates[c], true), pairs = addColumn(0, row.pairs, true);
            addRow({{cells_[r][c], 1}, {beside, -1}, {pairs, -2}}, GLP_LO, 0, 0);
            if (row.mates[c] > 0) {
                const int missed = addColumn(0, row.mates[c], false);
                addRow({{missed, 1}, {beside, 1}}, GLP_FX, row.mates[c], row.mates[c]);
                unmatchedCosts_.emplace_back(missed, 1);
            }
            matched.emplace_back(pairs, 1);
        }
        const int broken = addColumn(0, row.pairs, false);
        matched.emplace_back(broken, 1);
        addRow(matched, GLP_FX, row.pairs, row.pairs);
        unmatchedCosts_.emplace_back(broken, 1);
    }

    bool run(int milliseconds) {
        glp_iocp options;
        glp_init_iocp(&options);
        options.presolve = GLP_ON;
        options.msg_lev = GLP_MSG_OFF;
        options.tm_lim = milliseconds;
        options.tol_obj = 1e-12;
        return glp_intopt(problem_, &options) == 0 && glp_mip_status(problem_) == GLP_OPT;
    }

    /// q ≥ (2a + 1) w − a (a + 1) is q ≥ w² at whole w, and equal at a and a + 1; w = M·x − n·m.
    bool addLines() {
        const double all = sharing_.total;
        bool added = false;
        for (const OpenCost& cost : costs_) {
            const Sharing::Row& row = sharing_.rows[cost.row];
            int fixed = 0;
            double placed = 0;
            for (std::size_t r = 0; r < sharing_.rows.size(); ++r) {
                fixed += sharing_.rows[r].fixed[cost.mix];
                placed += glp_mip_col_val(problem_, cells_[r][cost.mix]);
            }
            const double own = glp_mip_col_val(problem_, cells_[cost.row][cost.mix]);
            const double w = std::round(all * (row.fixed[cost.mix] + own) - row.leaves * (fixed + placed));
            if (glp_mip_col_val(problem_, cost.column) > w * w - 0.5)
                continue;
            added = true;
            const double slope = 2 * w + 1;
            std::vector<std::pair<int, double>> terms{{cost.column, 1}};
            for (std::size_t r = 0; r < sharing_.rows.size(); ++r)
                terms.emplace_back(cells_[r][cost.mix], slope * row.leaves - (r == cost.row ? slope * all : 0));
            addRow(terms, GLP_LO, slope * (all * row.fixed[cost.mix] - row.leaves * fixed) - w * (w + 1), 0);
        }
        return added;
    }

    struct OpenCost {
        std::size_t row, mix;
        int column;
    };
    const Sharing& sharing_;
    bool pairs_;
    glp_prob* problem_;
    std::vector<std::vector<int>> cells_;
    std::vector<OpenCost> costs_;
    std::vector<std::pair<int, double>> unevenCosts_, unmatchedCosts_;
    double base_ = 0;
};

} // namespace stemwright::outside
