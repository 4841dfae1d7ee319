#include "edit/placing.h"

#include <utility>

namespace doorloom {

std::vector<Choice> unchosenJumpers(const Kind& kind)
{
    std::vector<Choice> choices;
    for (const Option& option : kind.options)
        for (const Jumper& jumper : option.jumpers)
            choices.push_back({option.key, jumper.key, {}});
    return choices;
}

std::vector<SettingChoice> factorySettings(const Kind& kind)
{
    std::vector<SettingChoice> settings;
    for (const Setting& setting : kind.settings)
        if (setting.factory)
            settings.push_back({setting.key, *setting.factory});
    return settings;
}

Operator ownOperator(OperatorId id, DeviceId owner, const Role& role)
{
    Operator row;
    row.id = id;
    row.owner = owner;
    row.ownerRole = role.key;
    row.nature = role.nature;
    row.throws = role.throws;
    row.unpowered = role.unpowered;
    row.idle = role.idle;
    return row;
}

std::pair<KindId, Change> takeKind(const Job& job, Numbers& numbers, const Kind& kind)
{
    for (const JobKind& row : job.kinds)
        if (row.kind == kind)
            return {row.id, {}};
    const KindId id{numbers.take()};
    return {id, {{Put<JobKind>{id, JobKind{id, kind}}}}};
}

std::pair<DeviceId, Change> placeDevice(const Job& job, Numbers& numbers, const Kind& kind, std::string tag,
                                        PlaceId place)
{
    auto [kindId, change] = takeKind(job, numbers, kind);
    Device device;
    device.id = {numbers.take()};
    device.tag = std::move(tag);
    device.kind = kindId;
    device.place = place;
    device.choices = unchosenJumpers(kind);
    device.settings = factorySettings(kind);
    for (const Role& role : kind.roles) {
        const OperatorId moved{numbers.take()};
        device.bindings.push_back({role.key, moved});
        change.steps.emplace_back(Put<Operator>{moved, ownOperator(moved, device.id, role)});
    }
    change.steps.emplace_back(Put<Device>{device.id, device});
    return {device.id, std::move(change)};
}

} // namespace doorloom
