#pragma once

#include "core/figures/supplies.h"

#include <string>

namespace stemwright {

/// The supplies as a table for a spreadsheet: CSV by RFC 4180 (comma, CRLF, quotes doubled), UTF-8, a header
/// row, numbers with a point whatever the place's habits are. Lengths and masses are in the plan's units, which
/// the header names: millimetres, or inches in sixteenths; grams, or ounces. A row for every thing to make or
/// buy, and below those that are cut from bars, skeins or spools a row for each of these.
std::string suppliesCsv(const Plan& plan, const Supplies& needs);

} // namespace stemwright
