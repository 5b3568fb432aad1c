#include "app/board/board_tray.h"

#include "app/look.h"
#include "app/wording.h"

#include <QCoreApplication>
#include <QFontMetrics>
#include <QPainter>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int rowHeight = 34;
constexpr int headingHeight = 24;
constexpr int margin = 14;
/// Leaves lie on their sides, the longest of them this long.
constexpr double pictureLength = 40;
constexpr double pictureHeight = 26;
constexpr int nameLeft = margin + 45;
/// Mixes of which none is left are still there, only paler.
constexpr double absent = 0.3;

QString tr(const char* source) {
    return QCoreApplication::translate("Board", source);
}

} // namespace

void BoardTray::arrange(const Plan& plan, const Figures& figures) {
    rows_.clear();
    int top = headHeight;
    double longest = 1, widest = 1;
    KindId heading;
    for (std::size_t i = 0; i < figures.lines.size(); ++i) {
        const Leaf leaf = figures.lines[i].leaf;
        if (leaf.kind != heading) {
            heading = leaf.kind;
            rows_.push_back({true, heading, 0, {}, top, headingHeight});
            top += headingHeight;
            if (const Kind* kind = find(plan, heading)) {
                longest = std::max(longest, inMillimetres(kind->length));
                widest = std::max(widest, inMillimetres(kind->width));
            }
        }
        rows_.push_back({false, leaf.kind, i, leaf, top, rowHeight});
        top += rowHeight;
    }
    height_ = top + margin;
    scale_ = std::min(pictureLength / longest, pictureHeight / widest);
}

Place BoardTray::at(QPoint point) const {
    for (const Row& row : rows_)
        if (!row.heading && point.y() >= row.top && point.y() < row.top + row.height)
            return Place::of(row.leaf);
    return Place::ofTray();
}

QRect BoardTray::rect(Leaf line) const {
    for (const Row& row : rows_)
        if (!row.heading && row.leaf == line)
            return QRect(6, row.top, width - 12, row.height);
    return {};
}

Leaf BoardTray::next(Leaf line, int by) const {
    std::vector<Leaf> lines;
    for (const Row& row : rows_)
        if (!row.heading)
            lines.push_back(row.leaf);
    const auto it = std::find(lines.begin(), lines.end(), line);
    if (it == lines.end())
        return lines.empty() ? line : lines.front();
    const auto index = std::clamp<std::ptrdiff_t>(it - lines.begin() + by, 0, std::ssize(lines) - 1);
    return lines[static_cast<std::size_t>(index)];
}

Leaf BoardTray::nearest(int y) const {
    Leaf best;
    int least = -1;
    for (const Row& row : rows_)
        if (const int off = std::abs(row.top + row.height / 2 - y);
            !row.heading && (least < 0 || off < least)) {
            least = off;
            best = row.leaf;
        }
    return best;
}

void BoardTray::paint(QPainter& painter, const QRect& area, int offset, const Plan& plan,
                      const Figures& figures, LeafSprites& sprites, bool codes) const {
    painter.save();
    painter.setClipRect(area);
    painter.fillRect(area, look::side);
    const int up = area.top() - offset;
    const QRect head(area.left() + margin, up, area.width() - 2 * margin, headHeight);
    painter.setPen(look::ink);
    painter.setFont(look::font(look::Type::heading));
    painter.drawText(head, Qt::AlignLeft | Qt::AlignVCenter, tr("Tray"));
    painter.setPen(look::quiet);
    painter.setFont(look::font(look::Type::small));
    painter.drawText(head, Qt::AlignRight | Qt::AlignVCenter, tr("%1 left").arg(countText(figures.pot.inTray)));
    const QFontMetrics small(look::font(look::Type::small));
    const QFontMetrics strong(look::font(look::Type::strong));
    for (const Row& row : rows_) {
        const QRect at(area.left(), up + row.top, area.width(), row.height);
        if (!at.intersects(area))
            continue;
        painter.setFont(look::font(look::Type::small));
        if (row.heading) {
            painter.setPen(look::quiet);
            painter.drawText(
                at.adjusted(margin, 4, -margin, 0), Qt::AlignLeft | Qt::AlignVCenter,
                small.elidedText(nameText(plan, row.kind), Qt::ElideRight, at.width() - 2 * margin));
            continue;
        }
        const int left = row.line < figures.lines.size() ? figures.lines[row.line].left() : 0;
        const LeafLook leafLook = lookOf(plan, row.leaf);
        const QPointF base(at.left() + margin + (pictureLength - leafLook.length * scale_) / 2,
                           at.center().y() + 0.5);
        sprites.draw(painter, leafLook, base, 90, scale_, left > 0 ? 1 : absent);
        const QString count = countText(left);
        painter.setPen(left > 0 ? look::ink : look::quiet);
        painter.setFont(look::font(left > 0 ? look::Type::strong : look::Type::small));
        const QRect counts(at.right() - margin - strong.horizontalAdvance(count), at.top(),
                           strong.horizontalAdvance(count) + 1, at.height());
        painter.drawText(counts, Qt::AlignRight | Qt::AlignVCenter, count);
        painter.setFont(look::font(look::Type::small));
        QRect names(at.left() + nameLeft, at.top(), counts.left() - 6 - at.left() - nameLeft, at.height());
        // A code stands under its name: it takes nothing from the name and hides nothing of the leaf.
        if (const Mix* mix = codes ? find(plan, row.leaf.mix) : nullptr) {
            const QRect below(names.left(), names.center().y(), names.width(), names.height() / 2);
            painter.setPen(look::quiet);
            painter.drawText(below, Qt::AlignLeft | Qt::AlignTop, text(mix->code));
            names = QRect(names.left(), names.top(), names.width(), names.height() / 2 + 1);
        }
        painter.setPen(left > 0 ? look::ink : look::quiet);
        painter.drawText(names, int(Qt::AlignLeft) | int(codes ? Qt::AlignBottom : Qt::AlignVCenter),
                         small.elidedText(nameText(plan, row.leaf.mix), Qt::ElideRight, names.width()));
    }
    painter.restore();
}

} // namespace stemwright
