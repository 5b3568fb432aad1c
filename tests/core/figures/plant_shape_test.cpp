#include "core/figures/plant_shape.h"

#include "core/document/examples.h"
#include "core/figures/bundle.h"
#include "core/figures/figures.h"
#include "core/figures/height.h"
#include "tests/support/boards.h"

#include <gtest/gtest.h>

namespace stemwright {
namespace {

void expectNear(const Point3& a, const Point3& b, double off = 1e-9) {
    EXPECT_NEAR(a.x, b.x, off);
    EXPECT_NEAR(a.y, b.y, off);
    EXPECT_NEAR(a.z, b.z, off);
}

/// Stem 1 alone, level leaves of 14 × 9, tail 30 and spacing 8.
Plan one(double angle = 90) {
    Plan plan = test::smallBoard();
    plan.stems.resize(1);
    plan.kinds[0].angle = degrees(angle);
    plan.stems[0].standing = Standing{millimetres(5), millimetres(-3), ""};
    return plan;
}

TEST(PlantShape, TurnsAreCounterClockwiseFromTheLeft) {
    expectNear(towards(degrees(0)), {-1, 0, 0});
    expectNear(towards(degrees(90)), {0, -1, 0});
    expectNear(towards(degrees(180)), {1, 0, 0});
    expectNear(towards(degrees(270)), {0, 1, 0});
}

TEST(PlantShape, LeavesStandAtTheirJointsAndPointTheirWay) {
    const Plan plan = one();
    const PlantBody plant = plantBody(plan);
    ASSERT_EQ(plant.stems.size(), 1u);
    ASSERT_EQ(plant.leaves.size(), 6u);
    // Tip first: the joints are at 30 + 2 × 8, 30 + 8 and 30.
    EXPECT_NEAR(plant.leaves[0].base.z, 46, 1e-9);
    EXPECT_NEAR(plant.leaves[2].base.z, 38, 1e-9);
    EXPECT_NEAR(plant.leaves[4].base.z, 30, 1e-9);
    expectNear(plant.leaves[0].along, {-1, 0, 0});
    expectNear(plant.leaves[1].along, {1, 0, 0});
    expectNear(plant.leaves[2].along, {0, -1, 0}); // decussate: a quarter turn
    expectNear(plant.leaves[0].face, {0, 0, 1});   // level: its face is up
    EXPECT_EQ(plant.leaves[3].at, (SlotRef{StemId{1}, 1, 1}));
    // The base lies on the skin: four wires of 0.32, each side the wrap's 0.2.
    Bundle bundle;
    bundle.add(4, millimetres(0.32));
    const double skin = inMillimetres(bundle.diameter(std::nullopt)) / 2 + 0.2;
    EXPECT_NEAR(plant.leaves[0].base.x, 5 - skin, 1e-9);
    EXPECT_NEAR(plant.stems[0].pieces.back().radius, skin, 1e-12)
        << "the topmost stretch has the tip pair's wires";
    EXPECT_GT(plant.stems[0].pieces.front().radius, plant.stems[0].pieces.back().radius);
    // Two corners of the outline: the leaf's tip and a place at its side.
    expectNear(plant.leaves[0].at3(0, -14), {5 - skin - 14, -3, 46});
    expectNear(plant.leaves[0].at3(4.5, -7), {5 - skin - 7, 1.5, 46});
}

TEST(PlantShape, FaceIsTurnedUpAndToTheStem) {
    const PlantBody plant = plantBody(one(0));
    expectNear(plant.leaves[0].along, {0, 0, 1});
    expectNear(plant.leaves[0].face, {1, 0, 0}); // a leaf at the left that stands up faces the stem
    const PlantBody hanging = plantBody(one(180));
    expectNear(hanging.leaves[0].along, {0, 0, -1});
}

TEST(PlantShape, TopAgreesWithTheHeightFigure) {
    for (const ExampleInfo& info : examples()) {
        const Plan plan = example(info.key);
        const Figures figures = stemwright::figures(plan);
        const PlantBody plant = plantBody(plan);
        for (std::size_t i = 0; i < plan.stems.size(); ++i) {
            // The figure takes the leaf's tip; a broad leaf's side can stand a little higher, never its outline
            // of few corners a lot lower.
            EXPECT_NEAR(plant.stems[i].top, inMillimetres(figures.stems[i].height), 0.7) << info.key << i;
        }
    }
}

TEST(PlantShape, ClearanceHoldsAllLeaves) {
    const PlantBody plant = plantBody(one());
    const StemBody& stem = plant.stems[0];
    for (const LeafBody& leaf : plant.leaves)
        for (const Point3& p : plant.corners(leaf))
            EXPECT_LE(std::hypot(p.x - stem.foot.x, p.y - stem.foot.y), stem.clearance + 1e-9);
    EXPECT_NEAR(stem.clearance, 14 + stem.pieces.front().radius, 0.1);
}

TEST(PlantShape, LeaningTurnsTheWholeStem) {
    Plan plan = one();
    plan.stems[0].pose = Pose{degrees(30), degrees(0), degrees(180), ""}; // to the right
    const PlantBody plant = plantBody(plan);
    expectNear(plant.stems[0].tip, {5 + 46 * 0.5, -3, 46 * std::sqrt(3) / 2});
    // The left leaf rises as the right one sinks; those across the lean stay level.
    expectNear(plant.leaves[0].along, {-std::sqrt(3) / 2, 0, 0.5});
    expectNear(plant.leaves[1].along, {std::sqrt(3) / 2, 0, -0.5});
    expectNear(plant.leaves[2].along, {0, -1, 0});
    EXPECT_NEAR(dot(plant.leaves[0].along, plant.leaves[0].right), 0, 1e-12);
}

TEST(PlantShape, BendingIsAnArc) {
    // A quarter of a circle of length 46: radius 92 / π, so the tip is as far out as up.
    const std::optional<Pose> pose = Pose{degrees(0), degrees(90), degrees(90), ""};
    const StemFrame frame = stemFrame(pose, {0, 0, 0}, 46, 46);
    const double radius = 92 / 3.14159265358979323846;
    expectNear(frame.at, {0, -radius, radius}, 1e-9);
    expectNear(frame.along, {0, -1, 0}, 1e-9);
    // Half way it has turned by half.
    expectNear(stemFrame(pose, {0, 0, 0}, 46, 23).along, {0, -std::sqrt(0.5), std::sqrt(0.5)}, 1e-9);
    // The lean and the bend that takes it back meet upright at the tip.
    expectNear(stemFrame(Pose{degrees(40), degrees(-40), degrees(0), ""}, {0, 0, 0}, 46, 46).along, {0, 0, 1},
               1e-9);
}

TEST(PlantShape, PosedStemIsAsLong) {
    Plan plan = one();
    plan.stems[0].pose = Pose{degrees(20), degrees(60), degrees(45), ""};
    double long_ = 0;
    const PlantBody plant = plantBody(plan);
    for (const StemPiece& piece : plant.stems[0].pieces)
        long_ += length(piece.to - piece.from);
    EXPECT_NEAR(long_, 46, 0.05); // chords of an arc
}

TEST(PlantShape, OddPlansGiveSensibleBodies) {
    Plan plan = test::smallBoard();
    PlantBody plant = plantBody(plan);
    EXPECT_TRUE(plant.stems[2].pieces.empty()) << "no leaf and no core: there is no stem yet";
    EXPECT_EQ(plant.stems[2].clearance, 0);
    plan.stems[2].core = CoreWire{};
    plan.stems[2].core->diameter = millimetres(1);
    plant = plantBody(plan);
    ASSERT_EQ(plant.stems[2].pieces.size(), 1u);
    EXPECT_NEAR(plant.stems[2].tip.z, 30, 1e-9);
    // All of the tail under the clay: nothing starts below it.
    plan.pot.plantingDepth = millimetres(100);
    plant = plantBody(plan);
    for (const StemBody& stem : plant.stems)
        EXPECT_TRUE(stem.pieces.empty());
    EXPECT_LT(plant.leaves[0].base.z, 0);
    plan.stems.clear();
    EXPECT_TRUE(plantBody(plan).leaves.empty());
}

} // namespace
} // namespace stemwright
