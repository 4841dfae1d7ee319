#include "model/job.h"

#include "model/tags.h"

#include <algorithm>

namespace doorloom {

bool operator==(const Job& a, const Job& b)
{
    bool same = true;
    forEachTable(a, [&]<class Row>(const char*, const Table<Row>& rows) { same = same && rows == tableOf<Row>(b); });
    return same;
}

const Kind* kindOf(const Job& job, const Device& device)
{
    const JobKind* row = job.kinds.find(device.kind);
    return row ? &row->kind : nullptr;
}

const Kind* kindOf(const Job& job, DeviceId device)
{
    const Device* row = job.devices.find(device);
    return row ? kindOf(job, *row) : nullptr;
}

const Device* deviceTagged(const Job& job, std::string_view tag)
{
    const TagBucket* bucket = job.deviceTags.find(bucketOfTag(tag));
    if (!bucket)
        return nullptr;
    const auto found = std::find_if(bucket->tags.begin(), bucket->tags.end(),
                                    [&](const auto& entry) { return entry.first == tag; });
    return found == bucket->tags.end() ? nullptr : job.devices.find(found->second);
}

const JobKind* kindNamed(const Job& job, std::string_view name)
{
    const JobKind* newest = nullptr;
    for (const JobKind& row : job.kinds)
        if (row.kind.name == name)
            newest = &row;
    return newest;
}

std::optional<Key> chosen(const Device& device, const Key& option, const Key& jumper)
{
    for (const Choice& choice : device.choices)
        if (choice.option == option && choice.jumper == jumper && !choice.value.empty())
            return choice.value;
    return std::nullopt;
}

bool holds(const Device& device, const Condition& condition)
{
    return std::all_of(condition.begin(), condition.end(), [&](const JumperAt& at) {
        return chosen(device, at.option, at.jumper) == at.value;
    });
}

OperatorId boundTo(const Device& device, const Key& role)
{
    for (const Binding& binding : device.bindings)
        if (binding.role == role)
            return binding.moved;
    return {};
}

std::optional<SettingValue> settingOf(const Device& device, const Key& setting)
{
    for (const SettingChoice& choice : device.settings)
        if (choice.setting == setting)
            return choice.value;
    return std::nullopt;
}

std::span<const std::uint32_t> referrersOf(const Job& job, std::uint32_t number)
{
    const Referrers* row = job.referrers.find({number});
    return row ? std::span<const std::uint32_t>(row->numbers) : std::span<const std::uint32_t>();
}

namespace {

std::vector<const Conductor*> conductorsReferring(const Job& job, std::uint32_t number)
{
    std::vector<const Conductor*> found;
    for (std::uint32_t referrer : referrersOf(job, number))
        if (const Conductor* conductor = job.conductors.find({referrer}))
            found.push_back(conductor);
    return found;
}

} // namespace

std::vector<const Conductor*> conductorsOn(const Job& job, DeviceId device)
{
    return conductorsReferring(job, device.number);
}

std::vector<const Conductor*> conductorsOn(const Job& job, SpliceId splice)
{
    return conductorsReferring(job, splice.number);
}

std::vector<const Conductor*> coresOf(const Job& job, CableId cable)
{
    return conductorsReferring(job, cable.number);
}

const Core* coreOf(const Job& job, const Conductor& conductor)
{
    if (conductor.make != ConductorMake::Core)
        return nullptr;
    const Cable* cable = job.cables.find(conductor.cable);
    const CableType* type = cable ? job.cableTypes.find(cable->type) : nullptr;
    if (!type)
        return nullptr;
    for (const Core& core : type->cores)
        if (core.number == conductor.core)
            return &core;
    return nullptr;
}

std::string colourOf(const Job& job, const Conductor& conductor)
{
    const Core* core = coreOf(job, conductor);
    return core ? core->colour : conductor.colour;
}

std::string gaugeOf(const Job& job, const Conductor& conductor)
{
    const Core* core = coreOf(job, conductor);
    return core ? core->gauge : conductor.gauge;
}

Metres lengthOf(const Job& job, const Conductor& conductor)
{
    const Cable* cable = conductor.make == ConductorMake::Core ? job.cables.find(conductor.cable) : nullptr;
    return cable ? cable->length : conductor.length;
}

const Landing* landingOf(const End& end)
{
    return end.state == EndState::Landed ? std::get_if<Landing>(&end.on) : nullptr;
}

const SpliceId* spliceOf(const End& end)
{
    return end.state == EndState::Landed ? std::get_if<SpliceId>(&end.on) : nullptr;
}

namespace {

bool servesSupply(OperatorNature nature)
{
    return nature == OperatorNature::Mains || nature == OperatorNature::Battery || nature == OperatorNature::Failure;
}

} // namespace

std::string nameOf(const Job& job, const Operator& moved)
{
    if (!moved.tag.empty())
        return moved.tag;
    const Device* owner = job.devices.find(moved.owner);
    if (!owner)
        return moved.ownerRole;
    const Kind* kind = kindOf(job, *owner);
    const Role* role = kind ? findRole(*kind, moved.ownerRole) : nullptr;
    const bool alone = role && !servesSupply(role->nature) &&
                       std::count_if(kind->roles.begin(), kind->roles.end(),
                                     [](const Role& each) { return !servesSupply(each.nature); }) == 1;
    return alone ? owner->tag : owner->tag + ":" + moved.ownerRole;
}

std::string nameOf(const Job& job, OperatorId moved)
{
    const Operator* row = job.operators.find(moved);
    return row ? nameOf(job, *row) : std::string();
}

std::string nameOf(const Job& job, const Landing& landing)
{
    const Kind* kind = kindOf(job, landing.device);
    const Terminal* terminal = kind ? findTerminal(*kind, landing.terminal) : nullptr;
    return tagOf(job, landing.device) + ":" + (terminal ? terminal->printed : landing.terminal);
}

std::string tagOf(const Job& job, DeviceId device)
{
    const Device* row = job.devices.find(device);
    return row ? row->tag : std::string();
}

} // namespace doorloom
