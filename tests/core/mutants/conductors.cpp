#include "mutation.h"

#include <optional>

namespace doorloom {

namespace {

std::string wireName(const Job& job, const Conductor& conductor)
{
    const auto end = [&](const End& at) {
        const Landing* landing = landingOf(at);
        return landing ? nameOf(job, *landing) : std::string("nowhere");
    };
    return end(conductor.from) + " → " + end(conductor.to);
}

const Landing* landingAt(const Conductor& conductor, WhichEnd which) { return landingOf(which == WhichEnd::From ? conductor.from : conductor.to); }

// One mutant for each end that this leads elsewhere.
std::vector<Mutant> movedEnds(const Job& job, const std::function<std::optional<Landing>(const Device&, const Landing&)>& elsewhere)
{
    std::vector<Mutant> all;
    for (const Conductor& conductor : job.conductors)
        for (WhichEnd which : {WhichEnd::From, WhichEnd::To})
            if (const Landing* landing = landingAt(conductor, which))
                if (const auto to = elsewhere(*job.devices.find(landing->device), *landing))
                    all.push_back(mutant(job, wireName(job, conductor) + ": " + nameOf(job, *landing) + " on " + nameOf(job, *to),
                                         [id = conductor.id, which, to = *to](JobBuilder& builder) {
                                             change(builder, setEnd(builder.job(), id, which, {EndState::Landed, to}));
                                         }));
    return all;
}

std::vector<Mutant> conductorsOff(const Job& job)
{
    std::vector<Mutant> all;
    for (const Conductor& conductor : job.conductors)
        all.push_back(mutant(job, wireName(job, conductor),
                             [id = conductor.id](JobBuilder& builder) { change(builder, takeOff(builder.job(), id)); }));
    return all;
}

std::vector<Mutant> oneTerminalOff(const Job& job)
{
    return movedEnds(job, [&](const Device& device, const Landing& landing) -> std::optional<Landing> {
        const std::vector<const Terminal*> terminals = terminalsOf(*kindOf(job, device));
        for (std::size_t i = 0; i < terminals.size() && terminals.size() > 1; ++i)
            if (terminals[i]->key == landing.terminal)
                return Landing{landing.device, terminals[(i + 1) % terminals.size()]->key};
        return std::nullopt;
    });
}

std::vector<Mutant> onTheOtherPole(const Job& job)
{
    return movedEnds(job, [&](const Device& device, const Landing& landing) -> std::optional<Landing> {
        for (const Part& part : kindOf(job, device)->parts)
            if (const auto* source = std::get_if<SourcePart>(&part.body)) {
                if (source->plus == landing.terminal)
                    return Landing{device.id, source->minus};
                if (source->minus == landing.terminal)
                    return Landing{device.id, source->plus};
            }
        return std::nullopt;
    });
}

// The ends at one of two devices that both conductors lead between, as two cores of one cable.
std::vector<Mutant> coresExchanged(const Job& job)
{
    std::vector<Mutant> all;
    const auto endOn = [](const Conductor& conductor, DeviceId device) -> std::optional<WhichEnd> {
        for (WhichEnd which : {WhichEnd::From, WhichEnd::To})
            if (const Landing* landing = landingAt(conductor, which); landing && landing->device == device)
                return which;
        return std::nullopt;
    };
    for (const Conductor& one : job.conductors)
        for (const Conductor& other : job.conductors) {
            const Landing *from = landingOf(one.from), *to = landingOf(one.to);
            if (!(one.id < other.id) || !from || !to || from->device == to->device || !endOn(other, from->device) || !endOn(other, to->device))
                continue;
            const WhichEnd otherEnd = *endOn(other, to->device);
            const Landing there = *landingAt(other, otherEnd);
            if (there == *to)
                continue;
            all.push_back(mutant(job, wireName(job, one) + " with " + wireName(job, other),
                                 [one = one.id, other = other.id, otherEnd, there, here = *to](JobBuilder& builder) {
                                     change(builder, setEnd(builder.job(), one, WhichEnd::To, {EndState::Landed, there}));
                                     change(builder, setEnd(builder.job(), other, otherEnd, {EndState::Landed, here}));
                                 }));
        }
    return all;
}

} // namespace

std::vector<KindOfMutation> conductorMutations()
{
    return {{"conductor off", conductorsOff}, {"one terminal off", oneTerminalOff}, {"on the other pole", onTheOtherPole}, {"two cores exchanged", coresExchanged}};
}

} // namespace doorloom
