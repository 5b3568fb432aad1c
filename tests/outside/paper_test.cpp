// The paper by tools that are not ours: poppler's (pdfinfo, pdffonts, pdftoppm), qpdf, and librsvg's
// rsvg-convert. Paper sizes: ISO 216 for A4 and A3, ANSI/ASME Y14.1 for Letter (from memory).
#ifdef STEMWRIGHT_PROGRAM

#include "paper_support.h"

namespace stemwright {
namespace {

using namespace test;

TEST_F(SheetsOnPaper, PageSizesAreThoseOfTheStandards) {
    const Plan plan = test::smallBoard();
    const std::tuple<const char*, double, double> papers[] = {
        {"a4", 210, 297}, {"a3", 297, 420}, {"letter", 215.9, 279.4}};
    for (const auto& [name, width, height] : papers) {
        const fs::path pdf = pdfOf(plan, std::string("--paper ") + name);
        const std::string info = run("pdfinfo '" + pdf.string() + "'").out;
        std::smatch match;
        ASSERT_TRUE(std::regex_search(info, match, std::regex(R"(Page size:\s+([\d.]+) x ([\d.]+) pts)")))
            << info;
        // A page's box is in whole points.
        EXPECT_NEAR(std::stod(match[1]) * 25.4 / 72, width, 0.2) << name;
        EXPECT_NEAR(std::stod(match[2]) * 25.4 / 72, height, 0.2) << name;
    }
}

TEST_F(SheetsOnPaper, TheRulesMeasureWhatTheySay) {
    for (const char* paper : {"a4", "a3", "letter"}) {
        const fs::path pdf = pdfOf(test::randomBoard(1, 3, 24, 6), std::string("--paper ") + paper);
        const int pages = pagesOf(pdf);
        ASSERT_GE(pages, 2);
        for (int number = 1; number <= pages; ++number) {
            const Grey grey = page(pdf, number);
            bool mm = false, inch = false;
            for (const int length : darkRuns(grey, grey.height * 2 / 3, grey.height, dpi * 3)) {
                mm |= std::abs(mmOf(length) - 100) < 0.2;
                inch |= std::abs(mmOf(length) - 101.6) < 0.2;
            }
            EXPECT_TRUE(mm) << paper << ", page " << number;
            EXPECT_TRUE(inch) << paper << ", page " << number;
        }
    }
}

TEST_F(SheetsOnPaper, NothingIsPrintedInTheMargins) {
    for (const char* paper : {"a4", "letter"}) {
        const fs::path pdf =
            pdfOf(test::awkwardBoard(),
                  std::string("--only glance,mats,cards,leaves,pot --stems 1-3,5-8 --paper ") + paper);
        const int margin = static_cast<int>(12.0 * dpi / 25.4);
        EXPECT_GE(eachPage(pdf, dpi,
                           [&](const Grey& grey, int number) {
                               EXPECT_EQ(marksInMargins(grey, margin), 0) << paper << ", page " << number;
                           }),
                  6);
    }
}

TEST_F(SheetsOnPaper, NoExamplePrintsInTheMarginsOfAnyPaper) {
    constexpr int coarse = 75; ///< dots an inch: enough for a mark where there should be none
    const int margin = static_cast<int>(12.0 * coarse / 25.4);
    for (const ExampleInfo& info : examples())
        for (const char* paper : {"a4", "a3", "letter"})
            for (const char* grey : {"", " --grey"}) {
                const fs::path pdf = pdfOf(example(info.key), std::string("--paper ") + paper + grey);
                const int pages = eachPage(pdf, coarse, [&](const Grey& seen, int number) {
                    EXPECT_EQ(marksInMargins(seen, margin), 0)
                        << info.key << ", " << paper << grey << ", page " << number;
                });
                EXPECT_GE(pages, 6);
            }
}

TEST_F(SheetsOnPaper, GreyPaperHasNoColour) {
    const fs::path pdf = pdfOf(example(examples().front().key), "--grey --only glance,mats");
    const std::string stem = (folder / "colour").string();
    ASSERT_EQ(run("pdftoppm -r 60 '" + pdf.string() + "' '" + stem + "'").code, 0);
    int files = 0;
    for (const auto& entry : fs::directory_iterator(folder)) {
        if (entry.path().extension() != ".ppm")
            continue;
        ++files;
        std::istringstream in(bytesOf(entry.path()));
        std::string magic;
        int width = 0, height = 0, most = 0;
        in >> magic >> width >> height >> most;
        in.get();
        const std::string pixels{std::istreambuf_iterator<char>(in), {}};
        int coloured = 0;
        for (std::size_t i = 0; i + 2 < pixels.size(); i += 3) {
            const auto channel = [&](std::size_t c) { return static_cast<unsigned char>(pixels[i + c]); };
            coloured += std::abs(channel(0) - channel(1)) > 2 || std::abs(channel(1) - channel(2)) > 2;
        }
        EXPECT_EQ(coloured, 0) << entry.path();
    }
    EXPECT_GE(files, 2);
}

TEST_F(SheetsOnPaper, OneSvgHoldsOnePage) {
    const fs::path plan = planFile(smallBoard());
    const Said one = sheets(plan, folder / "pot.svg", "--only pot");
    EXPECT_EQ(one.code, 0) << one.out;
    EXPECT_EQ(run("rsvg-convert -f pdf -o '" + (folder / "pot.pdf").string() + "' '" +
                  (folder / "pot.svg").string() + "'")
                  .code,
              0);
    const Said many = sheets(plan, folder / "all.svg");
    EXPECT_EQ(many.code, 2);
    EXPECT_NE(many.out.find("--only"), std::string::npos) << many.out;
    EXPECT_FALSE(fs::exists(folder / "all.svg"));
}

TEST_F(SheetsOnPaper, SamePlanSameBytesAndTheDateIsThePlans) {
    Plan plan = test::randomBoard(1, 4, 20, 6);
    plan.about.date = "2026-03-02";
    const fs::path one = pdfOf(plan, "", "one.pdf");
    run("sleep 1.1");
    const fs::path other = pdfOf(plan, "", "other.pdf");
    EXPECT_FALSE(bytesOf(one).empty());
    EXPECT_TRUE(bytesOf(one) == bytesOf(other));
    EXPECT_NE(bytesOf(one).find("/CreationDate (D:20260302"), std::string::npos);
}

TEST_F(SheetsOnPaper, SyntaxIsSound) {
    std::vector<Plan> plans{test::smallBoard(), test::awkwardBoard()};
    for (const ExampleInfo& info : examples())
        plans.push_back(example(info.key));
    for (const Plan& plan : plans) {
        const Said said = run("qpdf --check '" + pdfOf(plan).string() + "'");
        EXPECT_EQ(said.code, 0) << said.out;
    }
}

TEST_F(SheetsOnPaper, SvgIsTheSamePageAtTheSameSize) {
    const Plan plan = test::randomBoard(1, 3, 24, 6);
    const fs::path svgs = folder / "svg";
    fs::create_directory(svgs);
    const Said said = sheets(planFile(plan), svgs);
    ASSERT_EQ(said.code, 0) << said.out;
    int files = 0;
    for (const auto& entry : fs::directory_iterator(svgs)) {
        ++files;
        const fs::path pdf = folder / "svg.pdf";
        const Said converted =
            run("rsvg-convert -f pdf -o '" + pdf.string() + "' '" + entry.path().string() + "'");
        ASSERT_EQ(converted.code, 0) << converted.out;
        const Grey grey = page(pdf, 1);
        EXPECT_NEAR(mmOf(grey.width), 210, 0.4) << entry.path();
        EXPECT_NEAR(mmOf(grey.height), 297, 0.4) << entry.path();
        bool mm = false, inch = false;
        for (const int length : darkRuns(grey, grey.height * 2 / 3, grey.height, dpi * 3)) {
            mm |= std::abs(mmOf(length) - 100) < 0.2;
            inch |= std::abs(mmOf(length) - 101.6) < 0.2;
        }
        EXPECT_TRUE(mm && inch) << entry.path();
    }
    EXPECT_EQ(files, pagesOf(pdfOf(plan)));
}

TEST_F(SheetsOnPaper, WhatCannotBeWrittenIsOneSentenceAndLeavesNothing) {
    const fs::path plan = planFile(test::smallBoard());
    const Said said = sheets(plan, folder / "missing" / "out.pdf");
    EXPECT_EQ(said.code, 2);
    EXPECT_NE(said.out.find("out.pdf"), std::string::npos) << said.out;
    EXPECT_EQ(std::count(said.out.begin(), said.out.end(), '\n'), 1) << said.out;
    EXPECT_FALSE(fs::exists(folder / "missing"));
}

} // namespace
} // namespace stemwright

#endif
