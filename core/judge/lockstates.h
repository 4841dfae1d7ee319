#pragma once

#include "check/facts.h"

#include <vector>

namespace doorloom {

// What a lock does in a situation, in all positions of it that settle.
enum class LockDoes {
    StaysLocked,
    IsFree,
    StaysPut,   // its kind keeps whatever state it had
    Depends,    // on what programmed outputs or jumpers do: locked in one position, free in another
    NotSettled, // no position settles
    NotWired    // its load is on no terminals, or its kind is missing
};

struct LockInSituation {
    LockDoes does = LockDoes::NotWired;
    Promised promised = Promised::Nothing;

    bool keepsPromise() const; // true where nothing is promised, or nothing can be said
};

struct SituationLine {
    Situation situation;
    std::vector<LockInSituation> locks; // as in the table
};

// Every lock of an opening in every situation that it can speak of.
struct LockStates {
    OpeningId opening;
    std::vector<DeviceId> locks;
    std::vector<SituationLine> lines;
};

// One for each opening, in the order of the job; openings without locks have none.
// Cost: a few settled positions for each lock and situation
std::vector<LockStates> lockStatesOf(const Facts& facts);

} // namespace doorloom
