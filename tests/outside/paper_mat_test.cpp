// Mats measured on the page at 300 dots an inch, as poppler's pdftoppm renders it, against the plan.
#ifdef STEMWRIGHT_PROGRAM

#include "paper_support.h"

namespace stemwright {
namespace {

using namespace test;

constexpr double tolerance = 0.2; ///< mm

/// The joints of a stem from its tip, mm.
std::vector<double> jointsOf(const Stem& stem) {
    std::vector<double> joints;
    double at = 0;
    for (const Tier& tier : stem.tiers) {
        joints.push_back(at);
        at += inMillimetres(tier.spacing.value_or(stem.spacing));
    }
    return joints;
}

/// The middles of the short dark runs in each column of pixels, pixels from the top: joints have such a mark at
/// the edge of the views.
std::vector<std::vector<double>> shortMarks(const Grey& grey) {
    std::vector<std::vector<double>> columns;
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
        // Neighbouring columns show the same; one of them is enough.
        if (marks.size() > 1 && (columns.empty() || columns.back() != marks))
            columns.push_back(std::move(marks));
    }
    return columns;
}

/// How many joints from `first` on stand below each other in one column of one of the pages, each as far from
/// the first as the plan says.
std::size_t longestRun(const std::vector<std::vector<std::vector<double>>>& pages,
                       const std::vector<double>& joints, std::size_t first) {
    std::size_t best = 0;
    for (const auto& columns : pages)
        for (const std::vector<double>& marks : columns)
            for (std::size_t from = 0; from < marks.size(); ++from) {
                std::size_t run = 1;
                for (std::size_t next = from + 1; next < marks.size() && first + run < joints.size(); ++next) {
                    const double off = mmOf(marks[next] - marks[from]) - (joints[first + run] - joints[first]);
                    if (std::abs(off) < tolerance)
                        ++run;
                    else if (off > tolerance)
                        break;
                }
                best = std::max(best, run);
            }
    return best;
}

/// Every tier of every stem stands on the mats at its place: all of a stem below each other, or in as many runs
/// as there are sheets where one of them is carried over.
void expectSpacings(const Plan& plan, const std::vector<Grey>& mats, bool carriedOver,
                    const std::string& which) {
    const std::size_t sheets = carriedOver ? mats.size() : 1;
    std::vector<std::vector<std::vector<double>>> pages;
    for (const Grey& mat : mats)
        pages.push_back(shortMarks(mat));
    for (const Stem& stem : plan.stems) {
        const std::vector<double> joints = jointsOf(stem);
        if (joints.empty())
            continue;
        std::size_t done = 0, runs = 0;
        while (done < joints.size()) {
            const std::size_t run = longestRun(pages, joints, done);
            ASSERT_GE(run, 1u) << which << ", " << stem.name << ", tier " << done + 1;
            done += run;
            ++runs;
            ASSERT_LE(runs, sheets) << which << ", " << stem.name << ": tier " << done - run + 1
                                    << " does not stand where the plan has it";
        }
    }
}

class MatsOnPaper : public SheetsOnPaper {
protected:
    void measure(const Plan& plan, const std::string& paper) {
        const fs::path pdf = pdfOf(plan, "--only mats --paper " + paper);
        std::vector<Grey> mats;
        for (int number = 1; number <= pagesOf(pdf); ++number)
            mats.push_back(page(pdf, number));
        const std::string text = run("pdftotext -layout '" + pdf.string() + "' -").out;
        expectSpacings(plan, mats, text.find("sheet 1 of") != std::string::npos,
                       plan.about.title + ", " + paper);
    }
};

TEST_F(MatsOnPaper, EveryTierOfEveryExampleStandsWhereThePlanHasIt) {
    for (const ExampleInfo& info : examples())
        measure(example(info.key), "a4");
}

TEST_F(MatsOnPaper, UnevenSpacingsAreTrueOnEveryPaper) {
    Plan plan = randomBoard(1, 4, 22, 6);
    for (Stem& stem : plan.stems)
        for (std::size_t t = 0; t < stem.tiers.size(); ++t)
            stem.tiers[t].spacing = millimetres(6 + 1.3 * static_cast<double>((t * t + stem.id.value) % 7));
    for (const char* paper : {"a4", "a3", "letter"})
        measure(plan, paper);
}

TEST_F(MatsOnPaper, AStemLongerThanThePaperIsTrueAcrossItsSheets) {
    Plan plan = randomBoard(2, 1, 60, 6);
    for (std::size_t t = 0; t < plan.stems[0].tiers.size(); ++t)
        plan.stems[0].tiers[t].spacing = millimetres(14 + 2.1 * static_cast<double>(t * t % 5));
    const fs::path pdf = pdfOf(plan, "--only mats");
    ASSERT_GT(pagesOf(pdf), 1);
    measure(plan, "a4");
}

TEST_F(MatsOnPaper, AMeasureThatIsOffIsNoticed) {
    Plan plan = randomBoard(1, 1, 24, 6);
    const fs::path pdf = pdfOf(plan, "--only mats");
    std::vector<std::vector<std::vector<double>>> pages{shortMarks(page(pdf, 1))};
    std::vector<double> joints = jointsOf(plan.stems[0]);
    EXPECT_EQ(longestRun(pages, joints, 0), joints.size());
    for (std::size_t t = 0; t < joints.size(); ++t)
        joints[t] *= 1.02;
    EXPECT_LT(longestRun(pages, joints, 0), joints.size()) << "the check would see two hundredths";
}

} // namespace
} // namespace stemwright

#endif
