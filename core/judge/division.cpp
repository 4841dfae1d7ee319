#include "judge/division.h"

#include <algorithm>
#include <limits>
#include <map>

namespace doorloom {

namespace {

template <class Row> bool sameIn(const std::vector<const Row*>& one, const std::vector<const Row*>& other)
{
    return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                      [](const Row* a, const Row* b) { return a == b || *a == *b; });
}

} // namespace

bool sameRows(const Division& one, const Division& other)
{
    return one.key == other.key && one.shared == other.shared && one.carriers == other.carriers && sameIn(one.kinds, other.kinds) &&
           sameIn(one.operators, other.operators) && sameIn(one.devices, other.devices) && sameIn(one.splices, other.splices) &&
           sameIn(one.conductors, other.conductors) && sameIn(one.openings, other.openings);
}

namespace {

// Its terminals, none of them wanted, and its links.
Kind onlyCarrying(Kind kind)
{
    for (Strip& strip : kind.strips)
        for (Terminal& terminal : strip.terminals)
            terminal.required.clear();
    std::erase_if(kind.parts, [](const Part& part) {
        return !part.when.empty() || !(std::get_if<LinkPart>(&part.body) || std::get_if<FusePart>(&part.body) ||
                                       std::get_if<EarthPart>(&part.body));
    });
    kind.options.clear();
    kind.outputs.clear();
    kind.lock.reset();
    return kind;
}

void putDevices(Job& part, const Division& division)
{
    std::map<KindId, KindId> carrying; // kinds of which some devices here only carry
    std::uint32_t next = std::numeric_limits<std::uint32_t>::max() - 1; // remedies take numbers from the counter upwards
    for (const Device* row : division.devices) {
        Device device = *row;
        if (const Kind* kind = kindOf(part, device); kind && division.onlyCarries(device.id)) {
            const auto [found, isNew] = carrying.try_emplace(device.kind, KindId{next});
            if (isNew)
                part.kinds.put({next}, JobKind{{next}, onlyCarrying(*kind)});
            next -= isNew;
            device.kind = found->second;
        }
        part.devices.put(device.id, std::move(device));
    }
}

} // namespace

Job jobOf(const Division& division, const Job& job)
{
    Job part;
    part.info = job.info;
    part.nextNumber = job.nextNumber;
    part.referrers = job.referrers;
    const auto put = [](auto& into, const auto& rows) {
        for (const auto* row : rows)
            into.put(row->id, *row);
    };
    put(part.kinds, division.kinds);
    put(part.operators, division.operators);
    putDevices(part, division);
    put(part.splices, division.splices);
    put(part.conductors, division.conductors);
    put(part.openings, division.openings);
    part.cableTypes = job.cableTypes;
    part.places = job.places;
    part.cables = job.cables;
    return part;
}

} // namespace doorloom
