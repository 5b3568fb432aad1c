#include "core/document/words.h"

#include <array>

namespace stemwright {

namespace {

using Word = std::string_view;

// As long as its enumeration: the last value is named so that a new one cannot be forgotten here.
template <auto last> using WordList = std::array<Word, static_cast<std::size_t>(last) + 1>;

constexpr WordList<LengthUnit::inch> lengthUnits{"millimetre", "inch"};
constexpr WordList<MassUnit::ounce> massUnits{"gram", "ounce"};
constexpr WordList<GaugeSystem::steel> gaugeSystems{"awg", "swg", "steel"};
constexpr WordList<Metal::aluminium> metals{"soft-copper", "hard-copper", "soft-brass", "hard-brass",
                                            "mild-steel",  "soft-steel",  "aluminium"};
constexpr WordList<LeafEnd::pointed> leafEnds{"round", "pointed"};
constexpr WordList<Making::rows> makes{"loops", "rows"};
constexpr WordList<WrapWith::tape> wrapsWith{"wire", "floss", "tape"};
constexpr WordList<PotShape::bowl> potShapes{"cylinder", "frustum", "bowl"};
constexpr WordList<PotOpening::rectangular> potOpenings{"round", "oval", "rectangular"};
constexpr WordList<ViewedFrom::front> viewedFrom{"all-round", "front"};
constexpr WordList<Arrangement::spiral> arrangements{"decussate", "one-plane", "alternate", "whorled",
                                                     "spiral"};
constexpr WordList<Deed::changeBinding> deeds{
    "several",   "move-leaf",   "move-leaves",  "move-tiers",    "swap-leaves",    "empty-slots",
    "open-tier", "close-tiers", "turn-tiers",   "pin-slots",     "fill-from-tray", "change-arrangement",
    "copy-stem", "remove-stem", "change-stock", "remove-part",   "remedy",         "suggestion",
    "paste",     "bench-step",  "calibrate",    "change-binding"};

constexpr std::array<Word, std::variant_size_v<Edit::What>> edits{
    "fill-slot",      "swap-slots",  "pin-slot",    "open-tier",   "close-tier",    "move-tiers",
    "turn-tier",      "space-tier",  "mark-tier",   "reform-stem", "reform-kind",   "set-stock",
    "insert-colour",  "insert-mix",  "insert-kind", "insert-stem", "remove-colour", "remove-mix",
    "remove-kind",    "remove-stem", "move-colour", "move-mix",    "move-kind",     "move-stem",
    "replace-colour", "replace-mix", "set-about",   "set-units",   "set-binding",   "set-pot",
    "set-buying",     "set-own",     "batch"};

} // namespace

std::span<const Word> wordsFor(LengthUnit) {
    return lengthUnits;
}
std::span<const Word> wordsFor(MassUnit) {
    return massUnits;
}
std::span<const Word> wordsFor(GaugeSystem) {
    return gaugeSystems;
}
std::span<const Word> wordsFor(Metal) {
    return metals;
}
std::span<const Word> wordsFor(LeafEnd) {
    return leafEnds;
}
std::span<const Word> wordsFor(Making) {
    return makes;
}
std::span<const Word> wordsFor(WrapWith) {
    return wrapsWith;
}
std::span<const Word> wordsFor(PotShape) {
    return potShapes;
}
std::span<const Word> wordsFor(PotOpening) {
    return potOpenings;
}
std::span<const Word> wordsFor(ViewedFrom) {
    return viewedFrom;
}
std::span<const Word> wordsFor(Arrangement) {
    return arrangements;
}
std::span<const Word> wordsFor(Deed) {
    return deeds;
}
std::span<const Word> wordsForEdits() {
    return edits;
}

} // namespace stemwright
