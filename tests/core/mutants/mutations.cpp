#include "mutation.h"

#include <algorithm>

namespace doorloom {

bool isLanded(const Job& job, const Device& device, const Key& terminal)
{
    const std::vector<const Conductor*> conductors = conductorsOn(job, device.id);
    return std::any_of(conductors.begin(), conductors.end(), [&](const Conductor* conductor) {
        return std::any_of(&conductor->from, &conductor->to + 1, [&](const End& end) {
            const Landing* landing = landingOf(end);
            return landing && landing->device == device.id && landing->terminal == terminal;
        });
    });
}

std::string nameOf(const Job& job, const Device& device, const Key& terminal) { return nameOf(job, Landing{device.id, terminal}); }

std::vector<KindOfMutation> allMutations()
{
    std::vector<KindOfMutation> all;
    for (auto mutations : {conductorMutations, deviceMutations, addedMutations})
        for (KindOfMutation& kind : mutations())
            all.push_back(std::move(kind));
    return all;
}

} // namespace doorloom
