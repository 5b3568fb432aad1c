#include "core/document/mat_rows.h"

#include "core/document/mat_measures.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stemwright {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double widest = 74; ///< of the list
constexpr double iconRoom = 3.4;
constexpr double rowGap = 1.3; ///< between the columns
constexpr std::size_t iconColumn = 1;
constexpr double leastBare = 24; ///< for what belongs to no tier, before it takes the whole width

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

bool viewsSayFaces(const SheetContext& context, const Stem& stem) {
    if (stem.tiers.empty() || std::any_of(stem.tiers.begin(), stem.tiers.end(),
                                          [](const Tier& tier) { return tier.slots.size() != 2; }))
        return false;
    const SheetWords& words = context.words;
    const auto fits = [&](Side first, Plane plane, Side last) {
        double width = 2 * (mat::viewWordGap + mat::viewEdge);
        for (const std::string& said : {words.side(first), words.plane(plane), words.side(last)})
            width += context.measure.width(said, type::small);
        return width <= 2 * mat::leastHalf;
    };
    return fits(Side::left, Plane::sideToSide, Side::right) &&
           fits(Side::front, Plane::frontToBack, Side::back);
}

std::vector<MatRow> rowsOf(const SheetContext& context, const Stem& stem, const MatStem& mat, bool faces,
                           bool even) {
    std::vector<MatRow> rows;
    for (std::size_t t = 0; t < stem.tiers.size(); ++t) {
        const bool last = t + 1 == stem.tiers.size();
        MatRow row{mat.tiers[t].along, static_cast<int>(t), {}, 0, 0};
        row.cells = {std::to_string(t + 1), ""};
        if (faces)
            row.cells.push_back(facing(context, stem.tiers[t]));
        row.cells.push_back(codes(context, stem.tiers[t]));
        if (!even)
            row.cells.push_back(last ? context.words.word(SheetWord::tail)
                                     : context.words.size(millimetres(mat.tiers[t].wrap)));
        rows.push_back(std::move(row));
    }
    const bool planted = mat.length - mat.clay > 0.05;
    const auto bare = [&](double along, std::string said) {
        rows.push_back({along, -1, {std::move(said)}, 0, 0});
    };
    // The tail's length stands in its middle, above the clay line where there is one.
    const double tail = inMillimetres(stem.tail);
    bare(mat.length - tail + tail / 2,
         context.words.word(SheetWord::tailBelow, {context.words.size(stem.tail)}));
    if (planted)
        bare(mat.clay, context.words.word(SheetWord::clayLine));
    bare(mat.length, context.words.word(planted ? SheetWord::foot : SheetWord::clayLine));
    std::stable_sort(rows.begin(), rows.end(),
                     [](const MatRow& a, const MatRow& b) { return a.along < b.along; });
    return rows;
}

Table tableOf(const SheetContext& context, const std::vector<std::string>& head,
              const std::vector<MatRow>& rows, bool faces, bool even) {
    const std::size_t count = head.size();
    std::vector<double> natural(count, 4);
    natural[iconColumn] = iconRoom;
    for (std::size_t c = 0; c < count; ++c)
        if (c != iconColumn)
            natural[c] = std::max(natural[c], context.measure.width(head[c], type::smallStrong) + 0.2);
    for (const MatRow& row : rows)
        for (std::size_t c = 0; c < count; ++c)
            if (c != iconColumn && row.tier >= 0)
                natural[c] = std::max(natural[c], context.measure.width(row.cells[c], type::small) + 0.2);
    // Whorls of many leaves and words of other tongues wrap inside their columns.
    double spare = widest - rowGap * static_cast<double>(count - 1) - natural[0] - iconRoom;
    if (!even)
        spare -= natural.back() = std::min(natural.back(), 16.0);
    double& leaves = natural[faces ? 3 : 2];
    if (faces) {
        natural[2] = std::min(natural[2], std::max(spare * 0.5, spare - leaves));
        spare -= natural[2];
    }
    leaves = std::min(leaves, spare);
    // What belongs to no tier takes no more than two lines of a narrow list.
    const double others =
        std::accumulate(natural.begin(), natural.end(), 0.0) - leaves + rowGap * static_cast<double>(count - 1);
    for (const MatRow& row : rows)
        while (row.tier < 0 && others + leaves < leastBare &&
               context.measure.lines(row.cells[0], type::small, others + leaves).size() > 2)
            leaves += 0.5;
    std::vector<Table::Column> columns;
    for (std::size_t c = 0; c < count; ++c)
        columns.push_back({natural[c], c == 0 || (!even && c + 1 == count) ? Align::right : Align::left});
    return Table(std::move(columns), type::small, rowGap);
}

} // namespace

MatRows::MatRows(const SheetContext& context, const Stem& stem, const MatStem& mat)
    : table_({}, type::small), stem_(stem) {
    evenWrap_ = stemwright::evenWrap(mat);
    facesInViews_ = viewsSayFaces(context, stem);
    const bool faces = !facesInViews_, even = evenWrap_.has_value();
    head_ = {context.words.word(SheetWord::columnTier), ""};
    if (faces)
        head_.push_back(context.words.word(SheetWord::columnFaces));
    head_.push_back(context.words.word(SheetWord::columnLeavesOf));
    if (!even)
        head_.push_back(context.words.word(SheetWord::columnWrap));
    rows_ = rowsOf(context, stem, mat, faces, even);
    table_ = tableOf(context, head_, rows_, faces, even);
    for (MatRow& row : rows_)
        if (row.tier < 0)
            row.height =
                Table({{width() - bareLeft(), Align::left}}, type::small).rowHeight(context, row.cells);
        else
            row.height = std::max(table_.rowHeight(context, row.cells), iconRoom - 0.6);
    headHeight_ = table_.height(context, head_, type::smallStrong);
}

double MatRows::bareLeft() const {
    const double left = table_.columns()[0].width + iconRoom + 2 * rowGap;
    return width() - left < leastBare ? 0 : left;
}

void MatRows::drawHead(Canvas& canvas, PointMm top) const {
    table_.row(canvas, top, head_, type::smallStrong, Ink::quiet);
}

void MatRows::draw(Canvas& canvas, double x, const MatRow& row) const {
    const double number = table_.columns()[0].width;
    if (row.tier < 0) {
        Table({{width() - bareLeft(), Align::left}}, type::small)
            .row(canvas, {x + bareLeft(), row.top}, row.cells, type::small, Ink::quiet);
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
