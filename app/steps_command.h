#pragma once

#include "app/command_parts.h"

namespace stemwright {

/// `steps`: the order of work of every stem, or of one, as text or JSON (app/steps_text.h).
Command stepsCommand();

} // namespace stemwright
