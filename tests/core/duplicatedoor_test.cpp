#include "edit/duplicatedoor.h"

#include "edit/drawing.h"
#include "edit/openings.h"
#include "edit/references.h"
#include "edit/renumber.h"
#include "file/jobfile.h"

#include "desk.h"
#include "fulljob.h"

#include <algorithm>
#include <set>

namespace doorloom {

namespace {

Job restroom()
{
    const Result<Job> job = readJobFile(SOURCE_FOLDER "/samples/restroom-public.doorjob");
    if (!job.ok())
        throw std::runtime_error(inWords(job.problem()));
    return job.value();
}

std::set<std::string> tagsOf(const Job& job, const std::vector<DeviceId>& devices)
{
    std::set<std::string> tags;
    for (DeviceId device : devices)
        tags.insert(tagOf(job, device));
    return tags;
}

DuplicatedDoor duplicated(Desk& desk, OpeningId opening, const std::string& tag = {})
{
    const Result<DuplicatedDoor> made = duplicateDoor(desk.job(), desk.numbers(), opening, tag);
    if (!made.ok())
        throw std::runtime_error(inWords(made.problem()));
    desk.make(made.value().change);
    return made.value();
}

} // namespace

TEST(Renumber, ReachesEveryIdOfARow)
{
    const Job job = fullJob();
    Renumbering shifted;
    for (std::uint32_t number = 1; number < job.nextNumber; ++number)
        shifted[number] = number + 1000;
    forEachTable(job, [&](const char* name, const auto& rows) {
        for (auto row : rows) {
            std::vector<std::uint32_t> wanted = referencesOf(row);
            for (std::uint32_t& number : wanted)
                number += 1000;
            const std::uint32_t own = row.id.number;
            renumber(row, shifted);
            EXPECT_EQ(row.id.number, own + 1000) << name;
            EXPECT_EQ(referencesOf(row), wanted) << name;
        }
    });
}

TEST(DevicesOf, AreTheDoorsOwnWithoutItsSupply)
{
    const Job job = restroom();
    EXPECT_EQ(tagsOf(job, devicesOf(job, job.openings.begin()->id)),
              (std::set<std::string>{"LM1", "TSC", "TSR", "ES1", "WO1", "PB1", "OL1", "WI1", "DPS1", "DO1"}))
        << "PS1, the strips of its poles and the earth bar are everybody's";
}

TEST(DevicesOf, LeavesOutWhatLeadsToASupplyAlongTheWay)
{
    SmallSite site;
    Opening door;
    door.tag = "114";
    door.locks = {site.strike};
    const OpeningId id = site.make(addOpening(site.job(), site.numbers(), door)).first;
    site.device("TS1", catalogueKind("terminal-strip-8"), site.frame);
    site.device("TS2", catalogueKind("terminal-strip-8"), site.frame);
    site.device("OL1", catalogueKind("lamp"), site.frame);
    for (const auto& [a, b] : {std::pair("ES1:1", "TS1:1"), std::pair("TS1:2", "TS2:1"),
                               std::pair("TS2:2", "PS1:+"), std::pair("ES1:2", "OL1:+")})
        site.make(
            addWire(site.job(), site.numbers(), endNamed(site.job(), a), endNamed(site.job(), b)).second);
    EXPECT_EQ(tagsOf(site.job(), devicesOf(site.job(), id)), (std::set<std::string>{"ES1", "OL1"}));
}

TEST(DuplicateDoor, DrawsTheDoorAgainUnderTheNextTags)
{
    Desk desk(restroom());
    const OpeningId first = desk.job().openings.begin()->id;
    const DuplicatedDoor made = duplicated(desk, first);
    const Opening& copy = *desk.job().openings.find(made.opening);
    const Opening& original = *desk.job().openings.find(first);
    EXPECT_EQ(copy.tag, "115");
    EXPECT_EQ(nameOf(desk.job(), copy.door), "D115");
    EXPECT_EQ(tagOf(desk.job(), copy.locks.front()), "ES2");
    EXPECT_EQ(copy.promises.size(), original.promises.size());
    EXPECT_EQ(nameOf(desk.job(), copy.occupied.front().moved), "LM2:K1");
    EXPECT_EQ(desk.drawn(conductorNamed(desk.job(), "LM2:K1.C → ES2:1")).substr(0, 3), "W8.");
    EXPECT_EQ(desk.job().sheets.size(), 2u);
    EXPECT_EQ(sheetsInOrder(desk.job()).back()->title, "Door 115");
    EXPECT_EQ(placementOf(desk.job(), deviceTagged(desk.job(), "ES2")->id)->at,
              placementOf(desk.job(), deviceTagged(desk.job(), "ES1")->id)->at);
}

TEST(DuplicateDoor, SharesTheSupplyAndSaysWhatWaits)
{
    Desk desk(restroom());
    const DuplicatedDoor made = duplicated(desk, desk.job().openings.begin()->id);
    EXPECT_FALSE(deviceTagged(desk.job(), "PS2"));
    EXPECT_EQ(deviceTagged(desk.job(), "LM2")->place, deviceTagged(desk.job(), "LM1")->place)
        << "the same cabinet";
    EXPECT_NE(deviceTagged(desk.job(), "ES2")->place, deviceTagged(desk.job(), "ES1")->place);
    std::set<std::string> waiting;
    for (const Message& line : made.leftWaiting)
        waiting.insert(inWords(line));
    EXPECT_EQ(waiting,
              (std::set<std::string>{"B7 waits: B3 is on TSP:2.", "B8 waits: B4 is on TSN:2.",
                                     "W9.1 waits: W2.1 is on TSN:3.", "W9.3 waits: W2.3 is on TSP:3.",
                                     "W9.7 waits: W2.7 is on PE1:1.", "W12.1 waits: W5.1 is on TSP:4.",
                                     "W12.2 waits: W5.2 is on TSN:4."}));
}

TEST(DuplicateDoor, TakesATagThatIsFree)
{
    Desk desk(restroom());
    const OpeningId first = desk.job().openings.begin()->id;
    EXPECT_EQ(refusal(duplicateDoor(desk.job(), desk.numbers(), first, "114")),
              "114: The tag '114' is another opening's already. Choose one that is free.");
    EXPECT_EQ(desk.job().openings.find(duplicated(desk, first, "201").opening)->tag, "201");
    EXPECT_FALSE(duplicateDoor(desk.job(), desk.numbers(), {9999}).ok());
}

TEST(DuplicateDoor, OfACopyIsAsLargeAsTheCopy)
{
    Desk desk(restroom());
    OpeningId last = desk.job().openings.begin()->id;
    std::size_t rows = 0;
    for (int door = 0; door < 3; ++door) {
        const DuplicatedDoor made = duplicated(desk, last);
        EXPECT_TRUE(rows == 0 || made.rows.size() == rows);
        rows = made.rows.size();
        last = made.opening;
    }
    EXPECT_EQ(desk.job().openings.find(last)->tag, "117");
}

} // namespace doorloom
