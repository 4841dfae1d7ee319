#pragma once

#include "core/jobs.h"

#include "graph/netlist.h"
#include "verdict/questions.h"

#include <stdexcept>
#include <string>

namespace doorloom {

// Whether a device's load is fed with these throws, everything else as it is at rest.
inline bool isFed(const Job& job, const std::string& tag, const Key& load, const std::string& throws)
{
    const Netlist net(job);
    const Questions questions(net.circuit());
    Position position;
    for (const MovedOperator& moved : net.circuit().operators)
        position.push_back(moved.idle);
    for (const Thrown& thrown : throwsNamed(job, throws)) {
        const auto place = findThrow(job.operators.find(thrown.moved)->throws, thrown.thrown);
        position[net.indexOf(thrown.moved).value()] = static_cast<ThrowIndex>(place.value());
    }
    const auto settled = questions.settled(position);
    if (!settled)
        throw std::runtime_error("The circuit never settles with " + throws);
    return questions.returnedIn(*settled, net.elementOf(deviceTagged(job, tag)->id, load).value());
}

} // namespace doorloom
