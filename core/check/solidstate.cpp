#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>

// A solid-state contact carries current one way: reversed, or on AC, it does not do what a contact does.
namespace doorloom {

namespace {

constexpr Text reversed = {.en = "{contact} is solid-state and carries current from {from} to {to} only; {source} drives it the other way.",
                           .es = "{contact} es de estado sólido y solo conduce de {from} a {to}; {source} lo empuja al revés."};
constexpr Text onAc = {.en = "{contact} is solid-state and carries current one way only; {source} gives AC.",
                       .es = "{contact} es de estado sólido y solo conduce en un sentido; {source} da CA."};
constexpr Text useRelay = {.en = "Let {contact} move a relay, and switch {source} with that.", .es = "Haga que {contact} mueva un relé, y conmute {source} con él."};

struct Met {
    std::uint32_t feed;
    Verdict when;
    bool ac;
};

// With the contact itself taken out: a source that drives it backwards, or both ways. Where another contact bridges it,
// both its sides meet the same pole, which drives nothing.
std::optional<Met> badlyMet(const Facts& facts, std::uint32_t joint)
{
    const Joint& contact = facts.circuit().joints[joint];
    const auto meets = [&](Vertex side, Vertex pole, Vertex other) { return facts.ask.allJoined({{side, pole, other}}, {joint}); };
    for (std::uint32_t number : facts.ask.feedsNear(contact.a)) {
        const Feed& feed = facts.circuit().feeds[number];
        if (!facts.isLanded(feed.plus) || !facts.isLanded(feed.minus))
            continue; // it drives nothing outside its device
        Verdict atPlus = meets(contact.b, feed.plus, feed.minus), atMinus = meets(contact.a, feed.minus, feed.plus);
        Verdict fromPlus = meets(contact.a, feed.plus, feed.minus), toMinus = meets(contact.b, feed.minus, feed.plus);
        for (auto& [backwards, forwards] : {std::pair(&atPlus, &fromPlus), std::pair(&atMinus, &toMinus)})
            if (occurs(*backwards) && (feed.ac || !occurs(*forwards)))
                return Met{number, std::move(*backwards), feed.ac};
        for (Verdict* forwards : {&fromPlus, &toMinus})
            if (feed.ac && occurs(*forwards))
                return Met{number, std::move(*forwards), true};
    }
    return std::nullopt;
}

std::vector<Finding> findWrongWay(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().joints.size(); ++number) {
        const Joint& joint = facts.circuit().joints[number];
        const auto* contact = partBehind<ContactPart>(facts.job, facts.net.origin(joint.origin));
        if (!contact || !contact->solidState || !facts.isLanded(joint.a) || !facts.isLanded(joint.b))
            continue;
        const auto met = badlyMet(facts, number);
        if (!met)
            continue;
        const DeviceId device = facts.deviceOf(joint.origin);
        const std::string name = nameOf(facts, joint.b), source = tagOfOrigin(facts, facts.circuit().feeds[met->feed].origin);
        Finding finding;
        finding.rule = "solid-state";
        finding.reason = met->ac ? "AC" : "reversed";
        finding.at = {spotOf(facts, joint.b)};
        happensIn(finding, facts, met->when);
        finding.remedy = {useRelay, {{"contact", name}, {"source", source}}};
        if (met->ac) {
            finding.why = {onAc, {{"contact", name}, {"source", source}}};
        } else {
            finding.why = {reversed, {{"contact", name}, {"from", nameOf(facts, joint.a)}, {"to", name}, {"source", source}}};
            Remedies remedies(facts);
            remedies.exchange(device, contact->a, contact->b);
            finding.remedies = remedies.taken();
        }
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check solidState = {
    .code = "solid-state",
    .worst = Severity::Fault,
    .title = {.en = "Solid-state contact the wrong way", .es = "Contacto de estado sólido al revés"},
    .notCovered = {.en = "volts that it drops and current that it leaks; a source that reaches it through a load alone; one that is inside a device",
                   .es = "tensión que cae en él y corriente de fuga; una fuente que solo le llega por una carga; uno que está dentro de un dispositivo"},
    .run = findWrongWay,
};

} // namespace doorloom
