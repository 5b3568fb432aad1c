#pragma once

#include "core/plan/buying.h"
#include "core/plan/id.h"
#include "core/quantity/colour.h"

#include <string>
#include <vector>

namespace stemwright {

/// One colour of bead.
struct Colour {
    ColourId id;
    std::string name;
    Srgb srgb;
    /// Keys of the file that this version does not know, kept as the text of a JSON object; empty where there
    /// are none. Every part of a plan that is an object in the file carries one.
    std::string extra{};
    /// How beads of this colour are sold: grams in one packet, and its price. Where it says nothing,
    /// Buying::beads holds.
    Pack sold{};

    friend bool operator==(const Colour&, const Colour&) = default;
};

/// One colour's part of a mix.
struct BeadShare {
    ColourId colour;
    /// Its share of the leaf's beads, above 0. The shares of a mix need not add up to 1: they are proportions.
    double share = 1;
    std::string extra;

    friend bool operator==(const BeadShare&, const BeadShare&) = default;
};

/// A leaf's colours from its outer row inward.
struct Mix {
    MixId id;
    std::string name;
    /// One or two letters, unique in the plan, that stand for the mix where paper has no colour.
    std::string code;
    std::vector<BeadShare> colours;
    std::string extra;

    friend bool operator==(const Mix&, const Mix&) = default;
};

} // namespace stemwright
