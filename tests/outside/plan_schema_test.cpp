// Files against resources/stemplan.schema.json by an independent validator, python3-jsonschema (JSON Schema
// 2020-12).
#include "core/document/plan_file.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace stemwright {
namespace {

namespace fs = std::filesystem;

const fs::path source = STEMWRIGHT_SOURCE_DIR;

/// The validator's line for each file.
std::vector<std::string> verdicts(const std::vector<fs::path>& files) {
    std::string command = "/usr/bin/python3 '" + (source / "tests/outside/validate_plans.py").string() + "' '" +
                          (source / "resources/stemplan.schema.json").string() + "'";
    for (const fs::path& file : files)
        command += " '" + file.string() + "'";
    FILE* pipe = popen((command + " 2>&1").c_str(), "r");
    if (!pipe)
        throw std::runtime_error("cannot run " + command);
    std::string out;
    char buffer[4096];
    while (const std::size_t read = std::fread(buffer, 1, sizeof buffer, pipe))
        out.append(buffer, read);
    EXPECT_EQ(pclose(pipe), 0) << out;
    std::vector<std::string> lines;
    std::istringstream stream(out);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    EXPECT_EQ(lines.size(), files.size()) << out;
    lines.resize(files.size());
    return lines;
}

void expectAllFollow(const std::vector<fs::path>& files) {
    const std::vector<std::string> lines = verdicts(files);
    for (std::size_t i = 0; i < files.size(); ++i)
        EXPECT_EQ(lines[i], "follows") << files[i];
}

TEST(PlanSchema, TheExamplesFollowIt) {
    std::vector<fs::path> files{source / "tests/data/two_stems.stemplan"};
    for (const auto& entry : fs::directory_iterator(source / "resources/examples"))
        files.push_back(entry.path());
    EXPECT_GE(files.size(), 5u);
    expectAllFollow(files);
}

TEST(PlanSchema, WhateverTheProgramWritesFollowsIt) {
    const fs::path folder = fs::temp_directory_path() / ("stemwright-schema-" + std::to_string(std::rand()));
    fs::create_directories(folder);
    std::vector<fs::path> files;
    const auto write = [&](const Plan& plan) {
        files.push_back(folder / (std::to_string(files.size()) + ".stemplan"));
        std::ofstream(files.back(), std::ios::binary) << planText(plan);
    };
    write({});
    for (std::uint32_t seed = 0; seed < 40; ++seed)
        write(test::randomBoard(seed, 1 + static_cast<int>(seed % 5), 10, 2 + static_cast<int>(seed % 7)));
    expectAllFollow(files);
    fs::remove_all(folder);
}

// Those of the broken plans that are wrong in a way which a schema can tell, and where.
TEST(PlanSchema, BrokenPlansDoNotFollowIt) {
    const std::vector<std::pair<const char*, const char*>> broken{
        {"arrangement_is_a_list", "$.stems[0].arrangement"},
        {"beads_0", "$.kinds[0].beads"},
        {"code_of_three_letters", "$.mixes[1].code"},
        {"colour_name_for_srgb", "$.colours[1].srgb"},
        {"colour_of_three_digits", "$.colours[1].srgb"},
        {"count_1e308", "$.kinds[0].stock[0].made"},
        {"count_beyond_int", "$.kinds[0].stock[0].made"},
        {"count_is_null", "$.kinds[0].stock[0].made"},
        {"count_negative", "$.kinds[0].stock[0].made"},
        {"count_of_a_billion", "$.kinds[0].stock[0].made"},
        {"day_in_words", "$.date"},
        {"format_is_a_number", "$.format"},
        {"gauge_is_text", "$.kinds[0].gauge"},
        {"gauge_of_no_system", "$.kinds[0].gauge.system"},
        {"id_0", "$.stems[1].id"},
        {"id_is_text", "$.stems[1].id"},
        {"id_negative", "$.stems[1].id"},
        {"id_too_large", "$.stems[1].id"},
        {"length_1e308", "$.kinds[0].length_mm"},
        {"length_is_text", "$.kinds[0].length_mm"},
        {"length_negative", "$.kinds[0].length_mm"},
        {"list_at_top", "$"},
        {"mix_without_colours", "$.mixes[0].colours"},
        {"newer_version", "$.version"},
        {"no_colour_id", "$.colours[0]"},
        {"no_format", "$"},
        {"no_length", "$.kinds[0]"},
        {"no_such_day", "$.date"},
        {"no_version", "$"},
        {"other_format", "$.format"},
        {"pinned_is_a_number", "$.stems[0].tiers[1].slots[0].pinned"},
        {"share_0", "$.mixes[1].colours[1].share"},
        {"slot_mix_without_kind", "$.stems[0].tiers[1].slots[0]"},
        {"slots_25", "$.stems[0].tiers[0].slots"},
        {"stem_is_a_number", "$.stems[0]"},
        {"stems_are_an_object", "$.stems"},
        {"turn_of_360", "$.stems[0].tiers[1].turn_deg"},
        {"unknown_arrangement", "$.stems[0].arrangement"},
        {"version_0", "$.version"},
        {"version_is_text", "$.version"},
    };
    std::vector<fs::path> files;
    for (const auto& [name, place] : broken)
        files.push_back(source / "tests/data/broken_plans" / (std::string(name) + ".stemplan"));
    const std::vector<std::string> lines = verdicts(files);
    for (std::size_t i = 0; i < broken.size(); ++i)
        EXPECT_EQ(lines[i].substr(0, lines[i].find(": ")), broken[i].second)
            << broken[i].first << ": " << lines[i];
}

} // namespace
} // namespace stemwright
