// The words on the paper, as poppler's pdffonts and pdftotext find them.
#ifdef STEMWRIGHT_PROGRAM

#include "paper_support.h"

namespace stemwright {
namespace {

using namespace test;

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

TEST_F(SheetsOnPaper, EveryPageReadsFromItsTitleToItsCautions) {
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        const fs::path pdf = pdfOf(plan);
        const int pages = pagesOf(pdf);
        for (int number = 1; number <= pages; ++number) {
            const std::string one = std::to_string(number);
            const std::string said =
                run("pdftotext -f " + one + " -l " + one + " '" + pdf.string() + "' -").out;
            const std::size_t title = said.find(plan.about.title);
            const std::size_t rules = said.find("Measure these rules first");
            ASSERT_NE(title, std::string::npos) << info.key << ", page " << number;
            ASSERT_NE(rules, std::string::npos) << info.key << ", page " << number;
            EXPECT_LT(title, rules) << info.key << ", page " << number;
        }
    }
}

TEST_F(SheetsOnPaper, ThirtyStemsAreABookletWhosePageNumbersAreRight) {
    const Plan plan = randomBoard(6, 30, 20, 8);
    const fs::path pdf = pdfOf(plan);
    const int pages = pagesOf(pdf);
    std::vector<std::string> said;
    for (int number = 1; number <= pages; ++number) {
        const std::string one = std::to_string(number);
        said.push_back(run("pdftotext -layout -f " + one + " -l " + one + " '" + pdf.string() + "' -").out);
    }
    std::string contents;
    for (const std::string& page : said)
        if (page.find("The plant at a glance") != std::string::npos)
            contents += page;
    for (int stem = 1; stem <= 30; ++stem) {
        // "12  Stem 12  151 mm … 14  33": the last two figures are the pages of its mat and its card.
        const std::string name = "Stem " + std::to_string(stem);
        std::smatch match;
        const std::regex line("\\b" + std::to_string(stem) + " +" + name + " [^\\n]*?(\\d+) +(\\d+) *\\n");
        ASSERT_TRUE(std::regex_search(contents, match, line)) << name << "\n" << contents;
        const auto mat = static_cast<std::size_t>(std::stoi(match[1]));
        const auto card = static_cast<std::size_t>(std::stoi(match[2]));
        ASSERT_LE(std::max(mat, card), said.size());
        EXPECT_NE(said[mat - 1].find("Mat, true size"), std::string::npos) << name << " on page " << mat;
        EXPECT_NE(said[mat - 1].find(name), std::string::npos) << name << " on page " << mat;
        EXPECT_NE(said[card - 1].find("Binding card"), std::string::npos) << name << " on page " << card;
        EXPECT_NE(said[card - 1].find(name), std::string::npos) << name << " on page " << card;
    }
}

} // namespace
} // namespace stemwright

#endif
