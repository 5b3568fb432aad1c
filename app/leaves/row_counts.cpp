#include "app/leaves/row_counts.h"

#include <QCoreApplication>

#include <algorithm>

namespace stemwright {

namespace {

QString tr(const char* source, const char* note = nullptr) {
    return QCoreApplication::translate("RowCounts", source, note);
}

} // namespace

std::vector<RowColours> rowCounts(const LeafLook& look) {
    const LeafRows rows = leafRows(shapeOf(look));
    std::vector<RowColours> all;
    for (const LeafRow& row : rows.rows) {
        RowColours count{static_cast<int>(row.count), std::vector<int>(look.bands.size())};
        for (std::size_t i = row.first; i < row.first + row.count && !count.colours.empty(); ++i)
            ++count.colours[std::min(static_cast<std::size_t>(rows.beads[i].band), count.colours.size() - 1)];
        all.push_back(std::move(count));
    }
    return all;
}

QString rowName(std::size_t row, std::size_t rows, bool loops) {
    if (!loops && row + 1 == rows)
        return tr("basic", "the centre row of a leaf");
    if (row == 0)
        return tr("outer", "the outer row of a leaf");
    return loops && row + 1 == rows ? tr("inner", "the innermost loop of a leaf")
                                    : tr("%1.", "a row of a leaf by its number").arg(row + 1);
}

} // namespace stemwright
