#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>
#include <set>

// A contact or fuse whose two sides are one net whatever it does: it switches, or protects, nothing.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{one} and {other} are joined past the contact between them: it switches nothing.",
                      .es = "{one} y {other} están unidos sin pasar por el contacto entre ellos: no conmuta nada."};
constexpr Text bothWhy = {.en = "{one} and {other} are one net: whichever way the contact stands, it leads there.",
                          .es = "{one} y {other} son un mismo punto: esté como esté el contacto, lleva allí."};
constexpr Text fuseWhy = {.en = "{one} and {other} are joined past the fuse between them: it protects nothing.",
                          .es = "{one} y {other} están unidos sin pasar por el fusible entre ellos: no protege nada."};
constexpr Text remedy = {.en = "Take off what joins {one} and {other}.", .es = "Quite lo que une {one} y {other}."};

bool isContact(const Facts& facts, const Joint& joint)
{
    return !joint.guard.always() && partBehind<ContactPart>(facts.job, facts.net.origin(joint.origin));
}

// The other leg of a changeover: closed where the first is open, on the same moving side.
bool isOtherLeg(const Joint& one, const Joint& other)
{
    const auto atom = [](const Joint& joint) { return joint.guard.anyOf.size() == 1 && joint.guard.anyOf[0].size() == 1 ? &joint.guard.anyOf[0][0] : nullptr; };
    const Atom *first = atom(one), *second = atom(other);
    return one.a == other.a && one.b != other.b && first && second && first->moved == second->moved && (first->mask & second->mask) == 0;
}

Finding findingFor(const Facts& facts, Vertex one, Vertex other, const Text& words, std::vector<Origin> path)
{
    Finding finding;
    finding.rule = "bridged-contact";
    finding.severity = Severity::Fault;
    finding.at = {spotOf(facts, other)};
    finding.why = {words, {{"one", nameOf(facts, one)}, {"other", nameOf(facts, other)}}};
    finding.remedy = {remedy, finding.why.arguments};
    finding.path = std::move(path);
    Remedies remedies(facts);
    remedies.breakWay(finding.path);
    finding.remedies = remedies.taken();
    return finding;
}

// Is something on this terminal besides what leads straight across? Otherwise the leg is not in use.
bool isUsed(const Facts& facts, Vertex side, Vertex across)
{
    const std::vector<const Conductor*> conductors = facts.conductorsAt(side);
    return std::any_of(conductors.begin(), conductors.end(), [&](const Conductor* conductor) {
        const Landing *from = landingOf(conductor->from), *to = landingOf(conductor->to);
        const auto there = facts.landingAt(across);
        return !from || !to || !there || (*from != *there && *to != *there);
    });
}

// Its kind's own wiring aside: what is joined inside the device is as it should be.
bool isJoinedOutside(const std::vector<Origin>& path)
{
    return std::any_of(path.begin(), path.end(), [](const Origin& origin) { return static_cast<bool>(origin.conductor); });
}

void addBridgedFuses(const Facts& facts, std::vector<Finding>& findings)
{
    const std::vector<Joint>& joints = facts.circuit().joints;
    for (std::uint32_t number = 0; number < joints.size(); ++number) {
        const Joint& joint = joints[number];
        if (!partBehind<FusePart>(facts.job, facts.net.origin(joint.origin)) || !facts.isLanded(joint.a) || !facts.isLanded(joint.b))
            continue;
        auto path = wayBetween(facts, {}, joint.a, joint.b, false, {number});
        if (isJoinedOutside(path))
            findings.push_back(findingFor(facts, joint.a, joint.b, fuseWhy, std::move(path)));
    }
}

// Nets of inputs that are operated all the time: that rule speaks.
std::set<Vertex> toldOtherwise(const Facts& facts)
{
    std::set<Vertex> nets;
    for (std::uint32_t number = 0; number < facts.circuit().inputs.size(); ++number)
        if (const DryInput& input = facts.circuit().inputs[number]; facts.isLanded(input.terminal) && facts.operated(number).answer == Answer::Always)
            nets.insert({facts.ask.netOf(input.terminal), facts.ask.netOf(input.reference)});
    return nets;
}

std::vector<Finding> findBridged(const Facts& facts)
{
    std::vector<Finding> findings;
    const std::vector<Joint>& joints = facts.circuit().joints;
    const std::set<Vertex> told = toldOtherwise(facts);
    const auto net = [&](Vertex vertex) { return facts.ask.netOf(vertex); };
    for (std::uint32_t number = 0; number < joints.size(); ++number) {
        const Joint& joint = joints[number];
        if (!isContact(facts, joint) || !facts.isLanded(joint.a) || !facts.isLanded(joint.b))
            continue;
        if (net(joint.a) == net(joint.b)) {
            if (told.contains(net(joint.a)) || !isUsed(facts, joint.a, joint.b) || !isUsed(facts, joint.b, joint.a))
                continue;
            auto path = wayBetween(facts, {}, joint.a, joint.b, false, {number});
            if (isJoinedOutside(path))
                findings.push_back(findingFor(facts, joint.a, joint.b, why, std::move(path)));
            continue;
        }
        for (std::uint32_t against : facts.jointsAt(joint.a))
            if (const Joint& other = joints[against];
                against > number && isContact(facts, other) && isOtherLeg(joint, other) && net(joint.b) == net(other.b) &&
                isUsed(facts, joint.a, joint.b) && (isUsed(facts, other.b, joint.b) || isUsed(facts, joint.b, other.b))) {
                auto path = wayBetween(facts, {}, joint.b, other.b, false, {number, against});
                if (isJoinedOutside(path))
                    findings.push_back(findingFor(facts, joint.b, other.b, bothWhy, std::move(path)));
            }
    }
    addBridgedFuses(facts, findings);
    return findings;
}

} // namespace

extern const Check bridgedContact = {
    .code = "bridged-contact",
    .worst = Severity::Fault,
    .title = {.en = "Contact or fuse that is bridged", .es = "Contacto o fusible puenteado"},
    .notCovered = {.en = "contacts that others bridge in some positions", .es = "contactos que otros puentean en algunas posiciones"},
    .run = findBridged,
};

} // namespace doorloom
