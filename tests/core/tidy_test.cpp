#include "core/jobs.h"
#include "edit/drawing.h"
#include "file/jobfile.h"
#include "sheet/area.h"
#include "sheet/doorsides.h"
#include "sheet/stripshape.h"
#include "sheet/tidy.h"

#include <gtest/gtest.h>

#include <map>

namespace doorloom {
namespace {

Job sample(const std::string& name)
{
    Result<Job> job = readJobFile(SOURCE_FOLDER "/samples/" + name + ".doorjob");
    EXPECT_TRUE(job.ok());
    return job.value();
}

// Everything heaped in one corner, as somebody who was in a hurry might.
void heap(Job& job)
{
    Change change;
    for (const Placement& placement : job.placements) {
        Placement heaped = placement;
        heaped.at = {1000, 1000};
        heaped.quarterTurns = 1;
        change.steps.emplace_back(Put<Placement>{heaped.id, heaped});
    }
    ASSERT_TRUE(applyChange(job, change).ok());
}

Job tidied(Job job)
{
    const Result<Change> change = tidySheets(job);
    EXPECT_TRUE(change.ok());
    EXPECT_TRUE(applyChange(job, change.value()).ok());
    return job;
}

Area areaOf(const Job& job, const Device& device)
{
    const Placement& at = *placementOf(job, device.id);
    const Facing facing = static_cast<Facing>(at.quarterTurns);
    return stripShape(*kindOf(job, device), {device.tag, {}, {}}, facing, Language::Spanish).area.movedBy(at.at);
}

std::map<std::string, Area> areasOf(const Job& job)
{
    std::map<std::string, Area> areas;
    for (const Device& device : job.devices)
        areas[device.tag] = areaOf(job, device);
    return areas;
}

TEST(Tidy, SetsDevicesOutWithoutOneOverAnother)
{
    for (const char* name : {"restroom-public", "restroom-staff", "archive-room", "yard-gate"}) {
        Job job = sample(name);
        heap(job);
        const std::map<std::string, Area> areas = areasOf(tidied(job));
        for (const auto& [tag, area] : areas)
            for (const auto& [other, its] : areas)
                EXPECT_TRUE(tag == other || !area.grownBy(2 * gridStep).meets(its)) << tag << " " << other;
    }
}

TEST(Tidy, SuppliesStandAboveTheLogicInTheirCabinetAndDoorsBesideIt)
{
    Job job = sample("restroom-public");
    heap(job);
    std::map<std::string, Area> areas = areasOf(tidied(job));

    EXPECT_EQ(areas["PS1"].left, areas["LM1"].left);
    EXPECT_LT(areas["PS1"].bottom, areas["LM1"].top);
    EXPECT_LT(areas["LM1"].right, areas["TSP"].left);
    for (const char* atTheDoor : {"ES1", "WO1", "PB1", "WI1"})
        EXPECT_LT(areas["TSP"].right, areas[atTheDoor].left) << atTheDoor;
}

TEST(Tidy, WhatIsOutsideADoorStandsBeforeItsFrameAndWhatIsInsideBehind)
{
    Job job = sample("restroom-public");
    const std::map<PlaceId, AtDoor> places = placesAtDoors(job);
    const auto sideOf = [&](const char* tag) { return places.at(deviceTagged(job, tag)->place).side; };
    ASSERT_EQ(sideOf("WO1"), DoorSide::Outside);
    ASSERT_EQ(sideOf("ES1"), DoorSide::Frame);
    ASSERT_EQ(sideOf("WI1"), DoorSide::Inside);

    heap(job);
    std::map<std::string, Area> areas = areasOf(tidied(job));
    const auto place = [&](const char* tag) { return std::pair(areas[tag].left, areas[tag].top); }; // column, row
    EXPECT_LT(place("WO1"), place("ES1"));
    EXPECT_LT(place("ES1"), place("WI1"));
}

TEST(Tidy, ASheetThatIsTidyIsLeftAloneAndItsHistoryDoesNotMatter)
{
    Job job = sample("archive-room");
    const Job once = tidied(job);
    EXPECT_TRUE(tidySheets(once).value().steps.empty());
    heap(job);
    EXPECT_EQ(areasOf(tidied(job)), areasOf(once));
}

TEST(Tidy, IsUndoneByOneChange)
{
    Job job = sample("yard-gate");
    heap(job);
    const Job before = job;
    const Result<Change> undo = applyChange(job, tidySheets(job).value());
    ASSERT_TRUE(undo.ok());
    EXPECT_FALSE(job == before);
    EXPECT_TRUE(verifyJob(job).empty());
    ASSERT_TRUE(applyChange(job, undo.value()).ok());
    EXPECT_TRUE(job == before);
}

TEST(Tidy, DrawsWhatWasOnNoSheetOnTheFirstOne)
{
    Job job = sample("yard-gate");
    Change none;
    for (const Placement& placement : job.placements)
        none.steps.emplace_back(Put<Placement>{placement.id, std::nullopt});
    for (const Sheet& sheet : job.sheets)
        none.steps.emplace_back(Put<Sheet>{sheet.id, std::nullopt});
    ASSERT_TRUE(applyChange(job, none).ok());

    const Job drawn = tidied(job);
    EXPECT_EQ(drawn.sheets.size(), 1u);
    EXPECT_EQ(drawn.placements.size(), drawn.devices.size() + drawn.splices.size());
    EXPECT_TRUE(tidySheets(Job{}).value().steps.empty()) << "nothing to draw, no sheet";
}

TEST(Tidy, TakesPinnedBendsAlongWhereBothEndsGoTogetherAndLetsTheOthersGo)
{
    Job job = tidied(sample("restroom-public"));
    const auto wireBetween = [&](const char* a, const char* b) {
        for (const Conductor& row : job.conductors) {
            const Landing* from = landingOf(row.from);
            const Landing* to = landingOf(row.to);
            if (from && to && tagOf(job, from->device) == a && tagOf(job, to->device) == b)
                return row.id;
        }
        throw std::runtime_error("there is no such wire");
    };
    const ConductorId kept = wireBetween("PS1", "TSP"), freed = wireBetween("TSP", "LM1");
    const std::map<std::string, Area> before = areasOf(job);
    Numbers numbers(job);
    for (const ConductorId wire : {kept, freed})
        ASSERT_TRUE(applyChange(job, pinBends(job, numbers, wire, {{1000, 1000}}).value()).ok());
    const auto drag = [&](const char* tag, Point by) {
        ASSERT_TRUE(applyChange(job, moveRows(job, {deviceTagged(job, tag)->id.number}, by).value()).ok());
    };
    drag("PS1", {500, 250});
    drag("TSP", {500, 250});
    Job again = tidied(job);

    EXPECT_EQ(areasOf(again), before);
    ASSERT_TRUE(bendsOf(again, kept));
    EXPECT_EQ(bendsOf(again, kept)->pinned, (std::vector<Point>{{500, 750}}));
    EXPECT_FALSE(bendsOf(again, freed));
}

TEST(Tidy, StacksNotesBelowInTheirOrder)
{
    Job job = sample("yard-gate");
    const SheetId sheet = job.sheets.begin()->id;
    Numbers numbers(job);
    for (const auto& [words, at] : {std::pair{"second\nwith a second line", Point{500, 600}}, {"first", {2000, 100}},
                                    {"third", {100, 5000}}})
        ASSERT_TRUE(applyChange(job, addNote(job, numbers, sheet, at, words).value().second).ok());
    const Job drawn = tidied(job);

    std::map<std::string, int> tops;
    for (const Note& note : drawn.notes)
        tops[note.words.substr(0, note.words.find('\n'))] = note.at.y;
    for (const auto& [tag, area] : areasOf(drawn))
        EXPECT_GT(tops["first"], area.bottom) << tag;
    EXPECT_GE(tops["second"], tops["first"] + 84);
    EXPECT_GE(tops["third"], tops["second"] + 128);
}

} // namespace
} // namespace doorloom
