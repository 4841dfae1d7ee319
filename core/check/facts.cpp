#include "check/facts.h"

#include "verdict/search.h"

#include <algorithm>
#include <deque>
#include <unordered_map>

namespace doorloom {

Facts::Facts(const Job& of, std::uint64_t steps, Telling what)
    : job(of), telling(what), budget(steps), net(of), ask(net.circuit(), budget), jointsAt_(net.circuit().vertices)
{
    for (std::uint32_t number = 0; number < circuit().joints.size(); ++number) {
        jointsAt_[circuit().joints[number].a].push_back(number);
        jointsAt_[circuit().joints[number].b].push_back(number);
    }
}

const std::optional<Position>& Facts::rest() const
{
    if (!rest_)
        rest_ = ask.settled(atRest(circuit()));
    return *rest_;
}

const Figures& Facts::figures() const
{
    if (!figures_)
        figures_ = figuresOf(job, net, ask, budget);
    return *figures_;
}

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
    return partBehind<LoadPart>(job, net.origin(circuit().elements[element].origin));
}

std::optional<Landing> Facts::landingAt(Vertex vertex) const { return doorloom::landingAt(job, net, vertex); }

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

// A walk over joints that `passes` lets through, and over diodes. Out: how each vertex was reached first.
template <class Passes>
std::unordered_map<Vertex, Step> walk(const Facts& facts, Vertex start, bool throughDiodes, Passes passes)
{
    const Circuit& circuit = facts.circuit();
    std::unordered_map<Vertex, Step> reached{{start, {start, 0}}};
    std::deque<Vertex> queue{start};
    const auto reach = [&](Vertex from, Vertex to, std::uint32_t origin) {
        if (reached.try_emplace(to, Step{from, origin}).second)
            queue.push_back(to);
    };
    while (!queue.empty()) {
        const Vertex at = queue.front();
        queue.pop_front();
        for (std::uint32_t number : facts.jointsAt(at))
            if (const Joint& joint = circuit.joints[number]; passes(number))
                reach(at, joint.a == at ? joint.b : joint.a, joint.origin);
        if (throughDiodes)
            for (const Diode& diode : circuit.diodes)
                if (diode.anode == at)
                    reach(at, diode.cathode, diode.origin);
    }
    return reached;
}

std::vector<Vertex> sortedVertices(const std::unordered_map<Vertex, Step>& reached)
{
    std::vector<Vertex> all;
    for (const auto& [vertex, step] : reached)
        all.push_back(vertex);
    std::sort(all.begin(), all.end());
    return all;
}

} // namespace

std::vector<Origin> wayBetween(const Facts& facts, const Cube& throws, Vertex x, Vertex y, bool throughDiodes,
                               const std::vector<std::uint32_t>& without)
{
    Position partial(facts.circuit().operators.size(), leftOut);
    for (const ThrowAt& each : throws)
        partial[each.moved] = each.thrown;
    const auto reached = walk(facts, x, throughDiodes, [&](std::uint32_t joint) {
        return impliedBy(facts.circuit().joints[joint].guard, partial) &&
               std::find(without.begin(), without.end(), joint) == without.end();
    });
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
    return sortedVertices(walk(facts, x, false, [&](std::uint32_t joint) {
        return !facts.circuit().joints[joint].guard.anyOf.empty();
    }));
}

std::vector<Vertex> alwaysWith(const Facts& facts, Vertex x, const std::vector<std::uint32_t>& without)
{
    return sortedVertices(walk(facts, x, false, [&](std::uint32_t joint) {
        return facts.circuit().joints[joint].guard.always() &&
               std::find(without.begin(), without.end(), joint) == without.end();
    }));
}

} // namespace doorloom
