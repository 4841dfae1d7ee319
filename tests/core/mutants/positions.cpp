#include "positions.h"

#include <algorithm>
#include <set>

namespace doorloom {

namespace {

constexpr std::size_t mostPairs = 120;

struct OneThrow {
    OperatorId moved;
    Key thrown;
};

std::vector<OneThrow> throwsOf(const Job& job)
{
    std::set<OperatorId> byThemselves;
    for (const Device& device : job.devices)
        for (const Part& part : kindOf(job, device)->parts)
            if (const auto* move = std::get_if<MovePart>(&part.body); move && move->manner != MoveManner::Programmed)
                byThemselves.insert(boundTo(device, move->role));
    std::vector<OneThrow> all;
    for (const Operator& row : job.operators)
        for (const Throw& thrown : row.throws)
            if (thrown.key != row.idle && !byThemselves.contains(row.id))
                all.push_back({row.id, thrown.key});
    return all;
}

void add(Given& given, const std::vector<Thrown>& throws)
{
    for (const Thrown& each : throws)
        given[each.moved] = each.thrown;
}

Given powerLost(const Job& job, bool batteryToo)
{
    Given given;
    for (const Operator& row : job.operators)
        if (row.nature == OperatorNature::Mains || (batteryToo && row.nature == OperatorNature::Battery))
            given[row.id] = row.unpowered;
    return given;
}

std::vector<PositionAt> basesOf(const Job& job)
{
    std::vector<PositionAt> bases{{"rest", {}}, {"mains lost", powerLost(job, false)}, {"all power lost", powerLost(job, true)}};
    for (const Opening& opening : job.openings) {
        for (const auto* acts : {&opening.requests, &opening.releases})
            for (const Act& act : *acts) {
                bases.push_back({act.name, {}});
                add(bases.back().given, act.throws);
            }
        if (!opening.occupied.empty()) {
            bases.push_back({"occupied", {}});
            add(bases.back().given, opening.occupied);
        }
        if (const Operator* fire = job.operators.find(opening.fire))
            for (const Throw& thrown : fire->throws)
                if (thrown.key != fire->idle)
                    bases.push_back({"fire", {{fire->id, thrown.key}}});
    }
    return bases;
}

std::string nameOf(const Job& job, const OneThrow& one)
{
    return doorloom::nameOf(job, one.moved) + "=" + one.thrown;
}

} // namespace

std::vector<PositionAt> positionsToCompare(const Job& job)
{
    const std::vector<OneThrow> throws = throwsOf(job);
    std::vector<PositionAt> all;
    std::set<Given> been;
    const auto keep = [&](const std::string& name, const Given& given) {
        if (been.insert(given).second)
            all.push_back({name, given});
    };
    const std::vector<PositionAt> bases = basesOf(job);
    for (const PositionAt& base : bases)
        keep(base.name, base.given);
    for (const PositionAt& base : bases)
        for (const OneThrow& one : throws) {
            Given given = base.given;
            given.emplace(one.moved, one.thrown);
            keep(base.name + " and " + nameOf(job, one), given);
        }
    const std::size_t most = all.size() + mostPairs;
    for (std::size_t i = 0; i < throws.size(); ++i)
        for (std::size_t k = i + 1; k < throws.size() && all.size() < most; ++k)
            if (throws[i].moved != throws[k].moved)
                keep(nameOf(job, throws[i]) + " and " + nameOf(job, throws[k]), {{throws[i].moved, throws[i].thrown}, {throws[k].moved, throws[k].thrown}});
    return all;
}

bool hasAll(const Job& job, const Given& given, const std::vector<Thrown>& throws)
{
    return !throws.empty() && std::all_of(throws.begin(), throws.end(), [&](const Thrown& each) {
        const auto found = given.find(each.moved);
        const Operator* row = job.operators.find(each.moved);
        return found != given.end() ? found->second == each.thrown : row && row->idle == each.thrown;
    });
}

bool isPowerLost(const Job& job, const Given& given)
{
    return std::all_of(job.operators.begin(), job.operators.end(), [&](const Operator& row) {
        if (row.nature != OperatorNature::Mains && row.nature != OperatorNature::Battery)
            return true;
        const auto found = given.find(row.id);
        return found != given.end() && found->second == row.unpowered;
    });
}

} // namespace doorloom
