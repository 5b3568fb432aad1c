#pragma once

#include "core/plan/edit.h"

#include <optional>
#include <vector>

namespace stemwright {

/// The edit that gives the plan another binding; nothing where it has it already. `from` says of each layer of
/// `now` which place it had in the plan's binding, -1 for a new one. What a layer costs as it is sold
/// (Buying::wraps) and what stems took of it (StemForm::took) are kept by its place, so they go along with it;
/// of a layer that is gone, or that has become of another sort, they go with it: a floss shall not be reckoned
/// by what a wire took.
std::optional<Edit> rebinding(const Plan& plan, const Binding& now, const std::vector<int>& from);

} // namespace stemwright
