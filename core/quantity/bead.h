#pragma once

#include "core/quantity/quantity.h"

#include <optional>
#include <span>
#include <string_view>

namespace stemwright {

/// A size of round seed bead. No standard defines the sizes and makers' beads differ, so these are the middles
/// of what sellers and makers report, good to about a tenth: a leaf measured on the bench always counts for
/// more.
struct BeadSize {
    /// As makers write it: "11/0".
    std::string_view name;
    /// Across the hole's axis.
    Length diameter;
    /// What one bead takes of the wire it is strung on. Not "11 a inch for 11/0", which is beads side by side.
    Length pitch;
    /// Of one bead.
    Mass mass;
};

/// Every size there is, from the largest bead to the smallest. From 13/0 on the figures come from different
/// makers' beads and do not form one falling scale.
std::span<const BeadSize> beadSizes();

/// The size by its name, written exactly so ("11/0"); nothing for any other text.
std::optional<BeadSize> beadSizeNamed(std::string_view name);

} // namespace stemwright
