#include "edit/drawing.h"

#include "edit/references.h"
#include "edit/removal.h"
#include "edit/rownames.h"

#include <algorithm>
#include <cstdlib>
#include <set>

namespace doorloom {

namespace {

// Ten metres about the origin: more than any plotter draws (common practice, no source).
constexpr std::int64_t furthest = 100'000;

std::optional<Problem> tooFar(std::int64_t x, std::int64_t y, const std::string& name)
{
    if (std::llabs(x) <= furthest && std::llabs(y) <= furthest)
        return std::nullopt;
    return problemAt(
        name,
        {.en = "'{name}' would lie {x} by {y} mm from the sheet's corner, where no sheet reaches.",
         .es = "'{name}' quedaría a {x} por {y} mm de la esquina, adonde no llega ninguna hoja."},
        {.en = "Keep it within {most} mm.", .es = "Manténgalo dentro de {most} mm."},
        {{"name", name},
         {"x", std::to_string(x / 10)},
         {"y", std::to_string(y / 10)},
         {"most", std::to_string(furthest / 10)}});
}

std::optional<Problem> move(Point& point, Point by, const std::string& name)
{
    const std::int64_t x = std::int64_t{point.x} + by.x, y = std::int64_t{point.y} + by.y;
    if (auto problem = tooFar(x, y, name))
        return problem;
    point = {static_cast<std::int32_t>(x), static_cast<std::int32_t>(y)};
    return std::nullopt;
}

std::uint32_t numberOf(const Placeable& what)
{
    return std::visit([](auto id) { return id.number; }, what);
}

bool isOnAny(const End& end, const std::set<std::uint32_t>& rows)
{
    const Landing* landing = landingOf(end);
    const SpliceId* splice = spliceOf(end);
    return (landing && rows.count(landing->device.number) > 0) || (splice && rows.count(splice->number) > 0);
}

// Conductors with an end on any of the rows.
std::set<ConductorId> conductorsOnAny(const Job& job, const std::set<std::uint32_t>& rows)
{
    std::set<ConductorId> found;
    for (std::uint32_t row : rows)
        for (std::uint32_t user : referrersOf(job, row))
            if (job.conductors.find({user}))
                found.insert({user});
    return found;
}

std::optional<Problem> moveBends(Draft& draft, const std::set<std::uint32_t>& rows, Point by)
{
    const Job& job = draft.job();
    for (ConductorId id : conductorsOnAny(job, rows)) {
        const Conductor& conductor = *job.conductors.find(id);
        const Bends* bends = bendsOf(job, id);
        if (!bends || !isOnAny(conductor.from, rows) || !isOnAny(conductor.to, rows))
            continue;
        for (Point& point : draft.edit(bends->id)->pinned)
            if (auto problem = move(point, by, nameOfRow(job, conductor)))
                return problem;
    }
    return std::nullopt;
}

std::int32_t edgeOf(const Outline& outline, Edge edge)
{
    switch (edge) {
    case Edge::Left:
        return outline.least.x;
    case Edge::Right:
        return outline.most.x;
    case Edge::Top:
        return outline.least.y;
    default:
        return outline.most.y;
    }
}

} // namespace

const Placement* placementOf(const Job& job, std::uint32_t row)
{
    for (std::uint32_t user : referrersOf(job, row))
        if (const Placement* placement = job.placements.find({user});
            placement && placement->sheet.number != row)
            return placement;
    return nullptr;
}

const Placement* placementOf(const Job& job, Placeable what)
{
    return placementOf(job, numberOf(what));
}

Result<Change> putOnSheet(const Job& job, Numbers& numbers, SheetId sheet, Placeable what, Point at,
                          int quarterTurns)
{
    if (!job.sheets.find(sheet))
        return notInJob(nounOf<Sheet>());
    const auto* device = std::get_if<DeviceId>(&what);
    if (device && !job.devices.find(*device))
        return notInJob(nounOf<Device>());
    if (!device && !job.splices.find(std::get<SpliceId>(what)))
        return notInJob(nounOf<Splice>());
    Draft draft(job);
    const Placement* drawn = placementOf(job, what);
    Placement row{
        .id = drawn ? drawn->id : PlacementId{numbers.take()}, .sheet = sheet, .what = what, .at = {}};
    if (auto problem = move(row.at, at, nameOfRow(job, row)))
        return *std::move(problem);
    row.quarterTurns = ((quarterTurns % 4) + 4) % 4;
    draft.put(std::move(row));
    return draft.change();
}

Change takeOffSheet(const Job& job, const std::vector<std::uint32_t>& rows)
{
    Draft draft(job);
    std::set<std::uint32_t> drawn;
    for (std::uint32_t row : rows)
        if (const Placement* placement = placementOf(job, row)) {
            removeRows(draft, {placement->id.number});
            drawn.insert(row);
        }
    for (ConductorId conductor : conductorsOnAny(job, drawn))
        if (const Bends* bends = bendsOf(job, conductor))
            removeRows(draft, {bends->id.number});
    return draft.change();
}

Result<Change> moveRows(const Job& job, const std::vector<std::uint32_t>& rows, Point by)
{
    Draft draft(job);
    const std::set<std::uint32_t> moved(rows.begin(), rows.end());
    for (std::uint32_t row : moved) {
        Point* at = nullptr;
        if (const Placement* placement = placementOf(job, row))
            at = &draft.edit(placement->id)->at;
        else if (Note* note = draft.edit(NoteId{row}))
            at = &note->at;
        if (!at)
            continue;
        std::string name;
        visitRow(job, row, [&](const auto& named) { name = nameOfRow(job, named); });
        if (auto problem = move(*at, by, name))
            return *std::move(problem);
    }
    if (auto problem = moveBends(draft, moved, by))
        return *std::move(problem);
    return draft.change();
}

Result<Change> alignRows(const Job& job, const std::vector<Outline>& outlines, Edge edge)
{
    const bool least = edge == Edge::Left || edge == Edge::Top;
    const bool across = edge == Edge::Left || edge == Edge::Right;
    std::optional<std::int32_t> outermost;
    for (const Outline& outline : outlines) {
        const std::int32_t at = edgeOf(outline, edge);
        outermost = !outermost ? at : least ? std::min(*outermost, at) : std::max(*outermost, at);
    }
    Change all;
    std::set<std::uint32_t> seen;
    for (const Outline& outline : outlines) {
        if (!seen.insert(outline.row).second)
            continue;
        const std::int32_t by = *outermost - edgeOf(outline, edge);
        Result<Change> change = moveRows(job, {outline.row}, across ? Point{by, 0} : Point{0, by});
        if (!change.ok())
            return change.problem();
        all = joined(std::move(all), std::move(change.value()));
    }
    return all;
}

Change turnRows(const Job& job, const std::vector<std::uint32_t>& rows, int quarterTurns)
{
    Draft draft(job);
    for (std::uint32_t row : std::set<std::uint32_t>(rows.begin(), rows.end()))
        if (const Placement* placement = placementOf(job, row)) {
            Placement& turned = *draft.edit(placement->id);
            turned.quarterTurns = (((turned.quarterTurns + quarterTurns) % 4) + 4) % 4;
        }
    return draft.change();
}

} // namespace doorloom
