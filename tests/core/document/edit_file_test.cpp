#include "core/document/edit_file.h"
#include "core/document/plan_file.h"
#include "core/document/words.h"
#include "tests/support/boards.h"
#include "tests/support/random_edits.h"

#include <gtest/gtest.h>

#include <set>

namespace stemwright {
namespace {

void expectRoundTrip(const Edit& edit) {
    const std::string text = editText(edit);
    EXPECT_EQ(text.find('\n'), std::string::npos);
    const Result<Edit> back = editFromText(text);
    ASSERT_TRUE(back) << back.problem().place << "\n" << text;
    EXPECT_EQ(back.value(), edit) << text;
    EXPECT_EQ(editText(back.value()), text);
}

OwnTables ownTables() {
    OwnTables own;
    own.metals = {{"bronze", 8800, 105'000, 130, ""}};
    own.beads = {{"11/0", millimetres(2.1), millimetres(1.0 / 3), grams(0.011), "{\"box\": 7}"}};
    own.flosses = {{"grey", 4, millimetres(0.3), millimetres(5'000), 0.04, ""}};
    own.tapes = {{"brown", millimetres(13), millimetres(0.2), 1.4, std::nullopt, 0.6, ""}};
    own.clays = {{"river", 1'700, ""}};
    own.covers = {{"moss", 90, ""}};
    return own;
}

std::vector<Edit> oneOfEach() {
    const Plan plan = test::randomBoard(3, 3, 6, 3);
    Tier tier = plan.stems[0].tiers[1];
    tier.extra = "{\"thread\": \"grey\"}";
    tier.spacing = millimetres(1.0 / 3);
    StemForm form = plan.stems[1];
    form.name = "Two\nlines, \"quoted\"";
    form.core = CoreWire{millimetres(0.9), GaugeNumber{GaugeSystem::swg, 20}, Metal::softBrass, ""};
    form.core->ownMetal = "bronze";
    form.standing = Standing{millimetres(-3), millimetres(4.5), ""};
    form.took = {{0, millimetres(612.5), ""}, {2, millimetres(90), "{\"day\": 3}"}};
    KindForm kind = plan.kinds[0];
    kind.make = LeafMake{Making::rows, 6, 5, degrees(30), "", {{1, 13, ""}, {4, 24, ""}}};
    kind.own.beads = kind.own.wiresAtBase = true;
    Binding binding;
    binding.wraps.resize(2);
    binding.wraps[1].name = "Grey floss";
    binding.wraps[1].own = "grey";
    binding.wraps[1].overlapMeasured = true;
    return {
        FillSlot{{StemId{1}, 2, 1}, {KindId{1}, MixId{2}}},
        SwapSlots{{StemId{1}, 0, 0}, {StemId{2}, 1, 1}},
        PinSlot{{StemId{1}, 0, 0}, true},
        OpenTier{StemId{1}, 2, tier},
        CloseTier{StemId{3}, 1},
        MoveTiers{StemId{1}, 0, 2, StemId{2}, 1},
        TurnTier{StemId{2}, 0, degrees(137.50776405003785)},
        SpaceTier{StemId{2}, 0, millimetres(0.1 + 0.2)},
        MarkTier{StemId{1}, 1, {true, 2.5, "{\"by\": \"me\"}"}},
        ReformStem{StemId{1}, form},
        ReformKind{KindId{1}, kind},
        SetStock{KindId{2}, {{MixId{1}, 3, 4, ""}, {MixId{2}, 0, 0, "{\"box\": 7}"}}},
        Insert<Colour>{1, {ColourId{9}, "Sea", {1, 2, 3}, ""}},
        Insert<Mix>{0, plan.mixes[1]},
        Insert<Kind>{0, plan.kinds[1]},
        Insert<Stem>{3, plan.stems[2]},
        Remove<ColourId>{ColourId{1}},
        Remove<MixId>{MixId{2}},
        Remove<KindId>{KindId{3}},
        Remove<StemId>{StemId{4294967295u}},
        Move<ColourId>{ColourId{1}, 3},
        Move<MixId>{MixId{2}, -1},
        Move<KindId>{KindId{}, 2147483647},
        Move<StemId>{StemId{4}, -2147483647 - 1},
        Replace<Colour>{{ColourId{2}, "Frost", {255, 254, 253}, "{\"lot\": 1.10}", {10, 2.5, ""}}},
        Replace<Mix>{plan.mixes[2]},
        Set<About>{{"Title", "Note", "2025-01-31", "{\"a\": 1}"}},
        Set<Units>{{LengthUnit::inch, MassUnit::ounce, ""}},
        Set<Binding>{binding},
        Set<Pot>{{}},
        Set<Buying>{{0.2,
                     {{millimetres(300), 0.5, millimetres(1.5), ""}},
                     {},
                     {9000, 4, ""},
                     {{millimetres(0.3), {5000, 3, ""}, ""}},
                     {},
                     {},
                     {},
                     ""}},
        Set<OwnTables>{ownTables()},
        Batch{Deed::suggestion, {CloseTier{StemId{3}, 1}, Batch{Deed::paste, {}}}},
    };
}

TEST(EditFile, ReadsBackEveryAlternative) {
    const std::vector<Edit> edits = oneOfEach();
    ASSERT_EQ(edits.size(), std::variant_size_v<Edit::What>);
    std::set<std::string_view> words;
    for (std::size_t i = 0; i < edits.size(); ++i) {
        ASSERT_EQ(edits[i].what.index(), i);
        words.insert(wordsForEdits()[i]);
        expectRoundTrip(edits[i]);
        expectRoundTrip(Batch{Deed::remedy, {edits[i], edits[i]}});
    }
    EXPECT_EQ(words.size(), edits.size());
}

// Journals of older versions hold these very words.
TEST(EditFile, WritesOneLineOfPlainWords) {
    EXPECT_EQ(editText(FillSlot{{StemId{1}, 2, 1}, {KindId{1}, MixId{}}}),
              R"({"edit": "fill-slot", "at": {"stem": 1, "tier": 2, "slot": 1}, "kind": 1})");
    EXPECT_EQ(editText(Move<StemId>{StemId{4}, 2}), R"({"edit": "move-stem", "id": 4, "index": 2})");
    EXPECT_EQ(editText(SpaceTier{StemId{2}, 0, std::nullopt}),
              R"({"edit": "space-tier", "stem": 2, "index": 0})");
    EXPECT_EQ(editText(Set<Units>{{}}),
              R"({"edit": "set-units", "part": {"length": "millimetre", "mass": "gram"}})");
    EXPECT_EQ(
        editText(Batch{Deed::moveLeaf, {CloseTier{StemId{3}, 1}}}),
        R"({"edit": "batch", "deed": "move-leaf", "edits": [{"edit": "close-tier", "stem": 3, "index": 1}]})");
}

TEST(EditFile, EveryDeedHasItsWord) {
    std::set<std::string_view> words;
    for (int i = 0; i <= static_cast<int>(Deed::paste); ++i) {
        const Deed deed = static_cast<Deed>(i);
        words.insert(wordFor(deed));
        expectRoundTrip(Batch{deed, {}});
    }
    EXPECT_EQ(words.size(), static_cast<std::size_t>(Deed::paste) + 1);
}

TEST(EditFile, BatchesMayBeNestedButNotForEver) {
    const auto nested = [](int depth) {
        Edit edit = CloseTier{StemId{1}, 0};
        for (int i = 0; i < depth; ++i)
            edit = Batch{Deed::several, {edit}};
        return edit;
    };
    expectRoundTrip(nested(29));
    const Result<Edit> deep = editFromText(editText(nested(40)));
    ASSERT_FALSE(deep);
    EXPECT_EQ(deep.problem().code, ProblemCode::tooDeep);
    std::string text;
    for (int i = 0; i < 100'000; ++i)
        text += R"({"edit": "batch", "deed": "several", "edits": [)";
    EXPECT_FALSE(editFromText(text));
}

TEST(EditFile, RefusesWhatItDoesNotUnderstand) {
    const auto problem = [](const char* text) {
        const Result<Edit> edit = editFromText(text);
        return edit ? Problem{} : edit.problem();
    };
    EXPECT_EQ(problem("7"), (Problem{ProblemCode::wrongType, "", {"object", "number"}}));
    EXPECT_EQ(problem("{}"), (Problem{ProblemCode::missingKey, "", {"edit"}}));
    EXPECT_EQ(problem(R"({"edit": "fold-paper"})").code, ProblemCode::unknownWord);
    EXPECT_EQ(problem(R"({"edit": "close-tier", "stem": 3, "index": 1)").code, ProblemCode::notJson);
    EXPECT_EQ(problem(R"({"edit": "close-tier", "stem": 3})"),
              (Problem{ProblemCode::missingKey, "", {"index"}}));
    EXPECT_EQ(problem(R"({"edit": "close-tier", "stem": 3, "index": 1, "gently": true})"),
              (Problem{ProblemCode::unknownKey, "", {"gently"}}));
    EXPECT_EQ(
        problem(R"({"edit": "pin-slot", "at": {"stem": 1, "tier": 0, "slot": 0, "row": 1}, "pinned": true})"),
        (Problem{ProblemCode::unknownKey, "at", {"row"}}));
    EXPECT_EQ(problem(R"({"edit": "close-tier", "stem": 3, "index": 99999999999})"),
              (Problem{ProblemCode::outOfRange, "index", {"99999999999", "-2147483648", "2147483647"}}));
    EXPECT_EQ(
        problem(
            R"({"edit": "batch", "deed": "several", "edits": [{"edit": "batch", "deed": "paste", "edits": [7]}]})"),
        (Problem{ProblemCode::wrongType, "edits[0].edits[0]", {"object", "number"}}));
}

// A journal read back does what the edits did, to the byte, and so do their inverses.
TEST(EditFileProperty, ReadBackEditsDoTheSame) {
    int made = 0;
    for (std::uint32_t seed = 0; seed < 1'500; ++seed) {
        Plan plan = test::randomBoard(seed, 3, 6, 3);
        test::RandomEdits random(seed);
        for (int step = 0; step < 4 && !plan.stems.empty(); ++step) {
            const Edit edit = random.next(plan);
            expectRoundTrip(edit);
            Plan other = plan;
            const Result<Edit> back = apply(plan, edit);
            const Result<Edit> otherBack = apply(other, editFromText(editText(edit)).value());
            ASSERT_EQ(back.ok(), otherBack.ok()) << editText(edit);
            ASSERT_EQ(planText(plan), planText(other)) << editText(edit);
            if (!back)
                continue;
            ++made;
            expectRoundTrip(back.value());
            ASSERT_EQ(back.value(), otherBack.value());
        }
    }
    EXPECT_GT(made, 1'500);
}

} // namespace
} // namespace stemwright
