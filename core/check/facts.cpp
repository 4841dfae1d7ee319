#include "check/facts.h"

#include "verdict/search.h"

#include <algorithm>
#include <deque>
#include <unordered_map>

namespace doorloom {

const Verdict& Facts::shorted(std::uint32_t feed) const
{
    const auto found = shorted_.find(feed);
    return found != shorted_.end() ? found->second : shorted_.emplace(feed, ask.shorted(feed)).first->second;
}

const Verdict& Facts::returned(std::uint32_t element) const
{
    const auto found = returned_.find(element);
    return found != returned_.end() ? found->second : returned_.emplace(element, ask.returned(element)).first->second;
}

const Verdict& Facts::operated(std::uint32_t input) const
{
    const auto found = operated_.find(input);
    return found != operated_.end() ? found->second : operated_.emplace(input, ask.operated(input)).first->second;
}

const LoadPart* Facts::loadOf(std::uint32_t element) const
{
    const Origin& origin = net.origin(circuit().elements[element].origin);
    const Kind* kind = kindOf(job, origin.device);
    return kind ? findPartAs<LoadPart>(*kind, origin.part) : nullptr;
}

std::optional<Landing> Facts::landingAt(Vertex vertex) const
{
    const NetVertex& name = net.vertex(vertex);
    const Kind* kind = kindOf(job, name.device);
    if (!kind || !findTerminal(*kind, name.node))
        return std::nullopt;
    return Landing{name.device, name.node};
}

std::vector<const Conductor*> Facts::conductorsAt(Vertex vertex) const
{
    const NetVertex& name = net.vertex(vertex);
    if (name.splice)
        return conductorsOn(job, name.splice);
    std::vector<const Conductor*> found;
    for (const Conductor* conductor : conductorsOn(job, name.device))
        for (const End* end : {&conductor->from, &conductor->to})
            if (const Landing* landing = landingOf(*end);
                landing && landing->device == name.device && landing->terminal == name.node) {
                found.push_back(conductor);
                break;
            }
    return found;
}

namespace {

struct Step {
    Vertex from;
    std::uint32_t origin;
};

// A walk over joints and diodes that `passes` lets through. Out: how each vertex was reached first.
template <class Passes>
std::unordered_map<Vertex, Step> walk(const Facts& facts, Vertex start, bool throughDiodes, Passes passes)
{
    const Circuit& circuit = facts.circuit();
    std::unordered_map<Vertex, std::vector<Step>> next;
    for (const Joint& joint : circuit.joints)
        if (passes(joint.guard)) {
            next[joint.a].push_back({joint.b, joint.origin});
            next[joint.b].push_back({joint.a, joint.origin});
        }
    if (throughDiodes)
        for (const Diode& diode : circuit.diodes)
            next[diode.anode].push_back({diode.cathode, diode.origin});
    std::unordered_map<Vertex, Step> reached{{start, {start, 0}}};
    std::deque<Vertex> queue{start};
    while (!queue.empty()) {
        const Vertex at = queue.front();
        queue.pop_front();
        for (const Step& step : next[at])
            if (reached.try_emplace(step.from, Step{at, step.origin}).second)
                queue.push_back(step.from);
    }
    return reached;
}

} // namespace

std::vector<Origin> wayBetween(const Facts& facts, const Cube& throws, Vertex x, Vertex y, bool throughDiodes)
{
    Position partial(facts.circuit().operators.size(), leftOut);
    for (const ThrowAt& each : throws)
        partial[each.moved] = each.thrown;
    const auto reached = walk(facts, x, throughDiodes, [&](const Guard& guard) { return impliedBy(guard, partial); });
    std::vector<Origin> way;
    if (!reached.count(y))
        return way;
    for (Vertex at = y; at != x; at = reached.at(at).from)
        way.push_back(facts.net.origin(reached.at(at).origin));
    std::reverse(way.begin(), way.end());
    return way;
}

std::vector<Vertex> reachOf(const Facts& facts, Vertex x)
{
    std::vector<Vertex> all;
    for (const auto& [vertex, step] : walk(facts, x, false, [](const Guard& guard) { return !guard.anyOf.empty(); }))
        all.push_back(vertex);
    std::sort(all.begin(), all.end());
    return all;
}

} // namespace doorloom
