#include "core/quantity/circle_packing.h"

#include <array>
#include <cmath>
#include <cstddef>

namespace stemwright {
namespace {

// From one circle on. Specht's table (published copy); 1 to 50 equal to Birgin & Sobral 2008, table 1, and 7,
// 19, 37 and 61 to Lubachevsky & Graham's curved hexagonal packings; every row was reached again by an own
// search (recomputed, 51 to 7e-11).
constexpr std::array<double, largestPackedCount> ratios = {
    1.000000000000, 2.000000000000, 2.154700538379, 2.414213562373, 2.701301616704, 3.000000000000,
    3.000000000000, 3.304764870962, 3.613125929753, 3.813025631398, 3.923804400163, 4.029601930116,
    4.236067977500, 4.328428554861, 4.521356964706, 4.615425594873, 4.792033748311, 4.863703305156,
    4.863703305156, 5.122320736992, 5.252317475010, 5.439718959072, 5.545204222575, 5.651661091765,
    5.752824330857, 5.828176536943, 5.906397847394, 6.014938097372, 6.138597903978, 6.197741070879,
    6.291502622129, 6.429462970950, 6.486703123560, 6.610957090001, 6.697171091790, 6.746753793424,
    6.758770483144, 6.961886965228, 7.057884162624, 7.123846435943, 7.260012328677, 7.346796406943,
    7.419944856341, 7.498036682995, 7.572912326368, 7.650179914694, 7.724170052598, 7.791271430559,
    7.886870958803, 7.947515274784, 8.027506952489, 8.084717190690, 8.179582826841, 8.203982383469,
    8.211102550928, 8.383529922579, 8.447184653410, 8.524553770140, 8.592499959370, 8.646219845458,
    8.661297575540,
};

double leastByArea(int count) {
    return std::sqrt(count / densestPacking);
}

} // namespace

double packingRatio(int count) {
    if (count <= 0)
        return 0;
    if (count <= largestPackedCount)
        return ratios[static_cast<std::size_t>(count - 1)];
    static const double waste = ratios.back() - leastByArea(largestPackedCount);
    return leastByArea(count) + waste;
}

} // namespace stemwright
