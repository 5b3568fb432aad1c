#pragma once

#include "core/plan/edit.h"
#include "core/plan/problem.h"

#include <string>
#include <string_view>

namespace stemwright {

/// How deep lists and objects of an edit may be nested: a batch takes two levels, so that some twenty-nine may
/// stand in each other; real ones stand two or three deep.
inline constexpr int editDepth = 64;

/// An edit as one line of JSON without a line end, `{"edit": "turn-tier", "stem": 2, "index": 0, "turn_deg":
/// 90}`, for journals. Parts have the keys of the plan file; tiers and slots are counted from 0, as in core.
/// The same edit gives the same bytes.
std::string editText(const Edit& edit);

/// Reads it back: the same edit, whatever editText was given, unless its batches are nested too deep. Whether
/// it can be applied is for apply() to say. A key that is not known is a problem, since an edit that is half
/// understood would do something else.
Result<Edit> editFromText(std::string_view text);

} // namespace stemwright
