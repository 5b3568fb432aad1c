#pragma once

#include "core/quantity/quantity.h"

#include <string>
#include <vector>

namespace stemwright {

/// A length of straight wire as it is sold, for stakes and core wires.
struct Bar {
    Length length = millimetres(300);
    /// In whatever money the maker counts; 0 where it is not known.
    double price = 0;
    /// The diameter of the wire that is sold so; 0 for wire of any, which counts for what is sold in no way of
    /// its own.
    Length wire{};
    std::string extra{};

    friend bool operator==(const Bar&, const Bar&) = default;
};

/// How much of something is sold in one, and for how much.
struct Pack {
    /// Grams of beads, clay or cover; millimetres of wire. 0 where it is sold loose or not known.
    double amount = 0;
    double price = 0;
    std::string extra{};

    friend bool operator==(const Pack&, const Pack&) = default;
};

/// How leaf wire of one diameter is sold, where Buying::leafWire does not hold for it.
struct LeafWirePack {
    Length wire{}; ///< the diameter
    Pack sold{};
    std::string extra{};

    friend bool operator==(const LeafWirePack&, const LeafWirePack&) = default;
};

/// What the maker says of buying: the plan's supplies rest on it.
struct Buying {
    /// So much more than the plan needs, as a part of it, of beads and leaf wire.
    double spare = 0.1;
    /// The lengths that stake and core wire is to be had in; none where it is cut from the coil.
    std::vector<Bar> bars;
    Pack beads;    ///< grams of one colour, of colours that do not say themselves (Colour::sold)
    Pack leafWire; ///< millimetres on a spool, of diameters that `leafWires` does not name
    std::vector<LeafWirePack> leafWires;
    Pack clay;  ///< grams
    Pack cover; ///< grams
    /// What one of each wrap costs as it is sold (Wrap::sold), by wrap; missing ones are not known.
    std::vector<Pack> wraps;
    std::string extra;

    friend bool operator==(const Buying&, const Buying&) = default;
};

/// Two diameters of wire that are one to whoever buys it: within a hundredth of a millimetre.
bool sameWire(Length a, Length b);
/// How leaf wire of that diameter is sold.
const Pack& leafWirePack(const Buying& buying, Length wire);
/// The bars that wire of that diameter is sold in: those that say so, or else those for wire of any.
std::vector<Bar> barsFor(const Buying& buying, Length wire);

} // namespace stemwright
