#include "core/document/sheet_flow.h"
#include "core/figures/pot_shape.h"

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double leastOverlap = 12; ///< of neighbouring parts of a pot that is larger than the paper
constexpr double partRoom = 30;     ///< for "sheet 1 of 4"
constexpr double outside = 8;       ///< room before and behind the opening for "front" and "back"
constexpr double beside = 1;        ///< at its left and right, for its line
constexpr double cross = 1.4;       ///< from a stem's mark to the ends of its cross
constexpr double markRoom = cross + 0.2;

/// How a length is parted so that each part fits into a window, all parts alike and each over its neighbour.
struct Parts {
    int count = 1;
    double each = 0; ///< of the paper; where one is enough, all of the window

    Parts(double whole, double window, double overlap)
        : count(whole <= window ? 1 : static_cast<int>(std::ceil((whole - overlap) / (window - overlap)))),
          each(count == 1 ? window : (whole + overlap * (count - 1)) / count) {}
};

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

/// The template for the clay: what is on it, and how it is parted where the pot is larger than the paper.
class PotTemplate {
public:
    PotTemplate(const SheetContext& context, const SheetFrame& frame);

    std::vector<Page> pages() const;

private:
    /// The sheets with the paper held one way.
    struct Held {
        bool landscape = false;
        BoxMm room{};
        std::string note{};
        double text = 0; ///< height of the words above the template; alike on every sheet
        Parts across{0, 1, 0}, down{0, 1, 0};

        int sheets() const { return across.count * down.count; }
    };
    /// One sheet: the window through which the pot is seen on the page, and where the pot's middle is.
    struct Sheet {
        int column = 0, row = 0;
        BoxMm window;
        PointMm middle;
        std::vector<BoxMm> taken{}; ///< where nothing more may be written
        std::vector<BoxMm>
            lines{}; ///< the rim and the middle's mark: nothing is written across them where it can be helped
    };

    Held held(bool landscape) const;
    int number(int column, int row) const { return row * held_.across.count + column + 1; }
    void words(Canvas& canvas, int sheet) const;
    void outline(Canvas& canvas, Sheet& sheet) const;
    void sides(Canvas& canvas, Sheet& sheet) const;
    void marks(Canvas& canvas, Sheet& sheet, std::vector<StemId>& shown) const;
    void name(Canvas& canvas, Sheet& sheet, std::size_t stem, PointMm at, double half) const;
    void joins(Canvas& canvas, Sheet& sheet) const;
    void join(Canvas& canvas, Sheet& sheet, bool upright, double at, int other, int letter) const;
    bool put(Canvas& canvas, Sheet& sheet, TextMark mark, bool acrossLines = true) const;

    std::string says(SheetWord word, const std::vector<std::string>& values = {}) const {
        return context_.words.word(word, values);
    }

    const SheetContext& context_;
    const SheetFrame& frame_;
    const Pot& pot_;
    double radius_;
    double overlap_ = leastOverlap;
    double wholeX_ = 0, wholeY_ = 0;
    std::string line_, missing_;
    int unplaced_ = 0;
    Held held_;
};

PotTemplate::PotTemplate(const SheetContext& context, const SheetFrame& frame)
    : context_(context), frame_(frame), pot_(context.plan.pot), radius_(inMillimetres(pot_.topDiameter) / 2) {
    // Stems may stand beyond the rim of a pot that was changed since.
    double reachX = radius_, reachY = radius_ * breadthPart(pot_);
    for (const std::size_t i : context.stems()) {
        const Stem& stem = context.plan.stems[i];
        if (!stem.standing) {
            missing_ += (missing_.empty() ? "" : ", ") + stem.name;
            ++unplaced_;
            continue;
        }
        reachX = std::max(reachX, std::abs(inMillimetres(stem.standing->x)) + 6);
        reachY = std::max(reachY, std::abs(inMillimetres(stem.standing->y)) + 6);
        overlap_ = std::max(overlap_, inMillimetres(context.figures.stems[i].bundle) + 2 * markRoom + 1);
    }
    wholeX_ = 2 * (reachX + beside);
    wholeY_ = 2 * (reachY + outside);
    const auto size = [&](Length length) { return context.words.size(length); };
    line_ = says(SheetWord::potLine,
                 {pot_.name.empty() ? says(SheetWord::potTitle) : pot_.name,
                  pot_.opening == PotOpening::round ? size(pot_.topDiameter)
                                                    : size(pot_.topDiameter) + " × " + size(pot_.topBreadth),
                  size(pot_.depth)});
    held_ = held(false);
    if (Held lying = held(true); lying.sheets() < held_.sheets())
        held_ = std::move(lying);
}

PotTemplate::Held PotTemplate::held(bool landscape) const {
    Held out;
    out.landscape = landscape;
    out.room = frame_.room(landscape);
    std::vector<Mark> none;
    const Canvas measure(context_, none);
    const double width = out.room.width;
    out.note = missing_.empty() ? "" : says(SheetWord::potNotPlaced, {missing_});
    // So many that their names would push the pot off the page are counted instead.
    if (measure.paragraphHeight(width, out.note, type::small) > out.room.height / 4)
        out.note = says(SheetWord::potNotPlaced, {context_.words.count(unplaced_)});
    out.text = measure.paragraphHeight(width - partRoom, line_, type::text) +
               measure.paragraphHeight(width, says(SheetWord::potSpots), type::text) +
               measure.paragraphHeight(width, out.note, type::small) + 3;
    const auto part = [&] {
        out.across = Parts(wholeX_, width, overlap_);
        out.down = Parts(wholeY_, out.room.height - out.text, overlap_);
    };
    part();
    if (out.sheets() > 1) {
        out.text += measure.paragraphHeight(width, says(SheetWord::potJoin), type::text);
        part();
    }
    return out;
}

std::vector<Page> PotTemplate::pages() const {
    std::vector<Page> pages;
    const double wide = held_.across.each, tall = held_.down.each;
    const BoxMm& room = held_.room;
    for (int row = 0; row < held_.down.count; ++row)
        for (int column = 0; column < held_.across.count; ++column) {
            Page page = frame_.page(held_.landscape, says(SheetWord::potTitle));
            Canvas canvas(context_, page.marks);
            words(canvas, number(column, row));
            Sheet sheet{column, row, {room.x + (room.width - wide) / 2, room.y + held_.text, wide, tall}, {}};
            sheet.middle = {held_.across.count > 1 ? sheet.window.x + wholeX_ / 2 - (wide - overlap_) * column
                                                   : sheet.window.x + wide / 2,
                            sheet.window.y + wholeY_ / 2 - (held_.down.count > 1 ? tall - overlap_ : 0) * row};
            outline(canvas, sheet);
            marks(canvas, sheet, page.stems);
            pages.push_back(std::move(page));
        }
    return pages;
}

void PotTemplate::words(Canvas& canvas, int sheet) const {
    const BoxMm& room = held_.room;
    double y = room.y;
    y += canvas.paragraph({room.x, y}, room.width - partRoom, line_, type::text);
    y += canvas.paragraph({room.x, y}, room.width, says(SheetWord::potSpots), type::text);
    if (held_.sheets() > 1) {
        y += canvas.paragraph({room.x, y}, room.width, says(SheetWord::potJoin), type::text);
        canvas.text({room.right(), room.y + ascent(type::text)},
                    says(SheetWord::matSheet, {std::to_string(sheet), std::to_string(held_.sheets())}),
                    type::strong, Align::right);
    }
    if (sheet == 1)
        canvas.paragraph({room.x, y}, room.width, held_.note, type::small, Align::left, Ink::accent);
}

void PotTemplate::outline(Canvas& canvas, Sheet& sheet) const {
    const PointMm middle = sheet.middle;
    const auto stroke = [&](PointMm a, PointMm b, double thick, Ink ink) {
        if (!clipped(a, b, sheet.window))
            return;
        canvas.line(a, b, thick, ink);
        sheet.lines.push_back(boxOf(LineMark{a, b, thick, ink, false}, context_.plan));
    };
    const double part = breadthPart(pot_);
    const std::vector<PointMm> outline =
        pot_.opening == PotOpening::rectangular
            ? std::vector<PointMm>{{1, part}, {-1, part}, {-1, -part}, {1, -part}}
            : openingOutline(pot_, 240);
    for (std::size_t i = 0; i < outline.size(); ++i) {
        const PointMm &a = outline[i], &b = outline[(i + 1) % outline.size()];
        stroke({middle.x + radius_ * a.x, middle.y + radius_ * a.y},
               {middle.x + radius_ * b.x, middle.y + radius_ * b.y}, 0.35, Ink::black);
    }
    stroke({middle.x - 3, middle.y}, {middle.x + 3, middle.y}, 0.15, Ink::quiet);
    stroke({middle.x, middle.y - 3}, {middle.x, middle.y + 3}, 0.15, Ink::quiet);
}

bool PotTemplate::put(Canvas& canvas, Sheet& sheet, TextMark mark, bool acrossLines) const {
    const BoxMm box = boxOf(mark, context_.plan);
    const auto free = [&](const std::vector<BoxMm>& others) {
        return std::none_of(others.begin(), others.end(),
                            [&](const BoxMm& other) { return other.overlaps(box); });
    };
    if (!sheet.window.contains(box) || !free(sheet.taken) || !(acrossLines || free(sheet.lines)))
        return false;
    sheet.taken.push_back(box);
    canvas.add(std::move(mark));
    return true;
}

void PotTemplate::sides(Canvas& canvas, Sheet& sheet) const {
    const double breadth = radius_ * breadthPart(pot_);
    // Beside the middle where the pot is cut there.
    const bool cut = held_.across.count % 2 == 0;
    const double x = sheet.middle.x - (cut ? 2 : 0);
    for (const auto& [said, y] : {std::pair(says(SheetWord::potFront), sheet.middle.y + breadth + 4.5),
                                  std::pair(says(SheetWord::potBack), sheet.middle.y - breadth - 2.5)})
        put(canvas, sheet,
            {{x, y},
             cut ? Align::right : Align::middle,
             said,
             type::smallStrong,
             Ink::quiet,
             canvas.width(said, type::smallStrong),
             0});
}

void PotTemplate::marks(Canvas& canvas, Sheet& sheet, std::vector<StemId>& shown) const {
    struct Spot {
        std::size_t stem;
        PointMm at;
        double half;
    };
    std::vector<Spot> spots;
    for (const std::size_t i : context_.stems()) {
        const Stem& stem = context_.plan.stems[i];
        if (!stem.standing)
            continue;
        // y runs to the back, and the front is at the bottom of the page.
        const PointMm at{sheet.middle.x + inMillimetres(stem.standing->x),
                         sheet.middle.y - inMillimetres(stem.standing->y)};
        const double half = std::max(inMillimetres(context_.figures.stems[i].bundle), 1.0) / 2;
        const double around = half + markRoom;
        if (!sheet.window.contains({at.x - around, at.y - around, 2 * around, 2 * around}))
            continue;
        canvas.add(CircleMark{at, half, true, Ink::wire, 0.2, Ink::black});
        canvas.line({at.x - half - cross, at.y}, {at.x + half + cross, at.y}, 0.12);
        canvas.line({at.x, at.y - half - cross}, {at.x, at.y + half + cross}, 0.12);
        shown.push_back(stem.id);
        spots.push_back({i, at, half});
        sheet.taken.push_back({at.x - half, at.y - half, 2 * half, 2 * half});
    }
    sides(canvas, sheet);
    joins(canvas, sheet);
    for (const Spot& spot : spots)
        name(canvas, sheet, spot.stem, spot.at, spot.half);
}

void PotTemplate::name(Canvas& canvas, Sheet& sheet, std::size_t stem, PointMm at, double half) const {
    // The name beside the mark where it is free, the number where only that fits; across a line rather than not
    // at all.
    for (const bool across : {false, true})
        for (const std::string& said : {context_.plan.stems[stem].name, std::to_string(stem + 1)})
            for (const double y : {at.y - half - 0.4, at.y + half + 2.2})
                for (const double side : {1.0, -1.0})
                    if (put(canvas, sheet,
                            {{at.x + side * (half + 1.8), y},
                             side > 0 ? Align::left : Align::right,
                             said,
                             type::small,
                             Ink::black,
                             canvas.width(said, type::small),
                             0},
                            across))
                        return;
}

void PotTemplate::joins(Canvas& canvas, Sheet& sheet) const {
    const int across = held_.across.count, down = held_.down.count;
    const auto upright = [&](int left) { return sheet.row * (across - 1) + left; };
    const auto lying = [&](int upper) { return down * (across - 1) + upper * across + sheet.column; };
    if (sheet.column > 0)
        join(canvas, sheet, true, sheet.window.x + overlap_ / 2, number(sheet.column - 1, sheet.row),
             upright(sheet.column - 1));
    if (sheet.column + 1 < across)
        join(canvas, sheet, true, sheet.window.right() - overlap_ / 2, number(sheet.column + 1, sheet.row),
             upright(sheet.column));
    if (sheet.row > 0)
        join(canvas, sheet, false, sheet.window.y + overlap_ / 2, number(sheet.column, sheet.row - 1),
             lying(sheet.row - 1));
    if (sheet.row + 1 < down)
        join(canvas, sheet, false, sheet.window.bottom() - overlap_ / 2, number(sheet.column, sheet.row + 1),
             lying(sheet.row));
}

void PotTemplate::join(Canvas& canvas, Sheet& sheet, bool upright, double at, int other, int letter) const {
    const BoxMm& window = sheet.window;
    const std::string said =
        says(SheetWord::join, {std::string(1, static_cast<char>('A' + letter % 26)), std::to_string(other)});
    TextMark mark{
        {}, Align::middle, said, type::smallStrong, Ink::accent, canvas.width(said, type::smallStrong), 0};
    constexpr double off = 1.2; ///< from the line to its words
    // On the side of the line that stays, wherever along it there is room.
    const auto along = [](double part) { return 0.5 + (part > 0.5 ? part - 1 : part); };
    if (upright) {
        const double top = std::max(window.y, sheet.middle.y - wholeY_ / 2),
                     bottom = std::min(window.bottom(), sheet.middle.y + wholeY_ / 2);
        canvas.line({at, top}, {at, bottom}, 0.2, Ink::accent, true);
        sheet.taken.push_back({at, top, 0.1, bottom - top});
        const bool end = at > window.x + window.width / 2;
        mark.align = end ? Align::right : Align::left;
        for (const bool across : {false, true})
            for (double part = 0; part < 0.98; part += 0.07) {
                mark.at = {at + (end ? -off : off), top + (bottom - top) * along(part)};
                if (put(canvas, sheet, mark, across))
                    return;
            }
    } else {
        const double left = std::max(window.x, sheet.middle.x - wholeX_ / 2),
                     right = std::min(window.right(), sheet.middle.x + wholeX_ / 2);
        canvas.line({left, at}, {right, at}, 0.2, Ink::accent, true);
        sheet.taken.push_back({left, at, right - left, 0.1});
        const bool lower = at > window.y + window.height / 2;
        for (const bool across : {false, true})
            for (double part = 0; part < 0.98; part += 0.07) {
                mark.at = {left + (right - left) * along(part), at + (lower ? -off : off + ascent(mark.style))};
                if (put(canvas, sheet, mark, across))
                    return;
            }
    }
}

} // namespace

std::vector<Page> potPages(const SheetContext& context) {
    const SheetFrame frame(context, SheetPage::pot, {SheetCaution::tallPlant, SheetCaution::wetClay});
    return PotTemplate(context, frame).pages();
}

} // namespace stemwright
