#pragma once

#include "core/plan/kind.h"

#include <array>

namespace stemwright {

/// Sorts of leaf to begin a plan with; the names stand in the app.
enum class LeafPreset { tiny, small, broad, longPointed, large, blade };

inline constexpr std::array leafPresets{LeafPreset::tiny,        LeafPreset::small, LeafPreset::broad,
                                        LeafPreset::longPointed, LeafPreset::large, LeafPreset::blade};

/// The form of such a leaf in 11/0 beads on AWG 28 wire, without a name. Its beads, size and wire are reckoned
/// from its rows: each pair of rows further out is longer by one pitch times the sum of what its two ends add,
/// π/2 for a round end and α + cot α for one pointed at α = 30° (own geometry of rows around a basic). A place
/// to start: the maker's own measure counts, and goes over it.
KindForm presetForm(LeafPreset preset);

} // namespace stemwright
