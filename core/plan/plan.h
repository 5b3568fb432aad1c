#pragma once

#include "core/plan/binding.h"
#include "core/plan/buying.h"
#include "core/plan/kind.h"
#include "core/plan/mix.h"
#include "core/plan/own_tables.h"
#include "core/plan/pot.h"
#include "core/plan/problem.h"
#include "core/plan/stem.h"

#include <optional>
#include <string>
#include <vector>

namespace stemwright {

/// What the plan says of itself.
struct About {
    std::string title;
    std::string note;
    /// `YYYY-MM-DD` (ISO 8601), or empty. The plan gives its date, so that the same plan prints the same paper.
    std::string date;
    std::string extra;

    friend bool operator==(const About&, const About&) = default;
};

enum class LengthUnit { millimetre, inch };
enum class MassUnit { gram, ounce };

/// The units that figures are shown in; what is stored is always millimetres and grams.
struct Units {
    LengthUnit length = LengthUnit::millimetre;
    MassUnit mass = MassUnit::gram;
    std::string extra;

    friend bool operator==(const Units&, const Units&) = default;
};

/// The document: everything about one potted plant. A value: copied, compared, changed only through edits
/// (core/plan/edit.h). What is on no stem is in the tray, by subtraction.
struct Plan {
    About about;
    Units units;
    std::vector<Colour> colours;
    /// In the order that lists of mixes show; the order from tip to base is that of each kind's stock.
    std::vector<Mix> mixes;
    std::vector<Kind> kinds;
    Binding binding;
    Pot pot;
    Buying buying;
    OwnTables own;
    std::vector<Stem> stems;
    std::string extra;

    friend bool operator==(const Plan&, const Plan&) = default;
};

/// Looks a part up by its id; null where the plan has none such.
const Colour* find(const Plan& plan, ColourId id);
const Mix* find(const Plan& plan, MixId id);
const Kind* find(const Plan& plan, KindId id);
const Stem* find(const Plan& plan, StemId id);
Stem* find(Plan& plan, StemId id);
Kind* find(Plan& plan, KindId id);

/// The line of a kind's stock for a mix; null where there is none.
const StockLine* stockLine(const Kind& kind, MixId mix);

/// One slot by where it is, tiers and slots counted from 0 at the tip.
struct SlotRef {
    StemId stem;
    int tier = 0;
    int slot = 0;

    friend auto operator<=>(const SlotRef&, const SlotRef&) = default;
};
const Slot* find(const Plan& plan, SlotRef at);
Slot* find(Plan& plan, SlotRef at);

/// How many leaves of a kind and mix stand on stems.
int placed(const Plan& plan, Leaf leaf);
/// How many are in the tray: stock minus placed; 0 for a kind or mix that is not there. Never negative in a
/// valid plan.
int inTray(const Plan& plan, Leaf leaf);

/// One line of the tray, and where its kind and mix stand.
struct TrayLine {
    Leaf leaf;
    int stock = 0;
    int placed = 0;

    int left() const { return stock - placed; }
    friend bool operator==(const TrayLine&, const TrayLine&) = default;
};
/// Every line of every kind's stock, kinds in the plan's order and lines in theirs, in one pass over the board.
std::vector<TrayLine> tray(const Plan& plan);

/// The smallest id above every one in use, so that ids of removed parts return only when nothing newer is
/// there.
ColourId freeColourId(const Plan& plan);
MixId freeMixId(const Plan& plan);
KindId freeKindId(const Plan& plan);
StemId freeStemId(const Plan& plan);

/// The first way in which the plan contradicts itself or leaves the limits of limits.h: an id that is 0 or
/// stands twice, a reference to nothing, more leaves placed than in stock, a number that no plant has. Nothing
/// for a valid plan. Everything that reads a plan from outside asks this before it lets the plan in.
std::optional<Problem> firstProblem(const Plan& plan);

} // namespace stemwright
