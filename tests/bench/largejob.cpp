#include "bench/largejob.h"

#include "core/jobs.h"
#include "edit/operations.h"

#include <array>
#include <stdexcept>

namespace doorloom::bench {

namespace {

constexpr int doors = 312, spareDevices = 4, wiresADoor = 12, cablesADoor = 5, coresACable = 4;
constexpr int spareWires = 16;

constexpr std::array kindNames = {"dc-supply-24", "relay-module-negative", "strike-fail-secure",
                                  "door-switch",  "wave-actuator",         "wave-actuator",
                                  "push-plate",   "terminal-strip-8"};
static_assert(doors * kindNames.size() + spareDevices == 2'500);
static_assert(doors * (cablesADoor * coresACable + wiresADoor) + spareWires == 10'000);

class Builder {
public:
    Job build()
    {
        for (const char* name : kindNames)
            make(takeKind(job_, numbers_, catalogueKind(name)).second);
        addShared();
        for (int door = 1; door <= doors; ++door)
            addDoor(door);
        for (int spare = 1; spare <= spareDevices; ++spare)
            place("SPARE" + std::to_string(spare), kindNames[3]);
        for (int wire = 0; wire < spareWires; ++wire)
            add(addWire(job_, numbers_, {}, {}, "SP" + std::to_string(wire)).second);
        make(rows_);
        return std::move(job_);
    }

private:
    void make(const Change& change)
    {
        if (const Result<Change> made = applyChange(job_, change); !made.ok())
            throw std::runtime_error(inWords(made.problem()));
    }
    void add(Change change) { rows_ = joined(std::move(rows_), std::move(change)); }

    template <class Row> Id<Row> add(Row row)
    {
        row.id = {numbers_.take()};
        const Id<Row> id = row.id;
        rows_.steps.push_back(Put<Row>{id, std::move(row)});
        return id;
    }

    void addShared()
    {
        CableType type;
        type.name = "22/4";
        type.words = {"four cores", "cuatro hilos"};
        for (int core = 1; core <= coresACable; ++core)
            type.cores.push_back({core,
                                  std::array{"RD", "BK", "WH", "GN"}[static_cast<std::size_t>(core) - 1],
                                  "22 AWG", 0, false});
        type_ = add(std::move(type));
        sheet_ = add(Sheet{{}, "Doors", 1});
    }

    DeviceId place(const std::string& tag, const char* kind)
    {
        auto [device, change] = placeDevice(job_, numbers_, catalogueKind(kind), tag, place_);
        add(std::move(change));
        add(Placement{{}, sheet_, device, {static_cast<int>(device.number) % 4000, 300}, 0});
        return device;
    }

    // Some terminal or other: what is measured does not ask which.
    End landing(std::size_t turn) const
    {
        const std::size_t which = turn % devices_.size();
        const auto terminals = terminalsOf(catalogueKind(kindNames[which]));
        return {EndState::Landed,
                Landing{devices_[which], terminals[turn / devices_.size() % terminals.size()]->key}};
    }

    void addDoor(int door)
    {
        const std::string number = std::to_string(door);
        place_ =
            add(Place{{}, "CAB" + number, "cabinet above ceiling", Mounting::Cabinet, true, "panel A, 12"});
        devices_.clear();
        for (std::size_t i = 0; i < kindNames.size(); ++i)
            devices_.push_back(place("D" + number + "." + std::to_string(i), kindNames[i]));
        std::size_t turn = 0;
        for (int cable = 1; cable <= cablesADoor; ++cable)
            addCable("C" + number + "." + std::to_string(cable), turn);
        for (int wire = 1; wire <= wiresADoor; ++wire, turn += 2)
            add(addWire(job_, numbers_, landing(turn), landing(turn + 3),
                        "W" + number + "." + std::to_string(wire))
                    .second);
        addOpening("DOOR" + number);
    }

    void addCable(const std::string& tag, std::size_t& turn)
    {
        Cable cable{{}, tag, type_, place_, place_, Metres{12.5}, "", Standing::New, ""};
        const CableId id = add(std::move(cable));
        for (int core = 1; core <= coresACable; ++core, turn += 2) {
            Conductor conductor;
            conductor.tag = tag + "." + std::to_string(core);
            conductor.make = ConductorMake::Core;
            conductor.cable = id;
            conductor.core = core;
            conductor.from = landing(turn);
            conductor.to = landing(turn + 5);
            add(std::move(conductor));
        }
    }

    void addOpening(const std::string& tag)
    {
        Opening opening;
        opening.tag = tag;
        opening.words = "one-person restroom";
        opening.locks = {devices_[2]};
        opening.promises = {{{SituationKind::Rest, "", {}}, devices_[2], Promised::Locked},
                            {{SituationKind::AllPowerLost, "", {}}, devices_[2], Promised::Locked}};
        add(std::move(opening));
    }

    Job job_;
    Numbers numbers_{job_};
    Change rows_;
    CableTypeId type_;
    SheetId sheet_;
    PlaceId place_;
    std::vector<DeviceId> devices_;
};

} // namespace

Job largeJob()
{
    return Builder().build();
}

} // namespace doorloom::bench
