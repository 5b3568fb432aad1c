#include "core/document/examples.h"
#include "core/document/plan_file.h"

#include <gtest/gtest.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <random>
#include <regex>

namespace stemwright {
namespace {

const std::filesystem::path data = STEMWRIGHT_SOURCE_DIR "/tests/data";

std::string contents(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    EXPECT_TRUE(file) << path;
    return std::string(std::istreambuf_iterator<char>(file), {});
}

struct Broken {
    const char* name; ///< of the file in tests/data/broken_plans, which says what is wrong
    ProblemCode code;
    const char* place;
    std::vector<std::string> values;
};

const std::vector<Broken> brokenPlans{
    {"arrangement_is_a_list", ProblemCode::wrongType, "stems[0].arrangement", {"text", "list"}},
    {"beads_0", ProblemCode::outOfRange, "kinds[0].beads", {"0", "1", "100000"}},
    {"beyond_double",
     ProblemCode::outOfRange,
     "line 21, column 19",
     {"1e999", "-1.7976931348623157e+308", "1.7976931348623157e+308"}},
    {"code_of_three_letters", ProblemCode::unknownWord, "mixes[1].code", {"PSX", "one or two letters"}},
    {"code_twice", ProblemCode::duplicateId, "mixes[1].code", {"P"}},
    {"colour_id_twice", ProblemCode::duplicateId, "colours[1].id", {"1"}},
    {"colour_name_for_srgb", ProblemCode::badColour, "colours[1].srgb", {"sea green"}},
    {"colour_of_three_digits", ProblemCode::badColour, "colours[1].srgb", {"#684"}},
    {"comment", ProblemCode::notJson, "line 4, column 3", {"/"}},
    {"control_character", ProblemCode::notJson, "line 4, column 16", {"U+000A"}},
    {"count_1e308", ProblemCode::wrongType, "kinds[0].stock[0].made", {"whole number", "1e308"}},
    {"count_below_int", ProblemCode::outOfRange, "kinds[0].stock[0].made", {"-12345678901", "0", "1000000"}},
    {"count_beyond_int", ProblemCode::outOfRange, "kinds[0].stock[0].made", {"12345678901", "0", "1000000"}},
    {"count_beyond_int64",
     ProblemCode::outOfRange,
     "kinds[0].stock[0].made",
     {"123456789012345678901234567890", "0", "1000000"}},
    {"count_is_null", ProblemCode::wrongType, "kinds[0].stock[0].made", {"whole number", "nothing"}},
    {"count_negative", ProblemCode::outOfRange, "kinds[0].stock[0].made", {"-2", "0", "1000000"}},
    {"count_of_a_billion", ProblemCode::outOfRange, "kinds[0].stock[0].made", {"1000000000", "0", "1000000"}},
    {"count_with_a_point", ProblemCode::wrongType, "kinds[0].stock[0].made", {"whole number", "3.0"}},
    {"day_in_words", ProblemCode::badDate, "date", {"31 January"}},
    {"empty", ProblemCode::notJson, "line 1, column 1", {""}},
    {"format_is_a_number", ProblemCode::wrongType, "format", {"text", "number"}},
    {"gauge_is_text", ProblemCode::wrongType, "kinds[0].gauge", {"object", "text"}},
    {"gauge_of_no_system", ProblemCode::unknownWord, "kinds[0].gauge.system", {"florist", "awg, swg, steel"}},
    {"half_surrogate", ProblemCode::notJson, "line 4, column 23", {" "}},
    {"id_0", ProblemCode::outOfRange, "stems[1].id", {"0", "1", "4294967294"}},
    {"id_is_text", ProblemCode::wrongType, "stems[1].id", {"whole number", "text"}},
    {"id_negative", ProblemCode::outOfRange, "stems[1].id", {"-2", "1", "4294967294"}},
    {"id_too_large", ProblemCode::outOfRange, "stems[1].id", {"4294967296", "1", "4294967294"}},
    {"id_with_a_point", ProblemCode::wrongType, "stems[1].id", {"whole number", "2.0"}},
    {"key_twice", ProblemCode::duplicateKey, "line 5, column 3", {"title"}},
    {"key_twice_in_a_slot", ProblemCode::duplicateKey, "stems[0].tiers[1].slots[0]", {"mix"}},
    {"key_twice_where_unknown", ProblemCode::duplicateKey, "plans_of_next_year.a[0]", {"x"}},
    {"latin_1", ProblemCode::notUtf8, "line 4, column 20", {}},
    {"length_1e308", ProblemCode::outOfRange, "kinds[0].length_mm", {"1e+308", "0.1", "10000"}},
    {"length_beyond_int64", ProblemCode::outOfRange, "kinds[0].length_mm", {"1e+20", "0.1", "10000"}},
    {"length_is_text", ProblemCode::wrongType, "kinds[0].length_mm", {"number", "text"}},
    {"length_negative", ProblemCode::outOfRange, "kinds[0].length_mm", {"-14", "0.1", "10000"}},
    {"list_at_top", ProblemCode::notAPlan, "", {}},
    {"mix_id_twice", ProblemCode::duplicateId, "mixes[1].id", {"1"}},
    {"mix_of_no_colour", ProblemCode::noSuchId, "mixes[1].colours[1].colour", {"colour", "9"}},
    {"mix_without_colours", ProblemCode::missingKey, "mixes[0].colours", {"colours"}},
    {"more_leaves_than_stock", ProblemCode::overdrawnStock, "kinds[0].stock[0]", {"Small", "Plum", "3", "2"}},
    {"newer_version", ProblemCode::newerVersion, "version", {"2", "1"}},
    {"no_colour_id", ProblemCode::missingKey, "colours[0]", {"id"}},
    {"no_format", ProblemCode::notAPlan, "format", {}},
    {"no_length", ProblemCode::missingKey, "kinds[0]", {"length_mm"}},
    {"no_such_day", ProblemCode::badDate, "date", {"2024-99-99"}},
    {"no_version", ProblemCode::missingKey, "", {"version"}},
    {"not_a_number", ProblemCode::notJson, "line 21, column 19", {"NaN"}},
    {"not_json", ProblemCode::notJson, "line 1, column 1", {"Two"}},
    {"other_format", ProblemCode::notAPlan, "format", {}},
    {"pinned_is_a_number",
     ProblemCode::wrongType,
     "stems[0].tiers[1].slots[0].pinned",
     {"true or false", "number"}},
    {"share_0", ProblemCode::outOfRange, "mixes[1].colours[1].share", {"0", "1e-06", "1000000"}},
    {"slot_mix_without_kind", ProblemCode::missingKey, "stems[0].tiers[1].slots[0]", {"kind"}},
    {"slot_mix_without_stock",
     ProblemCode::mixNotOfKind,
     "stems[0].tiers[1].slots[0].mix",
     {"Small", "Plum on sea"}},
    {"slot_of_no_kind", ProblemCode::noSuchId, "stems[0].tiers[1].slots[0].kind", {"kind", "9"}},
    {"slot_of_no_mix", ProblemCode::noSuchId, "stems[0].tiers[1].slots[0].mix", {"mix", "9"}},
    {"slots_25", ProblemCode::tooMany, "stems[0].tiers[0].slots", {"25", "24"}},
    {"stem_id_twice", ProblemCode::duplicateId, "stems[1].id", {"1"}},
    {"stem_is_a_number", ProblemCode::wrongType, "stems[0]", {"object", "number"}},
    {"stems_are_an_object", ProblemCode::wrongType, "stems", {"list", "object"}},
    {"stock_of_no_mix", ProblemCode::noSuchId, "kinds[0].stock[0].mix", {"mix", "9"}},
    {"trailing_comma", ProblemCode::notJson, "line 9, column 3", {"]"}},
    {"truncated", ProblemCode::notJson, "line 44, column 19", {""}},
    {"truncated_between_tokens", ProblemCode::notJson, "line 30, column 3", {""}},
    {"turn_of_360", ProblemCode::outOfRange, "stems[0].tiers[1].turn_deg", {"360", "0", "360"}},
    {"two_documents", ProblemCode::notJson, "line 53, column 1", {"{"}},
    {"unknown_arrangement",
     ProblemCode::unknownWord,
     "stems[0].arrangement",
     {"crosswise", "decussate, one-plane, alternate, whorled, spiral"}},
    {"utf_16", ProblemCode::notUtf8, "line 1, column 1", {}},
    {"version_0", ProblemCode::outOfRange, "version", {"0", "1", "1"}},
    {"version_is_text", ProblemCode::wrongType, "version", {"whole number", "text"}},
    {"version_of_the_far_future", ProblemCode::newerVersion, "version", {"99999999999", "1"}},
    {"whorl_beyond_int",
     ProblemCode::outOfRange,
     "stems[1].whorl",
     {"3000000000", "-2147483648", "2147483647"}},
};

TEST(BrokenPlans, TheSoundOneIsRead) {
    const Result<Plan> plan = planFromText(contents(data / "two_stems.stemplan"));
    EXPECT_TRUE(plan) << plan.problem().place;
}

TEST(BrokenPlans, AreRefusedWithThePlace) {
    for (const Broken& broken : brokenPlans) {
        const Result<Plan> plan =
            planFromText(contents(data / "broken_plans" / (std::string(broken.name) + ".stemplan")));
        ASSERT_FALSE(plan) << broken.name;
        EXPECT_EQ(plan.problem(), (Problem{broken.code, broken.place, broken.values}))
            << broken.name << ": " << plan.problem().place;
    }
    const auto files = std::distance(std::filesystem::directory_iterator(data / "broken_plans"), {});
    EXPECT_EQ(static_cast<std::size_t>(files), brokenPlans.size());
}

std::string planWith(const std::string& key, const std::string& value) {
    return R"({"format": "stemplan", "version": 1, ")" + key + "\": " + value + "}";
}

TEST(BrokenPlans, ADateIsADayOfTheCalendar) {
    for (const char* day : {"", "2024-02-29", "0001-01-01", "9999-12-31"})
        EXPECT_TRUE(planFromText(planWith("date", '"' + std::string(day) + '"'))) << day;
    for (const char* day : {"2024-99-99", "2023-02-29", "1900-02-29", "2024-04-31", "2024-00-10", "2024-01-00",
                            "0000-01-01", "2024-1-1", "2024/01/01", "-024-01-01", "2024-01-01 "}) {
        const Result<Plan> plan = planFromText(planWith("date", '"' + std::string(day) + '"'));
        ASSERT_FALSE(plan) << day;
        EXPECT_EQ(plan.problem(), (Problem{ProblemCode::badDate, "date", {day}}));
    }
}

std::string repeated(const std::string& text, std::size_t times) {
    std::string all;
    for (std::size_t i = 0; i < times; ++i)
        all += text;
    return all;
}

TEST(BrokenPlans, NestedAHundredThousandDeep) {
    for (const std::string& open : {std::string("["), std::string("{\"a\":"), std::string("[{\"a\":")})
        for (const std::string& text : {repeated(open, 100'000), planWith("stems", repeated(open, 100'000)),
                                        planWith("later", repeated("[", 100'000) + repeated("]", 100'000))}) {
            const Result<Plan> plan = planFromText(text);
            ASSERT_FALSE(plan);
            EXPECT_EQ(plan.problem().code, ProblemCode::tooDeep);
            EXPECT_EQ(plan.problem().values, std::vector<std::string>{"64"});
            EXPECT_EQ(plan.problem().place.find("line 1, column "), 0u);
        }
    // Brackets in a text are no depth, and what is allowed is allowed to the last level.
    EXPECT_TRUE(planFromText(planWith("note", "\"" + repeated("[{\\\"", 1'000) + "\"")));
    EXPECT_TRUE(planFromText(planWith("later", repeated("[", 63) + repeated("]", 63))));
    const Result<Plan> deep = planFromText(planWith("later", repeated("[", 64) + repeated("]", 64)));
    ASSERT_FALSE(deep);
    EXPECT_EQ(deep.problem().place, "line 1, column " + std::to_string(planWith("later", "").size() - 1 + 64));
}

TEST(BrokenPlans, LineAndColumnCountCharacters) {
    const Result<Plan> plan = planFromText("{\n  \"format\": \"stemplan\",\n  \"title\": \"Grün ✿\", ?\n}");
    ASSERT_FALSE(plan);
    EXPECT_EQ(plan.problem(), (Problem{ProblemCode::notJson, "line 3, column 22", {"?"}}));
}

TEST(BrokenPlans, LongTextsAreShortenedBetweenCharacters) {
    const Result<Plan> plan = planFromText(
        planWith("colours", R"([{"id": 1, "name": "", "srgb": "x)" + repeated("ü", 100'000) + "\"}]"));
    ASSERT_FALSE(plan);
    EXPECT_EQ(plan.problem(),
              (Problem{ProblemCode::badColour, "colours[0].srgb", {"x" + repeated("ü", 19) + "…"}}));
}

// Each of these takes a moment; what is quadratic in the text would take minutes.
TEST(BrokenPlans, ManyOfAnythingAreNoTrouble) {
    constexpr int many = 100'000;
    std::string keys = R"({"format": "stemplan", "version": 1)";
    for (int i = 0; i < many; ++i)
        keys += ",\"k" + std::to_string(i) + "\":0";
    EXPECT_TRUE(planFromText(keys + "}"));
    const Result<Plan> twice = planFromText(keys + ",\"k77\":0}");
    ASSERT_FALSE(twice);
    EXPECT_EQ(
        twice.problem(),
        (Problem{ProblemCode::duplicateKey, "line 1, column " + std::to_string(keys.size() + 2), {"k77"}}));
    // Escapes, other depths and texts that look like keys do not mislead.
    const Result<Plan> odd = planFromText(
        "{\"a\\u0062\": {\"ab\": \"ab\"},\n \"c\": \"\\\"ab\\\":\", \"format\": \"stemplan\",\n \"ab\" : 2}");
    ASSERT_FALSE(odd);
    EXPECT_EQ(odd.problem(), (Problem{ProblemCode::duplicateKey, "line 3, column 2", {"ab"}}));

    const Result<Plan> stems = planFromText(planWith("stems", "[" + repeated("{},", many) + "{}]"));
    ASSERT_FALSE(stems);
    EXPECT_EQ(stems.problem(), (Problem{ProblemCode::tooMany, "stems", {"100001", "10000"}}));
    EXPECT_TRUE(planFromText(planWith("later", "[" + repeated("[],", many) + "0]")));
    EXPECT_FALSE(planFromText(planWith("note", "\"" + repeated("x", many + 1) + "\"")));
}

bool namesAPlace(const Problem& problem) {
    static const std::regex lineAndColumn("line [1-9][0-9]*, column [1-9][0-9]*");
    switch (problem.code) {
    case ProblemCode::notJson:
    case ProblemCode::notUtf8:
    case ProblemCode::tooDeep:
        return std::regex_match(problem.place, lineAndColumn);
    case ProblemCode::missingKey: // of the document itself, which has no name
    case ProblemCode::notAPlan:
        return !problem.place.empty() || !problem.values.empty() || problem.code == ProblemCode::notAPlan;
    default:
        return !problem.place.empty();
    }
}

// Bytes changed, lost, doubled and swapped about: either it is still a plan, and then a sound one, or the place
// of the trouble is named. The sanitizers watch.
TEST(BrokenPlans, RandomDamageNeverCrashes) {
    const std::string whole = planText(example("succulent"));
    const std::string_view marks = "{}[]\",:0123456789.eE+-\\ntu \n\t\xc3\xff";
    std::mt19937 random(20);
    const auto below = [&](std::size_t n) { return static_cast<std::size_t>(random()) % n; };
    int refused = 0, read = 0;
    for (int i = 0; i < 6'000; ++i) {
        std::string text = whole;
        for (std::size_t damage = 1 + below(3); damage > 0; --damage)
            switch (below(6)) {
            case 0:
                text.resize(below(text.size() + 1));
                break;
            case 1:
                text.insert(below(text.size() + 1), 1, marks[below(marks.size())]);
                break;
            case 2:
                text.erase(below(text.size() + 1), 1 + below(8));
                break;
            case 3: {
                const std::size_t from = below(text.size() + 1);
                text.insert(below(text.size() + 1), text.substr(from, below(60)));
                break;
            }
            default:
                if (!text.empty())
                    text[below(text.size())] = marks[below(marks.size())];
            }
        const Result<Plan> plan = planFromText(text);
        if (plan) {
            ++read;
            ASSERT_FALSE(firstProblem(plan.value()));
            const std::string written = planText(plan.value());
            const Result<Plan> again = planFromText(written);
            ASSERT_TRUE(again) << again.problem().place << "\n" << written;
            ASSERT_EQ(again.value(), plan.value());
            ASSERT_EQ(planText(again.value()), written);
        } else {
            ++refused;
            ASSERT_TRUE(namesAPlace(plan.problem()))
                << static_cast<int>(plan.problem().code) << " at '" << plan.problem().place << "'\n"
                << text;
        }
    }
    EXPECT_GT(refused, 3'000);
    EXPECT_GT(read, 100);
}

TEST(BrokenPlans, CutAnywhereIsRefused) {
    const std::string whole = planText(example("succulent"));
    for (std::size_t size = 0; size < whole.size() - 2; size += 7) // the last two are "}\n"
        ASSERT_FALSE(planFromText(std::string_view(whole).substr(0, size))) << size;
}

} // namespace
} // namespace stemwright
