#pragma once

#include "core/plan/edit.h"

#include <optional>

namespace stemwright {

/// What turns `before` into `after` as far as colours, mixes and kinds with their stock go: a single edit where
/// one will do, several as one batch of that deed otherwise, nothing where the two are alike there. `after` may
/// have changed parts and added ones; what it has taken away is not looked at.
std::optional<Edit> difference(const Plan& before, const Plan& after, Deed deed);

} // namespace stemwright
