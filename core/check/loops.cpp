#include "check/loops.h"

#include "graph/joinedsets.h"
#include "solve/linear.h"

#include <algorithm>
#include <limits>

namespace doorloom {

namespace {

void addOnce(std::vector<DeviceId>& devices, DeviceId device)
{
    if (std::find(devices.begin(), devices.end(), device) == devices.end())
        devices.push_back(device);
}

} // namespace

Loop::Loop(const Facts& facts, std::uint32_t input)
    : facts_(facts), device_(facts.deviceOf(facts.circuit().inputs[input].origin)), region_(facts.ask.loopOf(input)),
      isOneNet_(facts.ask.netOf(facts.circuit().inputs[input].terminal) == facts.ask.netOf(facts.circuit().inputs[input].reference))
{
}

std::vector<DeviceId> Loop::resistors() const
{
    std::vector<DeviceId> devices;
    for (const RegionEdge& edge : region_.edges)
        addOnce(devices, facts_.deviceOf(facts_.circuit().elements[edge.number].origin));
    return devices;
}

std::vector<std::uint32_t> Loop::contactJoints() const
{
    std::vector<std::uint32_t> joints;
    for (const RegionJoint& joint : region_.joints)
        if (partBehind<ContactPart>(facts_.job, facts_.net.origin(facts_.circuit().joints[joint.joint].origin)))
            joints.push_back(joint.joint);
    return joints;
}

std::vector<DeviceId> Loop::contacts() const
{
    std::vector<DeviceId> devices;
    for (std::uint32_t joint : contactJoints())
        if (const DeviceId device = facts_.deviceOf(facts_.circuit().joints[joint].origin); device != device_)
            addOnce(devices, device);
    return devices;
}

double Loop::ohmsIn(const Position& position) const
{
    constexpr double open = std::numeric_limits<double>::infinity();
    if (isOneNet_)
        return 0;
    if (!region_.possible)
        return open;
    JoinedSets nets(region_.vertices);
    for (const RegionJoint& joint : region_.joints)
        if (holds(facts_.circuit().joints[joint.joint].guard, position))
            nets.join(joint.a, joint.b);
    const auto ohmsOf = [&](const RegionEdge& edge) { return facts_.circuit().elements[edge.number].ohms; };
    for (const RegionEdge& edge : region_.edges)
        if (ohmsOf(edge) <= 0)
            nets.join(edge.a, edge.b);
    JoinedSets pieces = nets;
    std::vector<Conductance> conductances;
    for (const RegionEdge& edge : region_.edges)
        if (ohmsOf(edge) > 0) {
            pieces.join(edge.a, edge.b);
            conductances.push_back({nets.find(edge.a), nets.find(edge.b), 1 / ohmsOf(edge)});
        }
    const Vertex from = nets.find(region_.ends[0]), to = nets.find(region_.ends[1]);
    if (from == to)
        return 0;
    if (pieces.find(from) != pieces.find(to))
        return open;
    std::vector<double> amperes(region_.vertices, 0);
    amperes[from] = 1;
    amperes[to] = -1;
    const LinearAnswer answer = solveLinear(region_.vertices, conductances, std::move(amperes));
    return answer.volts[from] - answer.volts[to];
}

const DryInputPart* supervisedInput(const Facts& facts, std::uint32_t input)
{
    const auto* part = partBehind<DryInputPart>(facts.job, facts.net.origin(facts.circuit().inputs[input].origin));
    return part && !part->bands.empty() ? part : nullptr;
}

bool hasWrongLoop(const Facts& facts, std::uint32_t input)
{
    const DryInputPart* supervised = supervisedInput(facts, input);
    if (!supervised || !facts.isLanded(facts.circuit().inputs[input].terminal) || facts.operated(input).answer == Answer::Always)
        return false;
    const Loop loop(facts, input);
    return loop.isThere() && std::any_of(supervised->bands.begin(), supervised->bands.end(), [&](const InputBand& band) {
               return facts.ask.wherever(loop.operators(), [&](const Position& position) {
                                   const double ohms = loop.ohmsIn(position);
                                   return ohms >= band.least.value && ohms <= band.most.value;
                               }).answer == Answer::Never;
           });
}

} // namespace doorloom
