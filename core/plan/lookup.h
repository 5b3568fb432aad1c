#pragma once

#include "core/plan/plan.h"
#include "core/quantity/bead.h"
#include "core/quantity/metal.h"

#include <compare>
#include <optional>
#include <string>
#include <string_view>

namespace stemwright {

// The tables as a plan sees them: its own entries first, then the handbook's.

/// A metal of the handbook, or the plan's own of that name where one is named.
struct MetalName {
    Metal metal = Metal::softCopper;
    std::string own{};

    friend auto operator<=>(const MetalName&, const MetalName&) = default;
};

/// Whatever has `metal` and `ownMetal`: a kind, a core wire, a stake, a wrap.
template <class Part> MetalName metalNameOf(const Part& part) {
    return {part.metal, part.ownMetal};
}

/// What the metal weighs and bears; that of `metal` where the plan has none of the own name.
MetalFigures figuresOf(const Plan& plan, const MetalName& name);

/// The size of bead by its name, nothing where neither the plan nor the handbook has it. The size's `name` is
/// that of the entry it was found in, and lives as long as that.
std::optional<BeadSize> beadSizeNamed(const Plan& plan, std::string_view name);

/// What the filling weighs, kg/m³: its own number, or that of the plan's entry it names.
double densityOf(const Plan& plan, const Clay& clay);
double densityOf(const Plan& plan, const Cover& cover);

/// What a metre of one strand of the wrap weighs, g: of wire by its metal and width, of floss and tape by the
/// plan's entry or the handbook; 0 for a tape that nobody weighed.
double gramsPerMetre(const Plan& plan, const Wrap& wrap);

/// ProblemCode::ownInUse where something in the plan uses an entry that it has and `tables` has not. A bead
/// size that the handbook has too may always go.
std::optional<Problem> missingOwn(const Plan& plan, const OwnTables& tables);

} // namespace stemwright
