#pragma once

#include "app/materials/material_table.h"

namespace stemwright::handbook {

// The tables of core/quantity as lines to be read, each with where its values come from. The sources stand with
// the values there in full; these are the words that a maker sees.

std::vector<HandbookLine> metals();
std::vector<HandbookLine> beads();
std::vector<HandbookLine> flosses();
std::vector<HandbookLine> tapes();
std::vector<HandbookLine> clays();
std::vector<HandbookLine> covers();

} // namespace stemwright::handbook
