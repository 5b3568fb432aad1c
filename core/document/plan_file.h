#pragma once

#include "core/plan/plan.h"
#include "core/plan/problem.h"

#include <string>
#include <string_view>

namespace stemwright {

/// What "format" says in every plan file, and the newest "version" that is known here.
inline constexpr std::string_view planFormat = "stemplan";
inline constexpr int planVersion = 1;
/// How deep lists and objects of a file may be nested; a plan itself needs seven levels.
inline constexpr int planDepth = 64;

/// The text of a plan file: UTF-8 JSON as resources/stemplan.schema.json describes it, a line a tier, lengths
/// in millimetres, angles in degrees, numbers in their shortest digits that read back the same. The same plan
/// gives the same bytes. The plan must be valid.
std::string planText(const Plan& plan);

/// Reads a plan file. The plan is valid (firstProblem of plan.h); reading what planText wrote gives the same
/// plan, and writing that the same text. Keys that are not known stay with their part and are written again
/// after the known ones. Anything wrong gives the first problem and its place. Takes time and memory in
/// proportion to the text, whatever it holds.
Result<Plan> planFromText(std::string_view text);

} // namespace stemwright
