#pragma once

#include "solve/network.h"

#include <complex>
#include <optional>
#include <vector>

namespace doorloom {

// A network on alternating current, its sources all in one phase: magnitudes alone do not add up where a load lags.
struct Alternating {
    std::vector<std::complex<double>> volts; // by vertex, each against one vertex of its own piece
    std::vector<double> resistors, sources;  // amperes, in magnitude
};

// In:   powerFactor: by resistor, 0 to 1, lagging; ohms are magnitudes. No diodes and draws
// Out:  nothing: poles are joined, or sources hold each other
// Cost: one sparse factorisation; a joint counts as a microohm
std::optional<Alternating> solvedAlternating(const Network& network, const std::vector<double>& powerFactor);

} // namespace doorloom
