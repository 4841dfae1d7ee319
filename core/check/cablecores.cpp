#include "check/cablecores.h"

#include <algorithm>
#include <set>

namespace doorloom {

namespace {

template <class Body, class Is> bool hasPart(const Device& device, const Kind& kind, Is isAt)
{
    return std::any_of(kind.parts.begin(), kind.parts.end(), [&](const Part& part) {
        const auto* body = std::get_if<Body>(&part.body);
        return body && holds(device, part.when) && isAt(*body);
    });
}

// The terminal, and those linked with it inside the device.
std::set<Key> linkedWith(const Kind& kind, const Key& terminal)
{
    std::set<Key> all{terminal};
    for (std::size_t before = 0; before != all.size();) {
        before = all.size();
        for (const Part& part : kind.parts)
            if (const auto* link = std::get_if<LinkPart>(&part.body); link && (all.contains(link->a) || all.contains(link->b)))
                all.insert({link->a, link->b});
    }
    return all;
}

} // namespace

std::vector<const Conductor*> coresOn(const Job& job, CableId cable, const IsTerminal& isSo)
{
    std::vector<const Conductor*> found;
    for (const Conductor* core : coresOf(job, cable)) {
        const auto isThere = [&](const End& end) {
            const Landing* landing = landingOf(end);
            const Device* device = landing ? job.devices.find(landing->device) : nullptr;
            const Kind* kind = device ? kindOf(job, *device) : nullptr;
            return kind && isSo(*device, *kind, landing->terminal);
        };
        if (isThere(core->from) || isThere(core->to))
            found.push_back(core);
    }
    return found;
}

bool isOnLoadOfLock(const Device&, const Kind& kind, const Key& terminal)
{
    const auto* load = kind.lock ? findPartAs<LoadPart>(kind, kind.lock->load) : nullptr;
    return load && (load->a == terminal || load->b == terminal);
}

bool isSignal(const Device& device, const Kind& kind, const Key& terminal)
{
    return hasPart<SignalPart>(device, kind, [&](const SignalPart& part) { return part.terminal == terminal; });
}

bool isMains(const Device& device, const Kind& kind, const Key& terminal)
{
    return hasPart<MainsPart>(device, kind, [&](const MainsPart& part) { return part.terminal == terminal; });
}

bool isEarth(const Device& device, const Kind& kind, const Key& terminal)
{
    const std::set<Key> linked = linkedWith(kind, terminal);
    return hasPart<EarthPart>(device, kind, [&](const EarthPart& part) { return linked.contains(part.terminal); });
}

} // namespace doorloom
