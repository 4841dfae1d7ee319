#include "ui/sheetjobs.h"

#include "canvas/drawing.h"
#include "catalogue/stockcables.h"
#include "core/random.h"
#include "edit/drawing.h"
#include "edit/jointerminals.h"
#include "edit/nexttag.h"
#include "edit/removeany.h"

#include <gtest/gtest.h>

#include <QFont>

#include <map>
#include <sstream>

namespace doorloom {
namespace {

std::string text(const Area& area)
{
    std::ostringstream out;
    out << area.left << "," << area.top << "–" << area.right << "," << area.bottom;
    return out.str();
}

std::string text(const std::vector<Point>& line)
{
    std::ostringstream out;
    for (const Point point : line)
        out << " " << point.x << "," << point.y;
    return out.str();
}

std::string gaps(const ConductorDrawn& drawn)
{
    std::ostringstream out;
    for (const Gap& gap : drawn.gaps)
        out << " gap " << gap.piece << "," << gap.at;
    for (const std::size_t piece : drawn.straight)
        out << " straight " << piece;
    return out.str();
}

// Everything that is drawn, by number, in words that can be compared.
std::map<std::uint32_t, std::string> contentsOf(const Drawing& drawing)
{
    std::map<std::uint32_t, std::string> all;
    for (const FrameDrawn& each : drawing.frames().all())
        all[each.id.number] += "frame " + text(each.area);
    for (const DeviceDrawn& each : drawing.devices().all())
        all[each.id.number] += "device " + text(each.area) + (each.corner ? " placed" : "");
    for (const CableDrawn& each : drawing.cables().all())
        all[each.id.number] += "cable " + text(each.area) + text(each.plan.trunk) + " " +
                               std::to_string(each.rings[0].waiting) + " " +
                               std::to_string(each.rings[1].waiting);
    for (const ConductorDrawn& each : drawing.conductors().all())
        all[each.id.number] += "conductor " + text(each.line) + " " +
                               std::to_string(static_cast<int>(each.ends[0].mark)) +
                               std::to_string(static_cast<int>(each.ends[1].mark)) + gaps(each);
    for (const SpliceDrawn& each : drawing.splices().all())
        all[each.id.number] += "splice " + text(each.area);
    for (const NoteDrawn& each : drawing.notes().all())
        all[each.id.number] += "note " + text(each.area);
    all.erase(0);
    return all;
}

// What the index finds in an area, by number.
std::vector<std::uint32_t> foundIn(const Drawing& drawing, const Area& area)
{
    Visible visible;
    drawing.lookUp(area, visible);
    std::vector<std::uint32_t> numbers;
    const auto take = [&](const auto& list, const std::vector<std::uint32_t>& indices) {
        for (const std::uint32_t i : indices)
            numbers.push_back(list[i].id.number);
    };
    take(drawing.frames(), visible.frames);
    take(drawing.cables(), visible.cables);
    take(drawing.conductors(), visible.conductors);
    take(drawing.devices(), visible.devices);
    take(drawing.splices(), visible.splices);
    take(drawing.notes(), visible.notes);
    std::sort(numbers.begin(), numbers.end());
    return numbers;
}

template <class Row> std::uint32_t anyOf(Random& random, const Table<Row>& table)
{
    if (table.empty())
        return 0;
    auto row = table.begin();
    std::advance(row, static_cast<long>(random.below(table.size())));
    return row->id.number;
}

std::optional<LandingPoint> anyPoint(Random& random, const Job& job)
{
    if (random.below(8) == 0 && !job.splices.empty())
        return SpliceId{anyOf(random, job.splices)};
    const Kind* kind = kindOf(job, DeviceId{anyOf(random, job.devices)});
    const std::uint32_t number = anyOf(random, job.devices);
    kind = kindOf(job, DeviceId{number});
    if (!kind)
        return std::nullopt;
    const auto terminals = terminalsOf(*kind);
    return Landing{{number}, terminals[random.below(terminals.size())]->key};
}

// One edit of any sort that a sheet shows.
Result<Change> anyEdit(Random& random, const Job& job)
{
    Numbers numbers(job);
    const SheetId sheet = job.sheets.begin()->id;
    const Point at{static_cast<int>(random.below(200)) * 25, static_cast<int>(random.below(200)) * 25};
    const std::vector<std::uint32_t> rows{anyOf(random, job.devices), anyOf(random, job.splices),
                                          anyOf(random, job.notes)};
    switch (random.below(14)) {
    case 0:
        return moveRows(job, rows, {at.x - 2000, at.y - 2000});
    case 1:
        return turnRows(job, rows);
    case 2: {
        const char* kinds[] = {"dc-supply-24", "push-plate", "terminal-strip-8", "diode"};
        const Kind& kind = catalogueKind(kinds[random.below(4)]);
        auto [id, change] =
            placeDevice(job, numbers, kind, nextDeviceTag(job, kind), PlaceId{anyOf(random, job.places)});
        const std::uint32_t placement = numbers.take();
        change.steps.emplace_back(Put<Placement>{
            {placement}, Placement{{placement}, sheet, id, at, static_cast<int>(random.below(4))}});
        return change;
    }
    case 3:
    case 4: {
        const auto a = anyPoint(random, job), b = anyPoint(random, job);
        if (!a || !b)
            return Change{};
        Result<Landed> landed = joinTerminals(job, numbers, *a, *b);
        return landed.ok() ? Result<Change>(landed.value().change) : Result<Change>(landed.problem());
    }
    case 5: {
        Change change;
        CableType type = *stockCableNamed("18/2");
        type.id = {numbers.take()};
        change.steps.emplace_back(Put<CableType>{type.id, type});
        Cable cable;
        cable.tag = nextCableTag(job);
        cable.type = type.id;
        cable.from = {anyOf(random, job.places)};
        cable.to = {anyOf(random, job.places)};
        return joined(change, pullCable(job, numbers, cable).second);
    }
    case 6: {
        const auto point = anyPoint(random, job);
        const ConductorId conductor{anyOf(random, job.conductors)};
        const End end = point ? landedAt(*point) : End{};
        return setEnd(job, conductor, random.below(2) ? WhichEnd::From : WhichEnd::To, end);
    }
    case 7:
        return capEnd(job, {ConductorId{anyOf(random, job.conductors)},
                            random.below(2) ? WhichEnd::From : WhichEnd::To});
    case 8:
        return removeAny(job, {rows[random.below(3)]});
    case 9:
        return removeAny(job, {random.below(2) ? anyOf(random, job.cables) : anyOf(random, job.conductors)});
    case 10: {
        Splice splice{{numbers.take()}, nextSpliceTag(job), PlaceId{anyOf(random, job.places)}, "", 3};
        const std::uint32_t placement = numbers.take();
        return Change{{Put<Splice>{splice.id, splice},
                       Put<Placement>{{placement}, Placement{{placement}, sheet, splice.id, at, 0}}}};
    }
    case 11: {
        auto note = addNote(job, numbers, sheet, at, "two\nlines");
        return note.ok() ? Result<Change>(note.value().second) : Result<Change>(note.problem());
    }
    case 12:
        return pinBends(job, numbers, {anyOf(random, job.conductors)}, {at});
    default: {
        const Place* row = job.places.find({anyOf(random, job.places)});
        Place place = *row;
        place.isBox = !place.isBox;
        return Change{{Put<Place>{place.id, place}}};
    }
    }
}

std::vector<std::uint32_t> touchedBy(const Change& change)
{
    std::vector<std::uint32_t> rows;
    for (const Step& step : change.steps)
        rows.push_back(std::visit([](const auto& put) { return put.id.number; }, step));
    return rows;
}

// Every device stands on the sheet: where something without a placement goes depends on its history.
Job allPlaced()
{
    Job job = cabinetAndFrame();
    Numbers numbers(job);
    std::vector<std::uint32_t> devices;
    for (const Device& device : job.devices)
        devices.push_back(device.id.number);
    for (const Arranged& each : arranged(job, devices, {0, 0}))
        EXPECT_TRUE(
            applyChange(
                job,
                putOnSheet(job, numbers, job.sheets.begin()->id, DeviceId{each.number}, each.seat.at).value())
                .ok());
    return job;
}

TEST(CanvasDrawing, AfterAnEditIsWhatIsDrawnFromNothing)
{
    forEachSeed(60, [](Random& random) {
        Job job = allPlaced();
        Drawing kept(QFont(), Language::English);
        kept.show(job, {});
        for (int i = 0; i < 40; ++i) {
            const Result<Change> edit = anyEdit(random, job);
            if (!edit.ok())
                continue;
            const Job before = job;
            const Result<Change> undo = applyChange(job, edit.value());
            if (!undo.ok())
                continue;
            kept.refresh(job, {touchedBy(edit.value()), false, true});
            if (random.below(4) == 0) {
                ASSERT_TRUE(applyChange(job, undo.value()).ok());
                kept.refresh(job, {touchedBy(undo.value()), false, true});
            }
            Drawing anew(QFont(), Language::English);
            anew.show(job, {});
            ASSERT_EQ(contentsOf(kept), contentsOf(anew)) << "after edit " << i;
            const Area area{static_cast<int>(random.below(3000)), static_cast<int>(random.below(3000)), 4000,
                            3500};
            ASSERT_EQ(foundIn(kept, area), foundIn(anew, area)) << "after edit " << i;
        }
    });
}

TEST(CanvasDrawing, WhatWasDraggedAndPutBackIsAsBefore)
{
    forEachSeed(20, [](Random& random) {
        Job job = allPlaced();
        for (int i = 0; i < 30; ++i)
            if (const Result<Change> edit = anyEdit(random, job); edit.ok())
                static_cast<void>(applyChange(job, edit.value()));
        Drawing drawing(QFont(), Language::English);
        drawing.show(job, {});
        const auto before = contentsOf(drawing);
        std::vector<std::uint32_t> rows{anyOf(random, job.devices), anyOf(random, job.splices),
                                        anyOf(random, job.notes)};
        drawing.displace(job, rows, {250, -75});
        drawing.displace(job, rows, {500, 125});
        if (rows[0] != 0) {
            EXPECT_NE(contentsOf(drawing), before);
        }
        drawing.displace(job, {}, {});
        EXPECT_EQ(contentsOf(drawing), before);
    });
}

// What has to be painted again covers whatever changed.
TEST(CanvasDrawing, TheAreaToPaintAgainHoldsWhatWasThereAndWhatIs)
{
    forEachSeed(40, [](Random& random) {
        Job job = allPlaced();
        Drawing drawing(QFont(), Language::English);
        drawing.show(job, {});
        for (int i = 0; i < 20; ++i) {
            const Result<Change> edit = anyEdit(random, job);
            if (!edit.ok() || !applyChange(job, edit.value()).ok())
                continue;
            std::map<std::uint32_t, Area> before, after;
            const auto areas = [&](std::map<std::uint32_t, Area>& all) {
                for (const ConductorDrawn& each : drawing.conductors().all())
                    all[each.id.number] = each.area;
                for (const DeviceDrawn& each : drawing.devices().all())
                    all[each.id.number] = each.area;
                for (const CableDrawn& each : drawing.cables().all())
                    all[each.id.number] = each.area;
                for (const FrameDrawn& each : drawing.frames().all())
                    all[each.id.number] = each.area;
                all.erase(0);
            };
            areas(before);
            const Area changed = drawing.refresh(job, {touchedBy(edit.value()), false, true});
            areas(after);
            for (const auto& [number, area] : before)
                if (!after.contains(number) || !(after[number] == area)) {
                    EXPECT_TRUE(changed.holds(area)) << text(changed) << " " << text(area);
                }
            for (const auto& [number, area] : after)
                if (!before.contains(number) || !(before[number] == area)) {
                    EXPECT_TRUE(changed.holds(area)) << text(changed) << " " << text(area);
                }
        }
    });
}

} // namespace
} // namespace doorloom
