#include "app/leaves/row_lines.h"

#include "app/wording.h"
#include "core/figures/leaf_beads.h"
#include "core/figures/leaf_make.h"
#include "core/figures/leaf_mass.h"
#include "core/figures/leaf_rows.h"

#include <QCoreApplication>

#include <algorithm>

namespace stemwright {

namespace {

QString tr(const char* source, const char* note = nullptr) {
    return QCoreApplication::translate("RowLines", source, note);
}

std::vector<RowLine> ofPattern(const KindForm& form) {
    const std::vector<int> rows = patternRows(form);
    const bool loops = form.make && form.make->making == Making::loops;
    const auto count = static_cast<int>(rows.size());
    std::vector<RowLine> lines;
    for (int row = count - 1; row >= 0; --row) {
        RowLine line;
        line.row = row;
        line.beads = rows[static_cast<std::size_t>(row)];
        line.counted = std::any_of(form.make->counted.begin(), form.make->counted.end(),
                                   [row](const CountedRow& each) { return each.row == row; });
        if (loops) {
            line.name = tr("loop %1").arg(row + 1);
            line.ring = count - 1 - row;
        } else {
            line.name = row == 0 ? tr("basic", "the centre row of a leaf") : tr("row %1").arg(row + 1);
            // Two rows lie on a ring, one up the one side and one down the other.
            line.ring = (count - 1) / 2 - (row + 1) / 2;
            line.side = row == 0 ? 0 : row % 2 == 0 ? 1 : -1;
        }
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<RowLine> asDrawn(const KindForm& form) {
    const LeafRows rows = leafRows(shapeOf(form));
    std::vector<double> counts;
    for (const LeafRow& row : rows.rows)
        counts.push_back(static_cast<double>(row.count));
    // A leaf of more beads than are drawn has them in the same proportions.
    const std::vector<int> beads = apportioned(form.beads, counts);
    std::vector<RowLine> lines;
    for (std::size_t i = 0; i < beads.size(); ++i) {
        RowLine line;
        line.beads = beads[i];
        line.ring = static_cast<int>(i);
        line.name = i + 1 == beads.size() ? tr("middle", "the centre row of a leaf")
                    : i == 0              ? tr("outer", "the outer row of a leaf")
                                          : tr("%1.", "a row of a leaf by its number").arg(i + 1);
        lines.push_back(std::move(line));
    }
    return lines;
}

} // namespace

std::vector<RowLine> rowLines(const KindForm& form, const Mix* mix) {
    std::vector<RowLine> lines = ofPattern(form);
    if (lines.empty())
        lines = asDrawn(form);
    if (!mix)
        return lines;
    std::vector<int> beads;
    for (const RowLine& line : lines)
        beads.push_back(line.beads);
    std::vector<std::vector<int>> colours = rowBeads(beads, *mix);
    for (std::size_t i = 0; i < lines.size(); ++i)
        lines[i].colours = std::move(colours[i]);
    return lines;
}

QString hersText(const QString& figure) {
    return tr("%1 ✎ yours", "a figure that the maker measured or counted").arg(figure);
}

QString leafMassText(const Plan& plan, const KindForm& form) {
    const QString mass = massText(leafMass(plan, form), plan.units);
    return beadsUnweighed(plan, form) ? tr("%1 without its beads", "the mass of a leaf").arg(mass) : mass;
}

} // namespace stemwright
