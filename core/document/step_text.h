#pragma once

#include "core/document/sheet_words.h"
#include "core/figures/binding_steps.h"

namespace stemwright {

// A step of the work in words, the same on the binding card, in the place Bind and in a terminal.

/// The step as one or two sentences: what to do, with which leaves, which way the stem is turned before it.
std::string stepText(const Plan& plan, const Stem& stem, const StemFigures& figures, const BindingStep& step,
                     const SheetWords& words);

/// How the stem is turned before the step, "Turn the stem a quarter."; empty where it is not.
std::string turnText(const Stem& stem, const BindingStep& step, const SheetWords& words);

/// How a tier faces: "side to side", or where its first leaf points.
std::string facingText(const Tier& tier, const SheetWords& words);

/// Whether wire is cut here: its ends fly and prick. Floss and tape that cover a stem have none.
bool cutsWire(const Plan& plan, const BindingStep& step);

} // namespace stemwright
