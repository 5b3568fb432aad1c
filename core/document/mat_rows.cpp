#include "core/document/mat_rows.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double widest = 74; ///< of the list
constexpr double iconRoom = 3.4;
constexpr double rowGap = 1.3; ///< between the columns
constexpr std::size_t iconColumn = 1;

/// Which way the tier faces, in words: a pair's plane, a single leaf's side, a whorl's count and first side.
std::string facing(const SheetContext& context, const Tier& tier) {
    if (tier.slots.size() == 2)
        return context.words.plane(planeOf(tier));
    const std::string first = context.words.side(sideOf(slotTurn(tier, 0)));
    if (tier.slots.size() <= 1)
        return first;
    return context.words.word(SheetWord::around, {std::to_string(tier.slots.size()), first});
}

/// The codes of the tier's leaves, left before right and front before back, as they lie on the mat.
std::string codes(const SheetContext& context, const Tier& tier) {
    std::vector<std::size_t> order(tier.slots.size());
    for (std::size_t i = 0; i < order.size(); ++i)
        order[i] = i;
    const auto place = [&](std::size_t slot) {
        const Side side = sideOf(slotTurn(tier, slot));
        return side == Side::left ? 0 : side == Side::right ? 1 : side == Side::front ? 2 : 3;
    };
    std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return place(a) < place(b); });
    std::string out;
    for (const std::size_t i : order) {
        const Mix* mix = find(context.plan, tier.slots[i].leaf.mix);
        if (!out.empty())
            out += " · ";
        out += mix ? mix->code.empty() ? mix->name : mix->code : context.words.word(SheetWord::emptySlot);
    }
    return out;
}

std::optional<Length> evenWrap(const MatStem& mat) {
    std::optional<Length> out;
    for (std::size_t t = 0; t + 1 < mat.tiers.size(); ++t) {
        if (out && *out != millimetres(mat.tiers[t].wrap))
            return std::nullopt;
        out = millimetres(mat.tiers[t].wrap);
    }
    return out;
}

std::vector<MatRow> rowsOf(const SheetContext& context, const Stem& stem, const MatStem& mat, bool even) {
    std::vector<MatRow> rows;
    for (std::size_t t = 0; t < stem.tiers.size(); ++t) {
        const bool last = t + 1 == stem.tiers.size();
        MatRow row{mat.tiers[t].along, static_cast<int>(t), {}, 0, 0};
        row.cells = {std::to_string(t + 1), "", facing(context, stem.tiers[t]), codes(context, stem.tiers[t]),
                     last ? context.words.word(SheetWord::tail)
                          : context.words.size(millimetres(mat.tiers[t].wrap))};
        if (even)
            row.cells.pop_back();
        rows.push_back(std::move(row));
    }
    const bool planted = mat.length - mat.clay > 0.05;
    // The tail's length stands in its middle, above the clay line where there is one.
    const double tail = inMillimetres(stem.tail);
    rows.push_back({mat.length - tail + tail / 2,
                    -1,
                    {"", "", context.words.word(SheetWord::tailBelow, {context.words.size(stem.tail)}), "", ""},
                    0,
                    0});
    if (planted)
        rows.push_back({mat.clay, -1, {"", "", context.words.word(SheetWord::clayLine), "", ""}, 0, 0});
    rows.push_back(
        {mat.length,
         -1,
         {"", "", planted ? context.words.word(SheetWord::foot) : context.words.word(SheetWord::clayLine), "",
          ""},
         0,
         0});
    std::stable_sort(rows.begin(), rows.end(),
                     [](const MatRow& a, const MatRow& b) { return a.along < b.along; });
    return rows;
}

Table tableOf(const SheetContext& context, const std::vector<std::string>& head,
              const std::vector<MatRow>& rows) {
    const std::size_t count = head.size();
    std::vector<double> natural{4, iconRoom, 4, 4, 4};
    natural.resize(count);
    for (std::size_t c = 0; c < count; ++c)
        if (c != iconColumn)
            natural[c] = std::max(natural[c], context.measure.width(head[c], type::smallStrong) + 0.2);
    for (const MatRow& row : rows)
        for (std::size_t c = 0; c < count; ++c)
            // What belongs to no tier runs over the columns.
            if (c != iconColumn && row.tier >= 0)
                natural[c] = std::max(natural[c], context.measure.width(row.cells[c], type::small) + 0.2);
    // Whorls of many leaves and words of other tongues wrap inside their columns.
    double spare = widest - rowGap * static_cast<double>(count - 1) - natural[0] - iconRoom;
    if (count == 5)
        spare -= natural[4] = std::min(natural[4], 16.0);
    natural[2] = std::min(natural[2], std::max(spare * 0.5, spare - natural[3]));
    natural[3] = std::min(natural[3], spare - natural[2]);
    std::vector<Table::Column> columns;
    for (std::size_t c = 0; c < count; ++c)
        columns.push_back({natural[c], c == 0 || c == 4 ? Align::right : Align::left});
    return Table(std::move(columns), type::small, rowGap);
}

} // namespace

MatRows::MatRows(const SheetContext& context, const Stem& stem, const MatStem& mat)
    : table_({}, type::small), stem_(stem) {
    head_ = {context.words.word(SheetWord::columnTier), "", context.words.word(SheetWord::columnFaces),
             context.words.word(SheetWord::columnLeavesOf), context.words.word(SheetWord::columnWrap)};
    evenWrap_ = stemwright::evenWrap(mat);
    if (evenWrap_)
        head_.pop_back();
    rows_ = rowsOf(context, stem, mat, evenWrap_.has_value());
    table_ = tableOf(context, head_, rows_);
    for (MatRow& row : rows_) {
        // What belongs to no tier may run over the columns to its right.
        if (row.tier < 0)
            row.height =
                Table({{width() - table_.columns()[0].width - iconRoom - 2 * rowGap, Align::left}}, type::small)
                    .rowHeight(context, {row.cells[2]});
        else
            row.height = std::max(table_.rowHeight(context, row.cells), iconRoom - 0.6);
    }
    headHeight_ = table_.height(context, head_, type::smallStrong);
}

void MatRows::drawHead(Canvas& canvas, PointMm top) const {
    table_.row(canvas, top, head_, type::smallStrong, Ink::quiet);
}

void MatRows::draw(Canvas& canvas, double x, const MatRow& row) const {
    const double number = table_.columns()[0].width;
    if (row.tier < 0) {
        const double left = x + number + iconRoom + 2 * rowGap;
        Table({{x + width() - left, Align::left}}, type::small)
            .row(canvas, {left, row.top}, {row.cells[2]}, type::small, Ink::quiet);
        return;
    }
    table_.row(canvas, {x, row.top}, row.cells);
    // The tier from above, the viewer below: a spoke for each leaf.
    const Tier& tier = stem_.tiers[static_cast<std::size_t>(row.tier)];
    const PointMm middle{x + number + rowGap + iconRoom / 2, row.top + lineHeight(type::small) / 2 + 0.7};
    canvas.add(CircleMark{middle, 0.45, true, Ink::black, 0, Ink::black});
    for (std::size_t i = 0; i < tier.slots.size(); ++i) {
        const double turn = inDegrees(slotTurn(tier, i)) * pi / 180;
        canvas.line(middle, {middle.x - 1.6 * std::cos(turn), middle.y + 1.6 * std::sin(turn)}, 0.45);
    }
}

void spreadRows(std::vector<MatRow>& rows, const std::vector<double>& wanted, double top, double bottom) {
    double floor = top;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        rows[i].top = std::max(wanted[i] - rows[i].height / 2, floor);
        floor = rows[i].top + rows[i].height;
    }
    double ceiling = bottom;
    for (std::size_t i = rows.size(); i-- > 0;) {
        rows[i].top = std::min(rows[i].top, ceiling - rows[i].height);
        ceiling = rows[i].top;
    }
}

} // namespace stemwright
