#include "harmless.h"

#include "core/jobs.h"

#include <algorithm>
#include <set>

namespace doorloom {

namespace {

std::vector<Key> landedTerminals(const Job& job, const Device& device)
{
    std::set<Key> landed;
    for (const Conductor* conductor : conductorsOn(job, device.id))
        for (const End* end : {&conductor->from, &conductor->to})
            if (const Landing* landing = landingOf(*end); landing && landing->device == device.id)
                landed.insert(landing->terminal);
    return {landed.begin(), landed.end()};
}

bool isBareContact(const Kind& kind)
{
    return std::all_of(kind.parts.begin(), kind.parts.end(),
                       [](const Part& part) {
                           const auto* contact = std::get_if<ContactPart>(&part.body);
                           return contact && !contact->solidState;
                       });
}

bool isUnpolarisedLoad(const Kind& kind)
{
    const LoadPart* load = kind.parts.size() == 1 ? std::get_if<LoadPart>(&kind.parts[0].body) : nullptr;
    return load && !load->polarised;
}

// The two landed ends of contacts and strikes change places, device by device.
void addTurnedDevices(std::vector<Harmless>& edits, const Job& job)
{
    for (const Device& device : job.devices) {
        const Kind& kind = *kindOf(job, device);
        const std::vector<Key> landed = landedTerminals(job, device);
        if (landed.size() != 2 || (!isBareContact(kind) && !isUnpolarisedLoad(kind)))
            continue;
        JobBuilder turned(job);
        turned.exchange(device.tag + ":" + landed[0], device.tag + ":" + landed[1]);
        edits.push_back({device.tag + " turned round", turned.job()});
    }
}

// Each conductor whose end could as well be landed where another conductor leads from there.
void addMovedLandings(std::vector<Harmless>& edits, const Job& job, const Job& right, std::size_t most)
{
    std::vector<Harmless> moved;
    for (const Conductor& conductor : job.conductors)
        for (const Conductor& other : job.conductors) {
            const Landing *here = landingOf(conductor.from), *also = landingOf(other.from),
                          *there = landingOf(other.to);
            const Conductor* trusted = right.conductors.find(other.id);
            if (conductor.id == other.id || !trusted || *trusted != other || !here || !also || !there ||
                *here != *also)
                continue;
            Conductor after = conductor;
            after.from.on = *there;
            moved.push_back({nameOf(job, *here) + " landed on " + nameOf(job, *there),
                             JobBuilder(job).apply({{Put<Conductor>{after.id, after}}}).job()});
        }
    const std::size_t stride = std::max<std::size_t>(1, moved.size() / most);
    for (std::size_t i = 0; i < moved.size(); i += stride)
        edits.push_back(std::move(moved[i]));
}

Job withEndsSwapped(const Job& job)
{
    Change change;
    for (Conductor conductor : job.conductors) {
        std::swap(conductor.from, conductor.to);
        change.steps.push_back(Put<Conductor>{conductor.id, conductor});
    }
    return JobBuilder(job).apply(change).job();
}

Job withConductorsReversed(const Job& job)
{
    std::vector<Conductor> conductors;
    for (const Conductor& conductor : job.conductors)
        conductors.push_back(conductor);
    Change change;
    for (std::size_t i = 0; i < conductors.size(); ++i) {
        Conductor after = conductors[conductors.size() - 1 - i];
        after.id = conductors[i].id;
        change.steps.push_back(Put<Conductor>{after.id, after});
    }
    return JobBuilder(job).apply(change).job();
}

Job withTagsPrefixed(const Job& job, const std::string& prefix)
{
    std::vector<std::string> tags;
    for (const Device& device : job.devices)
        tags.push_back(device.tag);
    JobBuilder renamed(job);
    for (const std::string& tag : tags)
        renamed.rename(tag, prefix + tag);
    return renamed.job();
}

} // namespace

std::vector<Harmless> harmlessEdits(const Job& job, const Job& right, std::size_t mostMoves)
{
    std::vector<Harmless> edits = {{"a capped spare", JobBuilder(job).wire("spare", "spare").job()},
                                   {"conductor ends swapped", withEndsSwapped(job)},
                                   {"conductors in reverse order", withConductorsReversed(job)},
                                   {"ids shuffled once", renumbered(job, 1)},
                                   {"ids shuffled again", renumbered(job, 2)},
                                   {"tags changed", withTagsPrefixed(job, "Q"), "Q"}};
    addTurnedDevices(edits, job);
    addMovedLandings(edits, job, right, mostMoves);
    return edits;
}

} // namespace doorloom
