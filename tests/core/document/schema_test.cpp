// That the published schema says the same as the reader: keys that must be there, words, and limits.
#include "core/document/plan_file.h"
#include "core/document/words.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <fstream>
#include <functional>
#include <set>

namespace stemwright {
namespace {

using Json = nlohmann::json;

/// A plan with every key that the schema knows.
const char* const everyKey = R"({
  "format": "stemplan", "version": 1, "title": "t", "note": "n", "date": "2025-01-31",
  "units": {"length": "inch", "mass": "ounce"},
  "colours": [{"id": 1, "name": "c", "srgb": "#7a4462", "sold": {"amount": 10, "price": 2}}],
  "mixes": [{"id": 1, "name": "m", "code": "P", "colours": [{"colour": 1, "share": 2}]}],
  "kinds": [{"id": 1, "name": "k", "beads": 40, "bead_size": "11/0", "length_mm": 14, "width_mm": 9,
             "tip_end": "pointed", "base_end": "pointed", "wire_mm": 300, "wire_diameter_mm": 0.3,
             "gauge": {"system": "swg", "number": 28}, "wires_at_base": 3, "angle_deg": 50, "minutes": 7,
             "metal": "soft-brass", "own_metal": "bronze",
             "make": {"making": "loops", "beads": 9, "rows": 3, "point_deg": 25,
                      "counted": [{"row": 0, "beads": 8}]},
             "own_measures": {"beads": true, "wire": true, "length": true, "width": true, "wires_at_base": true},
             "stock": [{"mix": 1, "made": 2, "to_make": 3}]}],
  "binding": {"wraps": [{"with": "wire", "strands": 1, "width_mm": 0.3, "thickness_mm": 0.3,
             "gauge": {"system": "awg", "number": 28}, "overlap": 0.1, "stretch": 1.5, "start_tail_mm": 20,
             "finish_mm": 30, "hold_mm": 80, "sold_mm": 10000, "name": "n", "metal": "hard-copper",
             "own_metal": "bronze", "own": "w", "overlap_measured": true}], "minutes_per_tier": 3},
  "pot": {"name": "p", "shape": "bowl", "opening": "oval", "top_diameter_mm": 130, "top_breadth_mm": 90,
          "bottom_diameter_mm": 80, "depth_mm": 60,
          "planting_depth_mm": 10, "clay": {"depth_mm": 40, "density_kg_m3": 1600, "own": "clay"},
          "stake": {"diameter_mm": 1.3, "gauge": {"system": "steel", "number": 18}, "metal": "hard-brass",
                    "own_metal": "bronze",
                    "overlap_mm": 20},
          "mass_g": 300, "foot_diameter_mm": 70, "feet": 4,
          "cover": {"depth_mm": 8, "density_kg_m3": 1550, "own": "moss"},
          "viewed_from": "front"},
  "buying": {"spare": 0.2, "bars": [{"length_mm": 300, "price": 0.5, "wire_mm": 1.5}], "beads": {"amount": 5, "price": 2},
             "leaf_wire": {"amount": 9000, "price": 4},
             "leaf_wires": [{"wire_mm": 0.3, "sold": {"amount": 5000, "price": 3}}], "clay": {"amount": 500, "price": 3},
             "cover": {"amount": 250, "price": 3}, "wraps": [{"amount": 0, "price": 1}]},
  "own": {"metals": [{"name": "bronze", "density_kg_m3": 8800, "modulus_n_mm2": 105000, "yield_n_mm2": 130}],
          "beads": [{"name": "b", "diameter_mm": 2, "pitch_mm": 1.5, "mass_g": 0.01}],
          "flosses": [{"name": "f", "strands": 4, "strand_width_mm": 0.3, "skein_mm": 5000, "strand_g_m": 0.04}],
          "tapes": [{"name": "t", "width_mm": 13, "thickness_mm": 0.2, "stretch": 1.4, "roll_mm": 20000,
                     "tape_g_m": 0.6}],
          "clays": [{"name": "clay", "density_kg_m3": 1700}], "covers": [{"name": "moss", "density_kg_m3": 90}]},
  "stems": [{"id": 1, "name": "s", "arrangement": "whorled", "whorl": 4, "spacing_mm": 8, "tail_mm": 30,
             "core": {"diameter_mm": 0.9, "gauge": {"system": "awg", "number": 20}, "metal": "aluminium",
                      "own_metal": "bronze"},
             "locked": true, "standing": {"x_mm": 1, "y_mm": -2},
             "took": [{"wrap": 0, "used_mm": 600}],
             "pose": {"lean_deg": 9, "bend_deg": -20, "toward_deg": 30},
             "bench": {"steps": 2},
             "tiers": [{"turn_deg": 45, "spacing_mm": 9, "progress": {"bound": true, "minutes": 2},
                        "slots": [{"kind": 1, "mix": 1, "pinned": true}]}]}]
})";

class Schema : public testing::Test {
protected:
    void SetUp() override {
        std::ifstream file(STEMWRIGHT_SOURCE_DIR "/resources/stemplan.schema.json");
        schema_ = Json::parse(file);
        plan_ = Json::parse(everyKey);
        ASSERT_TRUE(planFromText(plan_.dump())) << planFromText(plan_.dump()).problem().place;
    }

    /// Calls `visit` with each value of the plan, its schema and its place.
    using Visit = std::function<void(Json::json_pointer, const Json& schema)>;
    void walk(const Visit& visit) { walk(Json::json_pointer(), schema_, visit); }

    void walk(const Json::json_pointer& at, const Json& given, const Visit& visit) {
        const Json& schema = given.contains("$ref")
                                 ? schema_.at(Json::json_pointer(given["$ref"].get<std::string>().substr(1)))
                                 : given;
        visit(at, schema);
        const Json& value = plan_[at];
        if (value.is_object()) {
            std::set<std::string> known, here;
            for (const auto& [key, inside] : schema.at("properties").items())
                known.insert(key);
            for (const auto& [key, inside] : value.items())
                here.insert(key);
            EXPECT_EQ(known, here) << at << ": the test's plan has every key, and the schema knows them all";
            for (const std::string& key : here)
                if (known.contains(key))
                    walk(at / key, schema["properties"][key], visit);
        }
        if (value.is_array())
            walk(at / 0, schema.at("items"), visit);
    }

    /// What the reader says when the value there is another.
    std::optional<Problem> with(const Json::json_pointer& at, const Json& value) const {
        Json plan = plan_;
        plan[at] = value;
        const Result<Plan> read = planFromText(plan.dump());
        return read ? std::nullopt : std::optional(read.problem());
    }

    Json schema_, plan_;
};

TEST_F(Schema, WhatItRequiresMustBeThere) {
    int missing = 0, spared = 0;
    walk([&](const Json::json_pointer& at, const Json& schema) {
        if (!schema.contains("properties"))
            return;
        const Json required = schema.value("required", Json::array());
        for (const auto& [key, value] : schema["properties"].items()) {
            Json plan = plan_;
            plan[at].erase(key);
            const Result<Plan> read = planFromText(plan.dump());
            const bool asked = std::find(required.begin(), required.end(), key) != required.end();
            const bool keyMissing = !read && (read.problem().code == ProblemCode::missingKey ||
                                              read.problem().code == ProblemCode::notAPlan);
            // A mix needs its kind beside it, which the schema says in another way.
            const bool otherwise = schema.contains("dependentRequired") && key == "kind";
            EXPECT_EQ(keyMissing, asked || otherwise) << at << "/" << key;
            ++(asked ? missing : spared);
        }
    });
    EXPECT_GT(missing, 30);
    EXPECT_GT(spared, 30);
}

TEST_F(Schema, HasTheReadersWords) {
    int lists = 0;
    const auto check = [&](const char* at, std::span<const std::string_view> words) {
        ++lists;
        EXPECT_EQ(schema_.at(Json::json_pointer(at)).at("enum").get<std::vector<std::string>>(),
                  std::vector<std::string>(words.begin(), words.end()))
            << at;
    };
    check("/properties/units/properties/length", wordsFor(LengthUnit{}));
    check("/properties/units/properties/mass", wordsFor(MassUnit{}));
    check("/$defs/gauge/properties/system", wordsFor(GaugeSystem{}));
    check("/$defs/kind/properties/tip_end", wordsFor(LeafEnd{}));
    check("/$defs/kind/properties/base_end", wordsFor(LeafEnd{}));
    check("/$defs/kind/properties/metal", wordsFor(Metal{}));
    check("/$defs/kind/properties/make/properties/making", wordsFor(Making{}));
    check("/$defs/wrap/properties/with", wordsFor(WrapWith{}));
    check("/$defs/wrap/properties/metal", wordsFor(Metal{}));
    check("/$defs/pot/properties/shape", wordsFor(PotShape{}));
    check("/$defs/pot/properties/stake/properties/metal", wordsFor(Metal{}));
    check("/$defs/pot/properties/opening", wordsFor(PotOpening{}));
    check("/$defs/pot/properties/viewed_from", wordsFor(ViewedFrom{}));
    check("/$defs/stem/properties/core/properties/metal", wordsFor(Metal{}));
    check("/$defs/stem/properties/arrangement", wordsFor(Arrangement{}));
    std::set<Json> seen;
    int all = 0;
    walk([&](const Json::json_pointer&, const Json& schema) {
        if (schema.contains("enum") && seen.insert(schema["description"].dump() + schema["enum"].dump()).second)
            ++all;
    });
    EXPECT_GE(lists, all) << "a list of words is not checked";
}

// The limits of the schema are those of the reader: each is allowed, and the next number beyond it is not.
TEST_F(Schema, HasTheReadersLimits) {
    int limits = 0;
    const auto refused = [](const std::optional<Problem>& problem) {
        return problem && (problem->code == ProblemCode::outOfRange || problem->code == ProblemCode::noSuchId);
    };
    walk([&](const Json::json_pointer& at, const Json& schema) {
        if (!schema.contains("minimum"))
            return;
        const bool whole = schema.at("type") == "integer";
        const bool reference = at.back() == "colour" || at.back() == "mix" || at.back() == "kind";
        const auto beyond = [&](const char* limit, double step) -> Json {
            const double value = schema[limit].get<double>();
            return whole ? Json(schema[limit].get<std::int64_t>() + (step > 0 ? 1 : -1))
                         : Json(value + step * std::max(std::abs(value), 1.0) * 1e-9);
        };
        if (reference ||
            at.back() == "id") { // another id breaks what refers to it; ids have a test of their own
            ++limits;
            return;
        }
        if (at.back() == "made")
            EXPECT_TRUE(refused(with(at, -1)));
        else {
            EXPECT_FALSE(with(at, schema["minimum"])) << at;
            EXPECT_TRUE(refused(with(at, beyond("minimum", -1)))) << at;
        }
        if (at.back() == "row") { // its most is the leaf's rows
            EXPECT_TRUE(refused(with(at, 3)));
            ++limits;
            return;
        }
        const char* most = schema.contains("maximum") ? "maximum" : "exclusiveMaximum";
        if (schema.contains("maximum"))
            EXPECT_FALSE(with(at, schema["maximum"])) << at;
        else
            EXPECT_TRUE(refused(with(at, schema["exclusiveMaximum"]))) << at;
        EXPECT_TRUE(refused(with(at, beyond(most, 1)))) << at;
        ++limits;
    });
    EXPECT_GT(limits, 45);
    int numbers = 0;
    walk([&](const Json::json_pointer& at, const Json& schema) {
        const bool number = schema.value("type", "") == "number" || schema.value("type", "") == "integer";
        numbers += number && at.back() != "version" && at.back() != "whorl";
    });
    EXPECT_EQ(limits, numbers) << "a number has no limits in the schema";
    // The whorl's stand in a condition.
    const Json& whorl = schema_.at("/$defs/stem/then/properties/whorl"_json_pointer);
    const Json::json_pointer at("/stems/0/whorl");
    EXPECT_FALSE(with(at, whorl["minimum"]));
    EXPECT_TRUE(refused(with(at, whorl["minimum"].get<int>() - 1)));
    EXPECT_FALSE(with(at, whorl["maximum"]));
    EXPECT_TRUE(refused(with(at, whorl["maximum"].get<int>() + 1)));
    // A pot stands on no one or two feet.
    const Json& feet = schema_.at("/$defs/pot/properties/feet"_json_pointer);
    for (int count = 0; count <= feet.at("maximum").get<int>(); ++count) {
        const Json& never = feet.at("not").at("enum");
        EXPECT_EQ(refused(with(Json::json_pointer("/pot/feet"), count)),
                  std::find(never.begin(), never.end(), Json(count)) != never.end())
            << count;
    }
}

TEST_F(Schema, HasTheReadersLengthsOfLists) {
    int lists = 0;
    walk([&](const Json::json_pointer& at, const Json& schema) {
        if (!schema.contains("maxItems"))
            return;
        ++lists;
        const auto most = schema["maxItems"].get<std::size_t>();
        const auto problem = with(at, Json(std::vector<Json>(most + 1, plan_[at][0])));
        ASSERT_TRUE(problem) << at;
        EXPECT_EQ(problem->code, ProblemCode::tooMany) << at;
        EXPECT_EQ(problem->values, (std::vector<std::string>{std::to_string(most + 1), std::to_string(most)}))
            << at;
    });
    EXPECT_EQ(lists, 20);
}

} // namespace
} // namespace stemwright
