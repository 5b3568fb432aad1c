#pragma once

#include "app/command_parts.h"

namespace stemwright {

// The suggestions as commands: each reads a plan, writes the plan that the suggestion makes of it, and says
// what that changes and how good it is known to be. The same plan, options and seed give the same bytes.

Command spreadCommand();
Command orderCommand();
Command heightsCommand();
Command startCommand();

} // namespace stemwright
