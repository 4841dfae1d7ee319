#pragma once

#include "base/quantity.h"

#include <optional>
#include <span>
#include <string_view>

namespace doorloom {

// Copper. Temperatures in degrees Celsius.
inline constexpr double ordinaryCelsius = 20, warmCelsius = 75; // what tables are made for: at 20, and 75 for loaded conductors

// Cross-section in mm² of "18 AWG", "2/0 AWG", "0.75 mm2"; nothing: no gauge that is known.
std::optional<double> squareMillimetresOf(std::string_view gauge);
// One way along. A metric size is taken at the most that its class allows (IEC 60228 class 5, plain).
std::optional<Ohms> ohmsOf(std::string_view gauge, Metres length, double celsius = ordinaryCelsius);
// What conductors for doors come in, thinnest first: AWG, or metric where `like` is.
std::span<const std::string_view> gaugesLike(std::string_view like);

} // namespace doorloom
