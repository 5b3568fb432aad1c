#pragma once

#include "app/board/board_layout.h"
#include "app/board/board_tray.h"

#include <Qt>

namespace stemwright {

/// Where an arrow, Home, End or a page key leads from a place: over leaves as they lie, stem by stem, and into
/// the tray at the left. `gaps` also stops between tiers, for the time that something is held. The same place
/// where the board ends.
Place stepFrom(const Place& from, Qt::Key key, const BoardLayout& layout, const BoardTray& tray, bool gaps);

/// The first slot, stem or line there is: where the focus stands before anybody moved it.
Place firstPlace(const BoardLayout& layout, const BoardTray& tray);

} // namespace stemwright
