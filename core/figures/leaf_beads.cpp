#include "core/figures/leaf_beads.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stemwright {

std::vector<int> apportioned(int total, std::span<const double> weights) {
    std::vector<int> parts(weights.size(), 0);
    double sum = 0;
    for (const double weight : weights)
        sum += std::max(weight, 0.0);
    if (total <= 0 || !(sum > 0))
        return parts;
    std::vector<double> remainder(weights.size(), -1);
    int left = total;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        if (!(weights[i] > 0))
            continue;
        const double quota = total * (weights[i] / sum);
        // A quota that rounding put a hair below a whole number is that number: a third of 60 is 20.
        const double whole = std::min(std::floor(quota + 1e-9), static_cast<double>(left));
        parts[i] = static_cast<int>(whole);
        remainder[i] = std::max(quota - whole, 0.0);
        left -= parts[i];
    }
    std::vector<std::size_t> order(weights.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return remainder[a] > remainder[b] + 1e-9; });
    for (std::size_t i = 0; left > 0; i = (i + 1) % order.size())
        if (remainder[order[i]] >= 0) {
            ++parts[order[i]];
            --left;
        }
    return parts;
}

std::vector<int> leafBeads(int beads, const Mix& mix) {
    std::vector<double> weights;
    weights.reserve(mix.colours.size());
    for (const BeadShare& share : mix.colours)
        weights.push_back(share.share);
    return apportioned(beads, weights);
}

std::vector<std::vector<int>> rowBeads(std::span<const int> rows, const Mix& mix) {
    int all = 0;
    for (const int row : rows)
        all += std::max(row, 0);
    std::vector<int> left = leafBeads(all, mix);
    std::vector<std::vector<int>> out(rows.size(), std::vector<int>(left.size(), 0));
    std::size_t colour = 0;
    for (std::size_t row = 0; row < rows.size(); ++row)
        for (int wanted = std::max(rows[row], 0); wanted > 0 && colour < left.size();) {
            const int taken = std::min(wanted, left[colour]);
            out[row][colour] += taken;
            left[colour] -= taken;
            wanted -= taken;
            colour += left[colour] == 0;
        }
    return out;
}

} // namespace stemwright
