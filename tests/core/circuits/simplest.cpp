#include "simplest.h"

namespace doorloom {

namespace {

OpeningSketch lockedAtRest(const std::string& lock, Egress egress)
{
    OpeningSketch sketch;
    sketch.locks = {lock};
    sketch.egress = egress;
    sketch.promises = {{"rest", Promised::Locked}};
    return sketch;
}

} // namespace

OpeningSketch openedFrom(const std::string& lock, std::vector<ActSketch> requests, Promised withoutPower)
{
    OpeningSketch sketch = lockedAtRest(lock, Egress::ByHand);
    for (const ActSketch& request : requests)
        sketch.promises.push_back({"request " + request.name, Promised::Free});
    sketch.promises.push_back({"all power lost", withoutPower});
    sketch.requests = std::move(requests);
    return sketch;
}

OpeningSketch releasedFrom(const std::string& lock, std::vector<ActSketch> releases)
{
    OpeningSketch sketch = lockedAtRest(lock, Egress::ByElectricity);
    for (const ActSketch& release : releases)
        sketch.promises.push_back({"release " + release.name, Promised::Free});
    sketch.promises.push_back({"all power lost", Promised::Free});
    sketch.releases = std::move(releases);
    return sketch;
}

OpeningSketch freeInFire(OpeningSketch sketch, const std::string& fire)
{
    sketch.fire = fire;
    sketch.promises.push_back({"fire alarm", Promised::Free});
    return sketch;
}

Job jobOf(const SimplestWiring& wiring)
{
    const std::vector<OpeningSketch> none;
    return drawnJob(wiring.devices, wiring.wires, wiring.options, wiring.opening ? std::vector{*wiring.opening} : none);
}

std::vector<SimplestWiring> allSimplestWirings()
{
    std::vector<SimplestWiring> all;
    for (auto wirings : {simplestSupplies, simplestLocks, simplestSwitches, simplestParts})
        for (SimplestWiring& wiring : wirings())
            all.push_back(std::move(wiring));
    return all;
}

} // namespace doorloom
