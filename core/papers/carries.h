#pragma once

#include "model/job.h"

#include <cstdint>
#include <unordered_map>
#include <vector>

namespace doorloom {

// What a helper with a screwdriver must expect on a conductor, and what must be off before a device is
// touched. Follows who is joined to whose poles over conductors, links, fuses and, as 'switched', over
// contacts and diodes in any throw. A jumper not chosen yet counts as a contact. It works out no volts and
// judges no position: that is the checks' work.   Cost: linear in the job
class Carries {
public:
    explicit Carries(const Job& job);

    // '24 V DC +', '24 V DC − switched', 'dry', 'data D0', 'earth', 'MAINS: licensed person only' …; no words
    // for a conductor landed nowhere.
    Message of(ConductorId conductor) const;

    // The supplies (and devices with a mains lead of their own) that can put a voltage on a device's
    // terminals, by tag. A contact into a dry input brings what feeds the device of that input.
    std::vector<DeviceId> supplies(DeviceId device) const;

private:
    std::unordered_map<std::uint32_t, Message> carried_;                // by conductor
    std::unordered_map<std::uint32_t, std::vector<DeviceId>> supplies_; // by device
};

} // namespace doorloom
