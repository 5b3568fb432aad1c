#pragma once

#include <QString>

namespace stemwright::look {

/// The program's style sheet, its colours and measures taken from look.h.
QString styleSheet();

} // namespace stemwright::look
