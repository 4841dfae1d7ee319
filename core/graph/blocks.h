#pragma once

#include "graph/circuit.h"

#include <utility>
#include <vector>

namespace doorloom {

// The biconnected block of each edge, as a number: two edges lie on a common simple cycle when theirs are equal.
// Loops (both ends alike) get a block of their own.   Cost: linear.
std::vector<std::uint32_t> blocksOf(Vertex vertices, const std::vector<std::pair<Vertex, Vertex>>& edges);

// The connected piece of each vertex, as a number, in the order of their first vertices.   Cost: linear.
std::vector<std::uint32_t> piecesOf(Vertex vertices, const std::vector<std::pair<Vertex, Vertex>>& edges);

} // namespace doorloom
