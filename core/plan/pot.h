#pragma once

#include "core/quantity/gauge.h"
#include "core/quantity/metal.h"
#include "core/quantity/quantity.h"

#include <optional>
#include <string>

namespace stemwright {

enum class PotShape { cylinder, frustum, bowl };

/// The outline of its opening, and so of every level cut through it.
enum class PotOpening { round, oval, rectangular };

/// Where the plant will be looked at from.
enum class ViewedFrom { allRound, front };

/// What goes into the pot to hold the stems.
struct Clay {
    Length depth = millimetres(40);
    /// kg/m³ as it stands.
    double density = 1600;
    std::string extra{};
    /// The plan's own clay that this is, which says its density; empty where `density` does.
    std::string own{};

    friend bool operator==(const Clay&, const Clay&) = default;
};

/// The wire that carries a stem in the clay.
struct Stake {
    Length diameter = millimetres(1.3);
    std::optional<GaugeNumber> gauge;
    Metal metal = Metal::softSteel;
    std::string ownMetal{};
    /// How much of it is bound to the stem above the clay.
    Length overlap = millimetres(20);
    std::string extra;

    friend bool operator==(const Stake&, const Stake&) = default;
};

/// What lies on the clay: sand, pebbles, moss.
struct Cover {
    Length depth = millimetres(8);
    /// kg/m³ as it lies.
    double density = 1600;
    std::string extra{};
    /// Likewise, of the plan's own covers.
    std::string own{};

    friend bool operator==(const Cover&, const Cover&) = default;
};

struct Pot {
    std::string name;
    PotShape shape = PotShape::cylinder;
    PotOpening opening = PotOpening::round;
    /// Inside, at the rim; of an oval or rectangular opening from side to side.
    Length topDiameter = millimetres(120);
    /// Inside, at the rim, from front to back; a round opening heeds it not. Below the rim the pot keeps the
    /// proportions of its opening.
    Length topBreadth = millimetres(80);
    /// Inside, at the floor, from side to side; a bowl is round there and heeds it not.
    Length bottomDiameter = millimetres(90);
    Length depth = millimetres(60);
    /// How much of each stem's tail is below the clay's surface.
    Length plantingDepth = millimetres(0);
    Clay clay;
    Stake stake;
    /// The empty pot; 0 where nobody weighed it.
    Mass mass;
    /// Across the ring or the feet it stands on; 0 where it stands on its floor.
    Length footDiameter;
    /// How many feet it stands on, evenly around that circle; 0 where it is a ring or its floor.
    int feet = 0;
    std::optional<Cover> cover;
    ViewedFrom viewedFrom = ViewedFrom::allRound;
    std::string extra;

    friend bool operator==(const Pot&, const Pot&) = default;
};

} // namespace stemwright
