#pragma once

#include "app/command_parts.h"

namespace stemwright {

/// `supplies PLAN [--csv] [-o FILE]`: what to buy and to make, as text or as CSV.
Command suppliesCommand();

} // namespace stemwright
