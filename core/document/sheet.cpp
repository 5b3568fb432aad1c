#include "core/document/sheet.h"

#include "core/document/sheet_frame.h"

#include <algorithm>
#include <cmath>
#include <future>

namespace stemwright {

namespace {

constexpr double pi = 3.14159265358979323846;

template <class... Fs> struct Each : Fs... { using Fs::operator()...; };

class Grower {
public:
    void add(double x, double y) {
        left_ = std::min(left_, x);
        right_ = std::max(right_, x);
        top_ = std::min(top_, y);
        bottom_ = std::max(bottom_, y);
    }
    BoxMm box(double around) const {
        if (right_ < left_)
            return {};
        return {left_ - around, top_ - around, right_ - left_ + 2 * around, bottom_ - top_ + 2 * around};
    }

private:
    double left_ = 1e300, right_ = -1e300, top_ = 1e300, bottom_ = -1e300;
};

} // namespace

PaperSize paperSize(Paper paper) {
    switch (paper) {
    case Paper::a4:
        return {210, 297};
    case Paper::a3:
        return {297, 420};
    case Paper::letter:
        return {215.9, 279.4};
    }
    return {};
}

bool BoxMm::contains(const BoxMm& other) const {
    return other.x >= x && other.y >= y && other.right() <= right() && other.bottom() <= bottom();
}
bool BoxMm::overlaps(const BoxMm& other) const {
    return x < other.right() && other.x < right() && y < other.bottom() && other.y < bottom();
}

BoxMm boxOf(const Mark& mark, const Plan& plan) {
    Grower box;
    double around = 0;
    std::visit(Each{[&](const LineMark& m) {
                        box.add(m.from.x, m.from.y);
                        box.add(m.to.x, m.to.y);
                        around = m.width / 2;
                    },
                    [&](const ShapeMark& m) {
                        for (const PointMm& p : m.points)
                            box.add(p.x, p.y);
                        around = m.width / 2;
                    },
                    [&](const CircleMark& m) {
                        box.add(m.middle.x - m.radius, m.middle.y - m.radius);
                        box.add(m.middle.x + m.radius, m.middle.y + m.radius);
                        around = m.width / 2;
                    },
                    [&](const LeafMark& m) {
                        const Kind* kind = find(plan, m.leaf.kind);
                        LeafShape shape = shapeOf(kind ? static_cast<const KindForm&>(*kind) : KindForm{});
                        shape.length *= m.scale * m.shorten;
                        shape.width *= m.scale;
                        const double turn = m.degrees * pi / 180;
                        for (const PointMm& p : leafOutline(shape))
                            box.add(m.base.x + p.x * std::cos(turn) - p.y * std::sin(turn),
                                    m.base.y + p.x * std::sin(turn) + p.y * std::cos(turn));
                        around = m.style == LeafStyle::beads ? 0 : 0.15;
                    },
                    [&](const PlantMark& m) {
                        box.add(m.box.x, m.box.y);
                        box.add(m.box.right(), m.box.bottom());
                    },
                    [&](const TextMark& m) {
                        const double left = m.align == Align::left     ? 0
                                            : m.align == Align::middle ? -m.width / 2
                                                                       : -m.width;
                        // Between the tops of capitals and what hangs below the baseline.
                        const double top = -0.76 * m.style.points * millimetresPerPoint;
                        const double bottom = 0.22 * m.style.points * millimetresPerPoint;
                        const double turn = m.degrees * pi / 180;
                        for (const double x : {left, left + m.width})
                            for (const double y : {top, bottom})
                                box.add(m.at.x + x * std::cos(turn) - y * std::sin(turn),
                                        m.at.y + x * std::sin(turn) + y * std::cos(turn));
                    }},
               mark);
    return box.box(around);
}

std::vector<Page> sheetPages(const Plan& plan, const Figures& figures, const SheetOptions& options,
                             const TextMeasure& measure, const SheetWords& words) {
    SheetContext context{plan, figures, options, measure, words, {}};
    const auto wanted = [&](SheetPage what) { return options.only.empty() || options.only.contains(what); };
    std::vector<Page> pages;
    const auto add = [&](std::vector<Page> more) {
        std::move(more.begin(), more.end(), std::back_inserter(pages));
    };
    // The cutting plan takes as long as all the rest, so it is worked out beside it.
    std::future<Supplies> bought;
    if (wanted(SheetPage::supplies))
        bought = std::async([&plan, &figures] { return supplies(plan, figures); });
    std::vector<Page> mats, cards;
    if (wanted(SheetPage::mats))
        mats = matPages(context);
    if (wanted(SheetPage::cards))
        cards = cardPages(context);
    if (wanted(SheetPage::glance)) {
        // The list of stems says where each one's mat and card are, so its own pages are counted first.
        if (!mats.empty())
            context.matPage.assign(plan.stems.size(), 0);
        if (!cards.empty())
            context.cardPage.assign(plan.stems.size(), 0);
        std::size_t before = glancePages(context).size();
        const auto number = [&](const std::vector<Page>& of, std::vector<int>& numbers) {
            for (const Page& page : of) {
                ++before;
                for (const StemId stem : page.stems) {
                    int& first = numbers[static_cast<std::size_t>(find(plan, stem) - plan.stems.data())];
                    if (first == 0)
                        first = static_cast<int>(before);
                }
            }
        };
        number(mats, context.matPage);
        number(cards, context.cardPage);
        add(glancePages(context));
    }
    add(std::move(mats));
    add(std::move(cards));
    if (wanted(SheetPage::leaves))
        add(leavesPages(context));
    if (wanted(SheetPage::supplies))
        add(suppliesPages(context, bought.get()));
    if (wanted(SheetPage::pot))
        add(potPages(context));
    finishPages(context, pages);
    return pages;
}

} // namespace stemwright
