#include "solve/whatif.h"

#include <algorithm>
#include <cmath>

namespace doorloom {

std::optional<Volts> voltsDrawing(Meter meter, const Position& position, SupplyLevel supplies, std::uint32_t element,
                                  Amperes amperes)
{
    LoadPart drawing = *meter.loads[element];
    drawing.law = LoadLaw::ConstantCurrent;
    drawing.releaseVolts.reset(); // nor does it let go meanwhile
    const Volts rated = drawing.rated.empty() ? Volts{1} : drawing.rated.front().volts;
    drawing.rated = {{rated, amperes}};
    meter.loads[element] = &drawing;
    const Readings readings(meter, position, supplies, Want::JustVolts);
    const std::vector<std::uint32_t> notCarried = readings.notCarried();
    if (!readings.settled() || std::find(notCarried.begin(), notCarried.end(), element) != notCarried.end())
        return std::nullopt;
    const auto across = readings.acrossElement(element);
    return across ? std::optional(Volts{std::abs(across->value)}) : std::nullopt;
}

Meter withGauge(Meter meter, const Job& job, const std::vector<std::uint32_t>& joints, std::string_view gauge)
{
    for (std::uint32_t joint : joints) {
        const Origin& origin = meter.net.origin(meter.net.circuit().joints[joint].origin);
        if (const Conductor* conductor = job.conductors.find(origin.conductor))
            meter.ohmsOfJoint[joint] = ohmsOf(gauge, lengthOf(job, *conductor), meter.conditions.celsius)->value;
    }
    return meter;
}

} // namespace doorloom
