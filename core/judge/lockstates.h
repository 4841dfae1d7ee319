#pragma once

#include "model/job.h"

#include <memory>
#include <vector>

namespace doorloom {

struct DividedJob;

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

// Worked out part by part, when it is asked for.
// Owns: a copy of the job.   Cost: the first question parts the job, and each opens the part that the opening is in, and settles a few positions for
//       each lock and situation.   For one thread at a time.
class LocksInSituations {
public:
    explicit LocksInSituations(const Job& job);
    ~LocksInSituations();

    const Job& job() const { return job_; }
    LockStates of(OpeningId opening) const; // no lines: there is no such opening, or it has no locks

private:
    const Job job_;
    mutable std::unique_ptr<const DividedJob> parts_; // once somebody asks
};

} // namespace doorloom
