#pragma once

namespace stemwright {

/// Installs the plural forms of counted words ("1 leaf", "2 leaves") for the application that is running.
void installPlurals();

} // namespace stemwright
