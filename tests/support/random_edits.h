#pragma once

#include "core/plan/edit.h"

#include <cstdint>
#include <random>

namespace stemwright::test {

/// Draws edits of every sort for a board such as randomBoard() makes, many of them impossible.
class RandomEdits {
public:
    explicit RandomEdits(std::uint32_t seed) : random_(seed) {}

    /// The plan must have a stem, a colour, a mix and two kinds.
    Edit next(const Plan& plan, int depth = 0);

private:
    Edit ofTiers(const Plan& plan);
    Edit ofStems(const Plan& plan);
    Edit ofLists(const Plan& plan);

    int below(int n) { return static_cast<int>(random_() % static_cast<std::uint32_t>(n)); }
    int index(std::size_t size) { return below(static_cast<int>(size) + 2); }
    const Stem& stem(const Plan& plan);
    SlotRef slot(const Plan& plan) { return {stem(plan).id, below(6), below(2)}; }
    Leaf leaf(const Plan& plan);

    std::mt19937 random_;
};

} // namespace stemwright::test
