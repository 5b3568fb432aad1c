#pragma once

#include "core/document/sheet.h"

#include <QString>

#include <vector>

namespace stemwright {

/// One sentence that names the characters on the pages that no installed font has, which come out as boxes;
/// empty where there are none. Scripts of names and titles are the maker's: the fonts are her computer's.
QString missingGlyphs(const std::vector<Page>& pages);

} // namespace stemwright
