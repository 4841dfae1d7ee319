#pragma once

#include "graph/circuit.h"

#include <vector>

namespace doorloom {

struct Conductance {
    Vertex a = 0, b = 0;
    double siemens = 0;
};

struct LinearAnswer {
    std::vector<double> volts;        // each against one vertex of its own piece
    std::vector<std::uint32_t> piece; // by vertex: volts of two pieces have nothing to do with each other
    bool definite = true;             // false: negative conductances outweigh the others; the volts mean nothing
};

// Volts from conductances between vertices and the amperes that come into each from outside. Vertices with at most two
// neighbours are folded away, which solves all that is in series and in parallel; what is left goes to a sparse Cholesky.
// In:   what comes into a piece leaves it: the amperes of each add up to nothing
// Cost: linear, and the factorisation of what does not fold
LinearAnswer solveLinear(Vertex vertices, const std::vector<Conductance>& conductances, std::vector<double> amperesInto);

} // namespace doorloom
