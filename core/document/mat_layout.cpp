#include "core/document/mat_layout.h"

#include <algorithm>

namespace stemwright {

MatLayout::MatLayout(const SheetContext& context, std::size_t place, const BoxMm& room, bool landscape)
    : context_(context), place_(place), stem_(context.plan.stems[place]), room_(room), landscape_(landscape) {
    // Headings first: they decide how tall a leaf may be. The list's width does not depend on the leaves.
    const MatStem plain = layFlat(context.plan, stem_, {1e9, 1e9});
    const MatRows list(context, stem_, plain);
    list_ = list.width();
    const double views = room.width - mat::scaleRoom - mat::listGap - list_;
    even_ = list.evenWrap();
    facesInViews_ = list.facesInViews();
    const double narrowest = mat::scaleRoom + 2 * mat::leastHalf + mat::listGap + list_;
    const double tall =
        room.height - headHeight(narrowest, 2) - viewHead() - mat::blockFoot - 2 * joinOverlap - 2;
    const double both = 2 * std::max(plain.halfFront + mat::viewEdge, mat::leastHalf) * plain.frontView +
                        2 * std::max(plain.halfSide + mat::viewEdge, mat::leastHalf) * plain.sideView +
                        mat::viewGap;
    if (both <= views || !plain.frontView || !plain.sideView) {
        parts_.push_back({{plain.frontView, plain.sideView}, {}});
    } else {
        parts_.push_back({{true, false}, {}});
        parts_.push_back({{false, true}, {}});
    }
    mat_ = layFlat(context.plan, stem_, {std::max(views / 2 - mat::viewEdge, 5.0), tall});
    for (auto& [shown, parts] : parts_)
        parts = cut(shown);
    if (parts_.size() > 1 || parts_[0].second.size() == 1 || mat_.steeper || mat_.tooLong)
        return;
    // Rather than carry a little of a stem over, its heading gives way.
    beside_ = room.width - widthOf(parts_[0].first) - mat::besideGap;
    if (beside_ >= mat::leastBeside)
        if (std::vector<MatPart> whole = cut(parts_[0].first); whole.size() == 1) {
            parts_[0].second = std::move(whole);
            return;
        }
    beside_ = 0;
}

double MatLayout::widthOf(const MatViews& shown) const {
    const double front = shown.front && mat_.frontView ? 2 * half(false) : 0;
    const double side = shown.side && mat_.sideView ? 2 * half(true) : 0;
    return mat::scaleRoom + front + (front > 0 && side > 0 ? mat::viewGap : 0) + side + mat::listGap + list_;
}

std::size_t MatLayout::sheets() const {
    std::size_t count = 0;
    for (const auto& [shown, parts] : parts_)
        count += parts.size();
    return count;
}

std::vector<MatBlock> MatLayout::blocks() const {
    std::vector<MatBlock> out;
    for (const auto& [shown, parts] : parts_)
        for (const MatPart& part : parts)
            out.push_back(block(shown, part, static_cast<int>(out.size()) + 1));
    return out;
}

std::vector<std::pair<std::string, TextStyle>> MatLayout::heading() const {
    const StemFigures& figures = context_.figures.stems[place_];
    std::vector<std::pair<std::string, TextStyle>> lines;
    lines.push_back({says(SheetWord::arrangementLine,
                          {context_.words.arrangement(stem_.arrangement), std::to_string(figures.tiers),
                           context_.words.count(figures.leaves), context_.words.size(figures.height)}),
                     type::small});
    std::string cuts;
    for (std::size_t i = 0; i < figures.wraps.size(); ++i) {
        if (figures.wraps[i].toCut <= Length{})
            continue;
        cuts += (cuts.empty() ? "" : "   ") +
                says(SheetWord::cutWrap, {context_.words.wrap(context_.plan.binding.wraps[i]),
                                          context_.words.cut(figures.wraps[i].toCut)});
    }
    if (stem_.core)
        cuts += (cuts.empty() ? "" : "   ") +
                says(SheetWord::coreLine, {context_.words.wire(stem_.core->diameter, stem_.core->gauge)});
    if (!cuts.empty())
        lines.push_back({cuts, type::smallStrong});
    if (even_)
        lines.push_back({says(SheetWord::evenWrap, {context_.words.size(*even_)}), type::small});
    return lines;
}

double MatLayout::headHeight(double width, int remarks) const {
    std::vector<Mark> none;
    const Canvas canvas(context_, none);
    double height = 0;
    if (beside_ == 0) {
        height += canvas.paragraphHeight(width - mat::sheetNumber, says(SheetWord::matOf, {stem_.name}),
                                         type::heading);
        for (const auto& [text, style] : heading())
            height += canvas.paragraphHeight(width, text, style);
    }
    if (stem_.tiers.empty())
        height += canvas.paragraphHeight(width, says(SheetWord::noLeaves), type::small);
    // Room for the remarks on leaves that gave way.
    height += remarks * 2 * lineHeight(type::small);
    return height + mat::headGap;
}

bool MatLayout::shows(const MatViews& shown, const MatTier& tier) const {
    if (parts_.size() == 1)
        return true;
    if (tier.leaves.empty())
        return shown.front;
    return std::any_of(tier.leaves.begin(), tier.leaves.end(),
                       [&](const MatLeaf& leaf) { return leaf.sideView ? shown.side : shown.front; });
}

std::vector<MatPart> MatLayout::cut(const MatViews& shown) const {
    const MatRows list(context_, stem_, mat_);
    std::vector<MatRow> rows;
    for (const MatRow& row : list.rows())
        if (row.tier < 0 || shows(shown, mat_.tiers[static_cast<std::size_t>(row.tier)]))
            rows.push_back(row);
    const double window = std::max(room_.height - headHeight(widthOf(shown), mat_.steeper + mat_.tooLong) -
                                       std::max(viewHead(), list.headHeight()) - mat::blockFoot,
                                   mat::leastWindow);
    std::vector<MatPart> parts;
    std::size_t next = 0;
    double from = 0;
    for (;;) {
        MatPart part;
        part.first = parts.empty();
        part.from = from;
        part.top = part.first ? -3 : from - joinOverlap;
        part.bottom = part.first ? 0 : from;
        double listed = part.first ? 0 : mat::joinLine;
        for (; next < rows.size(); ++next) {
            const MatRow& row = rows[next];
            double up = 2, down = 2;
            if (row.tier >= 0) {
                const MatTier& tier = mat_.tiers[static_cast<std::size_t>(row.tier)];
                up = std::max(tier.up(), up);
                down = std::max(tier.down(), down);
            }
            const double top = std::min(part.top, row.along - up);
            const bool isLast = next + 1 == rows.size();
            const double bottom =
                std::max(part.bottom, row.along + (isLast ? down : std::max(down, joinOverlap + 2)));
            const double more = listed + row.height + (isLast ? 0 : mat::joinLine);
            const bool fits = bottom - top <= window && more <= window;
            if (!fits && !(part.rows.empty() && row.along <= from))
                break;
            part.top = top;
            part.bottom = std::max(part.bottom, row.along + down);
            listed += row.height;
            part.rows.push_back(row);
        }
        part.last = next == rows.size();
        if (part.last) {
            part.to = mat_.length;
            part.bottom = std::max(part.bottom, mat_.length);
            parts.push_back(std::move(part));
            return parts;
        }
        // Half way to what comes next, or as far as the paper reaches on a long bare stretch.
        const double before = part.rows.empty() ? from : std::max(part.rows.back().along, from);
        const double reach = part.top + window - joinOverlap;
        part.to = std::min(rows[next].tier >= 0 ? (before + rows[next].along) / 2 : rows[next].along, reach);
        // A joint by itself takes a sheet even where its leaves leave no room for the overlap.
        if (part.to <= from)
            part.to = std::min(reach, rows[next].along);
        part.bottom = std::max(part.bottom, part.to + joinOverlap);
        from = part.to;
        parts.push_back(std::move(part));
    }
}

std::vector<MatBlock> matBlocks(const SheetContext& context, std::size_t stem, const BoxMm& upright,
                                const BoxMm& lying) {
    const MatLayout up(context, stem, upright, false);
    if (up.sheets() == 1 && up.whole())
        return up.blocks();
    const MatLayout across(context, stem, lying, true);
    if ((across.whole() && !up.whole()) || (across.whole() == up.whole() && across.sheets() < up.sheets()))
        return across.blocks();
    return up.blocks();
}

} // namespace stemwright
