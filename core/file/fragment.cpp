#include "file/fragment.h"

#include "edit/drawing.h"
#include "edit/freshtags.h"
#include "edit/references.h"
#include "edit/renumber.h"
#include "edit/rownames.h"
#include "file/jobfile.h"

#include <algorithm>
#include <cassert>
#include <map>
#include <set>
#include <utility>

namespace doorloom {

namespace {

constexpr std::string_view head = "doorloom part\n";

using Rows = std::set<std::uint32_t>;

// ---- Copying

class Copying {
public:
    Copying(const Job& job, const std::vector<std::uint32_t>& chosen) : job_(job)
    {
        for (std::uint32_t row : chosen) {
            if (job.devices.find({row}) || job.splices.find({row}))
                joints_.insert(row);
            else if (const Conductor* wire = job.conductors.find({row}); wire && !wire->cable)
                wires_.insert(row);
            else if (job.cables.find({row}))
                cables_.insert(row);
            else if (job.notes.find({row}))
                notes_.insert(row);
        }
        addConductors();
    }

    Job part()
    {
        for (std::uint32_t row : joints_)
            addJoint(row);
        for (std::uint32_t row : cables_)
            addCable(*job_.cables.find({row}));
        for (std::uint32_t row : wires_)
            addConductor(*job_.conductors.find({row}));
        for (std::uint32_t row : notes_) {
            addSheet(job_.notes.find({row})->sheet);
            add(*job_.notes.find({row}));
        }
        Job part;
        const Result<Change> made = applyChange(part, change_);
        assert(made.ok());
        return part;
    }

private:
    bool isInside(const End& end) const
    {
        const Landing* landing = landingOf(end);
        const SpliceId* splice = spliceOf(end);
        return (landing && joints_.count(landing->device.number) > 0) ||
               (splice && joints_.count(splice->number) > 0);
    }

    bool isFullyInside(const Cable& cable) const
    {
        bool isUsed = false;
        for (const Conductor* core : coresOf(job_, cable.id))
            for (const End* end : {&core->from, &core->to}) {
                if (end->state == EndState::Landed && !isInside(*end))
                    return false;
                isUsed = isUsed || end->state == EndState::Landed;
            }
        return isUsed;
    }

    // Wires with both ends on what is chosen, cables that are landed there alone.
    void addConductors()
    {
        for (std::uint32_t joint : joints_)
            for (std::uint32_t user : referrersOf(job_, joint)) {
                const Conductor* row = job_.conductors.find({user});
                if (!row)
                    continue;
                const Cable* cable = job_.cables.find(row->cable);
                if (!cable && isInside(row->from) && isInside(row->to))
                    wires_.insert(user);
                if (cable && isFullyInside(*cable))
                    cables_.insert(cable->id.number);
            }
    }

    template <class Row> void add(const Row& row)
    {
        if (added_.insert(row.id.number).second)
            change_.steps.emplace_back(Put<Row>{row.id, row});
    }

    template <class Row> void addIfThere(Id<Row> id)
    {
        if (const Row* row = tableOf<Row>(job_).find(id))
            add(*row);
    }

    void addSheet(SheetId sheet) { addIfThere(sheet); }

    void addPlacement(std::uint32_t row)
    {
        if (const Placement* placement = placementOf(job_, row)) {
            addSheet(placement->sheet);
            add(*placement);
        }
    }

    void addJoint(std::uint32_t row)
    {
        if (const Device* device = job_.devices.find({row})) {
            addIfThere(device->kind);
            addIfThere(device->place);
            addDevice(*device);
        } else {
            const Splice& splice = *job_.splices.find({row});
            addIfThere(splice.place);
            add(splice);
        }
        addPlacement(row);
    }

    // Bound to what another device owns: it gets an operator of its own in the copy, as its kind says.
    void addDevice(const Device& device)
    {
        Device copy = device;
        for (Binding& binding : copy.bindings) {
            const Operator& moved = *job_.operators.find(binding.moved);
            if (!moved.owner || joints_.count(moved.owner.number) > 0) {
                add(moved);
                continue;
            }
            Operator own = moved;
            own.id = {numbers_.take()};
            own.tag.clear();
            own.owner = device.id;
            own.ownerRole = binding.role;
            binding.moved = own.id;
            add(own);
        }
        add(copy);
    }

    void addCable(const Cable& cable)
    {
        addIfThere(cable.type);
        addIfThere(cable.from);
        addIfThere(cable.to);
        add(cable);
        for (const Conductor* core : coresOf(job_, cable.id))
            addConductor(*core);
    }

    void addConductor(const Conductor& row)
    {
        Conductor copy = row;
        bool isWhole = true;
        for (End* end : {&copy.from, &copy.to})
            if (end->state == EndState::Landed && !isInside(*end)) {
                *end = End{};
                isWhole = false;
            }
        add(copy);
        if (const Bends* bends = bendsOf(job_, row.id); bends && isWhole)
            add(*bends);
    }

    const Job& job_;
    Numbers numbers_{job_};
    Rows joints_, wires_, cables_, notes_; // joints: devices and splices
    Rows added_;
    Change change_;
};

// ---- Pasting

class Pasting {
public:
    Pasting(const Job& job, Numbers& numbers, const Job& part, const PasteOptions& options)
        : job_(job), numbers_(numbers), part_(part), options_(options), tags_(job)
    {
    }

    Pasted made()
    {
        match();
        forEachTable(part_, [&](const char*, const auto& rows) {
            for (const auto& row : rows)
                if (isWanted(row) && again_.count(row.id.number) == 0)
                    again_[row.id.number] = numbers_.take();
        });
        forEachTable(part_, [&](const char*, const auto& rows) {
            for (const auto& row : rows)
                if (isWanted(row) && matched_.count(row.id.number) == 0)
                    add(row);
        });
        std::sort(made_.rows.begin(), made_.rows.end());
        return std::move(made_);
    }

private:
    // Rows that the job has already.
    void match()
    {
        for (const JobKind& row : part_.kinds)
            matchWith(row.id, job_.kinds, [&](const JobKind& own) { return own.kind == row.kind; });
        for (const CableType& row : part_.cableTypes)
            matchWith(row.id, job_.cableTypes, [&](CableType own) {
                own.id = row.id;
                return own == row;
            });
        for (const Place& row : part_.places)
            matchWith(row.id, job_.places, [&](const Place& own) { return own.tag == row.tag; });
        for (const Operator& row : part_.operators)
            if (!row.owner && isOfTheBuilding(row.nature))
                matchWith(row.id, job_.operators, [&](const Operator& own) {
                    return !own.owner && own.tag == row.tag && own.throws == row.throws;
                });
        for (const Sheet& row : part_.sheets)
            again_[row.id.number] = options_.sheet.number;
    }

    static bool isOfTheBuilding(OperatorNature nature)
    {
        return nature == OperatorNature::Fire || nature == OperatorNature::Mains;
    }

    template <class Row, class IsSame> void matchWith(Id<Row> id, const Table<Row>& rows, IsSame isSame)
    {
        for (const Row& own : rows)
            if (isSame(own)) {
                again_[id.number] = own.id.number;
                matched_.insert(id.number);
                return;
            }
    }

    // Nothing is taken but what copiedText puts in.
    template <class Row> bool isWanted(const Row&) const
    {
        constexpr bool isDrawing =
            std::is_same_v<Row, Placement> || std::is_same_v<Row, Bends> || std::is_same_v<Row, Note>;
        constexpr bool isWiring = std::is_same_v<Row, JobKind> || std::is_same_v<Row, CableType> ||
                                  std::is_same_v<Row, Place> || std::is_same_v<Row, Operator> ||
                                  std::is_same_v<Row, Device> || std::is_same_v<Row, Cable> ||
                                  std::is_same_v<Row, Splice> || std::is_same_v<Row, Conductor>;
        return isWiring || (isDrawing && options_.sheet);
    }

    void fit(Device& row) { row.tag = tags_.device(row.tag); }
    void fit(Operator& row) { row.tag = tags_.moved(row.tag); }
    void fit(Splice& row) { row.tag = tags_.splice(row.tag); }
    void fit(CableType& row)
    {
        row.name = countedOn(row.name, [&](const std::string& name) {
            return std::any_of(job_.cableTypes.begin(), job_.cableTypes.end(),
                               [&](const CableType& own) { return own.name == name; });
        });
    }
    void fit(Cable& row) { row.tag = cableTags_[row.id.number] = tags_.cable(row.tag); }
    void fit(Conductor& row)
    {
        const Cable* cable = part_.cables.find(row.cable);
        const std::string core = "." + std::to_string(row.core);
        if (cable && row.tag == cable->tag + core)
            row.tag = cableTags_.at(cable->id.number) + core;
        else
            row.tag = tags_.wire(row.tag);
    }
    void fit(Placement& row) { shift(row.at); }
    void fit(Note& row) { shift(row.at); }
    void fit(Bends& row)
    {
        for (Point& point : row.pinned)
            shift(point);
    }
    template <class Row> void fit(Row&) {}

    // Held at the edge of what fits, so that a wild point in the text can't overflow.
    void shift(Point& point) const
    {
        const auto held = [](std::int64_t at) {
            return static_cast<std::int32_t>(std::clamp<std::int64_t>(at, -100'000, 100'000));
        };
        point = {held(std::int64_t{point.x} + options_.by.x), held(std::int64_t{point.y} + options_.by.y)};
    }

    template <class Row> void add(Row row)
    {
        fit(row);
        renumber(row, again_);
        const Id<Row> id = row.id;
        if (std::is_same_v<Row, Device> || std::is_same_v<Row, Splice> || std::is_same_v<Row, Cable> ||
            std::is_same_v<Row, Note>)
            made_.rows.push_back(id.number);
        made_.change.steps.emplace_back(Put<Row>{id, std::move(row)});
    }

    const Job& job_;
    Numbers& numbers_;
    const Job& part_;
    const PasteOptions& options_;
    FreshTags tags_;
    Renumbering again_;
    Rows matched_;
    std::map<std::uint32_t, std::string> cableTags_;
    Pasted made_;
};

} // namespace

std::string copiedText(const Job& job, const std::vector<std::uint32_t>& rows)
{
    const Job part = Copying(job, rows).part();
    if (part.devices.empty() && part.splices.empty() && part.cables.empty() && part.conductors.empty() &&
        part.notes.empty())
        return {};
    return std::string(head) + jobText(part);
}

bool isCopiedText(std::string_view text)
{
    return text.starts_with(head);
}

Result<Pasted> pasted(const Job& job, Numbers& numbers, std::string_view text, const PasteOptions& options)
{
    if (!isCopiedText(text))
        return problemAt(
            {}, {.en = "What was copied is no part of a job.", .es = "Lo copiado no es parte de un trabajo."},
            {.en = "Copy devices, cables or notes of a job first.",
             .es = "Copie antes dispositivos, cables o notas de un trabajo."},
            {});
    if (options.sheet && !job.sheets.find(options.sheet))
        return notInJob(nounOf<Sheet>());
    const Result<Job> part = readJob(text.substr(head.size()), "copied text");
    if (!part.ok())
        return part.problem();
    return Pasting(job, numbers, part.value(), options).made();
}

} // namespace doorloom
