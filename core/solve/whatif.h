#pragma once

#include "solve/readings.h"

#include <string_view>
#include <vector>

// One thing otherwise than the job has it, and solved again.
namespace doorloom {

// Volts across a load while it takes these amperes whatever its volts: at its inrush, all others as ever.
// Out:  nothing: floating, the figures mean nothing, or the line can't carry them
std::optional<Volts> voltsDrawing(Meter meter, const Position& position, SupplyLevel supplies, std::uint32_t element,
                                  Amperes amperes);

// A job's meter with these of its conductors (joints of the circuit) in another gauge.
// In:   a gauge that is known
Meter withGauge(Meter meter, const Job& job, const std::vector<std::uint32_t>& joints, std::string_view gauge);

} // namespace doorloom
