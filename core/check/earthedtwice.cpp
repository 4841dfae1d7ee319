#include "check/check.h"
#include "check/tell.h"

#include <algorithm>
#include <set>

// A source's minus bonded to earth at more than one place: part of its current goes back through the building.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{minus} is earthed at {count} places: {places}. Part of its current goes through the building, and brings noise back.",
                      .es = "{minus} está a tierra en {count} puntos: {places}. Parte de su corriente pasa por el edificio, y trae ruido."};
constexpr Text remedy = {.en = "Leave one of them, at the supply: {places}.", .es = "Deje uno solo, en la fuente: {places}."};

bool isAlways(const Joint& joint) { return joint.guard.always(); }

// Terminals at earth, and the bars that they are on.
std::set<Vertex> earths(const Facts& facts)
{
    std::set<Vertex> all;
    for (Vertex vertex = 0; vertex < facts.circuit().vertices; ++vertex)
        if (const NetVertex& name = facts.net.vertex(vertex); !name.device && !name.splice) // the earth itself
            for (std::uint32_t number : facts.jointsAt(vertex))
                all.insert({facts.circuit().joints[number].a, facts.circuit().joints[number].b});
    if (all.empty())
        return all;
    const auto isOfABar = [&](const Joint& joint) {
        const Kind* kind = kindOf(facts.job, facts.deviceOf(joint.origin));
        return isAlways(joint) && kind && kind->family == "joint";
    };
    for (std::size_t before = 0; before != all.size();) {
        before = all.size();
        for (const Joint& joint : facts.circuit().joints)
            if (isOfABar(joint) && (all.contains(joint.a) || all.contains(joint.b)))
                all.insert({joint.a, joint.b});
    }
    return all;
}

// Where this net is bonded to earth, the devices at the earth's side; a source that says so of its minus is one.
std::vector<DeviceId> bondsOf(const Facts& facts, Vertex minus, const std::set<Vertex>& earths)
{
    std::vector<std::uint32_t> bonding;
    for (std::uint32_t number = 0; number < facts.circuit().joints.size(); ++number)
        if (const Joint& joint = facts.circuit().joints[number]; earths.contains(joint.a) || earths.contains(joint.b))
            bonding.push_back(number);
    const std::vector<Vertex> net = alwaysWith(facts, minus, bonding);
    const auto isIn = [&](Vertex vertex) { return std::binary_search(net.begin(), net.end(), vertex); };
    std::vector<DeviceId> bonds;
    for (std::uint32_t number : bonding)
        if (const Joint& joint = facts.circuit().joints[number]; isAlways(joint) && isIn(joint.a) != isIn(joint.b))
            bonds.push_back(facts.net.vertex(isIn(joint.a) ? joint.b : joint.a).device);
    for (const Feed& feed : facts.circuit().feeds)
        if (const auto* source = partBehind<SourcePart>(facts.job, facts.net.origin(feed.origin)); source && source->minusEarthed && isIn(feed.minus))
            bonds.push_back(facts.deviceOf(feed.origin));
    return bonds;
}

std::vector<Finding> findEarthedTwice(const Facts& facts)
{
    std::vector<Finding> findings;
    const std::set<Vertex> atEarth = earths(facts);
    std::set<Vertex> told;
    for (const Feed& feed : facts.circuit().feeds) {
        if (feed.ac || !told.insert(facts.ask.netOf(feed.minus)).second)
            continue;
        const std::vector<DeviceId> places = bondsOf(facts, feed.minus, atEarth);
        if (places.size() < 2)
            continue;
        Finding finding;
        finding.rule = "earthed-twice";
        finding.severity = Severity::Doubt;
        finding.at = {spotOf(facts, feed.minus)};
        std::vector<Message> names;
        for (DeviceId device : places)
            names.push_back(verbatim(tagOf(facts.job, device)));
        finding.why = {why, {{"minus", nameOf(facts, feed.minus)}, {"count", std::to_string(places.size())}, {"places", names}}};
        finding.remedy = {remedy, {{"places", names}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check earthedTwice = {
    .code = "earthed-twice",
    .worst = Severity::Doubt,
    .title = {.en = "Minus earthed at two places", .es = "Negativo a tierra en dos puntos"},
    .notCovered = {.en = "earth that a case or a frame makes by itself", .es = "la tierra que hace por sí sola una caja o un marco"},
    .run = findEarthedTwice,
};

} // namespace doorloom
