#pragma once

#include "verdict/verdict.h"

#include <functional>
#include <string>

namespace doorloom {

// The same circuit for the same seed on every machine: 4 to 12 vertices, 2 to 8 operators. Half of them are
// built like doors (rails, contacts in series with a load, relays, a module) with mistakes put in, half are
// pure chance.
Circuit randomCircuit(std::uint32_t seed);

// Like doors, with 10 to 20 operators and up to 40 vertices: too many positions for the brute force.
Circuit randomLargeCircuit(std::uint32_t seed);

// The same circuit drawn differently: joints and diodes in another order, ends swapped where either end will
// do. Vertices, operators, elements, feeds and inputs keep their numbers.
Circuit redrawn(Circuit circuit, std::uint32_t seed);

// One thing after another is left out while `stillFails` says yes.
Circuit shrunk(Circuit circuit, const std::function<bool(const Circuit&)>& stillFails);

// One part a line, to be read by people.
std::string described(const Circuit& circuit);
std::string described(const Cube& cube);
std::string described(const std::vector<Cube>& cubes);
std::string described(const Position& position);

} // namespace doorloom
