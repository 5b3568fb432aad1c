#pragma once

#include "core/document/sheet_flow.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace stemwright {

/// A table under its heading, laid out before it is put anywhere, so that what stands above can leave room for
/// it.
struct SheetListing {
    std::string heading;
    Table table;
    std::vector<std::string> head;
    std::vector<std::vector<std::string>> rows;
    /// Draws into a row, as SheetFlow::table says.
    std::function<void(Canvas&, std::size_t row, PointMm top, double height)> before;
    double leastHeight = 0; ///< of a row
    std::string note;       ///< below it; empty for none

    double height(SheetFlow& flow) const; ///< what it takes of a page, its heading included
    void put(SheetFlow& flow) const;
};

/// The figures of the stems that are asked for, with the pages of their mats and cards.
SheetListing stemsListing(const SheetContext& context, double width);
/// The stock by kind and mix, in one or two halves beside each other: in two where there are many or
/// `leastSides` says so. None where there is no stock.
std::optional<SheetListing> mixesListing(const SheetContext& context, double width, std::size_t leastSides);

} // namespace stemwright
