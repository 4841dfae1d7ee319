#pragma once

#include "judge/division.h"
#include "judge/wiring.h"

namespace doorloom {

// A rail is a net that holds a source's pole or the earth, or that many devices touch. A cell is what hangs together
// without passing a rail. A cell can make a difference to another only where it lets current pass from rail to rail
// with no load between, or has a source: such cells are looked at with each cell that shares a block of rails with them.
// In:   pieces of at most `mostWhole` devices are not divided
// Out:  by key; each row that anything is said about is judged in one of them
// Cost: linear
std::vector<Division> divisionsOf(const Wiring& wiring, std::size_t mostWhole);

} // namespace doorloom
