#pragma once

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <vector>

namespace stemwright {

inline constexpr float nowhere = -std::numeric_limits<float>::max(); ///< the depth of what nothing covers

/// Some rows of samples, and which part of each row holds anything.
class Band {
public:
    Band(int width, int top, int bottom)
        : width_(width),
          top_(top),
          bottom_(bottom),
          near_(buffers().near),
          colour_(buffers().colour),
          first_(static_cast<std::size_t>(bottom - top), width),
          last_(static_cast<std::size_t>(bottom - top), -1) {
        const std::size_t size = static_cast<std::size_t>(width) * static_cast<std::size_t>(bottom - top);
        near_.assign(size, nowhere);
        colour_.assign(size, 0);
    }

    /// The rows and columns that a shape's box shares with the band; false where there are none.
    struct Part {
        int left = 0, right = -1, top = 0, bottom = -1;
    };
    bool meet(float left, float right, float top, float bottom, Part& part) const {
        if (!(top < static_cast<float>(bottom_)) || !(bottom >= static_cast<float>(top_)) ||
            !(left < static_cast<float>(width_)) || !(right >= 0))
            return false;
        part.left = static_cast<int>(std::max(0.0F, std::floor(left)));
        part.right = static_cast<int>(std::min(static_cast<float>(width_ - 1), std::ceil(right)));
        part.top = static_cast<int>(std::max(static_cast<float>(top_), std::floor(top)));
        part.bottom = static_cast<int>(std::min(static_cast<float>(bottom_ - 1), std::ceil(bottom)));
        return part.left <= part.right && part.top <= part.bottom;
    }

    std::size_t row(int y) const {
        return static_cast<std::size_t>(y - top_) * static_cast<std::size_t>(width_);
    }
    float* near(int y) { return near_.data() + row(y); }
    std::uint32_t* colour(int y) { return colour_.data() + row(y); }
    void reached(int y, int left, int right) {
        const auto r = static_cast<std::size_t>(y - top_);
        first_[r] = std::min(first_[r], left);
        last_[r] = std::max(last_[r], right);
    }
    int first(int y) const { return first_[static_cast<std::size_t>(y - top_)]; }
    int last(int y) const { return last_[static_cast<std::size_t>(y - top_)]; }

private:
    /// Kept by each thread from band to band.
    struct Buffers {
        std::vector<float> near;
        std::vector<std::uint32_t> colour;
    };
    static Buffers& buffers() {
        static thread_local Buffers kept;
        return kept;
    }

    int width_, top_, bottom_;
    std::vector<float>& near_;
    std::vector<std::uint32_t>& colour_;
    std::vector<int> first_, last_;
};

} // namespace stemwright
