#pragma once

#include "core/plan/plan.h"

#include <string>
#include <string_view>
#include <vector>

namespace stemwright {

/// What a list of the built-in plans shows of one.
struct ExampleInfo {
    std::string key;      ///< the word that asks for it on the command line
    std::string title;    ///< the plan's own
    std::string sentence; ///< the first line of the plan's note
};

/// The built-in plans, the usual one first. Plants of invented scenes, one for each leaf arrangement.
std::vector<ExampleInfo> examples();

/// The key of the usual one, without reading any plan.
std::string_view usualExample();

/// The built-in plan of that key, which must be one of those in the list.
Plan example(std::string_view key);

} // namespace stemwright
