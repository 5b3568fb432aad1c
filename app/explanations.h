#pragma once

#include "core/figures/explain.h"

#include <QString>

namespace stemwright {

// How each figure is reckoned, in words: the one home of the words for core/figures/explain.h.

/// What the figure is called: "Height", "Floss to cut".
QString figureName(FigureName figure);
/// The same with the part it is of, where it goes by line, colour, wrap or supply: "Beads, Plum".
QString figureTitle(const Plan& plan, const Figures& figures, const Supplies& needs, FigureRef ref);
/// Its value as the board and the sheets show it.
QString figureValue(const Plan& plan, const Figures& figures, const Supplies& needs, FigureRef ref);
/// The formula in words, one or two sentences.
QString formulaText(FigureName figure);
/// What a number that went in is.
QString termText(Term term);
QString inputValue(const Input& input, const Units& units);
/// Where a formula or a table comes from.
QString sourceText(SourceName source);
/// That a figure is an estimate, and by how much it may be off.
QString estimateText();

/// All of it as plain lines, for a tooltip: of long lists of numbers the first few.
QString explanationText(const Explanation& explanation, const Units& units);
/// The same in full, for reading at leisure.
QString explanationHtml(const Explanation& explanation, const QString& title, const QString& value,
                        const Units& units);

/// What a stem's hold means for its maker, in a sentence that says that it is an estimate.
QString holdText(const HoldFigures& hold);

} // namespace stemwright
