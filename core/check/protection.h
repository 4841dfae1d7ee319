#pragma once

#include "check/facts.h"

#include <vector>

namespace doorloom {

// The most amperes that can run onto a vertex from the plus side when something there is shorted, every contact closed: as
// much as the source gives, or the least of the fuses on the way.
struct Protection {
    double amperes = 0;               // 0: no source reaches it
    std::uint32_t limiter = 0;        // origin of the source or fuse that sets the limit
    std::uint32_t cameBy = noJoint;   // joint or, past the joints, diode on the way
    Vertex from = 0;                  // the vertex before; itself at a source

    static constexpr std::uint32_t noJoint = ~0u;
};

enum class Sources { All, NotClass2 }; // a Class 2 source limits itself to what its wiring bears

// By vertex.   Cost: linear, but for sorting
std::vector<Protection> protectionFrom(const Facts& facts, Sources which);
// What is passed from the source to this vertex, in order.
std::vector<Origin> wayTo(const Facts& facts, const std::vector<Protection>& protection, Vertex vertex);

} // namespace doorloom
