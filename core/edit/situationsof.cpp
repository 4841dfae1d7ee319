#include "edit/openings.h"

#include <algorithm>

namespace doorloom {

std::vector<Situation> situationsOf(const Opening& opening)
{
    std::vector<Situation> situations{{SituationKind::Rest, {}, {}}};
    const auto add = [&](Situation situation) {
        if (std::find(situations.begin(), situations.end(), situation) == situations.end())
            situations.push_back(std::move(situation));
    };
    for (const Act& request : opening.requests)
        add({SituationKind::Request, request.name, {}});
    for (const Act& release : opening.releases)
        add({SituationKind::Release, release.name, {}});
    if (!opening.occupied.empty()) {
        add({SituationKind::Occupied, {}, {}});
        for (const Act& request : opening.requests)
            add({SituationKind::RequestWhileOccupied, request.name, {}});
    }
    add({SituationKind::MainsLost, {}, {}});
    add({SituationKind::AllPowerLost, {}, {}});
    if (opening.fire) {
        add({SituationKind::FireAlarm, {}, {}});
        add({SituationKind::FireReset, {}, {}});
    }
    for (const Promise& promise : opening.promises)
        add(promise.situation);
    return situations;
}

Promised promisedIn(const Opening& opening, const Situation& situation, DeviceId device)
{
    const auto found =
        std::find_if(opening.promises.begin(), opening.promises.end(), [&](const Promise& promise) {
            return promise.situation == situation && promise.device == device;
        });
    return found == opening.promises.end() ? Promised::Nothing : found->promised;
}

} // namespace doorloom
