#include "core/figures/leaf_rows.h"

#include "core/figures/leaf_beads.h"
#include "core/figures/leaf_make.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace stemwright {

namespace {

constexpr double pi = 3.14159265358979323846;
constexpr double beadShape = 1.5;  ///< breadth over length, see leafRows()
constexpr int mostRings = 20;      ///< around the centre row
constexpr int pointsAQuarter = 12; ///< of a ring: a chord is then within 0.1 % of its arc
constexpr double pointPower = 1.7; ///< how a pointed end swells from its point: 1 straight, 2 a parabola
constexpr double innerSwell = 0.8; ///< added to the powers of the innermost rows, by eye

/// A closed curve of the family that the outline and the rows belong to. Heights are measured up from the base.
struct Ring {
    double bottom = 0;
    double top = 0;
    double half = 0;  ///< the half width where it is widest
    double inner = 0; ///< 0 for the outline, growing to 1 at the centre: inner rows run straighter beside it
    LeafEnd tipEnd = LeafEnd::round;
    LeafEnd baseEnd = LeafEnd::round;

    /// The widest place, nearer to the round end.
    double middle() const {
        const double part = baseEnd == tipEnd ? 0.5 : baseEnd == LeafEnd::round ? 0.44 : 0.56;
        return bottom + (top - bottom) * part;
    }
};

/// Half a side: the point at `t` from 0 at the end to 1 at the widest place, as parts of its height and width.
PointMm quarter(LeafEnd end, double t, double inner) {
    if (end == LeafEnd::round) {
        // An ellipse, swelling towards a rectangle (a superellipse) as rows come nearer to the centre row.
        const double power = 2 / (2 + innerSwell * inner);
        return {std::pow(std::sin(t * pi / 2), power), 1 - std::pow(std::cos(t * pi / 2), power)};
    }
    return {1 - std::pow(1 - t, pointPower + innerSwell * inner), t};
}

std::vector<PointMm> curve(const Ring& ring) {
    std::vector<PointMm> left;
    const double middle = ring.middle();
    for (int i = 0; i <= pointsAQuarter; ++i) {
        const PointMm p = quarter(ring.baseEnd, static_cast<double>(i) / pointsAQuarter, ring.inner);
        left.push_back({-ring.half * p.x, -(ring.bottom + (middle - ring.bottom) * p.y)});
    }
    for (int i = pointsAQuarter - 1; i >= 0; --i) {
        const PointMm p = quarter(ring.tipEnd, static_cast<double>(i) / pointsAQuarter, ring.inner);
        left.push_back({-ring.half * p.x, -(ring.top - (ring.top - middle) * p.y)});
    }
    std::vector<PointMm> all = left;
    for (auto p = left.rbegin() + 1; p + 1 != left.rend(); ++p)
        all.push_back({-p->x, p->y});
    return all;
}

double lengthOf(const std::vector<PointMm>& run, bool closed) {
    double sum = 0;
    for (std::size_t i = 1; i < run.size(); ++i)
        sum += std::hypot(run[i].x - run[i - 1].x, run[i].y - run[i - 1].y);
    if (closed)
        sum += std::hypot(run.front().x - run.back().x, run.front().y - run.back().y);
    return sum;
}

struct Plot {
    std::vector<LeafRow> rows;
    std::vector<double> lengths;
    double pitch = 0;
    double total = 0;
};

LeafShape sensible(LeafShape shape) {
    shape.length = std::max(shape.length, 0.1);
    shape.width = std::max(shape.width, 0.1);
    shape.beads = std::clamp(shape.beads, 1, mostBeadsShown);
    if (!shape.rows.empty() && std::none_of(shape.rows.begin(), shape.rows.end(), [](int n) { return n > 0; }))
        shape.rows.clear();
    shape.loops = shape.loops && !shape.rows.empty();
    return shape;
}

/// The paths of the rows with `rings` rings around the centre row, or with no centre row for loops.
Plot plot(const LeafShape& shape, int rings) {
    Plot out;
    out.pitch = shape.width / (shape.loops ? 2 * rings : 2 * rings + 1);
    // From a ring to the next at either end; a leaf that is broader than long has its rows closer there.
    const auto reach = [&](LeafEnd end) {
        return std::min(out.pitch * (end == LeafEnd::pointed ? shape.pointReach : 1.0),
                        0.42 * shape.length / (rings + 0.5));
    };
    const double low = reach(shape.baseEnd), high = reach(shape.tipEnd);
    const double middle = shape.loops ? 0.5 : 0; // an innermost loop lies flat around nothing
    for (int ring = rings; ring >= (shape.loops ? 1 : 0); --ring) {
        const double inside = rings - ring + 0.5;
        const double bottom = inside * low, top = shape.length - inside * high;
        LeafRow row;
        if (ring == 0) {
            // The centre row's beads end where they meet the first ring, so the path is of whole beads.
            const double spareLow = rings == 0 ? inside * low : low / 2;
            const double spareHigh = rings == 0 ? inside * high : high / 2;
            row.run = {{0, -(bottom - spareLow)}, {0, -(top + spareHigh)}};
            row.closed = false;
        } else {
            row.run = curve({bottom, top, (ring - middle) * out.pitch,
                             1.0 - static_cast<double>(ring) / (rings + 1), shape.tipEnd, shape.baseEnd});
        }
        out.lengths.push_back(lengthOf(row.run, row.closed));
        out.total += out.lengths.back();
        out.rows.push_back(std::move(row));
    }
    return out;
}

/// Whole numbers in proportion to the lengths that add up to `count`: largest remainders.
std::vector<std::size_t> shareOut(const std::vector<double>& lengths, double total, int count) {
    std::vector<std::size_t> out(lengths.size());
    std::vector<std::size_t> order(lengths.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::vector<double> left(lengths.size());
    std::size_t given = 0;
    for (std::size_t i = 0; i < lengths.size(); ++i) {
        const double exact = count * lengths[i] / total;
        out[i] = static_cast<std::size_t>(exact);
        left[i] = exact - static_cast<double>(out[i]);
        given += out[i];
    }
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return left[a] > left[b]; });
    for (std::size_t i = 0; given < static_cast<std::size_t>(count); ++i, ++given)
        ++out[order[i % order.size()]];
    return out;
}

/// The rows as they are known; more beads than are shown become fewer in the same proportions.
std::vector<std::size_t> knownRows(const std::vector<int>& rows) {
    std::vector<double> counts;
    double sum = 0;
    for (const int count : rows) {
        counts.push_back(std::max(count, 0));
        sum += counts.back();
    }
    return sum > 0 ? shareOut(counts, sum, std::min(static_cast<int>(sum), mostBeadsShown))
                   : std::vector<std::size_t>(rows.size(), 0);
}

/// Lays the row's beads along its run at equal distances, left and right alike: a round end lies between two
/// beads, and a pointed tip on one.
void lay(LeafRow& row, double length, double across, LeafEnd tipEnd, std::vector<BeadMark>& beads) {
    row.first = beads.size();
    const double step = length / static_cast<double>(row.count);
    const bool beadAtTip = row.closed && tipEnd == LeafEnd::pointed;
    const double start = beadAtTip && row.count % 2 == 0 ? 0.0 : 0.5;
    const std::size_t points = row.run.size();
    std::size_t at = 0;
    double before = 0; // length of the run up to point `at`
    for (std::size_t i = 0; i < row.count; ++i) {
        const double wanted = (static_cast<double>(i) + start) * step;
        PointMm a, b;
        double piece = 0;
        for (;;) {
            a = row.run[at];
            b = row.run[(at + 1) % points];
            piece = std::hypot(b.x - a.x, b.y - a.y);
            const bool last = at + (row.closed ? 1 : 2) >= points;
            if (before + piece >= wanted || last)
                break;
            before += piece;
            ++at;
        }
        const double part = piece > 0 ? std::clamp((wanted - before) / piece, 0.0, 1.0) : 0;
        double degrees = std::atan2(b.x - a.x, -(b.y - a.y)) * 180 / pi;
        degrees = std::fmod(degrees + 360, 180);
        beads.push_back({{a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part}, degrees, step, across, 0});
    }
}

/// How many beads, counted from the outer row inward, lie outside each colour's end.
std::vector<std::size_t> ends(const LeafRows& rows, const std::vector<double>& shares) {
    std::vector<double> weights = shares;
    // Shares that say nothing are alike.
    if (std::none_of(weights.begin(), weights.end(), [](double share) { return share > 0; }))
        std::fill(weights.begin(), weights.end(), 1.0);
    std::vector<std::size_t> out;
    std::size_t end = 0;
    for (const int beads : apportioned(static_cast<int>(rows.beads.size()), weights))
        out.push_back(end += static_cast<std::size_t>(beads));
    return out;
}

} // namespace

LeafShape shapeOf(const KindForm& form) {
    LeafShape shape{
        inMillimetres(form.length), inMillimetres(form.width), form.tipEnd, form.baseEnd, form.beads, {}};
    if (const std::vector<int> rows = patternRows(form); !rows.empty()) {
        shape.rows = ringsOf(rows, form.make->making);
        shape.loops = form.make->making == Making::loops;
        shape.pointReach = 1 / std::sin(inRadians(form.make->point));
    }
    return shape;
}

LeafRows leafRows(const LeafShape& wanted) {
    const LeafShape shape = sensible(wanted);
    Plot best;
    double bestOff = 0;
    const bool known = !shape.rows.empty();
    if (known)
        best = plot(shape, static_cast<int>(shape.rows.size()) - (shape.loops ? 0 : 1));
    for (int rings = 0; rings <= mostRings && !known; ++rings) {
        Plot next = plot(shape, rings);
        const double off = std::abs(std::log(next.pitch * shape.beads / next.total / beadShape));
        // More rings make longer rows closer together, so the ratio falls steadily.
        if (rings > 0 && off >= bestOff)
            break;
        best = std::move(next);
        bestOff = off;
    }
    LeafRows out;
    out.pitch = best.pitch;
    out.rows = std::move(best.rows);
    const std::vector<std::size_t> counts =
        known ? knownRows(shape.rows) : shareOut(best.lengths, best.total, shape.beads);
    for (std::size_t i = 0; i < out.rows.size(); ++i) {
        out.rows[i].count = counts[i];
        if (counts[i] > 0)
            lay(out.rows[i], best.lengths[i], out.pitch, shape.tipEnd, out.beads);
        else
            out.rows[i].first = out.beads.size();
    }
    colourRows(out, shape.shares);
    return out;
}

void colourRows(LeafRows& rows, const std::vector<double>& shares) {
    for (BeadMark& bead : rows.beads)
        bead.band = 0;
    if (shares.size() < 2)
        return;
    const std::vector<std::size_t> end = ends(rows, shares);
    for (const LeafRow& row : rows.rows) {
        std::vector<std::size_t> order(row.count);
        std::iota(order.begin(), order.end(), row.first);
        std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
            return rows.beads[a].middle.y < rows.beads[b].middle.y;
        });
        int band = 0;
        for (std::size_t i = 0; i < order.size(); ++i) {
            while (end[static_cast<std::size_t>(band)] <= row.first + i)
                ++band;
            rows.beads[order[i]].band = band;
        }
    }
}

std::vector<PointMm> leafOutline(const LeafShape& wanted) {
    const LeafShape shape = sensible(wanted);
    return curve({0, shape.length, shape.width / 2, 0, shape.tipEnd, shape.baseEnd});
}

} // namespace stemwright
