#include "core/document/journal.h"

#include "core/document/plan_file.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

JournalStart startOf(Plan plan) {
    return {"a folder/fern \"one\".stemplan", "c0ffee", std::move(plan)};
}

TEST(Journal, GivesBackItsStartAndEveryEditBehindIt) {
    const JournalStart start = startOf(test::smallBoard());
    std::string text = journalText(start);
    Plan plan = start.plan;
    const Edit turn = TurnTier{StemId{1}, 0, degrees(45)};
    const Edit close = CloseTier{StemId{1}, 1};
    for (const Edit& edit : {turn, close}) {
        ASSERT_TRUE(apply(plan, edit));
        text += journalLine(edit);
    }
    const Result<Journal> read = journalFromText(text);
    ASSERT_TRUE(read);
    EXPECT_EQ(read.value().start, start);
    EXPECT_EQ(read.value().plan, plan);
    EXPECT_EQ(read.value().edits, 2);
    EXPECT_FALSE(read.value().cut);
}

TEST(Journal, CutAnywhereBehindItsStartGivesBackTheEditsThatAreWhole) {
    const JournalStart start = startOf(test::smallBoard());
    const std::string head = journalText(start);
    const std::string first = journalLine(TurnTier{StemId{1}, 0, degrees(45)});
    const std::string second = journalLine(CloseTier{StemId{1}, 1});
    const std::string whole = head + first + second;
    for (std::size_t length = head.size(); length <= whole.size(); ++length) {
        const Result<Journal> read = journalFromText(std::string_view(whole).substr(0, length));
        ASSERT_TRUE(read) << length;
        const int expected = (length >= head.size() + first.size()) + (length == whole.size());
        EXPECT_EQ(read.value().edits, expected) << length;
        const bool atLineEnd =
            length == head.size() || length == head.size() + first.size() || length == whole.size();
        EXPECT_EQ(read.value().cut, !atLineEnd) << length;
    }
}

TEST(Journal, StopsAtAnEditThatCannotBeApplied) {
    const std::string text =
        journalText(startOf(test::smallBoard())) + journalLine(TurnTier{StemId{1}, 0, degrees(45)}) +
        journalLine(CloseTier{StemId{99}, 0}) + journalLine(TurnTier{StemId{1}, 0, degrees(90)});
    const Result<Journal> read = journalFromText(text);
    ASSERT_TRUE(read);
    EXPECT_EQ(read.value().edits, 1);
    EXPECT_TRUE(read.value().cut);
}

TEST(Journal, WithoutAWholeStartIsAProblem) {
    const std::string text = journalText(startOf(test::smallBoard()));
    for (std::size_t length = 0; length + 1 < text.size(); length += 7)
        EXPECT_FALSE(journalFromText(std::string_view(text).substr(0, length))) << length;
    EXPECT_FALSE(journalFromText("[1]\n"));
    EXPECT_FALSE(journalFromText(planText(test::smallBoard())));
    EXPECT_FALSE(journalFromText(
        "{\"format\": \"stemwright-journal\", \"file\": \"\", \"digest\": \"\", \"plan_bytes\": -5}\n{}"));
}

} // namespace
} // namespace stemwright
