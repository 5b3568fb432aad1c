#include "core/suggest/least_assignment.h"

#include <limits>
#include <vector>

namespace stemwright {

double leastAssignment(const Grid<double>& costs) {
    const int n = costs.rows();
    const auto at = [](int i) { return static_cast<std::size_t>(i); };
    constexpr double endless = std::numeric_limits<double>::max();
    // Rows and columns from 1; column 0 stands for the row that is being placed.
    std::vector<double> rowPrice(at(n + 1), 0), columnPrice(at(n + 1), 0), least;
    std::vector<int> rowOf(at(n + 1), 0), way(at(n + 1), 0);
    std::vector<char> done;
    for (int row = 1; row <= n; ++row) {
        rowOf[0] = row;
        int column = 0;
        least.assign(at(n + 1), endless);
        done.assign(at(n + 1), 0);
        do {
            done[at(column)] = 1;
            const int from = rowOf[at(column)];
            double step = endless;
            int next = 0;
            for (int c = 1; c <= n; ++c) {
                if (done[at(c)])
                    continue;
                const double reduced = costs(from - 1, c - 1) - rowPrice[at(from)] - columnPrice[at(c)];
                if (reduced < least[at(c)])
                    least[at(c)] = reduced, way[at(c)] = column;
                if (least[at(c)] < step)
                    step = least[at(c)], next = c;
            }
            for (int c = 0; c <= n; ++c) {
                if (done[at(c)])
                    rowPrice[at(rowOf[at(c)])] += step, columnPrice[at(c)] -= step;
                else
                    least[at(c)] -= step;
            }
            column = next;
        } while (rowOf[at(column)] != 0);
        while (column != 0) {
            rowOf[at(column)] = rowOf[at(way[at(column)])];
            column = way[at(column)];
        }
    }
    double sum = 0;
    for (int c = 1; c <= n; ++c)
        if (rowOf[at(c)] != 0)
            sum += costs(rowOf[at(c)] - 1, c - 1);
    return sum;
}

} // namespace stemwright
