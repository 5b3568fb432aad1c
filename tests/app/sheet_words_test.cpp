#include "app/sheet_words.h"

#include "app/missing_glyphs.h"
#include "app/sheet_painter.h"
#include "app/wording.h"
#include "core/document/examples.h"
#include "core/figures/figures.h"
#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <gtest/gtest.h>

#include <QRegularExpression>

#include <map>
#include <set>

namespace stemwright {
namespace {

using test::marksOf;

TEST(SheetWords, AFigureKeepsItsUnitOnItsLine) {
    const FontMeasure measure;
    const TranslatedWords words{Units{}};
    Units inch;
    inch.length = LengthUnit::inch;
    inch.mass = MassUnit::ounce;
    const TranslatedWords inches(inch);
    std::string all;
    for (const SheetWords* said :
         {static_cast<const SheetWords*>(&words), static_cast<const SheetWords*>(&inches)})
        for (const std::string& figure :
             {said->size(millimetres(9.6)), said->cut(millimetres(1860)), said->mass(grams(12)),
              said->wire(millimetres(0.32), GaugeNumber{GaugeSystem::awg, 28}), said->hours(300)})
            all += figure + ", ";
    static const QRegularExpression loose(QStringLiteral("^(mm|cm|m|in|ft|g|oz|h|min|[0-9]+/[0-9]+ in)\\b"));
    for (double width = 15; width < 150; width += 0.5)
        for (const std::string& line : measure.lines(all, {8, false}, width))
            EXPECT_FALSE(loose.match(text(line)).hasMatch()) << width << " mm: " << line;
}

TEST(SheetWords, ThePageHasOrdinarySpaces) {
    const Plan plan = test::smallBoard();
    bool found = false;
    for (const Page& page : pagesOf(plan, figures(plan), {}))
        for (const TextMark& mark : marksOf<TextMark>(page)) {
            EXPECT_FALSE(text(mark.text).contains(QChar::Nbsp)) << mark.text;
            found |= mark.text.find(" mm") != std::string::npos;
        }
    EXPECT_TRUE(found);
}

TEST(SheetWords, RowsOfTheSuppliesBeginAlike) {
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        SheetOptions options;
        options.only = {SheetPage::supplies};
        for (const Page& page : pagesOf(plan, figures(plan), options))
            for (const TextMark& mark : marksOf<TextMark>(page)) {
                const bool begins = mark.at.x < pageMargin + 0.1 && mark.style == TextStyle{8, false};
                EXPECT_FALSE(begins && text(mark.text).at(0).isLower()) << info.key << ": " << mark.text;
            }
    }
}

TEST(SheetWords, ALeafAloneIsSaidOnce) {
    Plan plan = test::smallBoard();
    plan.stems[0].arrangement = Arrangement::alternate;
    for (Tier& tier : plan.stems[0].tiers)
        tier.slots.resize(1);
    SheetOptions options;
    options.only = {SheetPage::cards};
    options.stems = {0};
    int tiers = 0;
    static const QRegularExpression twice(QStringLiteral("(left|right|front|back): (left|right|front|back)"));
    for (const Page& page : pagesOf(plan, figures(plan), options))
        for (const TextMark& mark : marksOf<TextMark>(page)) {
            tiers += text(mark.text).contains(QStringLiteral("Tier "));
            EXPECT_FALSE(text(mark.text).contains(twice)) << mark.text;
        }
    EXPECT_GE(tiers, static_cast<int>(plan.stems[0].tiers.size()));
}

TEST(SheetWords, HerOwnMeasureIsSaidOnceAPageAtMost) {
    Plan plan = test::smallBoard();
    ASSERT_FALSE(plan.binding.wraps.empty());
    std::map<SheetPage, int> said;
    for (const bool measured : {false, true}) {
        plan.binding.wraps[0].overlapMeasured = measured;
        for (const Page& page : pagesOf(plan, figures(plan), {})) {
            int here = 0;
            for (const TextMark& mark : marksOf<TextMark>(page))
                here += text(mark.text).contains(QLatin1String("own measure"));
            EXPECT_LE(here, measured ? 1 : 0) << page.title;
            said[page.what] += here;
        }
    }
    for (const SheetPage page : {SheetPage::glance, SheetPage::mats, SheetPage::cards, SheetPage::supplies})
        EXPECT_GE(said[page], 1) << "it is said where lengths of binding stand";
}

TEST(SheetWords, TheGlanceIsOnePageWithNamesOfMixesWhole) {
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        const Figures reckoned = figures(plan);
        for (const Paper paper : {Paper::a4, Paper::a3, Paper::letter}) {
            SheetOptions options;
            options.paper = paper;
            options.only = {SheetPage::glance};
            std::set<std::string> said;
            const std::vector<Page> pages = pagesOf(plan, reckoned, options);
            // Thirty stems fill more than one of the smaller papers.
            EXPECT_EQ(pages.size(), plan.stems.size() < 30 || paper == Paper::a3 ? 1u : 2u) << info.key;
            for (const Page& page : pages)
                for (const TextMark& mark : marksOf<TextMark>(page))
                    said.insert(mark.text);
            for (const Mix& mix : plan.mixes)
                EXPECT_TRUE(said.contains(mix.name)) << info.key << ": " << mix.name;
        }
    }
}

TEST(MissingGlyphs, NamesWhatNoFontHas) {
    Plan plan = test::smallBoard();
    const auto said = [&] { return missingGlyphs(pagesOf(plan, figures(plan), {})); };
    plan.about.title = "Café „Mûre“ – ½";
    EXPECT_TRUE(said().isEmpty()) << said().toStdString();
    // For private use at the end of all planes: no font has letters there.
    plan.mixes[0].name = "Moss \xf4\x8f\xbf\xbd";
    EXPECT_TRUE(said().contains(QStringLiteral("(U+10FFFD)"))) << said().toStdString();
    // Each is named once, and a heap of them is counted.
    plan.about.title.clear();
    for (char32_t character = 0x10ff00; character < 0x10ff20; ++character)
        plan.about.title += QString::fromUcs4(&character, 1).toStdString();
    EXPECT_EQ(said().count(QStringLiteral("(U+10FF00)")), 1);
    EXPECT_TRUE(said().contains(QStringLiteral("and 25 more"))) << said().toStdString();
}

/// Short stems share pages: what a page holds on each paper was counted on the page by eye.
TEST(SheetWords, TheMatsOfTheExamplesWasteNoPaper) {
    struct Most {
        const char* key;
        std::size_t a4, a3, letter;
    };
    for (const Most& most : {Most{"spray", 8, 3, 9}, Most{"succulent", 3, 2, 3}, Most{"herb", 7, 4, 7},
                             Most{"fern", 3, 2, 3}, Most{"hedge", 15, 9, 18}}) {
        const Plan plan = example(most.key);
        const Figures reckoned = figures(plan);
        for (const auto& [paper, pages] : {std::pair(Paper::a4, most.a4), std::pair(Paper::a3, most.a3),
                                           std::pair(Paper::letter, most.letter)}) {
            SheetOptions options;
            options.paper = paper;
            options.only = {SheetPage::mats};
            EXPECT_LE(pagesOf(plan, reckoned, options).size(), pages) << most.key;
        }
    }
}

} // namespace
} // namespace stemwright
