#include "app/sheet_painter.h"
#include "app/sheet_words.h"

#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <gtest/gtest.h>

#include <QFile>
#include <QImage>
#include <QPrinter>
#include <QTemporaryDir>
#include <QTest>

#include <cmath>

namespace stemwright {
namespace {

QByteArray bytesOf(const QString& file) {
    QFile in(file);
    return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
}

TEST(SheetPainter, SamePlanSameBytes) {
    QTemporaryDir folder;
    const Plan plan = test::smallBoard();
    const QString one = folder.filePath(QStringLiteral("one.pdf")),
                  other = folder.filePath(QStringLiteral("other.pdf"));
    ASSERT_TRUE(writePdf(plan, {}, one, nullptr));
    QTest::qWait(1100); // a second later by the clock
    ASSERT_TRUE(writePdf(plan, {}, other, nullptr));
    EXPECT_FALSE(bytesOf(one).isEmpty());
    EXPECT_TRUE(bytesOf(one) == bytesOf(other));
}

TEST(SheetPainter, RealFontsKeepTextApartAndInside) {
    for (const Plan& plan : {test::smallBoard(), test::awkwardBoard(), test::randomBoard(2, 30, 20, 12, 3)})
        for (const Paper paper : {Paper::a4, Paper::letter}) {
            SheetOptions options;
            options.paper = paper;
            for (const Page& page : pagesOf(plan, figures(plan), options)) {
                const BoxMm inside{pageMargin - 0.3, pageMargin - 0.3, page.width - 2 * pageMargin + 0.6,
                                   page.height - 2 * pageMargin + 0.6};
                std::vector<std::pair<BoxMm, std::string>> texts;
                for (const Mark& mark : page.marks) {
                    const BoxMm box = boxOf(mark, plan);
                    ASSERT_TRUE(inside.contains(box)) << page.title;
                    if (const auto* text = std::get_if<TextMark>(&mark))
                        texts.emplace_back(box, text->text);
                }
                for (std::size_t i = 0; i < texts.size(); ++i)
                    for (std::size_t j = i + 1; j < texts.size(); ++j)
                        ASSERT_FALSE(texts[i].first.overlaps(texts[j].first))
                            << page.title << ": '" << texts[i].second << "' and '" << texts[j].second << "'";
            }
        }
}

TEST(SheetPainter, APercentSignKeepsToItsNumber) {
    const FontMeasure measure;
    const std::string check = TranslatedWords(Units{}).word(SheetWord::ruleCheck, {});
    for (double width = 20; width < 120; width += 1)
        for (const std::string& line : measure.lines(check, {6.8, true}, width))
            EXPECT_NE(line.front(), '%') << width << " mm: " << line;
}

TEST(SheetPainter, GreyHasNoColour) {
    const Plan plan = test::smallBoard();
    for (const Page& page : pagesOf(plan, figures(plan), {})) {
        const QImage grey = pagePicture(page, plan, 3, true);
        bool coloured = false;
        for (int y = 0; y < grey.height(); ++y)
            for (int x = 0; x < grey.width(); ++x) {
                const QRgb p = grey.pixel(x, y);
                coloured |=
                    std::max({qRed(p), qGreen(p), qBlue(p)}) - std::min({qRed(p), qGreen(p), qBlue(p)}) > 3;
            }
        EXPECT_FALSE(coloured);
    }
}

TEST(SheetPainter, WhatCannotBeWrittenIsASentenceAndLeavesNothing) {
    QTemporaryDir folder;
    QString why;
    EXPECT_FALSE(writePdf(test::smallBoard(), {}, folder.filePath(QStringLiteral("no/such/folder.pdf")), &why));
    EXPECT_TRUE(why.contains(QLatin1String("folder.pdf")));
    EXPECT_FALSE(QFile::exists(folder.filePath(QStringLiteral("no"))));

    QFile inTheWay(folder.filePath(QStringLiteral("file")));
    ASSERT_TRUE(inTheWay.open(QIODevice::WriteOnly));
    EXPECT_FALSE(writeSvg(test::smallBoard(), {}, folder.filePath(QStringLiteral("file/svg")), &why));
    EXPECT_TRUE(why.contains(QLatin1String("svg")));

    SheetOptions nothing;
    nothing.stems = {99};
    nothing.only = {SheetPage::mats};
    EXPECT_FALSE(writePdf(test::smallBoard(), nothing, folder.filePath(QStringLiteral("empty.pdf")), &why));
    EXPECT_FALSE(QFile::exists(folder.filePath(QStringLiteral("empty.pdf"))));
}

TEST(SheetPainter, PrinterGetsTheSamePagesAsTheFile) {
    // The printer's way, into a file: Qt has no other printer on a machine without one.
    QTemporaryDir folder;
    const Plan plan = test::smallBoard();
    const std::vector<Page> pages = pagesOf(plan, figures(plan), {});
    QPrinter printer(QPrinter::HighResolution);
    printer.setOutputFormat(QPrinter::PdfFormat);
    printer.setOutputFileName(folder.filePath(QStringLiteral("printed.pdf")));
    QString why;
    EXPECT_TRUE(printOn(printer, plan, pages, {}, &why)) << why.toStdString();
    EXPECT_GT(bytesOf(folder.filePath(QStringLiteral("printed.pdf"))).count("/Type /Page\n"), 0);
}

} // namespace
} // namespace stemwright
