#pragma once

namespace stemwright {

class BoardView;

/// The board for screen readers: a tray with its lines, then a list for each stem with a child for each slot,
/// named as app/wording names places and leaves. Made only as far as somebody asks.
namespace BoardAccessible {

/// To be called before the first board is shown; more often does no harm.
void install();
/// The plan has other stems, tiers or slots than before.
void rebuild(BoardView& board);
/// The focus, or what a drop at the focus would do, is another.
void tellFocus(BoardView& board);

} // namespace BoardAccessible

} // namespace stemwright
