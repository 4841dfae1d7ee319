#pragma once

#include "model/rows.h"
#include "model/table.h"

#include <optional>
#include <span>
#include <tuple>

namespace doorloom {

// Who refers to a row: kept beside the tables, so that a change looks only at what hangs on it.
struct Referrers {
    Id<Referrers> id;                    // the number of the row referred to
    std::vector<std::uint32_t> numbers;  // of the rows that refer to it, sorted, each once

    friend bool operator==(const Referrers&, const Referrers&) = default;
};

// Rows whose tags fall into one bucket.
struct TagBucket {
    Id<TagBucket> id;
    std::vector<std::pair<std::string, DeviceId>> tags; // sorted

    friend bool operator==(const TagBucket&, const TagBucket&) = default;
};

// One installation: everything in one file. A value: copying it costs microseconds.
// Only applyChange (core/edit) writes to it, and keeps the look-ups below in step.
struct Job {
    Table<JobInfo> info;
    Table<JobKind> kinds;
    Table<CableType> cableTypes;
    Table<Place> places;
    Table<Operator> operators;
    Table<Device> devices;
    Table<Cable> cables;
    Table<Splice> splices;
    Table<Conductor> conductors;
    Table<Opening> openings;
    Table<Sheet> sheets;
    Table<Placement> placements;
    Table<Bends> bends;
    Table<Note> notes;
    Table<SetAside> setAside;
    Table<Typical> typicals;
    Table<Stamp> stamps;

    std::uint32_t nextNumber = 1; // only rises; left out of ==

    Table<Referrers> referrers; // derived from the tables above; left out of ==
    Table<TagBucket> deviceTags;

    friend bool operator==(const Job& a, const Job& b);
};

// Visits every table of rows with its name in the file. One place that knows them all.
template <class JobOrConst, class Visit>
void forEachTable(JobOrConst& job, Visit visit)
{
    visit("info", job.info);
    visit("kinds", job.kinds);
    visit("cableTypes", job.cableTypes);
    visit("places", job.places);
    visit("operators", job.operators);
    visit("devices", job.devices);
    visit("cables", job.cables);
    visit("splices", job.splices);
    visit("conductors", job.conductors);
    visit("openings", job.openings);
    visit("sheets", job.sheets);
    visit("placements", job.placements);
    visit("bends", job.bends);
    visit("notes", job.notes);
    visit("setAside", job.setAside);
    visit("typicals", job.typicals);
    visit("stamps", job.stamps);
}

template <class Row, class JobOrConst>
auto& tableOf(JobOrConst& job)
{
    if constexpr (std::is_same_v<Row, JobInfo>)
        return job.info;
    else if constexpr (std::is_same_v<Row, JobKind>)
        return job.kinds;
    else if constexpr (std::is_same_v<Row, CableType>)
        return job.cableTypes;
    else if constexpr (std::is_same_v<Row, Place>)
        return job.places;
    else if constexpr (std::is_same_v<Row, Operator>)
        return job.operators;
    else if constexpr (std::is_same_v<Row, Device>)
        return job.devices;
    else if constexpr (std::is_same_v<Row, Cable>)
        return job.cables;
    else if constexpr (std::is_same_v<Row, Splice>)
        return job.splices;
    else if constexpr (std::is_same_v<Row, Conductor>)
        return job.conductors;
    else if constexpr (std::is_same_v<Row, Opening>)
        return job.openings;
    else if constexpr (std::is_same_v<Row, Sheet>)
        return job.sheets;
    else if constexpr (std::is_same_v<Row, Placement>)
        return job.placements;
    else if constexpr (std::is_same_v<Row, Bends>)
        return job.bends;
    else if constexpr (std::is_same_v<Row, Note>)
        return job.notes;
    else if constexpr (std::is_same_v<Row, SetAside>)
        return job.setAside;
    else if constexpr (std::is_same_v<Row, Typical>)
        return job.typicals;
    else
        return job.stamps;
}

// ---- Look-ups. Null or nothing when absent; nobody keeps a pointer past the next change.

const Kind* kindOf(const Job& job, const Device& device);
const Kind* kindOf(const Job& job, DeviceId device);
const Device* deviceTagged(const Job& job, std::string_view tag);
const JobKind* kindNamed(const Job& job, std::string_view name); // the newest, when there are several

// How a jumper stands; nothing when it is not chosen yet or the device has no such jumper.
std::optional<Key> chosen(const Device& device, const Key& option, const Key& jumper);
// Whether all jumpers of the condition stand so; one not chosen stands nowhere.
bool holds(const Device& device, const Condition& condition);

OperatorId boundTo(const Device& device, const Key& role);
std::optional<SettingValue> settingOf(const Device& device, const Key& setting);

// Rows that refer to this one: conductors on a device, devices of a kind, cores of a cable …
std::span<const std::uint32_t> referrersOf(const Job& job, std::uint32_t number);
// Conductors with an end on this device or splice, or that are cores of this cable, by number.
std::vector<const Conductor*> conductorsOn(const Job& job, DeviceId device);
std::vector<const Conductor*> conductorsOn(const Job& job, SpliceId splice);
std::vector<const Conductor*> coresOf(const Job& job, CableId cable);

const Core* coreOf(const Job& job, const Conductor& conductor); // null when it is no core
std::string colourOf(const Job& job, const Conductor& conductor);
std::string gaugeOf(const Job& job, const Conductor& conductor);
Metres lengthOf(const Job& job, const Conductor& conductor);

const Landing* landingOf(const End& end);
const SpliceId* spliceOf(const End& end);

// ---- Names as people say them.

std::string nameOf(const Job& job, const Operator& moved); // "LM1:K1", "PB1", "D1"
std::string nameOf(const Job& job, OperatorId moved);
std::string nameOf(const Job& job, const Landing& landing); // "LM1:K1.C", as printed
std::string tagOf(const Job& job, DeviceId device);

} // namespace doorloom
