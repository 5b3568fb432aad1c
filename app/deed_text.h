#pragma once

#include "core/plan/edit.h"

#include <QString>

namespace stemwright {

/// What an edit does, for the undo list: "move leaf", "turn tier".
QString deedText(const Edit& edit);

} // namespace stemwright
