#pragma once

#include "oracle.h"
#include "positions.h"

#include <string>

namespace doorloom {

enum class Harm { None, Changed, Danger };

struct Judgement {
    Harm harm = Harm::None;
    std::string why; // the worst of it: part, position, what it was and is
};

// All positions of a right job, once.
class RightTable {
public:
    explicit RightTable(const Job& right);

    // What a mistake does to it: dangers are shorts, wrong or too many volts, volts on dry inputs, wrong batteries, a safety loop that
    // stays closed, somebody held in or walked in on.
    Judgement compared(const Job& wrong) const;
    std::string limitsPassed() const; // of the right job itself; empty: none

private:
    const Job& right_;
    std::vector<PositionAt> positions_;
    std::vector<WhatHappens> table_;
    std::map<PartAt, std::string> fixed_;
};

} // namespace doorloom
