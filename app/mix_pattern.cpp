#include "app/mix_pattern.h"

#include <QPainter>
#include <QPen>

#include <algorithm>
#include <cmath>
#include <vector>

namespace stemwright {

namespace {

constexpr double pi = 3.14159265358979323846;

enum class Spot { none, dot, ring, plus, dash };

/// Lines at up to two angles, or spots on a staggered grid.
struct Pattern {
    std::vector<double> angles; ///< degrees, clockwise from level
    double apart = 1.3;         ///< mm
    Spot spot = Spot::none;
};

const std::vector<Pattern>& patterns() {
    static const std::vector<Pattern> all{
        {{-45}, 1.3, Spot::none},   {{}, 1.5, Spot::dot},         {{45}, 1.3, Spot::none},
        {{}, 1.0, Spot::none},      {{0, 90}, 2.1, Spot::none},   {{}, 2.0, Spot::ring},
        {{0}, 1.2, Spot::none},     {{-45, 45}, 1.7, Spot::none}, {{90}, 1.2, Spot::none},
        {{}, 2.0, Spot::plus},      {{-20}, 0.8, Spot::none},     {{}, 1.7, Spot::dash},
        {{70}, 0.8, Spot::none},    {{}, 0.9, Spot::dot},         {{-70, 70}, 1.7, Spot::none},
        {{20, 90}, 1.9, Spot::none}};
    return all;
}

void paintLines(QPainter& painter, const QPolygonF& outline, double angle, double apart) {
    // Turned so that the lines lie level, each crosses the outline an even number of times.
    const double c = std::cos(angle * pi / 180), s = std::sin(angle * pi / 180);
    const auto turned = [&](QPointF p) { return QPointF(p.x() * c + p.y() * s, -p.x() * s + p.y() * c); };
    const auto back = [&](QPointF p) { return QPointF(p.x() * c - p.y() * s, p.x() * s + p.y() * c); };
    QPolygonF level;
    level.reserve(outline.size());
    for (const QPointF& p : outline)
        level << turned(p);
    const QRectF box = level.boundingRect();
    for (double y = std::ceil(box.top() / apart) * apart; y < box.bottom(); y += apart) {
        std::vector<double> crossings;
        for (qsizetype i = 0; i < level.size(); ++i) {
            const QPointF a = level[i], b = level[(i + 1) % level.size()];
            if ((a.y() <= y) != (b.y() <= y))
                crossings.push_back(a.x() + (y - a.y()) / (b.y() - a.y()) * (b.x() - a.x()));
        }
        std::sort(crossings.begin(), crossings.end());
        for (std::size_t i = 0; i + 1 < crossings.size(); i += 2)
            painter.drawLine(back({crossings[i], y}), back({crossings[i + 1], y}));
    }
}

void paintSpots(QPainter& painter, const QPolygonF& outline, Spot spot, double apart, double mm) {
    const QRectF box = outline.boundingRect();
    const double size = 0.28 * mm;
    bool odd = false;
    for (double y = std::ceil(box.top() / apart) * apart; y < box.bottom(); y += apart * 0.8, odd = !odd)
        for (double x = std::ceil(box.left() / apart) * apart + (odd ? apart / 2 : 0); x < box.right();
             x += apart) {
            const QPointF at(x, y);
            // What would stick out of the leaf is left out.
            if (!outline.containsPoint(at + QPointF(size, 0), Qt::OddEvenFill) ||
                !outline.containsPoint(at - QPointF(size, 0), Qt::OddEvenFill))
                continue;
            switch (spot) {
            case Spot::dot:
                painter.setBrush(painter.pen().color());
                painter.drawEllipse(at, size * 0.6, size * 0.6);
                painter.setBrush(Qt::NoBrush);
                break;
            case Spot::ring:
                painter.drawEllipse(at, size * 1.2, size * 1.2);
                break;
            case Spot::plus:
                painter.drawLine(at - QPointF(size, 0), at + QPointF(size, 0));
                painter.drawLine(at - QPointF(0, size), at + QPointF(0, size));
                break;
            case Spot::dash:
                painter.drawLine(at - QPointF(size, 0), at + QPointF(size, 0));
                break;
            case Spot::none:
                break;
            }
        }
}

} // namespace

int patternOf(const Plan& plan, MixId mix) {
    const Mix* found = find(plan, mix);
    return found ? static_cast<int>(found - plan.mixes.data()) : -1;
}

void paintPattern(QPainter& painter, const QPolygonF& outline, int pattern, double unitsPerMm,
                  const QPen& pen) {
    if (pattern < 0 || outline.size() < 3)
        return;
    const auto count = static_cast<int>(patterns().size());
    const Pattern& chosen = patterns()[static_cast<std::size_t>(pattern % count)];
    const double apart = chosen.apart * unitsPerMm * (1 + 0.6 * (pattern / count));
    painter.save();
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    for (const double angle : chosen.angles)
        paintLines(painter, outline, angle, apart);
    if (chosen.spot != Spot::none)
        paintSpots(painter, outline, chosen.spot, apart, unitsPerMm);
    painter.restore();
}

} // namespace stemwright
