#include "core/figures/skyline.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stemwright {

Skyline skylineOf(const std::vector<Length>& heights) {
    Skyline sky;
    if (heights.empty())
        return sky;
    const auto count = static_cast<double>(heights.size());
    const auto [least, most] = std::minmax_element(heights.begin(), heights.end());
    sky.shortest = *least;
    sky.tallest = *most;
    sky.mean = std::accumulate(heights.begin(), heights.end(), Length{}) / count;
    if (heights.size() < 2 || !(sky.mean > Length{}))
        return sky;
    double squares = 0;
    for (const Length height : heights)
        squares += inMillimetres(height - sky.mean) * inMillimetres(height - sky.mean);
    sky.variation = std::sqrt(squares / (count - 1)) / inMillimetres(sky.mean);
    return sky;
}

int countNearTwins(std::vector<Length> heights, Length near) {
    std::sort(heights.begin(), heights.end());
    int pairs = 0;
    for (std::size_t low = 0, i = 0; i < heights.size(); ++i) {
        while (heights[i] - heights[low] >= near)
            ++low;
        pairs += static_cast<int>(i - low);
    }
    return pairs;
}

} // namespace stemwright
