#pragma once

#include <compare>
#include <cstdint>
#include <functional>

namespace stemwright {

/// A number that names one part of a plan for as long as the plan lives. Each sort of part has its own type, so
/// that a kind is never looked up by a mix's number. 0 names nothing; real ids run from 1.
template <class Tag> struct Id {
    std::uint32_t value = 0;

    friend constexpr auto operator<=>(Id, Id) = default;
    explicit constexpr operator bool() const { return value != 0; }
};

using ColourId = Id<struct ColourTag>;
using MixId = Id<struct MixTag>;
using KindId = Id<struct KindTag>;
using StemId = Id<struct StemTag>;

} // namespace stemwright

template <class Tag> struct std::hash<stemwright::Id<Tag>> {
    std::size_t operator()(stemwright::Id<Tag> id) const noexcept { return id.value; }
};
