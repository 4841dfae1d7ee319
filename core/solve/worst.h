#pragma once

#include "graph/circuit.h"
#include "verdict/verdict.h"

#include <optional>
#include <vector>

namespace doorloom {

struct Meter;
class Questions;

// The worst of one reading over the positions looked at, and the position of it with the fewest throws away from rest.
struct Worst {
    double value = 0;
    Position at;
};
using Worsts = std::vector<std::optional<Worst>>; // nothing: never so, or nothing to be read

std::size_t throwsAwayFromRest(const Circuit& circuit, const Position& position);
// Higher counts; of equals, the fewest throws.
void putHighest(const Circuit& circuit, std::optional<Worst>& held, double value, const Position& at);
// The fewest throws count; of equals, what is farther from nothing.
void putFewest(const Circuit& circuit, std::optional<Worst>& held, double value, const Position& at);

// What a meter reads between two terminals over all positions that settle, sources live; volts.
struct ReadingRange {
    std::optional<Worst> lowest, highest; // from y to x, supplies at their lowest and at their highest; nothing: floating in all
    std::optional<Position> floatingIn;   // a position in which nothing fixes it
    std::optional<Position> unreadableIn; // … in which a source is shorted, sources fight, or diodes do not settle
    Coverage coverage;                    // of the operators that can change it
};

// In:   budget: steps; a position costs so many thousands of them
// Cost: two solutions a position
ReadingRange rangeBetween(const Meter& meter, const Questions& ask, Vertex x, Vertex y, std::uint64_t budget);

} // namespace doorloom
