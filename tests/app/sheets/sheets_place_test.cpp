#include "app/sheets/sheets_place.h"

#include "app/ask.h"
#include "app/session.h"
#include "app/sheet_painter.h"
#include "app/sheets/sheets_preview.h"

#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <QAccessible>
#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QListWidget>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollBar>
#include <QTemporaryDir>
#include <QtTest>

namespace stemwright {
namespace {

class SheetsPlaceTest : public ::testing::Test {
protected:
    SheetsPlaceTest() : session(test::randomBoard(1, 6, 20, 6)), place(session) {
        place.resize(1000, 700);
        place.show();
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&place));
        settle();
    }
    ~SheetsPlaceTest() override { ask::setStand({}); }

    template <class T> T* child(const char* name) {
        T* found = place.findChild<T*>(QLatin1String(name));
        EXPECT_TRUE(found) << name;
        return found;
    }
    SheetsPreview* preview() { return child<SheetsPreview>("sheetsPreview"); }
    std::size_t pages() { return preview()->sheets() ? preview()->sheets()->pages.size() : 0; }
    void settle() {
        ASSERT_TRUE(QTest::qWaitFor(
            [this] { return preview()->sheets() && preview()->ready(preview()->currentPage()); }, 20'000));
    }
    bool becomes(const std::function<bool()>& what) { return QTest::qWaitFor(what, 20'000); }
    bool said(const QString& part) {
        return becomes([&] { return child<QLabel>("sheetsNotice")->text().contains(part); });
    }

    Session session;
    SheetsPlace place;
};

TEST_F(SheetsPlaceTest, ShowsThePagesAsThePainterMakesThem) {
    ASSERT_GT(pages(), 2u);
    const SheetSet& set = *preview()->sheets();
    const QImage window = preview()->viewport()->grab().toImage();
    // The first page lies in the middle with some room above, as large as its width allows; its picture is the
    // painter's, to the pixel.
    constexpr int around = 20;
    const QImage paper =
        pagePicture(set.pages[0], set.plan, (window.width() - 2.0 * around) / set.pages[0].width, false);
    const int left = (window.width() - paper.width()) / 2;
    int same = 0, all = 0;
    for (int y = 60; y < 500; y += 3)
        for (int x = 40; x < paper.width() - 40; x += 3) {
            ++all;
            same += window.pixelColor(left + x, around + y) == paper.pixelColor(x, y);
        }
    EXPECT_GT(same, all * 97 / 100);
}

TEST_F(SheetsPlaceTest, ChoosesPaperPagesStemsAndGreyByKeys) {
    const std::size_t before = pages();
    auto* glance = child<QCheckBox>("sheetsPage0");
    glance->setFocus();
    QTest::keyClick(glance, Qt::Key_Space);
    EXPECT_TRUE(becomes([&] { return pages() < before && pages() > 0; }));
    EXPECT_EQ(preview()->sheets()->pages.front().what, SheetPage::mats);
    EXPECT_EQ(place.options().only.count(SheetPage::glance), 0u);

    auto* stems = child<QListWidget>("sheetsStems");
    ASSERT_EQ(stems->count(), 6);
    stems->setFocus();
    stems->setCurrentRow(2);
    QTest::keyClick(stems, Qt::Key_Space);
    EXPECT_EQ(place.options().stems, (std::set<std::size_t>{0, 1, 3, 4, 5}));

    auto* paper = child<QComboBox>("sheetsPaper");
    paper->setFocus();
    QTest::keyClick(paper, Qt::Key_Home);
    QTest::keyClick(paper, Qt::Key_Down);
    EXPECT_EQ(place.options().paper, Paper::a3);
    EXPECT_TRUE(becomes([&] {
        return preview()->sheets()->pages.front().height == 420 ||
               preview()->sheets()->pages.front().width == 420;
    }));

    auto* grey = child<QCheckBox>("sheetsGrey");
    grey->setFocus();
    QTest::keyClick(grey, Qt::Key_Space);
    EXPECT_TRUE(place.options().grey);
}

TEST_F(SheetsPlaceTest, TheListOfStemsIsWalkedByKeysWhilePagesAreMade) {
    auto* stems = child<QListWidget>("sheetsStems");
    stems->setFocus();
    for (int i = 0; i < 3; ++i) {
        QTest::keyClick(stems, Qt::Key_Space);
        EXPECT_EQ(stems->item(i)->checkState(), Qt::Unchecked) << i;
        QTest::qWait(200); // the pages are laid out again meanwhile
        QTest::keyClick(stems, Qt::Key_Down);
        EXPECT_EQ(stems->currentRow(), i + 1);
    }
    // A stem that has another name keeps its tick, and she her line.
    StemForm form = session.plan().stems[3];
    form.name = "Willow";
    ASSERT_TRUE(session.make(ReformStem{session.plan().stems[3].id, form}));
    ASSERT_TRUE(becomes([&] { return stems->item(3)->text() == QStringLiteral("Willow"); }));
    EXPECT_EQ(stems->currentRow(), 3);
    EXPECT_EQ(stems->item(0)->checkState(), Qt::Unchecked);
}

TEST_F(SheetsPlaceTest, NoPageChosenIsNoPage) {
    for (auto* box : place.findChildren<QCheckBox*>())
        if (box->objectName().startsWith(QLatin1String("sheetsPage")))
            box->setChecked(false);
    EXPECT_TRUE(becomes([&] { return pages() == 0; }));
    EXPECT_TRUE(becomes([&] { return !child<QPushButton>("sheetsSavePdf")->isEnabled(); }));
}

TEST_F(SheetsPlaceTest, FollowsThePlanOnlyWhileSeen) {
    const std::string name = session.plan().stems[0].name;
    const SheetSet* before = preview()->sheets();
    place.hide();
    Edit edit{Set<About>{{"Another title", "", "", ""}}};
    ASSERT_TRUE(session.make(edit));
    QTest::qWait(300);
    EXPECT_EQ(preview()->sheets(), before);
    place.show();
    EXPECT_TRUE(becomes([&] { return preview()->sheets()->plan.about.title == "Another title"; }));
    ASSERT_TRUE(session.make(Edit{Set<About>{{"A third", "", "", ""}}}));
    EXPECT_TRUE(becomes([&] { return preview()->sheets()->plan.about.title == "A third"; }));
}

TEST_F(SheetsPlaceTest, SaysThatThePagesAreBeingMadeUntilTheyAre) {
    SheetsPlace fresh(session);
    fresh.resize(1000, 700);
    fresh.show();
    auto* seen = fresh.findChild<SheetsPreview*>();
    auto* count = fresh.findChild<QLabel*>(QStringLiteral("sheetsCount"));
    ASSERT_TRUE(seen && count);
    EXPECT_TRUE(seen->making());
    EXPECT_EQ(count->text(), SheetsPreview::makingWords());
    EXPECT_EQ(seen->accessibleDescription(), SheetsPreview::makingWords());
    // The words stand in the middle of the empty room.
    const QImage empty = seen->viewport()->grab().toImage();
    int written = 0;
    for (int y = empty.height() / 2 - 12; y < empty.height() / 2 + 12; ++y)
        for (int x = empty.width() / 4; x < empty.width() * 3 / 4; ++x)
            written += empty.pixel(x, y) != empty.pixel(2, empty.height() - 2);
    EXPECT_GT(written, 50);
    EXPECT_TRUE(becomes([&] { return !seen->making(); }));
    EXPECT_TRUE(count->text() != SheetsPreview::makingWords()) << count->text().toStdString();
}

TEST(SheetsPreview, EachPageFitsByItsOwnWidth) {
    auto set = std::make_shared<SheetSet>();
    set->plan = test::smallBoard();
    Page lying;
    lying.landscape = true;
    std::swap(lying.width, lying.height);
    set->pages = {Page{}, lying, Page{}, Page{}};
    SheetsPreview seen;
    seen.resize(640, 400);
    seen.show(set);
    seen.QWidget::show();
    ASSERT_TRUE(QTest::qWaitForWindowExposed(&seen));
    const double wide = seen.viewport()->width() - 40;
    constexpr int between = 20;
    seen.goTo(1);
    EXPECT_EQ(seen.verticalScrollBar()->value(), qRound(297 * wide / 210) + between);
    EXPECT_TRUE(QTest::qWaitFor([&] { return seen.ready(0) && seen.ready(1); }, 20'000));
    seen.goTo(2);
    EXPECT_EQ(seen.verticalScrollBar()->value(),
              qRound(297 * wide / 210) + qRound(210 * wide / 297) + 2 * between);
    EXPECT_EQ(seen.horizontalScrollBar()->maximum(), 0);
}

TEST_F(SheetsPlaceTest, ScrollsAndZoomsByKeys) {
    preview()->setFocus();
    QTest::keyClick(preview(), Qt::Key_PageDown);
    EXPECT_EQ(preview()->currentPage(), 1);
    QTest::keyClick(preview(), Qt::Key_End);
    EXPECT_EQ(preview()->currentPage(), static_cast<int>(pages()) - 1);
    QTest::keyClick(preview(), Qt::Key_Home);
    EXPECT_EQ(preview()->currentPage(), 0);
    QTest::keyClick(preview(), Qt::Key_1);
    EXPECT_EQ(preview()->zoom(), 1);
    QTest::keyClick(preview(), Qt::Key_Plus);
    EXPECT_GT(preview()->zoom(), 1);
    QTest::keyClick(preview(), Qt::Key_0);
    EXPECT_EQ(preview()->zoom(), 0);
    settle();
}

TEST_F(SheetsPlaceTest, SavesPdfAndSvgAndSaysSo) {
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("plant.pdf"));
    ask::setStand(ask::Stand{{}, {}, [&] { return file; }});
    QTest::mouseClick(child<QPushButton>("sheetsSavePdf"), Qt::LeftButton);
    EXPECT_TRUE(said(QStringLiteral("plant.pdf")));
    QFile pdf(file);
    ASSERT_TRUE(pdf.open(QIODevice::ReadOnly));
    EXPECT_TRUE(pdf.read(5) == "%PDF-");

    place.pickFolder = [&](QWidget*, const QString&) { return folder.filePath(QStringLiteral("svg")); };
    QTest::mouseClick(child<QPushButton>("sheetsSaveSvg"), Qt::LeftButton);
    EXPECT_TRUE(said(QStringLiteral("svg")));
    EXPECT_EQ(QDir(folder.filePath(QStringLiteral("svg"))).entryList({QStringLiteral("*.svg")}).size(),
              static_cast<qsizetype>(pages()));
}

TEST_F(SheetsPlaceTest, WritingShowsHowFarItIsAndStops) {
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("plant.pdf"));
    ask::setStand(ask::Stand{{}, {}, [&] { return file; }});
    session.open(test::largeBoard(60, 30), {});
    ASSERT_TRUE(becomes([&] { return pages() > 40; }));
    settle();
    QTest::mouseClick(child<QPushButton>("sheetsSavePdf"), Qt::LeftButton);
    auto* progress = child<QProgressBar>("sheetsProgress");
    auto* stop = child<QPushButton>("sheetsStop");
    EXPECT_TRUE(becomes([&] { return progress->isVisible() && progress->maximum() > 40; }));
    EXPECT_TRUE(stop->isVisible());
    QTest::mouseClick(stop, Qt::LeftButton);
    EXPECT_TRUE(said(QStringLiteral("Stopped")));
    EXPECT_FALSE(QFile::exists(file));
    EXPECT_FALSE(stop->isVisible());
    EXPECT_TRUE(child<QPushButton>("sheetsSavePdf")->isEnabled());
}

TEST_F(SheetsPlaceTest, AFolderThatCannotBeWrittenIsASentence) {
    QTemporaryDir folder;
    const QString file = folder.filePath(QStringLiteral("missing/plant.pdf"));
    ask::setStand(ask::Stand{{}, {}, [&] { return file; }});
    QTest::mouseClick(child<QPushButton>("sheetsSavePdf"), Qt::LeftButton);
    EXPECT_TRUE(said(QStringLiteral("cannot be written")));
    EXPECT_FALSE(QFile::exists(file));
    EXPECT_TRUE(child<QPushButton>("sheetsSavePdf")->isEnabled());
}

TEST_F(SheetsPlaceTest, EveryControlHasANameAndSpeaks) {
    for (auto* widget : place.findChildren<QWidget*>()) {
        if (widget->focusPolicy() == Qt::NoFocus || widget->objectName().startsWith(QLatin1String("qt_")))
            continue;
        if (qobject_cast<QPushButton*>(widget) || qobject_cast<QCheckBox*>(widget) ||
            qobject_cast<QComboBox*>(widget) || qobject_cast<QListWidget*>(widget)) {
            EXPECT_FALSE(widget->objectName().isEmpty());
            QAccessibleInterface* spoken = QAccessible::queryAccessibleInterface(widget);
            EXPECT_FALSE(spoken->text(QAccessible::Name).isEmpty()) << widget->objectName().toStdString();
        }
    }
}

} // namespace
} // namespace stemwright
