#pragma once

#include <cassert>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace stemwright {

/// What went wrong, as data. The words for it stand in app/messages, where they can be translated.
enum class ProblemCode {
    // reading a file
    notJson,      ///< values: the text that does not belong there, empty where the text ends too soon
    notUtf8,      ///<
    tooLarge,     ///< values: the bytes, the most allowed
    tooDeep,      ///< values: the depth allowed
    duplicateKey, ///< values: the key
    notAPlan,     ///< the "format" key is missing or names something else
    newerVersion, ///< values: the file's version, the newest one known
    missingKey,   ///< values: the key
    unknownKey,   ///< values: the key; of edits only, since a plan keeps the keys that it does not know
    wrongType,    ///< values: what was expected, what was there, each one of "object", "list", "text",
                  ///< "number", "whole number", "true or false", "nothing" (the file says null), or the number
                  ///< itself where it is not whole
    outOfRange,   ///< values: the number, the least and the most allowed
    unknownWord,  ///< values: the word, the words allowed
    duplicateId,  ///< values: the id
    noSuchId,     ///< values: the sort of part ("mix", …), the id
    tooMany,      ///< values: the count, the most allowed
    badColour,    ///< values: the text that is not #rrggbb
    badDate,      ///< values: the text that is no day of the calendar as YYYY-MM-DD
    overdrawnStock,      ///< values: kind name, mix name, placed, in stock
    mixNotOfKind,        ///< values: kind name, mix name: the stock of the kind has no line for the mix
    gaugeForMillimetres, ///< values: a wire's mm that look like a gauge number
    // applying an edit
    noSuchStem,       ///< values: the id
    noSuchTier,       ///< values: stem name, tier number from 1
    noSuchSlot,       ///< values: stem name, tier number, slot number from 1
    noSuchPlace,      ///< values: the index, the most allowed: a list position outside the list
    trayEmpty,        ///< values: kind name, mix name: none of these is left in the tray
    slotPinned,       ///< values: stem name, tier number
    stemLocked,       ///< values: stem name
    stillUsed,        ///< values: the part's name, what uses it
    idTaken,          ///< values: the sort of part, the id
    ownInUse,         ///< values: an entry of the plan's own tables, what uses it ("kind", "binding", "pot" or
                      ///< "stem"), that one's name or nothing
    stockBelowPlaced, ///< values: kind name, mix name, placed, wanted stock
    // what a maker's hand cannot do
    samePlace,   ///< the held thing is there already
    leavesAlike, ///< values: kind name, mix name: what is held and what is there are the same
    noRoom,      ///< values: stem name: what is held reaches beyond its tiers
    slotEmpty,   ///< values: stem name, tier number: there is no leaf to take
    // suggesting
    badRange, ///< values: kind name, least, most, leaves a tier, the nearest lower and upper end that do: no
              ///< number of leaves that whole tiers make is in between
    rangeTooHigh, ///< values: kind name, leaves asked for at least, leaves there, the most that each stem can
                  ///< have at least then, leaves lacking
    rangeTooLow,  ///< values: kind name, leaves to place, leaves the range takes, the least "most" that would
                  ///< do,
                  ///< leaves too many
    pinsBeyondRange, ///< values: stem name, kind name, leaves in its pinned and bound tiers, the most asked for
    rangeTwice,      ///< values: kind name
    rangesCollide,   ///< no heights fit all ranges and the numbers of leaves at once
    mixedTiers, ///< values: stem name, leaves in a tier of it, another stem's name, leaves in a tier of that
    nothingToShare, ///< there is no stem, or no range
    beyondExact, ///< values: leaves to share out, kind name, about how many at most, stems as unlike as these,
                 ///< can be counted in whole numbers, "pairs" where matched pairs were asked for
};

/// `place` is a path into the plan as its file writes it, such as `stems[2].tiers[4].slots[0].mix`, or
/// `line 3, column 17` for a text that is no JSON and for a key of the document itself that stands twice; empty
/// where there is none.
struct Problem {
    ProblemCode code{};
    std::string place;
    std::vector<std::string> values;

    friend bool operator==(const Problem&, const Problem&) = default;
};

/// Either a value or the problem that stood in its way. Asking for the one that is not there is a bug.
template <class T> class [[nodiscard]] Result {
public:
    Result(T value) : content_(std::in_place_index<0>, std::move(value)) {}
    Result(Problem problem) : content_(std::in_place_index<1>, std::move(problem)) {}

    bool ok() const { return content_.index() == 0; }
    explicit operator bool() const { return ok(); }
    T& value() & { return (assert(ok()), std::get<0>(content_)); }
    const T& value() const& { return (assert(ok()), std::get<0>(content_)); }
    T&& value() && { return (assert(ok()), std::get<0>(std::move(content_))); }
    const Problem& problem() const { return (assert(!ok()), std::get<1>(content_)); }

private:
    std::variant<T, Problem> content_;
};

} // namespace stemwright
