#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"
#include "edit/operations.h"
#include "verdict/region.h"

#include <algorithm>

// A coil that takes its own feed away: it pulls in, drops out, pulls in.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{coil} is fed only while it is out: it pulls in, loses its feed, drops out, and so on.",
                      .es = "{coil} recibe tensión solo mientras está suelto: se activa, se corta, se suelta, y así."};
constexpr Text pastOwn = {
    .en = "With power off, take the feed of {coil} from before its own contact: move the conductor off {common} onto "
          "{coil}, and take off the one from {contact} to {coil}.",
    .es = "Sin tensión, tome la alimentación de {coil} antes de su propio contacto: mueva el conductor de {common} a "
          "{coil}, y retire el de {contact} a {coil}."};

// Its own contact stands between two conductors of its feed: the first goes straight to the coil.
void addPastOwnContact(const Facts& facts, DeviceId device, const LoadPart& load, Remedies& remedies)
{
    const Kind* kind = kindOf(facts.job, device);
    for (const Part& part : kind->parts) {
        const auto* contact = std::get_if<ContactPart>(&part.body);
        if (!contact)
            continue;
        for (const auto& [common, far] : {std::pair(contact->a, contact->b), std::pair(contact->b, contact->a)})
            for (const Key& coil : {load.a, load.b})
                for (const Conductor* last : conductorsOn(facts.job, device)) {
                    const Landing *one = landingOf(last->from), *two = landingOf(last->to);
                    const Landing atFar{device, far}, atCoil{device, coil}, atCommon{device, common};
                    if (!one || !two || !((*one == atFar && *two == atCoil) || (*one == atCoil && *two == atFar)))
                        continue;
                    for (const Conductor* first : conductorsOn(facts.job, device)) {
                        const Landing *from = landingOf(first->from), *to = landingOf(first->to);
                        const bool isFrom = from && *from == atCommon, isTo = to && *to == atCommon;
                        if (!isFrom && !isTo)
                            continue;
                        Result<Change> off = takeOff(facts.job, last->id);
                        Result<Change> on = setEnd(facts.job, first->id, isFrom ? WhichEnd::From : WhichEnd::To,
                                                   End{EndState::Landed, atCoil});
                        if (off.ok() && on.ok())
                            remedies.add({pastOwn,
                                          {{"coil", nameOf(facts.job, atCoil)},
                                           {"common", nameOf(facts.job, atCommon)},
                                           {"contact", nameOf(facts.job, atFar)}}},
                                         joined(std::move(off.value()), std::move(on.value())));
                    }
                }
    }
}

// The supply is taken to be live: throws that do nothing but keep it so are not told.
void leaveOutSupplies(Verdict& verdict, const Circuit& circuit)
{
    std::vector<MovedIndex> supplies, contacts;
    for (const Feed& feed : circuit.feeds)
        addOperators(supplies, feed.live);
    for (const Joint& joint : circuit.joints)
        addOperators(contacts, joint.guard);
    sortOperators(supplies);
    sortOperators(contacts);
    for (Cube& cube : verdict.cubes)
        std::erase_if(cube, [&](const ThrowAt& each) {
            return std::binary_search(supplies.begin(), supplies.end(), each.moved) &&
                   !std::binary_search(contacts.begin(), contacts.end(), each.moved);
        });
    std::sort(verdict.cubes.begin(), verdict.cubes.end());
    verdict.cubes.erase(std::unique(verdict.cubes.begin(), verdict.cubes.end()), verdict.cubes.end());
}

std::vector<Finding> findBuzzing(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().drives.size(); ++number) {
        const Drive& drive = facts.circuit().drives[number];
        if (!drive.load)
            continue;
        Verdict verdict = facts.ask.buzzes(number);
        if (!occurs(verdict))
            continue;
        leaveOutSupplies(verdict, facts.circuit());
        const Element& coil = facts.circuit().elements[*drive.load];
        Finding finding;
        finding.rule = "buzzes";
        finding.at = {deviceSpot(facts.deviceOf(coil.origin))};
        happensIn(finding, facts, verdict);
        finding.why = {why, {{"coil", tagOfOrigin(facts, coil.origin)}}};
        Remedies remedies(facts);
        if (const LoadPart* load = facts.loadOf(*drive.load))
            addPastOwnContact(facts, facts.deviceOf(coil.origin), *load, remedies);
        finding.remedies = remedies.taken();
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check buzzes = {
    .code = "buzzes",
    .worst = Severity::Fault,
    .title = {.en = "Coil that buzzes", .es = "Bobina que zumba"},
    .notCovered = {.en = "delays that would make it slow instead of fast", .es = "retardos que lo harían lento"},
    .run = findBuzzing,
};

} // namespace doorloom
