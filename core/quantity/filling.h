#pragma once

namespace stemwright {

/// What may fill a pot or lie on it.
enum class Filling { plasterSet, plasterDry, airDryClayWet, airDryClayDry, sand, gravel, pebbles };

/// Its density, kg/m³, as it stands or lies. The sources stand with the values in filling.cpp; clay and plaster
/// differ by a tenth to a fifth with their water.
double densityOf(Filling filling);

} // namespace stemwright
