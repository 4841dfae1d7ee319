#include "solve/loadway.h"

#include <algorithm>
#include <limits>
#include <queue>
#include <unordered_map>

namespace doorloom {

namespace {

constexpr double ohmsOfAStep = 1e-9; // of two ways without ohms, the one of fewer joints
constexpr std::uint32_t noJoint = ~0u;
constexpr double unreached = std::numeric_limits<double>::infinity();

enum class Flow { Upstream, Downstream }; // against the current, towards a plus; or with it

struct Way {
    Vertex to;
    double ohms;
    std::uint32_t joint; // noJoint: a diode
};

class Ways {
public:
    Ways(const Meter& meter, const Position& position) : out_(meter.net.circuit().vertices)
    {
        const Circuit& circuit = meter.net.circuit();
        for (std::uint32_t i = 0; i < circuit.joints.size(); ++i)
            if (const Joint& joint = circuit.joints[i]; holds(joint.guard, position)) {
                out_[joint.a].push_back({joint.b, meter.ohmsOfJoint[i], i});
                out_[joint.b].push_back({joint.a, meter.ohmsOfJoint[i], i});
            }
        for (const Diode& diode : circuit.diodes) {
            forward_[diode.anode].push_back(diode.cathode);
            backward_[diode.cathode].push_back(diode.anode);
        }
    }

    template <class Visit> void forEachFrom(Vertex at, Flow flow, Visit visit) const
    {
        for (const Way& way : out_[at])
            visit(way);
        const auto& diodes = flow == Flow::Downstream ? forward_ : backward_;
        if (const auto found = diodes.find(at); found != diodes.end())
            for (Vertex to : found->second)
                visit(Way{to, 0, noJoint});
    }

private:
    std::vector<std::vector<Way>> out_;
    std::unordered_map<Vertex, std::vector<Vertex>> forward_, backward_;
};

// All that is reached from one side of a load, by least ohms.
class Reached {
public:
    Reached(const Ways& ways, Vertex start, Flow flow)
    {
        using Next = std::pair<double, Vertex>;
        std::priority_queue<Next, std::vector<Next>, std::greater<>> next;
        at_[start] = {0, start, noJoint};
        next.push({0, start});
        while (!next.empty()) {
            const auto [ohms, from] = next.top();
            next.pop();
            if (ohms > at_[from].ohms)
                continue;
            ways.forEachFrom(from, flow, [&, sum = ohms, here = from](const Way& way) {
                const double there = sum + way.ohms + ohmsOfAStep;
                if (const auto known = at_.find(way.to); known == at_.end() || there < known->second.ohms) {
                    at_[way.to] = {there, here, way.joint};
                    next.push({there, way.to});
                }
            });
        }
    }

    double ohmsTo(Vertex vertex) const
    {
        const auto found = at_.find(vertex);
        return found == at_.end() ? unreached : found->second.ohms;
    }
    // From `vertex` back to where it was begun.
    std::vector<std::uint32_t> jointsFrom(Vertex vertex) const
    {
        std::vector<std::uint32_t> joints;
        for (const Step* step = &at_.at(vertex); step->from != vertex; vertex = step->from, step = &at_.at(vertex))
            if (step->joint != noJoint)
                joints.push_back(step->joint);
        return joints;
    }

private:
    struct Step {
        double ohms = 0;
        Vertex from = 0;
        std::uint32_t joint = noJoint;
    };
    std::unordered_map<Vertex, Step> at_;
};

} // namespace

std::optional<LoadWay> wayOf(const Job& job, const Meter& meter, const Position& position, std::uint32_t element)
{
    const Circuit& circuit = meter.net.circuit();
    const Ways ways(meter, position);
    const Vertex sides[] = {circuit.elements[element].a, circuit.elements[element].b};
    const Reached up[] = {{ways, sides[0], Flow::Upstream}, {ways, sides[1], Flow::Upstream}};
    const Reached down[] = {{ways, sides[0], Flow::Downstream}, {ways, sides[1], Flow::Downstream}};
    double least = unreached;
    std::optional<LoadWay> way;
    std::size_t plusSide = 0;
    for (std::uint32_t i = 0; i < circuit.feeds.size(); ++i) {
        const Feed& feed = circuit.feeds[i];
        if (feed.ac != meter.conditions.ac || !holds(feed.live, position))
            continue;
        for (std::size_t side : {0u, 1u})
            if (const double ohms = up[side].ohmsTo(feed.plus) + down[1 - side].ohmsTo(feed.minus); ohms < least) {
                least = ohms;
                plusSide = side;
                way = LoadWay{i, {}};
            }
    }
    if (!way)
        return std::nullopt;
    const Feed& feed = circuit.feeds[way->feed];
    std::vector<std::uint32_t> back = down[1 - plusSide].jointsFrom(feed.minus);
    std::reverse(back.begin(), back.end());
    for (const auto& joints : {up[plusSide].jointsFrom(feed.plus), back})
        for (std::uint32_t joint : joints)
            if (job.conductors.find(meter.net.origin(circuit.joints[joint].origin).conductor))
                way->joints.push_back(joint);
    return way;
}

Meter withGauge(Meter meter, const Job& job, const std::vector<std::uint32_t>& joints, std::string_view gauge)
{
    for (std::uint32_t joint : joints) {
        const Origin& origin = meter.net.origin(meter.net.circuit().joints[joint].origin);
        if (const Conductor* conductor = job.conductors.find(origin.conductor))
            meter.ohmsOfJoint[joint] = ohmsOf(gauge, lengthOf(job, *conductor), meter.conditions.celsius)->value;
    }
    return meter;
}

} // namespace doorloom
