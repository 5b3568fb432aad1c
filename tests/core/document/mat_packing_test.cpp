#include "core/document/sheet.h"

#include "core/figures/figures.h"
#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

namespace stemwright {
namespace {

using test::marksOf;

std::vector<Page> matsOf(const Plan& plan, Paper paper = Paper::a4) {
    SheetOptions options;
    options.paper = paper;
    options.only = {SheetPage::mats};
    return sheetPages(plan, figures(plan), options, test::PlainMeasure(), test::PlainWords());
}

/// Stems of pairs that are so tall from tip to foot, with leaves so long.
Plan pairs(int stems, double tall, double leaf) {
    Plan plan = test::randomBoard(1, stems, 4, 2);
    for (Kind& kind : plan.kinds) {
        kind.length = millimetres(leaf);
        kind.width = millimetres(leaf / 2);
        kind.angle = degrees(50);
    }
    for (Stem& stem : plan.stems) {
        double along = 0;
        for (std::size_t t = 0; t + 1 < stem.tiers.size(); ++t)
            along += inMillimetres(stem.tiers[t].spacing.value_or(stem.spacing));
        stem.tail = millimetres(tall - along);
    }
    return plan;
}

/// The text that stands highest above the leaves of a stem, by its name.
const TextMark* said(const Page& page, const std::string& part) {
    for (const Mark& mark : page.marks)
        if (const auto* text = std::get_if<TextMark>(&mark); text && text->text.find(part) != std::string::npos)
            return text;
    return nullptr;
}

TEST(MatPacking, ShortStemsLieBesideEachOtherOnPaperHeldAcross) {
    // Too wide to stand side by side on the upright page, too tall to stand above each other.
    const Plan plan = pairs(4, 105, 18);
    const std::vector<Page> pages = matsOf(plan);
    ASSERT_EQ(pages.size(), 2u);
    for (const Page& page : pages) {
        EXPECT_TRUE(page.landscape);
        EXPECT_EQ(page.stems.size(), 2u);
    }
}

TEST(MatPacking, NoMatLiesOnAnotherNorOutsideItsPage) {
    for (const double tall : {40.0, 70.0, 105.0, 160.0})
        for (const double leaf : {8.0, 18.0, 30.0})
            for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter}) {
                const Plan plan = pairs(11, tall, leaf);
                std::size_t stems = 0;
                for (const Page& page : matsOf(plan, paper)) {
                    stems += page.stems.size();
                    std::map<StemId, BoxMm> boxes;
                    for (const LeafMark& mark : marksOf<LeafMark>(page)) {
                        const BoxMm box = boxOf(mark, plan);
                        BoxMm& all = boxes.try_emplace(mark.slot.stem, box).first->second;
                        const double right = std::max(all.right(), box.right()),
                                     bottom = std::max(all.bottom(), box.bottom());
                        all.x = std::min(all.x, box.x);
                        all.y = std::min(all.y, box.y);
                        all.width = right - all.x;
                        all.height = bottom - all.y;
                    }
                    EXPECT_EQ(boxes.size(), page.stems.size());
                    for (auto one = boxes.begin(); one != boxes.end(); ++one)
                        for (auto other = std::next(one); other != boxes.end(); ++other)
                            EXPECT_FALSE(one->second.overlaps(other->second));
                }
                EXPECT_EQ(stems, plan.stems.size()) << "each on one page";
            }
}

TEST(MatPacking, AHeadingGivesWayBeforeALittleOfAStemIsCarriedOver) {
    // A4 upright has room for 236 mm between header and footer; the heading takes a tenth of it.
    const Plan tall = pairs(1, 212, 12), taller = pairs(1, 260, 12);
    const std::vector<Page> one = matsOf(tall);
    ASSERT_EQ(one.size(), 1u);
    EXPECT_FALSE(said(one[0], test::PlainWords().word(SheetWord::join, {"A"})));
    double right = 0;
    for (const LeafMark& leaf : marksOf<LeafMark>(one[0]))
        right = std::max(right, boxOf(leaf, tall).right());
    const TextMark* name = said(one[0], test::PlainWords().word(SheetWord::matOf, {tall.stems[0].name}));
    ASSERT_TRUE(name);
    EXPECT_GT(name->at.x, right) << "beside the stem";
    const std::vector<Page> two = matsOf(taller);
    ASSERT_FALSE(two.empty());
    EXPECT_TRUE(said(two[0], test::PlainWords().word(SheetWord::join, {"A"})));
}

TEST(MatPacking, TheSheetsOfOneStemShareAPageWhereTheyFitAndStemsDoNot) {
    Plan plan = pairs(2, 300, 8);
    for (Stem& stem : plan.stems) // one view, so that a sheet is narrow
        for (Tier& tier : stem.tiers)
            tier.turn = degrees(0);
    const std::vector<Page> pages = matsOf(plan);
    ASSERT_EQ(pages.size(), 2u);
    for (const Page& page : pages) {
        EXPECT_EQ(page.stems.size(), 1u);
        int joins = 0;
        for (const TextMark& text : marksOf<TextMark>(page))
            joins += text.text.starts_with(test::PlainWords().word(SheetWord::join, {"A"}));
        EXPECT_EQ(joins, 2) << "both sides of the joint are on it";
        const std::vector<TextMark> texts = marksOf<TextMark>(page);
        for (std::size_t i = 0; i < texts.size(); ++i)
            for (std::size_t j = i + 1; j < texts.size(); ++j)
                EXPECT_FALSE(boxOf(texts[i], plan).overlaps(boxOf(texts[j], plan)))
                    << texts[i].text << " and " << texts[j].text;
    }
}

TEST(MatPacking, PairsSayWhichWayTheyFaceAboveTheirViewsAndOthersInTheList) {
    const Plan plan = pairs(1, 105, 18);
    const test::PlainWords words;
    const auto count = [&](const Plan& of, const std::string& what) {
        int found = 0;
        for (const Page& page : matsOf(of))
            for (const TextMark& text : marksOf<TextMark>(page))
                found += text.text == what;
        return found;
    };
    EXPECT_EQ(count(plan, words.plane(Plane::sideToSide)), 1);
    EXPECT_EQ(count(plan, words.plane(Plane::frontToBack)), 1);
    EXPECT_EQ(count(plan, words.word(SheetWord::columnFaces, {})), 0);
    Plan mixed = plan;
    mixed.stems[0].tiers[0].slots.resize(1);
    EXPECT_EQ(count(mixed, words.word(SheetWord::columnFaces, {})), 1);
    EXPECT_EQ(count(mixed, words.plane(Plane::frontToBack)), 1) << "in the list";
}

} // namespace
} // namespace stemwright
