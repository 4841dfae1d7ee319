#pragma once

#include "base/quantity.h"
#include "model/kind.h"

#include <optional>
#include <string_view>

namespace doorloom {

inline constexpr std::string_view class2 = "Class 2"; // as kinds write it

// The most amperes that the nameplate of a Class 2 source may carry, inherently limited or not.
// In:     the most volts that it ever gives, so that a charger's count and not the nominal ones
// Errors: nothing above 150 V, where the class ends
// Source: NFPA 70 chapter 9 tables 11(A) and 11(B), tests/external/class2_limits.csv: up to 30 V AC read there, the others
//         from memory
std::optional<Amperes> class2Amperes(Volts highest, Current current);

} // namespace doorloom
