#pragma once

#include "check/facts.h"
#include "verdict/region.h"

#include <vector>

namespace doorloom {

// What lies between a dry input's terminal and its reference, as the input itself sees it: joints and resistors.
// Owns: nothing of the facts, which must outlive it.   Cost: what hangs on the terminal
class Loop {
public:
    Loop(const Facts& facts, std::uint32_t input);

    bool isThere() const { return isOneNet_ || region_.possible; }       // with every contact closed
    const std::vector<MovedIndex>& operators() const { return region_.operators; }
    std::vector<DeviceId> resistors() const; // each once
    std::vector<DeviceId> contacts() const;  // of other devices than the input's own; each once
    std::vector<std::uint32_t> contactJoints() const;

    // Conductors count as none. Infinite: open.
    double ohmsIn(const Position& position) const;

private:
    const Facts& facts_;
    DeviceId device_;
    Region region_;
    bool isOneNet_;
};

// A supervised input as its kind describes it; null: it only tells open from closed.
const DryInputPart* supervisedInput(const Facts& facts, std::uint32_t input);
// Is there a loop on a supervised input that never shows it one of the states that it knows? Then the rule about
// end-of-line values speaks of it, and no other that says how the input is operated.
bool hasWrongLoop(const Facts& facts, std::uint32_t input);

} // namespace doorloom
