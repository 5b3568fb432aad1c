#pragma once

#include "core/plan/edit.h"

#include <optional>
#include <vector>

namespace stemwright {

// What is done at the bench, as edits of the plan: its progress is kept nowhere else.

/// How many steps a stem's work has before its first tier.
int stepsBeforeTiers(const Plan& plan, const Stem& stem);

/// Marks the first step of the stem that is not done (core/figures/binding_steps.h) as done; nothing where all
/// are. `minutes` is added to what its tier took so far.
std::optional<Edit> stepDone(const Plan& plan, StemId stem, double minutes = 0);

/// Takes the last step that is done back; nothing where none is. The minutes that a tier took are kept.
std::optional<Edit> stepBack(const Plan& plan, StemId stem);

/// Keeps what the stem's layers really took, by wrap (0 for one that was not measured), and fits the overlap of
/// each measured layer to all stems measured so far. Layers that no overlap explains keep theirs: `unfitted`
/// lists them.
struct MeasureTaken {
    Edit edit;
    std::vector<std::size_t> unfitted;
};
MeasureTaken calibrated(const Plan& plan, StemId stem, const std::vector<Length>& used);

/// Writes down what the layer really took of the stem; 0 forgets it. What else is known of it stays.
void setTook(StemForm& form, std::size_t wrap, Length used);

/// What the layer really took of the stem; 0 where that was not measured.
Length tookOf(const Stem& stem, std::size_t wrap);

/// The stems whose binding was measured, in the plan's order.
std::vector<StemId> measuredStems(const Plan& plan);

} // namespace stemwright
