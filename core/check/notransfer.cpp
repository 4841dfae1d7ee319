#include "check/check.h"
#include "check/tell.h"

#include <algorithm>
#include <set>

// A conductor from the leaf to what does not swing with it, and no transfer between.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{conductor} leads from the leaf to the frame or beyond without a transfer: the hinge cuts it.",
                      .es = "{conductor} va de la hoja al marco o más allá sin paso de cables: la bisagra lo corta."};
constexpr Text remedy = {.en = "Lead {conductor} through a power transfer or a hinge with wires. If an armoured cord carries it, set this aside and say so.",
                         .es = "Lleve {conductor} por un paso de cables o una bisagra con hilos. Si lo lleva un latiguillo blindado, apártelo y dígalo."};

// All its terminals are linked in pairs: it takes conductors from one place to another.
bool isTransfer(const Kind& kind) { return kind.family == "joint" && kind.strips.size() == 2; }

// Where an end is; null: not landed, on a transfer, or nobody says.
const Place* placeOf(const Job& job, const End& end)
{
    if (const SpliceId* id = spliceOf(end)) {
        const Splice* splice = job.splices.find(*id);
        return splice ? job.places.find(splice->place) : nullptr;
    }
    const Landing* landing = landingOf(end);
    const Device* device = landing ? job.devices.find(landing->device) : nullptr;
    const Kind* kind = device ? kindOf(job, *device) : nullptr;
    return kind && !isTransfer(*kind) ? job.places.find(device->place) : nullptr;
}

bool crosses(const Place* one, const Place* other)
{
    return one && other && (one->mounting == Mounting::Leaf) != (other->mounting == Mounting::Leaf) && one->mounting != Mounting::Elsewhere &&
           other->mounting != Mounting::Elsewhere;
}

std::string nameOfEnds(const Job& job, const Conductor& conductor)
{
    std::string text;
    for (const End* end : {&conductor.from, &conductor.to})
        if (const Landing* landing = landingOf(*end))
            text += (text.empty() ? "" : " – ") + nameOf(job, *landing);
    return text.empty() ? conductor.tag : text;
}

std::vector<Finding> findCrossing(const Job& job)
{
    std::vector<Finding> findings;
    if (std::none_of(job.places.begin(), job.places.end(), [](const Place& place) { return place.mounting == Mounting::Leaf; }))
        return findings;
    std::set<CableId> told;
    for (const Conductor& conductor : job.conductors) {
        if (!crosses(placeOf(job, conductor.from), placeOf(job, conductor.to)) || (conductor.cable && !told.insert(conductor.cable).second))
            continue;
        Finding finding;
        finding.rule = "no-transfer";
        finding.severity = Severity::Doubt;
        finding.at = {conductor.cable ? Spot{{}, {}, {}, conductor.cable} : Spot{{}, {}, conductor.id, {}}};
        const Cable* cable = job.cables.find(conductor.cable);
        const std::string name = cable ? cable->tag : nameOfEnds(job, conductor);
        finding.why = {why, {{"conductor", name}}};
        finding.remedy = {remedy, {{"conductor", name}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check noTransfer = {
    .code = "no-transfer",
    .worst = Severity::Doubt,
    .title = {.en = "Over the hinge without a transfer", .es = "Por la bisagra sin paso de cables"},
    .notCovered = {.en = "devices whose place is not said; armoured cords, which are in no job; what a transfer's cores bear",
                   .es = "dispositivos cuyo lugar no consta; latiguillos blindados, que no constan en el trabajo; lo que soportan los hilos de un paso"},
    .runOnJob = findCrossing,
};

} // namespace doorloom
