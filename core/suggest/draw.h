#pragma once

#include <cstdint>
#include <random>
#include <utility>
#include <vector>

namespace stemwright {

/// A whole number in [0, below), below > 0, each equally likely. The standard library's distributions differ
/// between libraries; its engine does not, so the same seed gives the same numbers everywhere.
inline std::uint32_t drawBelow(std::mt19937& random, std::uint32_t below) {
    // Numbers from the incomplete last stretch of the range are drawn again.
    const std::uint32_t reject = (0U - below) % below;
    for (;;)
        if (const auto drawn = static_cast<std::uint32_t>(random()); drawn >= reject)
            return drawn % below;
}

/// Fisher and Yates's shuffle, for the same reason.
template <class T> void shuffleList(std::vector<T>& list, std::mt19937& random) {
    for (std::size_t i = list.size(); i > 1; --i)
        std::swap(list[i - 1], list[drawBelow(random, static_cast<std::uint32_t>(i))]);
}

} // namespace stemwright
