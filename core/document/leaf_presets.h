#pragma once

#include "core/plan/kind.h"

#include <array>

namespace stemwright {

/// Sorts of leaf to begin a plan with; the names stand in the app.
enum class LeafPreset { tiny, small, broad, longPointed, large, blade };

inline constexpr std::array leafPresets{LeafPreset::tiny,        LeafPreset::small, LeafPreset::broad,
                                        LeafPreset::longPointed, LeafPreset::large, LeafPreset::blade};

/// The form of such a leaf in 11/0 beads on AWG 28 wire, without a name; its measures are those of its pattern
/// (core/figures/leaf_make.h). A place to start: the maker's own measure goes over it.
KindForm presetForm(LeafPreset preset);

} // namespace stemwright
