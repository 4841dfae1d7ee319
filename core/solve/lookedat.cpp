#include "solve/lookedat.h"

#include "solve/independent.h"
#include "verdict/positions.h"

#include <algorithm>
#include <map>

namespace doorloom {

namespace {

constexpr double stepsForAPosition = 30'000, stepsForAVertex = 30;
constexpr double leastForAGroup = 8; // positions, however many groups share the budget
constexpr double slack = 1e-9;

} // namespace

struct LookedAt::Run {
    const Visit& visit;
    Coverage coverage;
    bool wentThroughAll = true;
    double left; // positions
};

LookedAt::LookedAt(const Meter& meter, const Questions& ask, For what, std::uint64_t budget)
    : meter_(meter), ask_(ask), circuit_(meter.net.circuit()),
      most_(static_cast<double>(budget) / (stepsForAPosition + stepsForAVertex * circuit_.vertices)), tried_(circuit_.operators.size())
{
    findTried(what);
    const Independent parts = independentParts(meter, Rails::WithTheirOhms), doors = independentParts(meter, Rails::AsJoints);
    groupOfVertex_ = parts.ofVertex;
    std::vector<std::size_t> groupOfPart(parts.parts, rest);
    doorOf_ = doors.ofOperator;
    for (MovedIndex moved = 0; moved < tried_.size(); ++moved) {
        if (!tried_[moved])
            continue;
        std::size_t& group = groupOfPart[parts.ofOperator[moved]];
        if (group == rest) {
            group = groups_.size();
            groups_.emplace_back();
        }
        add(groups_[group], moved);
    }
    for (std::uint32_t& part : groupOfVertex_)
        part = part == Independent::pole || groupOfPart[part] == rest ? none : static_cast<std::uint32_t>(groupOfPart[part]);
    if (parts.heldApart && groupOfPart[parts.between] != rest)
        betweenSources_ = static_cast<std::uint32_t>(groupOfPart[parts.between]);
}

// No coil, which goes as the circuit has it, nor what turns a supply on.
void LookedAt::findTried(For what)
{
    const auto tryAll = [&](const Guard& guard) {
        for (const Term& term : guard.anyOf)
            for (const Atom& atom : term)
                tried_[atom.moved] = 1;
    };
    for (std::uint32_t i = 0; what == For::Loads && i < circuit_.elements.size(); ++i)
        if (meter_.loads[i] || circuit_.elements[i].kind == ElementKind::Resistor)
            for (MovedIndex moved : ask_.operatorsThatMatter(i))
                tried_[moved] = 1;
    if (what == For::AnyReading) {
        for (const Joint& joint : circuit_.joints)
            tryAll(joint.guard);
        for (const Drive& drive : circuit_.drives) // what it senses
            tryAll(drive.powered);
    }
    for (const Drive& drive : circuit_.drives)
        if (drive.manner == Drive::Manner::Plain || drive.isSensing || !ask_.canMove(drive.moved))
            tried_[drive.moved] = 0;
    for (const Feed& feed : circuit_.feeds)
        for (const Term& term : feed.live.anyOf)
            for (const Atom& atom : term)
                tried_[atom.moved] = 0;
}

void LookedAt::add(Group& group, MovedIndex moved) const
{
    group.operators.push_back(moved);
    group.positions *= circuit_.operators[moved].throws;
}

bool LookedAt::look(Run& run, std::size_t group, const Position& given, double* drawn) const
{
    if (run.left < 1) {
        run.wentThroughAll = false;
        return false;
    }
    --run.left;
    ++run.coverage.covered;
    const auto settled = ask_.settled(given);
    *drawn = settled ? run.visit(group, *settled) : 0;
    return true;
}

// All throws of some operators from a position on. Out: where most is drawn.
Position LookedAt::goThrough(Run& run, std::size_t group, const Group& these, const Position& from) const
{
    Position position = from, heaviest = from;
    double most = -1;
    forEachPosition(circuit_, these.operators, position, [&] {
        double drawn = 0;
        if (!look(run, group, position, &drawn))
            return false;
        if (drawn > most + slack) {
            most = drawn;
            heaviest = position;
        }
        return true;
    });
    return heaviest;
}

// Operators of one door after another, the others where most is drawn.
std::vector<LookedAt::Group> LookedAt::doorsOf(const Group& group) const
{
    std::map<std::uint32_t, Group> doors;
    for (MovedIndex moved : group.operators)
        add(doors[doorOf_[moved]], moved);
    std::vector<Group> list;
    for (auto& [number, door] : doors)
        list.push_back(std::move(door));
    return list;
}

void LookedAt::goThroughParts(Run& run, std::size_t number, const Group& group, double share) const
{
    run.wentThroughAll = false;
    Position heaviest = atRest(circuit_);
    const std::vector<Group> doors = doorsOf(group);
    const double ofADoor = std::max(leastForAGroup, share / 2 / static_cast<double>(doors.size()));
    for (int pass = 0; pass < 2; ++pass)
        for (const Group& door : doors) {
            if (door.positions <= ofADoor) {
                heaviest = goThrough(run, number, door, heaviest);
                continue;
            }
            for (MovedIndex moved : door.operators) {
                Group one;
                add(one, moved);
                heaviest = goThrough(run, number, one, heaviest);
            }
        }
    for (std::uint32_t i = 0; i < circuit_.elements.size(); ++i) {
        Group own;
        if (meter_.loads[i])
            for (MovedIndex moved : ask_.operatorsThatMatter(i))
                if (std::binary_search(group.operators.begin(), group.operators.end(), moved))
                    add(own, moved);
        if (!own.operators.empty() && own.positions <= share)
            goThrough(run, number, own, heaviest);
    }
}

Coverage LookedAt::forEach(const Visit& visit) const
{
    Run run{visit, {}, true, std::max(most_, leastForAGroup) * 4};
    run.coverage.positions = 1;
    double drawn = 0;
    look(run, rest, atRest(circuit_), &drawn);
    const double share = std::max(leastForAGroup, most_ / static_cast<double>(std::max<std::size_t>(groups_.size(), 1)));
    for (std::size_t i = 0; i < groups_.size(); ++i) {
        run.coverage.positions *= groups_[i].positions;
        if (groups_[i].positions <= share)
            goThrough(run, i, groups_[i], atRest(circuit_));
        else
            goThroughParts(run, i, groups_[i], share);
    }
    run.coverage.covered = run.wentThroughAll ? run.coverage.positions : std::min(run.coverage.covered, run.coverage.positions);
    return run.coverage;
}

Coverage LookedAt::forEachTogether(const std::vector<std::size_t>& groups, const Visit& visit) const
{
    Run run{visit, {}, true, std::max(most_, leastForAGroup) * 4};
    Group together;
    for (std::size_t group : groups)
        for (MovedIndex moved : groups_[group].operators)
            add(together, moved);
    std::sort(together.operators.begin(), together.operators.end());
    double drawn = 0;
    look(run, rest, atRest(circuit_), &drawn);
    if (together.positions <= most_)
        goThrough(run, rest, together, atRest(circuit_));
    else
        goThroughParts(run, rest, together, most_);
    run.coverage.positions = together.positions;
    run.coverage.covered = run.wentThroughAll ? together.positions : std::min(run.coverage.covered, together.positions);
    return run.coverage;
}

std::vector<std::size_t> LookedAt::groupsAt(Vertex vertex) const
{
    std::vector<std::size_t> groups;
    for (std::uint32_t group : {groupOfVertex_[vertex], betweenSources_})
        if (group != none && std::find(groups.begin(), groups.end(), group) == groups.end())
            groups.push_back(group);
    return groups;
}

} // namespace doorloom
