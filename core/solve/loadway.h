#pragma once

#include "solve/readings.h"

#include <optional>
#include <string_view>
#include <vector>

namespace doorloom {

// The conductors that bring a load its current in one position.
struct LoadWay {
    std::uint32_t feed = 0;
    std::vector<std::uint32_t> joints; // of the circuit, each a conductor: out from the source, and back to it
};

// The way of least ohms from a live source through closed contacts and forward diodes to the load, and back.
// Out:  nothing: no source reaches both its sides so (one of the meter's current, AC or DC)
// Cost: as what hangs on the load's two sides through joints
std::optional<LoadWay> wayOf(const Job& job, const Meter& meter, const Position& position, std::uint32_t element);

// A job's meter with these of its conductors (joints of the circuit) in another gauge.
// In:   a gauge that is known
Meter withGauge(Meter meter, const Job& job, const std::vector<std::uint32_t>& joints, std::string_view gauge);

} // namespace doorloom
