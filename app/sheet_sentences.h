#pragma once

#include "core/document/sheet_words.h"

#include <QString>

namespace stemwright {

/// What the pages say, in the language of the program; %1, %2, … stand for the values that SheetWord names.
QString sheetSentence(SheetWord which);

} // namespace stemwright
