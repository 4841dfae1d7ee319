#pragma once

#include "graph/netlist.h"
#include "model/job.h"
#include "solve/readings.h"

#include <string>

namespace doorloom {

// The circuit of one position as a deck for a general circuit simulator (SPICE), so that anybody can check the readings.
// What joints join is one node; a comment beside each names its terminals. Sources that fight are left out, and a joint or
// source side by side with another is there once. A diode is one with a steep curve behind its drop: within 0.2 mV.
std::string spiceDeck(const Job& job, const Netlist& net, const Readings& readings, const std::string& title);

// The node of each vertex in that deck: "n7".
class DeckNodes {
public:
    explicit DeckNodes(const Network& network);
    std::string operator[](Vertex vertex) const { return "n" + std::to_string(number_[vertex]); }
    std::uint32_t number(Vertex vertex) const { return number_[vertex]; }

private:
    std::vector<std::uint32_t> number_;
};

} // namespace doorloom
