#pragma once

namespace stemwright {

// Measures of a mat's parts, mm.
namespace mat {
inline constexpr double scaleRoom = 9.5;  ///< the scale of height at the left
inline constexpr double axisGap = 1.2;    ///< between the scale and the first view
inline constexpr double leastHalf = 17;   ///< of a view, so that its heading has room
inline constexpr double viewWordGap = 1;  ///< between the words of that heading
inline constexpr double viewEdge = 1;     ///< beside the widest leaf
inline constexpr double viewGap = 2;      ///< between the views
inline constexpr double listGap = 4;      ///< where the lines lead from the joints to their rows
inline constexpr double headGap = 1.5;    ///< below the headings
inline constexpr double blockFoot = 0.8;  ///< below the foot
inline constexpr double joinLine = 3.4;   ///< of the list, for "join …"
inline constexpr double sheetNumber = 30; ///< for "sheet 2 of 3"
inline constexpr double leastWindow = 60; ///< of stem that a sheet shows at least
inline constexpr double besideGap = 4;    ///< between the list and a heading beside it
inline constexpr double leastBeside = 40; ///< for such a heading
} // namespace mat

} // namespace stemwright
