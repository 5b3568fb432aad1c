#pragma once

#include "core/plan/edit.h"

#include <span>
#include <string_view>

namespace stemwright {

// The words of the file for enumerations and for edits, in the order of their values. They are the file's, not
// a person's: a window says its own, in the maker's language.

std::span<const std::string_view> wordsFor(LengthUnit);
std::span<const std::string_view> wordsFor(MassUnit);
std::span<const std::string_view> wordsFor(GaugeSystem);
std::span<const std::string_view> wordsFor(Metal);
std::span<const std::string_view> wordsFor(LeafEnd);
std::span<const std::string_view> wordsFor(Making);
std::span<const std::string_view> wordsFor(WrapWith);
std::span<const std::string_view> wordsFor(PotShape);
std::span<const std::string_view> wordsFor(PotOpening);
std::span<const std::string_view> wordsFor(ViewedFrom);
std::span<const std::string_view> wordsFor(Arrangement);
std::span<const std::string_view> wordsFor(Deed);

/// A word for each alternative of Edit::What.
std::span<const std::string_view> wordsForEdits();

/// The word of one value.
template <class Enum> std::string_view wordFor(Enum value) {
    return wordsFor(value)[static_cast<std::size_t>(value)];
}

} // namespace stemwright
