#pragma once

#include "core/figures/figures.h"
#include "core/suggest/suggestion.h"

#include <QString>
#include <QStringList>

#include <string>
#include <vector>

namespace stemwright {

/// A plan before and after a suggestion or any other edit, with its figures.
struct BeforeAfter {
    Plan before;
    Plan after;
    Figures figuresBefore;
    Figures figuresAfter;

    BeforeAfter(const Plan& plan, const Edit& edit);
};

/// What a suggestion does to the pot and how good it is known to be, a sentence or a figure each.
QStringList suggestionLines(const BeforeAfter& plans, const Suggestion& suggestion);
/// Only how good it is known to be: proved, or how far the bound is.
QString proofText(const Suggestion& suggestion);
/// The pot's figures that differ, "Unevenness 12 → 3", for any edit.
QStringList potLines(const BeforeAfter& plans);

/// A stem's figures before and after.
struct StemChange {
    StemId stem;
    QString name;
    QString height, leaves, drift, unevenness; ///< "96 mm → 109 mm", or the one figure where it stays
    bool differs = false;
    bool heightDiffers = false;
};
/// Every stem that is there after it, in the plan's order.
std::vector<StemChange> stemChanges(const BeforeAfter& plans);

/// "92 mm to 151 mm", or "none" without stems.
QString heightsText(const PotFigures& pot, const Units& units);
/// "2 → 1", or "2" where both are the same.
QString beforeAfterText(const QString& before, const QString& after);

/// All of it for scripts, lengths in millimetres.
std::string suggestionJson(const BeforeAfter& plans, const Suggestion& suggestion, double milliseconds);

} // namespace stemwright
