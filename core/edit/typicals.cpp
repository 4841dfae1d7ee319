#include "edit/typicals.h"

#include "edit/doorcopy.h"
#include "edit/references.h"
#include "edit/removal.h"
#include "edit/rownames.h"
#include "edit/tagrules.h"
#include "edit/typicalrows.h"

#include <algorithm>
#include <utility>

namespace doorloom {

namespace {

std::optional<Problem> isTypicalAlready(const Job& job, const Opening& opening)
{
    for (std::uint32_t user : referrersOf(job, opening.id.number)) {
        const Typical* typical = job.typicals.find({user});
        const Stamp* stamp = job.stamps.find({user});
        if (!typical && stamp)
            typical = job.typicals.find(stamp->typical);
        if (typical)
            return problemAt(opening.tag,
                             {.en = "{tag} belongs to the typical '{name}' already.",
                              .es = "{tag} ya pertenece a la puerta tipo '{name}'."},
                             {.en = "Choose another opening, or duplicate this one first.",
                              .es = "Elija otra puerta, o duplique antes esta."},
                             {{"tag", opening.tag}, {"name", typical->name}});
    }
    return std::nullopt;
}

std::optional<Problem> countProblem(int count)
{
    if (count >= 1 && count <= mostStampsAtOnce)
        return std::nullopt;
    return problemAt(
        {}, {.en = "{count} doors can't be stamped.", .es = "No se pueden estampar {count} puertas."},
        {.en = "Stamp from 1 to {most} at once.", .es = "Estampe de 1 a {most} de una vez."},
        {{"count", std::to_string(count)}, {"most", std::to_string(mostStampsAtOnce)}});
}

// What has once been the typical's stays its own while it is in the job: a place that its last device has
// left, a wire that leads elsewhere now.
template <class Row> void keep(const Job& job, const Row& row, DoorRows& door)
{
    const std::uint32_t number = row.id.number;
    if constexpr (std::is_same_v<Row, Place>)
        door.places.insert(number);
    else if constexpr (std::is_same_v<Row, Operator>)
        door.operators.insert(number);
    else if constexpr (std::is_same_v<Row, Splice>)
        door.joints.insert(number);
    else if constexpr (std::is_same_v<Row, Sheet>)
        door.sheets.insert(number);
    else if constexpr (std::is_same_v<Row, Placement> || std::is_same_v<Row, Bends>)
        door.drawing.insert(number);
    else if constexpr (std::is_same_v<Row, Conductor>)
        door.conductors.insert(number);
    else if constexpr (std::is_same_v<Row, Cable>) {
        door.cables.insert(number);
        for (const Conductor* core : coresOf(job, row.id))
            door.conductors.insert(core->id.number);
    }
}

std::vector<std::string> tagsOf(const Change& change)
{
    std::vector<std::string> tags;
    for (const Step& step : change.steps)
        if (const auto* put = std::get_if<Put<Device>>(&step))
            tags.push_back(put->after->tag);
    return tags;
}

} // namespace

Problem openingIsGone(const Typical& typical)
{
    return problemAt(typical.name,
                     {.en = "The opening of the typical '{name}' is not in the job any more.",
                      .es = "La puerta de la puerta tipo '{name}' ya no está en el trabajo."},
                     {.en = "Undo its removal, or mark another opening as a typical.",
                      .es = "Deshaga su eliminación o marque otra como puerta tipo."},
                     {{"name", typical.name}});
}

OpeningId openingOf(const Job& job, const Typical& typical)
{
    for (std::uint32_t row : typical.rows)
        if (job.openings.find({row}))
            return {row};
    return {};
}

OpeningId openingOf(const Job& job, const Stamp& stamp)
{
    for (const auto& [ofTypical, ofStamp] : stamp.rows)
        if (job.openings.find({ofStamp}))
            return {ofStamp};
    return {};
}

std::optional<DoorRows> doorOf(const Job& job, const Typical& typical)
{
    const Opening* opening = job.openings.find(openingOf(job, typical));
    if (!opening)
        return std::nullopt;
    std::vector<DeviceId> devices;
    for (std::uint32_t row : typical.rows)
        if (job.devices.find({row}))
            devices.push_back({row});
    DoorRows door = rowsOfDoor(job, *opening, devices);
    for (std::uint32_t row : typical.rows)
        visitRow(job, row, [&](const auto& each) { keep(job, each, door); });
    return door;
}

std::vector<DoorRow> rowsAsTheyStand(const Job& job, const DoorRows& door)
{
    std::vector<DoorRow> rows;
    for (std::uint32_t number : door.all())
        visitRow(job, number, [&]<class Row>(const Row& row) {
            if constexpr (std::is_constructible_v<DoorRow, const Row&>)
                rows.emplace_back(row);
        });
    return rows;
}

RowsByNumber byNumber(const std::vector<DoorRow>& rows)
{
    RowsByNumber found;
    for (const DoorRow& row : rows)
        found.emplace(std::visit([](const auto& each) { return each.id.number; }, row), row);
    return found;
}

Typical broughtUp(const Job& job, Typical typical, const DoorRows& door)
{
    const DoorRows::Numbers all = door.all();
    typical.rows.assign(all.begin(), all.end());
    std::vector<DoorRow> rows = rowsAsTheyStand(job, door);
    if (typical.editions.empty() || typical.editions.back().rows != rows)
        typical.editions.push_back(
            {typical.editions.empty() ? 1 : typical.editions.back().number + 1, std::move(rows)});
    return typical;
}

Result<std::pair<TypicalId, Change>> markTypical(const Job& job, Numbers& numbers, OpeningId opening,
                                                 std::string name, const std::vector<DeviceId>& also)
{
    const Opening* row = job.openings.find(opening);
    if (!row)
        return notInJob(nounOf<Opening>());
    if (auto problem = isTypicalAlready(job, *row))
        return *std::move(problem);
    Typical typical;
    typical.id = {numbers.take()};
    typical.name = !name.empty() ? std::move(name) : !row->words.empty() ? row->words : row->tag;
    if (std::any_of(job.typicals.begin(), job.typicals.end(),
                    [&](const Typical& other) { return other.name == typical.name; }))
        typical.name += " (" + row->tag + ")";
    const DoorRows::Numbers all = rowsOfDoor(job, *row, also).all();
    typical.rows.assign(all.begin(), all.end());
    return std::pair(typical.id, Change{{Put<Typical>{typical.id, typical}}});
}

Result<Change> unmarkTypical(const Job& job, TypicalId typical)
{
    if (!job.typicals.find(typical))
        return notInJob(nounOf<Typical>());
    Draft draft(job);
    removeRows(draft, {typical.number});
    return draft.change();
}

Result<StampedDoors> stampTypical(const Job& job, Numbers& numbers, TypicalId typical, int count,
                                  const Numbering& numbering)
{
    const Typical* row = job.typicals.find(typical);
    if (!row)
        return notInJob(nounOf<Typical>());
    const std::optional<DoorRows> door = doorOf(job, *row);
    if (!door)
        return openingIsGone(*row);
    std::optional<Problem> problem = countProblem(count);
    if (!problem && !numbering.firstDoor.empty())
        problem = newTagProblem(job.openings, {}, numbering.firstDoor);
    if (!problem && !numbering.pattern.empty())
        problem = patternProblem(numbering.pattern);
    if (problem)
        return *std::move(problem);

    const Typical now = broughtUp(job, *row, *door);
    StampedDoors stamped;
    stamped.change.steps.emplace_back(Put<Typical>{typical, now});
    DrawingAgain drawing(job, numbers);
    std::string tag =
        numbering.firstDoor.empty() ? job.openings.find(door->opening)->tag : numbering.firstDoor;
    for (int each = 0; each < count; ++each) {
        tag = drawing.tags.opening(tag);
        DuplicatedDoor again = doorAgain(drawing, *door, numbering.pattern, tag);
        Stamp stamp{
            {numbers.take()},           typical,          tag, {again.again.begin(), again.again.end()},
            now.editions.back().number, numbering.pattern};
        stamped.doors.push_back({again.opening, stamp.id, tag, tagsOf(again.change), std::move(again.rows)});
        again.change.steps.emplace_back(Put<Stamp>{stamp.id, std::move(stamp)});
        stamped.change = joined(std::move(stamped.change), std::move(again.change));
        std::move(again.leftWaiting.begin(), again.leftWaiting.end(),
                  std::back_inserter(stamped.leftWaiting));
    }
    return stamped;
}

} // namespace doorloom
