#pragma once

#include "graph/circuit.h"
#include "model/kind.h"

#include <optional>
#include <vector>

namespace doorloom {

// A circuit in one position, as numbers alone: what is closed is joined, what is open is not there.
struct Network {
    struct Resistor {
        Vertex a = 0, b = 0;
        double ohms = 0; // 0: a joint
    };
    struct Source { // as many amperes as are asked for
        Vertex plus = 0, minus = 0;
        double volts = 0;
    };
    struct Diode { // no current until its drop, and no more than its drop
        Vertex anode = 0, cathode = 0;
        double drop = 0;
    };
    // A load that takes the same current or the same power whatever its volts. Below `leastVolts` it is its ohms.
    struct Draw {
        Vertex a = 0, b = 0;
        LoadLaw law = LoadLaw::ConstantCurrent;
        double amount = 0; // amperes or watts
        double ohms = 0, leastVolts = 0;
    };

    Vertex vertices = 0;
    std::vector<Resistor> resistors;
    std::vector<Source> sources;
    std::vector<Diode> diodes;
    std::vector<Draw> draws;
};

struct Solution {
    std::vector<double> volts;        // by vertex, each against one vertex of its own piece
    std::vector<std::uint32_t> piece; // by vertex
    // Amperes in the order of the network's lists: from a to b, out of the plus, from anode to cathode. Where joints,
    // sources or diodes lie side by side with nothing between, each takes an equal share.
    std::vector<double> resistors, sources, diodes, draws;
    std::vector<std::uint32_t> fighting;   // sources left out: their poles are joined, or others hold them at other volts
    std::vector<std::uint32_t> unlimited;  // diodes left out: sources drive them with nothing that limits the current
    std::vector<char> byLaw;               // by draw: it takes its current or power; the others are their ohms
    std::vector<std::uint32_t> notCarried; // draws for which there is no solution: they are given as their ohms
    bool settled = true;                   // false: the diodes did not settle within the bound, or numbers overflow; the figures mean nothing

    // From y to x; nothing: floating.
    std::optional<double> between(Vertex x, Vertex y) const
    {
        return piece[x] == piece[y] ? std::optional(volts[x] - volts[y]) : std::nullopt;
    }
};

// In:   ohms, drops, amounts and least volts are finite and not negative, volts finite; vertices are below `vertices`
// Cost: as solveLinear's, once for each step of diodes and constant-power loads
//       want: without amperes those of joints and sources are left at nothing, which spares half of it
enum class Want { JustVolts, AmperesToo };
Solution solved(const Network& network, Want want = Want::AmperesToo);

} // namespace doorloom
