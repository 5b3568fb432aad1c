#include "core/document/sheet_flow.h"
#include "core/figures/pot_shape.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double overlap = 10;  ///< of neighbouring parts of a pot that is larger than the paper
constexpr double partRoom = 30; ///< for "part 1 of 4"
constexpr double outside = 8;   ///< room around the opening for "front" and "back"

/// The part of a line inside a box; false where there is none (Liang and Barsky's way, textbook).
bool clipped(PointMm& a, PointMm& b, const BoxMm& box) {
    double from = 0, to = 1;
    const double dx = b.x - a.x, dy = b.y - a.y;
    const auto side = [&](double p, double q) {
        if (p == 0)
            return q >= 0;
        const double t = q / p;
        (p < 0 ? from : to) = p < 0 ? std::max(from, t) : std::min(to, t);
        return from <= to;
    };
    if (!side(-dx, a.x - box.x) || !side(dx, box.right() - a.x) || !side(-dy, a.y - box.y) ||
        !side(dy, box.bottom() - a.y))
        return false;
    const PointMm start = a;
    a = {start.x + dx * from, start.y + dy * from};
    b = {start.x + dx * to, start.y + dy * to};
    return true;
}

} // namespace

std::vector<Page> potPages(const SheetContext& context) {
    const SheetFrame frame(context, SheetPage::pot, {SheetCaution::tallPlant, SheetCaution::wetClay});
    const SheetWords& words = context.words;
    const Pot& pot = context.plan.pot;
    const double radius = inMillimetres(pot.topDiameter) / 2;
    const std::vector<PointMm> outline = openingOutline(pot, 240);
    const std::vector<std::size_t> stems = context.stems();
    std::string missing;
    int unplaced = 0;
    double reach = std::max(
        radius, radius * breadthPart(pot)); // stems may stand beyond the rim of a pot that was changed since
    for (const std::size_t i : stems) {
        const Stem& stem = context.plan.stems[i];
        if (!stem.standing) {
            missing += (missing.empty() ? "" : ", ") + stem.name;
            ++unplaced;
            continue;
        }
        reach = std::max({reach, std::abs(inMillimetres(stem.standing->x)) + 6,
                          std::abs(inMillimetres(stem.standing->y)) + 6});
    }

    // The words on the first page take room from every part, so that all parts are alike.
    const BoxMm room = frame.room(false);
    std::vector<Mark> none;
    const Canvas measure(context, none);
    const std::string line =
        words.word(SheetWord::potLine, {pot.name.empty() ? words.word(SheetWord::potTitle) : pot.name,
                                        pot.opening == PotOpening::round
                                            ? words.size(pot.topDiameter)
                                            : words.size(pot.topDiameter) + " × " + words.size(pot.topBreadth),
                                        words.size(pot.depth)});
    std::string note = missing.empty() ? "" : words.word(SheetWord::potNotPlaced, {missing});
    // So many that their names would push the pot off the page are counted instead.
    if (measure.paragraphHeight(room.width, note, type::small) > room.height / 4)
        note = words.word(SheetWord::potNotPlaced, {words.count(unplaced)});
    const double text = measure.paragraphHeight(room.width - partRoom, line, type::text) +
                        measure.paragraphHeight(room.width, words.word(SheetWord::potSpots), type::text) +
                        measure.paragraphHeight(room.width, note, type::small) + 3;
    const double width = room.width, height = room.height - text;
    const double whole = 2 * (reach + outside);
    const auto parts = [&](double window) {
        return whole <= window ? 1 : static_cast<int>(std::ceil((whole - overlap) / (window - overlap)));
    };
    const int across = parts(width), down = parts(height);

    std::vector<Page> pages;
    for (int part = 0; part < across * down; ++part) {
        Page page = frame.page(false, words.word(SheetWord::potTitle));
        Canvas canvas(context, page.marks);
        double y = room.y;
        y += canvas.paragraph({room.x, y}, width - partRoom, line, type::text);
        y += canvas.paragraph({room.x, y}, width, words.word(SheetWord::potSpots), type::text);
        if (part == 0 && !note.empty())
            canvas.paragraph({room.x, y}, width, note, type::small, Align::left, Ink::accent);
        const BoxMm window{room.x, room.y + text, width, height};
        if (across * down > 1)
            canvas.text(
                {room.right(), room.y + ascent(type::text)},
                words.word(SheetWord::potPart, {std::to_string(part + 1), std::to_string(across * down)}),
                type::strong, Align::right);
        // Where the pot's middle is on this page, seen through a window that moves over it.
        const double stepX = across > 1 ? (whole - width) / (across - 1) : 0;
        const double stepY = down > 1 ? (whole - height) / (down - 1) : 0;
        const PointMm middle{across > 1 ? window.x + whole / 2 - stepX * (part % across) : window.x + width / 2,
                             down > 1 ? window.y + whole / 2 - stepY * (part / across)
                                      : window.y + std::min(whole, height) / 2};
        const auto stroke = [&](PointMm a, PointMm b, double thick, Ink ink) {
            if (clipped(a, b, window))
                canvas.line(a, b, thick, ink);
        };
        for (std::size_t i = 0; i < outline.size(); ++i) {
            const PointMm &a = outline[i], &b = outline[(i + 1) % outline.size()];
            stroke({middle.x + radius * a.x, middle.y + radius * a.y},
                   {middle.x + radius * b.x, middle.y + radius * b.y}, 0.35, Ink::black);
        }
        stroke({middle.x - 3, middle.y}, {middle.x + 3, middle.y}, 0.15, Ink::quiet);
        stroke({middle.x, middle.y - 3}, {middle.x, middle.y + 3}, 0.15, Ink::quiet);
        const auto label = [&](PointMm at, const std::string& what) {
            TextMark mark{
                at, Align::middle, what, type::smallStrong, Ink::quiet, canvas.width(what, type::smallStrong),
                0};
            if (window.contains(boxOf(mark, context.plan)))
                canvas.add(mark);
        };
        label({middle.x, middle.y + radius * breadthPart(pot) + 4.5}, words.word(SheetWord::potFront));
        label({middle.x, middle.y - radius * breadthPart(pot) - 2.5}, words.word(SheetWord::potBack));
        std::vector<BoxMm> taken;
        for (const std::size_t i : stems) {
            const Stem& stem = context.plan.stems[i];
            if (!stem.standing)
                continue;
            // y runs to the back, and the front is at the bottom of the page.
            const PointMm at{middle.x + inMillimetres(stem.standing->x),
                             middle.y - inMillimetres(stem.standing->y)};
            const double half = std::max(inMillimetres(context.figures.stems[i].bundle), 1.0) / 2;
            if (!window.contains({at.x - half - 1.6, at.y - half - 1.6, 2 * half + 3.2, 2 * half + 3.2}))
                continue;
            canvas.add(CircleMark{at, half, true, Ink::wire, 0.2, Ink::black});
            canvas.line({at.x - half - 1.4, at.y}, {at.x + half + 1.4, at.y}, 0.12);
            canvas.line({at.x, at.y - half - 1.4}, {at.x, at.y + half + 1.4}, 0.12);
            page.stems.push_back(stem.id);
            // The name beside the mark where it is free, the number where only that fits.
            for (const std::string& name : {stem.name, std::to_string(i + 1)}) {
                bool put = false;
                for (const double side : {1.0, -1.0}) {
                    TextMark mark{{at.x + side * (half + 1.8), at.y - half - 0.4},
                                  side > 0 ? Align::left : Align::right,
                                  name,
                                  type::small,
                                  Ink::black,
                                  canvas.width(name, type::small),
                                  0};
                    const BoxMm box = boxOf(mark, context.plan);
                    if (!window.contains(box) ||
                        std::any_of(taken.begin(), taken.end(),
                                    [&](const BoxMm& other) { return other.overlaps(box); }))
                        continue;
                    taken.push_back(box);
                    canvas.add(mark);
                    put = true;
                    break;
                }
                if (put)
                    break;
            }
        }
        pages.push_back(std::move(page));
    }
    return pages;
}

} // namespace stemwright
