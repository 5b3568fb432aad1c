#pragma once

#include <QColor>
#include <QFont>
#include <QString>

namespace stemwright {
enum class Ink; // core/document/sheet.h
}

namespace stemwright::look {

// The one home of colours, type and spacing. Text and its ground keep 4.5:1 (WCAG 2.2, 1.4.3), marks 3:1
// (1.4.11).

inline constexpr QColor paper{250, 247, 240}; ///< the board's ground
inline constexpr QColor side{246, 241, 230};  ///< panels beside it
inline constexpr QColor bar{242, 236, 221};   ///< top and status line
inline constexpr QColor card{255, 255, 255};
inline constexpr QColor line{226, 218, 200}; ///< thin rules and card edges
inline constexpr QColor edge{143, 135, 121}; ///< round what can be typed into or pressed
inline constexpr QColor ink{43, 41, 38};
inline constexpr QColor quiet{107, 101, 91};  ///< secondary text
inline constexpr QColor faint{183, 176, 162}; ///< what is absent: empty slots, zero counts
inline constexpr QColor accent{150, 84, 35};  ///< findings, what-ifs, focus
inline constexpr QColor accentSoft{247, 232, 214};
inline constexpr QColor good{64, 112, 84}; ///< a figure that becomes better
inline constexpr QColor bad{168, 52, 44};  ///< a refusal
inline constexpr QColor night{43, 41, 38}; ///< the ground of what-if labels and the chosen place
inline constexpr QColor onNight{250, 247, 240};
inline constexpr QColor onNightAccent{246, 190, 138};
inline constexpr QColor onNightBetter{158, 219, 176}; ///< a figure that a drop would better
inline constexpr QColor stem{139, 122, 80};
inline constexpr QColor clay{183, 170, 146};
inline constexpr QColor pot{222, 214, 198}; ///< the glaze of a pot in the round
inline constexpr QColor focus{26, 92, 150}; ///< keyboard focus, unlike anything on the board

inline constexpr int unit = 4;    ///< spacing comes in multiples of this, px
inline constexpr int target = 24; ///< the least side of anything to be hit, px (WCAG 2.2, 2.5.8)
inline constexpr int corner = 8;  ///< radius of cards, px

/// What a mark on paper is drawn with: darker than the screen's, since paper is white and small print is read
/// at the bench.
QColor printed(Ink ink);

/// The family in use: Inter where it is installed, the system's own otherwise.
QString family();
/// Sizes in points relative to the system's: small print, running text, headings, the plan's title.
enum class Type { small, text, strong, heading, title };
QFont font(Type type);

/// Ink or paper, whichever reads better on the ground.
QColor inkOn(const QColor& ground);

/// Fonts, palette and the style sheet of the whole program.
void apply();

} // namespace stemwright::look
