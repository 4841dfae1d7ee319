#pragma once

#include "base/text.h"
#include "model/kind.h"

#include <string>
#include <utility>
#include <vector>

namespace doorloom {

// What a meter finds at one device by itself, its operators standing so.
struct TrialPosition {
    Message when;                                       // "as it settles by itself", "K1: in"
    std::vector<std::vector<std::string>> joined;       // terminals as printed, that are joined then
    std::vector<std::pair<std::string, Message>> reads; // by terminal: "24.00 V against −", "floating"
};

struct KindTrial {
    Message fed; // "24 V DC between + and −"; from what it feeds itself; from nothing
    std::vector<TrialPosition> positions;
    bool cutShort = false; // there are more throws than mostTrialPositions
};

inline constexpr std::size_t mostTrialPositions = 60;

// A kind tried in a small circuit: its electronics, else its coil or other load, on a trial supply of the
// volts that it is rated for, with every jumper as from the factory (the first value where that is not
// known); then each operator in each of its throws, the others as they settle. In:   a kind that says nothing
// against itself (checkKind) Cost: one solution a position
KindTrial kindTrial(const Kind& kind);

} // namespace doorloom
