#pragma once

#include "judge/wiring.h"
#include "model/job.h"

#include <vector>

// Which rows of a job are judged together. What does not hang together is judged apart; and of what hangs on a common
// supply, each door that meets the others at the supply's rails alone.
namespace doorloom {

struct Division {
    std::vector<const JobKind*> kinds;
    std::vector<const Operator*> operators;
    std::vector<const Device*> devices;
    std::vector<const Splice*> splices;
    std::vector<const Conductor*> conductors;
    std::vector<const Opening*> openings;
    std::vector<std::uint32_t> shared;   // numbers of those that are judged elsewhere: supplies, and the way to them; sorted
    std::vector<std::uint32_t> carriers; // devices that only carry the way: here they have their links alone; sorted
    std::uint32_t key = 0;             // lowest number of a row that is judged here

    bool shares(std::uint32_t number) const { return std::binary_search(shared.begin(), shared.end(), number); }
    bool onlyCarries(DeviceId device) const { return std::binary_search(carriers.begin(), carriers.end(), device.number); }
};

// The same rows, the same values?   Cost: one look a row where the rows stand where they stood.
bool sameRows(const Division& one, const Division& other);

// The job with the rows of one division alone. Tables that no check of a part reads stay whole.
Job jobOf(const Division& division, const Job& job);

// A rail is a net that holds a source's pole or the earth, or that many devices touch. A cell is what hangs together
// without passing a rail. A cell can make a difference to another only where it lets current pass from rail to rail
// with no load between, or has a source: such cells are looked at with each cell that shares a block of rails with them.
// In:   pieces of at most `mostWhole` devices are not divided
// Out:  by key; each row that anything is said about is judged in one of them
// Cost: linear
std::vector<Division> divisionsOf(const Wiring& wiring, std::size_t mostWhole);

} // namespace doorloom
