#pragma once

#include "model/job.h"
#include "solve/restreadings.h"

#include <memory>

namespace doorloom {

struct DividedJob;

// What a meter reads at each terminal of a job, against a minus of the source that its potential hangs on: at rest, and the
// lowest and highest over the positions looked at.
// Owns: a copy of the job.   Cost: a netlist and one solution; the first question of at() parts the job, and each opens the part
//       that the terminal is in.   For one thread at a time.
class TerminalReadings {
public:
    explicit TerminalReadings(const Job& job);
    ~TerminalReadings();

    // "23.97 V against PS1:− at rest; 0.00 to 27.04 V in all 64 positions"; empty: no such terminal, or nothing is read.
    // The drop that doors judged apart cause is not in it.
    Message at(const Landing& terminal) const;

private:
    struct Opened;
    const Opened* opened(DeviceId device) const; // null: it is judged in no part of its own

    Job job_;
    RestReadings rest_;
    mutable std::unique_ptr<DividedJob> parts_;
    mutable std::unique_ptr<Opened> opened_; // the last one asked for
};

} // namespace doorloom
