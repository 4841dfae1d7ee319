#pragma once

#include "edit/operations.h"

#include "random.h"
#include "smallkinds.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

// Random changes to a job: rows put, altered and removed one by one, and the operations.
// Most are sound; some are wrong on purpose.
namespace doorloom {

class RandomEdits {
public:
    RandomEdits(const Job& job, Random& random) : job_(job), random_(random), numbers_(job) {}

    struct Edit {
        std::string name;             // "conductors: put", "setEnd"
        std::optional<Change> change; // nothing: the operation itself refused
        bool isSure = false; // an operation that has looked at everything: its change must be accepted
    };

    Edit any();
    static std::vector<std::string> operationNames();

private:
    struct Operation {
        const char* name;
        std::optional<Change> (RandomEdits::*run)();
        bool isSure;
    };
    static const std::vector<Operation>& operations();

    // ---- Picking
    template <class Row> Id<Row> some()
    {
        const Table<Row>& rows = tableOf<Row>(job_);
        if (rows.empty() || random_.oneIn(60))
            return {random_.oneIn(2) ? 0 : job_.nextNumber + 1000};
        auto row = rows.begin();
        for (std::size_t steps = random_.below(rows.size()); steps > 0; --steps)
            ++row;
        return row->id;
    }
    template <class Row> Id<Row> someOrNone()
    {
        return random_.oneIn(3) || tableOf<Row>(job_).empty() ? Id<Row>{} : some<Row>();
    }
    // A row that no other refers to, or this one.
    template <class Row> Id<Row> unusedOr(const Row& otherwise)
    {
        for (const Row& row : tableOf<Row>(job_))
            if (referrersOf(job_, row.id.number).empty())
                return row.id;
        return otherwise.id;
    }
    std::string word(const std::string& prefix) { return prefix + std::to_string(random_.below(400)); }
    Key someKey(const std::vector<Key>& keys)
    {
        return keys.empty() || random_.oneIn(30) ? "none" : random_.oneOf(keys);
    }
    Key terminalOf(DeviceId device);
    End end();
    Thrown thrown();
    std::vector<Thrown> someThrows();
    std::uint32_t someNumber();
    Kind kind();
    Key optionValue() { return someKey({"wet", "dry", ""}); }
    SettingValue settingValue()
    {
        return random_.oneIn(2) ? SettingValue(double(random_.between(1, 32))) : SettingValue("toggle");
    }

    // ---- Rows as they might be; `row` is a new one or a copy of one that is there
    void fill(JobInfo& row);
    void fill(JobKind& row);
    void fill(CableType& row);
    void fill(Place& row);
    void fill(Operator& row);
    void fill(Device& row);
    void fill(Cable& row);
    void fill(Splice& row);
    void fill(Conductor& row);
    void fill(Opening& row);
    void fill(Sheet& row);
    void fill(Placement& row);
    void fill(Bends& row);
    void fill(Note& row);
    void fill(SetAside& row);
    void fill(Typical& row);
    void fill(Stamp& row);

    template <class Row> Change rowEdit(std::string& what)
    {
        const Table<Row>& rows = tableOf<Row>(job_);
        const std::size_t manner = rows.empty() ? 0 : random_.below(10);
        const Row* old = manner < 3 ? nullptr : rows.find(some<Row>());
        if (old && manner == 9) {
            what += ": remove";
            return {{Put<Row>{random_.oneIn(3) ? old->id : unusedOr(*old), std::nullopt}}};
        }
        Row row = old ? *old : Row{};
        if (!old)
            row.id = {random_.oneIn(60) ? someNumber() : numbers_.take()};
        what += old ? ": alter" : ": put";
        fill(row);
        const Id<Row> id = row.id;
        return {{Put<Row>{id, std::move(row)}}};
    }

    Edit anyRow();
    Edit anyOperation();

    // ---- Operations
    std::optional<Change> made(Result<Change> result)
    {
        return result.ok() ? std::optional(std::move(result.value())) : std::nullopt;
    }
    std::optional<Change> runTakeKind() { return takeKind(job_, numbers_, kind()).second; }
    std::optional<Change> runPlaceDevice()
    {
        return placeDevice(job_, numbers_, kind(), word("N"), someOrNone<Place>()).second;
    }
    std::optional<Change> runRemoveDevice() { return made(removeDevice(job_, some<Device>())); }
    std::optional<Change> runPullCable();
    std::optional<Change> runRemoveCable() { return made(removeCable(job_, some<Cable>())); }
    std::optional<Change> runAddWire() { return addWire(job_, numbers_, end(), end(), word("W")).second; }
    std::optional<Change> runTakeOff() { return made(takeOff(job_, some<Conductor>())); }
    std::optional<Change> runSetEnd()
    {
        return made(setEnd(job_, some<Conductor>(), random_.oneIn(2) ? WhichEnd::From : WhichEnd::To, end()));
    }
    std::optional<Change> runExchangeTerminals()
    {
        const DeviceId device = some<Device>();
        return made(exchangeTerminals(job_, device, terminalOf(device), terminalOf(device)));
    }
    DeviceId someOf(const std::function<bool(const Kind&)>& fits);
    DeviceId someModule()
    {
        return someOf([](const Kind& kind) { return !kind.options.empty(); });
    }
    std::optional<Change> runSetJumper()
    {
        return made(setJumper(job_, someModule(), "out1", someKey({"JA", "JB"}), optionValue()));
    }
    std::optional<Change> runSetOption()
    {
        return made(setOption(job_, someModule(), "out1", optionValue()));
    }
    std::optional<Change> runSetSetting()
    {
        const SettingValue value = settingValue();
        return made(setSetting(job_, someModule(), value.index() == 0 ? "hold" : "mode", value));
    }
    std::optional<Change> runSetKind();
    std::optional<Change> runBindRole();
    std::optional<Change> runSetIdle()
    {
        const Thrown at = thrown();
        return made(setIdle(job_, at.moved, at.thrown));
    }
    std::optional<Change> runRenameDevice()
    {
        return made(renameDevice(job_, some<Device>(), word(random_.oneIn(20) ? "bad tag " : "N")));
    }

    const Job& job_;
    Random& random_;
    Numbers numbers_;
};

} // namespace doorloom
