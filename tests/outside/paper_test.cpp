// The paper, by tools that are not ours: poppler's (pdfinfo, pdffonts, pdftotext, pdftoppm), qpdf, and
// librsvg's rsvg-convert. Paper sizes: ISO 216 for A4 and A3, ANSI/ASME Y14.1 for Letter (from memory).
#ifdef STEMWRIGHT_PROGRAM

#include "core/document/examples.h"
#include "core/document/plan_file.h"
#include "tests/support/boards.h"
#include "tests/support/sheets.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <regex>
#include <sstream>

namespace stemwright {
namespace {

namespace fs = std::filesystem;

struct Said {
    int code = -1;
    std::string out;
};

Said run(const std::string& command) {
    Said said;
    FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    if (!pipe)
        return said;
    std::array<char, 4096> part{};
    for (std::size_t got; (got = std::fread(part.data(), 1, part.size(), pipe)) > 0;)
        said.out.append(part.data(), got);
    const int status = pclose(pipe);
    said.code = WIFEXITED(status) ? WEXITSTATUS(status) : -1;
    return said;
}

std::string bytesOf(const fs::path& file) {
    std::ifstream in(file, std::ios::binary);
    return {std::istreambuf_iterator<char>(in), {}};
}

/// A page as greys, one byte a pixel.
struct Grey {
    int width = 0, height = 0;
    std::string pixels;

    bool dark(int x, int y, int below) const {
        return static_cast<unsigned char>(pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                                                 static_cast<std::size_t>(x)]) < below;
    }
};

Grey readPgm(const fs::path& file) {
    Grey grey;
    std::istringstream in(bytesOf(file));
    std::string magic;
    int most = 0;
    in >> magic >> grey.width >> grey.height >> most;
    EXPECT_EQ(magic, "P5");
    in.get();
    grey.pixels.assign(std::istreambuf_iterator<char>(in), {});
    EXPECT_EQ(grey.pixels.size(), static_cast<std::size_t>(grey.width) * static_cast<std::size_t>(grey.height));
    return grey;
}

constexpr int dpi = 300;
double mmOf(double pixels) {
    return pixels * 25.4 / dpi;
}

class SheetsOnPaper : public ::testing::Test {
protected:
    void SetUp() override {
        std::string name = (fs::temp_directory_path() / "stemwright-paper-XXXXXX").string();
        ASSERT_TRUE(mkdtemp(name.data()));
        folder = name;
    }
    void TearDown() override { fs::remove_all(folder); }

    fs::path planFile(const Plan& plan, const std::string& name = "plan.stemplan") {
        const fs::path file = folder / name;
        std::ofstream(file, std::ios::binary) << planText(plan);
        return file;
    }
    Said sheets(const fs::path& plan, const fs::path& to, const std::string& more = "") {
        return run("XDG_RUNTIME_DIR='" + folder.string() +
                   "' QT_QPA_PLATFORM=offscreen '" STEMWRIGHT_PROGRAM "' sheets '" + plan.string() + "' -o '" +
                   to.string() + (fs::is_directory(to) ? "/" : "") + "' " + more);
    }
    fs::path pdfOf(const Plan& plan, const std::string& more = "", const std::string& name = "out.pdf") {
        const fs::path pdf = folder / name;
        const Said said = sheets(planFile(plan), pdf, more);
        EXPECT_EQ(said.code, 0) << said.out;
        return pdf;
    }
    Grey page(const fs::path& pdf, int number) {
        const std::string stem = (folder / "page").string();
        const Said said =
            run("pdftoppm -gray -r " + std::to_string(dpi) + " -f " + std::to_string(number) + " -l " +
                std::to_string(number) + " -singlefile '" + pdf.string() + "' '" + stem + "'");
        EXPECT_EQ(said.code, 0) << said.out;
        return readPgm(stem + ".pgm");
    }

    fs::path folder;
};

int pagesOf(const fs::path& pdf) {
    std::smatch match;
    const std::string info = run("pdfinfo '" + pdf.string() + "'").out;
    return std::regex_search(info, match, std::regex(R"(Pages:\s+(\d+))")) ? std::stoi(match[1]) : 0;
}

/// Every run of dark pixels in the rows of a part of the page: its length and where it begins.
std::vector<int> darkRuns(const Grey& grey, int fromRow, int toRow, int atLeast) {
    std::vector<int> runs;
    for (int y = fromRow; y < toRow; ++y) {
        int length = 0;
        for (int x = 0; x <= grey.width; ++x) {
            if (x < grey.width && grey.dark(x, y, 100)) {
                ++length;
                continue;
            }
            if (length >= atLeast)
                runs.push_back(length);
            length = 0;
        }
    }
    return runs;
}

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
        const int pages = pagesOf(pdf);
        const int margin = static_cast<int>(12.0 * dpi / 25.4);
        for (int number = 1; number <= pages; ++number) {
            const Grey grey = page(pdf, number);
            int marks = 0;
            for (int y = 0; y < grey.height; ++y)
                for (int x = 0; x < grey.width; ++x)
                    if (x < margin || y < margin || x >= grey.width - margin || y >= grey.height - margin)
                        marks += grey.dark(x, y, 250);
            EXPECT_EQ(marks, 0) << paper << ", page " << number;
        }
    }
}

TEST_F(SheetsOnPaper, TiersOnTheMatStandAtTheirSpacings) {
    Plan plan = test::randomBoard(1, 1, 24, 6);
    Stem& stem = plan.stems[0];
    std::vector<double> joints{0};
    for (std::size_t t = 0; t < stem.tiers.size(); ++t) {
        stem.tiers[t].spacing = millimetres(6 + 1.3 * static_cast<double>(t % 5));
        joints.push_back(joints.back() + inMillimetres(*stem.tiers[t].spacing));
    }
    joints.resize(stem.tiers.size());
    const fs::path pdf = pdfOf(plan, "--only mats");
    ASSERT_EQ(pagesOf(pdf), 1);
    const Grey grey = page(pdf, 1);
    // Each joint has a short mark at the edge of the views: in one of the page's columns they stand one below
    // the other, as far apart as the plan says.
    double best = 1e9;
    for (int x = 0; x < grey.width; ++x) {
        std::vector<double> marks;
        for (int y = 0, length = 0; y < grey.height; ++y) {
            if (grey.dark(x, y, 120)) {
                ++length;
                continue;
            }
            if (length > 0 && length <= 6)
                marks.push_back(y - length / 2.0);
            length = 0;
        }
        // Other marks may stand above and below, so every run of as many in a row is tried.
        for (std::size_t from = 0; from + joints.size() <= marks.size(); ++from) {
            double off = 0;
            for (std::size_t i = 0; i < joints.size(); ++i)
                off = std::max(off, std::abs(mmOf(marks[from + i] - marks[from]) - joints[i]));
            best = std::min(best, off);
        }
    }
    EXPECT_LT(best, 0.2) << "mm";
}

TEST_F(SheetsOnPaper, FontsAreEmbeddedAndTextIsThere) {
    Plan plan = test::randomBoard(1, 4, 20, 6);
    plan.about.title = "Windowsill herb & <b>moss</b>";
    plan.about.date = "2026-03-02";
    plan.mixes[0].name = "Efficient office fig"; // letters that fonts like to join
    const fs::path pdf = pdfOf(plan);
    std::istringstream fonts(run("pdffonts '" + pdf.string() + "'").out);
    std::string line;
    std::getline(fonts, line);
    const auto column = line.find("emb");
    ASSERT_NE(column, std::string::npos);
    std::getline(fonts, line);
    int count = 0;
    while (std::getline(fonts, line)) {
        ++count;
        EXPECT_EQ(line.substr(column, 3), "yes") << line;
    }
    EXPECT_GT(count, 0);
    const int pages = pagesOf(pdf);
    for (int number = 1; number <= pages; ++number) {
        const std::string one = std::to_string(number);
        const std::string text =
            run("pdftotext -layout -f " + one + " -l " + one + " '" + pdf.string() + "' -").out;
        EXPECT_NE(text.find(plan.about.title), std::string::npos) << number;
        EXPECT_NE(text.find(plan.about.date), std::string::npos) << number;
        EXPECT_NE(text.find("page " + one + " of " + std::to_string(pages)), std::string::npos) << number;
    }
    const std::string all = run("pdftotext -layout '" + pdf.string() + "' -").out;
    for (const std::string word : {"Efficient office fig", "Stem 1", "Stem 4", "side to side", "front to back"})
        EXPECT_NE(all.find(word), std::string::npos) << word;
}

struct Word {
    double left = 0, top = 0, right = 0, bottom = 0;
    std::string text;
};

/// The words of each page with their boxes in points, as poppler finds them.
std::vector<std::vector<Word>> wordsOf(const fs::path& pdf) {
    std::vector<std::vector<Word>> pages;
    std::istringstream lines(run("pdftotext -bbox '" + pdf.string() + "' -").out);
    const std::regex word(
        R"re(<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">(.*)</word>)re");
    std::smatch match;
    for (std::string line; std::getline(lines, line);) {
        if (line.find("<page ") != std::string::npos)
            pages.emplace_back();
        if (std::regex_search(line, match, word) && !pages.empty())
            pages.back().push_back(
                {std::stod(match[1]), std::stod(match[2]), std::stod(match[3]), std::stod(match[4]), match[5]});
    }
    return pages;
}

TEST_F(SheetsOnPaper, NoWordLiesOnAnother) {
    std::vector<std::pair<Plan, std::string>> papers{{test::awkwardBoard(), "a4"},
                                                     {test::awkwardBoard(), "letter"}};
    for (const ExampleInfo& info : examples())
        for (const char* paper : {"a4", "a3", "letter"})
            papers.emplace_back(example(info.key), paper);
    for (const auto& [plan, paper] : papers) {
        const auto pages = wordsOf(pdfOf(plan, "--paper " + paper));
        ASSERT_FALSE(pages.empty());
        ASSERT_GT(pages.front().size(), 50u);
        for (std::size_t p = 0; p < pages.size(); ++p)
            for (std::size_t i = 0; i < pages[p].size(); ++i)
                for (std::size_t j = i + 1; j < pages[p].size(); ++j) {
                    const Word &a = pages[p][i], &b = pages[p][j];
                    // poppler's boxes have the font's whole height; letters take about the middle half.
                    const double ha = (a.bottom - a.top) / 4, hb = (b.bottom - b.top) / 4;
                    const bool over = a.left + 0.3 < b.right && b.left + 0.3 < a.right &&
                                      a.top + ha < b.bottom - hb && b.top + hb < a.bottom - ha;
                    ASSERT_FALSE(over) << plan.about.title << ", " << paper << ", page " << p + 1 << ": '"
                                       << a.text << "' and '" << b.text << "'";
                }
    }
}

TEST_F(SheetsOnPaper, CardsReadInTheOrderOfTheWork) {
    const Plan plan = test::randomBoard(1, 1, 24, 6);
    const std::string text = run("pdftotext -layout '" + pdfOf(plan, "--only cards").string() + "' -").out;
    std::size_t at = 0;
    for (std::size_t tier = 1; tier <= plan.stems[0].tiers.size(); ++tier) {
        const std::size_t next = text.find("Tier " + std::to_string(tier) + ",");
        ASSERT_NE(next, std::string::npos) << tier;
        EXPECT_GT(next, at);
        at = next;
    }
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
