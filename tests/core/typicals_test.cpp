#include "edit/typicals.h"

#include "edit/details.h"
#include "edit/drawing.h"
#include "edit/duplicatedoor.h"
#include "edit/openings.h"
#include "edit/references.h"
#include "edit/renumber.h"
#include "file/changefile.h"
#include "file/jobfile.h"

#include "desk.h"
#include "random.h"

#include <algorithm>
#include <functional>
#include <set>

namespace doorloom {

namespace {

Job sampleNamed(const std::string& name)
{
    const Result<Job> job = readJobFile(SOURCE_FOLDER "/samples/" + name + ".doorjob");
    if (!job.ok())
        throw std::runtime_error(inWords(job.problem()));
    return job.value();
}

// A sample whose only door is a typical with stamps, supply and earth bar with it.
struct Floor : Desk {
    explicit Floor(int doors, const Numbering& numbering = {}, const std::string& sample = "restroom-public")
        : Desk(sampleNamed(sample))
    {
        std::vector<DeviceId> also;
        for (const Device& device : job().devices)
            also.push_back(device.id);
        typical = make(markTypical(job(), numbers(), job().openings.begin()->id, "room", also)).first;
        if (doors > 0)
            stamped = make(stampTypical(job(), numbers(), typical, doors, numbering)).doors;
    }

    DeviceId device(const std::string& tag) const { return deviceTagged(job(), tag)->id; }
    CableId cableTagged(const std::string& tag) const
    {
        for (const Cable& cable : job().cables)
            if (cable.tag == tag)
                return cable.id;
        throw std::runtime_error(tag);
    }
    const Stamp& stampAt(std::size_t door) const { return *job().stamps.find(stamped[door].stamp); }
    Renumbering copiesIn(std::size_t door) const
    {
        return {stampAt(door).rows.begin(), stampAt(door).rows.end()};
    }
    DoorChanges changes() const
    {
        Numbers take(job());
        const Result<DoorChanges> found = changesForStamps(job(), take, typical);
        if (!found.ok())
            throw std::runtime_error(inWords(found.problem()));
        return found.value();
    }
    std::vector<StampId> allStamps() const
    {
        std::vector<StampId> all;
        for (const StampedDoor& door : stamped)
            all.push_back(door.stamp);
        return all;
    }
    void bringUpAll() { make(chosenDoors(job(), changes(), allStamps())); }

    TypicalId typical;
    std::vector<StampedDoor> stamped;
};

std::vector<std::string> linesOf(const DoorChange& door, DoorLineSort sort)
{
    std::vector<std::string> words;
    for (const DoorLine& line : door.lines)
        if (line.sort == sort)
            words.push_back(inWords(line.words));
    return words;
}

using Lines = std::vector<std::string>;

// But for who is a typical and who is its stamp.
Job withoutTypicals(const Job& job)
{
    Job bare = job;
    Change change;
    for (const Stamp& stamp : job.stamps)
        change.steps.push_back(Put<Stamp>{stamp.id, std::nullopt});
    for (const Typical& typical : job.typicals)
        change.steps.push_back(Put<Typical>{typical.id, std::nullopt});
    EXPECT_TRUE(applyChange(bare, change).ok());
    return bare;
}

} // namespace

TEST(MarkTypical, ListsAllThatTheDoorHasForItself)
{
    Desk desk(sampleNamed("restroom-public"));
    const OpeningId door = desk.job().openings.begin()->id;
    const TypicalId id = desk.make(markTypical(desk.job(), desk.numbers(), door)).first;
    const Typical& typical = *desk.job().typicals.find(id);
    EXPECT_EQ(typical.name, "public restroom for one person, normally unlocked");
    EXPECT_EQ(openingOf(desk.job(), typical), door);
    const std::set<std::uint32_t> rows(typical.rows.begin(), typical.rows.end());
    EXPECT_TRUE(rows.count(deviceTagged(desk.job(), "LM1")->id.number));
    EXPECT_FALSE(rows.count(deviceTagged(desk.job(), "PS1")->id.number))
        << "a supply is everybody's, unless said";
    EXPECT_EQ(
        refusal(markTypical(desk.job(), desk.numbers(), door)),
        "114: 114 belongs to the typical 'public restroom for one person, normally unlocked' already. Choose "
        "another opening, or duplicate this one first.");
}

TEST(MarkTypical, IsNamedUnlikeAnyOther)
{
    Desk desk(sampleNamed("restroom-public"));
    desk.make(duplicateDoor(desk.job(), desk.numbers(), desk.job().openings.begin()->id));
    for (const Opening& door : Table<Opening>(desk.job().openings))
        desk.make(markTypical(desk.job(), desk.numbers(), door.id, "door"));
    std::set<std::string> names;
    for (const Typical& typical : desk.job().typicals)
        names.insert(typical.name);
    EXPECT_EQ(names, (std::set<std::string>{"door", "door (115)"}));
}

TEST(MarkTypical, LetsItsRowsBeDrawnAndTakenOffLikeAnyOther)
{
    Floor floor(1);
    const std::uint32_t strike = floor.device("ES1").number;
    floor.make(takeOffSheet(floor.job(), {strike}));
    EXPECT_FALSE(placementOf(floor.job(), strike));
    floor.make(unmarkTypical(floor.job(), floor.typical));
    EXPECT_TRUE(floor.job().stamps.empty());
    EXPECT_EQ(floor.job().openings.size(), 2u);
}

TEST(StampTypical, DrawsManyDoorsUnderTagsThatAreCountedOn)
{
    const Floor floor(3);
    ASSERT_EQ(floor.stamped.size(), 3u);
    EXPECT_EQ(floor.job().cables.find({floor.copiesIn(0).at(floor.cableTagged("W2").number)})->pull, "115-outside")
        << "a pull without the door's tag gets it";
    EXPECT_EQ(floor.stamped[0].tag, "115");
    EXPECT_EQ(floor.stamped[2].tag, "117");
    EXPECT_TRUE(deviceTagged(floor.job(), "ES4"));
    EXPECT_TRUE(deviceTagged(floor.job(), "PS4"));
    EXPECT_EQ(floor.job().devices.size(), 4 * sampleNamed("restroom-public").devices.size());
    EXPECT_EQ(floor.job().sheets.size(), 4u);
    std::set<std::string> places;
    for (const Place& place : floor.job().places)
        EXPECT_TRUE(places.insert(place.tag).second) << place.tag;
    for (const Conductor& conductor : floor.job().conductors)
        EXPECT_TRUE(conductor.from.state != EndState::Waiting && conductor.to.state != EndState::Waiting)
            << conductor.tag << ": all that the typical is landed on was stamped with it";
}

TEST(StampTypical, GivesEachDoorsTagToAllThatIsItsOwn)
{
    const Floor floor(2, {"201", "{door}-{tag}"});
    EXPECT_EQ(floor.stamped[1].tag, "202");
    EXPECT_EQ(nameOf(floor.job(), floor.job().openings.find(floor.stamped[1].opening)->door), "D202");
    EXPECT_EQ(sheetsInOrder(floor.job()).back()->title, "Door 202");
    EXPECT_TRUE(deviceTagged(floor.job(), "202-ES1"));
    EXPECT_EQ(floor.job().cables.find({floor.copiesIn(1).at(floor.cableTagged("W1").number)})->tag, "202-W1");
    EXPECT_NE(std::ranges::find(floor.stamped[0].deviceTags, "201-LM1"), floor.stamped[0].deviceTags.end());
    std::set<std::string> cores;
    for (const Conductor* core : coresOf(floor.job(), floor.cableTagged("201-W1")))
        cores.insert(core->tag);
    EXPECT_EQ(cores, (std::set<std::string>{"201-W1.1", "201-W1.2"}));
}

TEST(StampTypical, TakesTheTypicalsOwnDoorOutOfATagBeforeTheNewOneComes)
{
    Floor floor(1, {"201", "{door}/{tag}"});
    floor.make(unmarkTypical(floor.job(), floor.typical));
    const TypicalId second =
        floor.make(markTypical(floor.job(), floor.numbers(), floor.stamped[0].opening, "again")).first;
    floor.make(stampTypical(floor.job(), floor.numbers(), second, 1, {"301", "{door}/{tag}"}));
    EXPECT_TRUE(deviceTagged(floor.job(), "301/ES1"));
}

TEST(StampTypical, SpeaksOfItsOwnDoorInWordsAndPulls)
{
    Floor floor(0);
    floor.make(setWords(floor.job(), floor.device("ES1"), "strike of 114, not of 1140 or B114"));
    Cable foreign;
    foreign.tag = "W90";
    foreign.type = floor.job().cables.find(floor.cableTagged("W1"))->type;
    foreign.from = floor.job().devices.find(floor.device("LM1"))->place;
    foreign.to = floor.job().devices.find(floor.device("ES1"))->place;
    foreign.pull = "head"; // of no door, in one pull with W6 and W7
    floor.make(pullCable(floor.job(), floor.numbers(), foreign).second);
    floor.stamped =
        floor.make(stampTypical(floor.job(), floor.numbers(), floor.typical, 2, {"201", "{door}-{tag}"})).doors;
    const auto pullOf = [&](const std::string& cable) {
        return floor.job().cables.find(floor.cableTagged(cable))->pull;
    };
    EXPECT_EQ(deviceTagged(floor.job(), "202-ES1")->words, "strike of 202, not of 1140 or B114");
    EXPECT_EQ(pullOf("202-W2"), "202-outside");
    EXPECT_EQ(pullOf("202-W4"), "202-outside") << "what goes together in one door goes together in the other";
    EXPECT_EQ(pullOf("202-W7"), "head") << "other cables are in that pull too";
    EXPECT_TRUE(floor.changes().doors[1].lines.empty());

    floor.make(setCablePull(floor.job(), floor.cableTagged("W4"), "inside"));
    floor.make(setWords(floor.job(), floor.device("ES1"), "quiet strike of 114"));
    EXPECT_EQ(linesOf(floor.changes().doors[1], DoorLineSort::Becomes),
              (Lines{"202-ES1: words 'quiet strike of 202', was 'strike of 202, not of 1140 or B114'.",
                     "202-W4: pull '202-inside', was '202-outside'."}));
    floor.bringUpAll();
    EXPECT_EQ(pullOf("202-W4"), "202-inside");
}

TEST(StampTypical, RefusesWhatCannotBe)
{
    Floor floor(0);
    const auto stamped = [&](int count, const Numbering& numbering) {
        return refusal(stampTypical(floor.job(), floor.numbers(), floor.typical, count, numbering));
    };
    EXPECT_EQ(stamped(0, {}), "0 doors can't be stamped. Stamp from 1 to 200 at once.");
    EXPECT_EQ(stamped(201, {}), "201 doors can't be stamped. Stamp from 1 to 200 at once.");
    EXPECT_EQ(stamped(1, {"114", {}}),
              "114: The tag '114' is another opening's already. Choose one that is free.");
    EXPECT_EQ(stamped(1, {{}, "{door}"}), "{door}: '{door}' is no pattern for tags. Write one such as "
                                          "'{door}-{tag}', without blanks, quotes or "
                                          "':'.");
    floor.make(removeOpening(floor.job(), floor.job().openings.begin()->id));
    EXPECT_EQ(stamped(1, {}),
              "room: The opening of the typical 'room' is not in the job any more. Undo its removal, "
              "or mark another opening as a typical.");
}

TEST(StampTypical, IsKeptByTheFileWithWhatTheTypicalWas)
{
    Floor floor(2, {"201", "{door}-{tag}"});
    floor.make(setWords(floor.job(), floor.device("ES1"), "another strike"));
    const std::string text = jobText(floor.job());
    EXPECT_EQ(text.find("\"doorloom\":2"), 2u);
    const Result<Job> read = readJob(text, "x.doorjob");
    ASSERT_TRUE(read.ok()) << inWords(read.problem());
    EXPECT_EQ(read.value(), floor.job());
    EXPECT_EQ(jobText(withoutTypicals(floor.job())).find("\"doorloom\":1"), 2u)
        << "a job without typicals is read by older versions too";
}

TEST(StampTypical, IsKeptByTheJournalToo)
{
    Floor floor(0);
    const Change stamping = stampTypical(floor.job(), floor.numbers(), floor.typical, 2).value().change;
    const Result<Change> read = readChange(changeText(stamping), "x.journal");
    ASSERT_TRUE(read.ok()) << inWords(read.problem());
    EXPECT_TRUE(read.value() == stamping);
}

// ---- Changing it once

TEST(ChangesForStamps, AreNoneWhereTheTypicalIsAsItWas)
{
    for (const char* sample : {"restroom-public", "restroom-staff", "archive-room", "yard-gate"}) {
        const Floor floor(3, {}, sample);
        for (const DoorChange& door : floor.changes().doors) {
            EXPECT_TRUE(door.change.steps.empty()) << sample;
            EXPECT_TRUE(door.lines.empty()) << sample << ": " << inWords(door.lines.front().words);
        }
        EXPECT_TRUE(chosenDoors(floor.job(), floor.changes(), floor.allStamps()).steps.empty());
    }
}

TEST(ChangesForStamps, SayBeforehandWhatTheyDo)
{
    Floor floor(2);
    floor.make(setWords(floor.job(), floor.device("ES1"), "silent strike"));
    floor.make(setSetting(floor.job(), floor.device("WO1"), "range", 6.0));
    floor.make(setCableLength(floor.job(), floor.cableTagged("W1"), {12}));
    const DoorChanges changes = floor.changes();
    EXPECT_EQ(linesOf(changes.doors[1], DoorLineSort::Becomes),
              (Lines{"ES3: words 'silent strike', was 'locked only while powered'.",
                     "W15: length 12 m, was 9.5 m.", "WO3: setting range 6, was 4."}));
    EXPECT_EQ(changes.doors[1].tag, "116");
    EXPECT_EQ(inWords(changes.doors[1].lines[0].words, Language::Spanish),
              "ES3: descripción 'silent strike', antes 'locked only while powered'.");
    floor.bringUpAll();
    EXPECT_EQ(deviceTagged(floor.job(), "ES3")->words, "silent strike");
    EXPECT_TRUE(floor.changes().doors[0].lines.empty()) << "all doors are up to date";
    EXPECT_EQ(floor.job().typicals.begin()->editions.size(), 1u) << "what no door is at is forgotten";
}

TEST(ChangesForStamps, KeepADoorsOwnExceptionsAndSayWhatTheTypicalWouldHave)
{
    Floor floor(2);
    floor.make(setCableLength(floor.job(), floor.cableTagged("W8"), {21})); // a longer way in the first door
    floor.make(setWords(floor.job(), floor.device("ES2"), "left hand"));
    floor.make(setWords(floor.job(), floor.device("ES1"), "silent strike")); // the typical
    const DoorChanges changes = floor.changes();
    EXPECT_EQ(linesOf(changes.doors[0], DoorLineSort::Own),
              (Lines{"W8: length is 21 m here; the typical has 9.5 m."}));
    EXPECT_EQ(
        linesOf(changes.doors[0], DoorLineSort::Conflict),
        (Lines{
            "ES2: words is 'left hand' here and stays; the typical goes from 'locked only while powered' to "
            "'silent strike'."}));
    EXPECT_TRUE(linesOf(changes.doors[0], DoorLineSort::Becomes).empty());
    EXPECT_EQ(changes.doors[1].lines.size(), 1u);
    floor.bringUpAll();
    EXPECT_EQ(deviceTagged(floor.job(), "ES2")->words, "left hand");
    EXPECT_EQ(deviceTagged(floor.job(), "ES3")->words, "silent strike");
    EXPECT_EQ(floor.job().cables.find(floor.cableTagged("W8"))->length.value, 21);
    EXPECT_EQ(linesOf(floor.changes().doors[0], DoorLineSort::Own).size(), 2u)
        << "what the door keeps is never forgotten";
}

TEST(ChangesForStamps, LeaveADeviceWhereADoorHasMovedIt)
{
    Floor floor(2);
    const auto at = [&](const std::string& tag) { return placementOf(floor.job(), floor.device(tag).number)->at; };
    const Point drawn = at("ES1");
    floor.make(moveRows(floor.job(), {floor.device("ES2").number}, {0, 400}));
    floor.make(moveRows(floor.job(), {floor.device("ES1").number}, {100, 0}));
    const DoorChanges changes = floor.changes();
    EXPECT_EQ(changes.doors[0].count(DoorLineSort::Conflict), 1);
    EXPECT_EQ(changes.doors[1].count(DoorLineSort::Becomes), 1);
    floor.bringUpAll();
    EXPECT_EQ(at("ES2"), (Point{drawn.x, drawn.y + 400}));
    EXPECT_EQ(at("ES3"), (Point{drawn.x + 100, drawn.y}));
}

TEST(ChangesForStamps, WaitForTheDoorsThatWereNotChosen)
{
    Floor floor(2);
    floor.make(setWords(floor.job(), floor.device("ES1"), "first"));
    floor.make(chosenDoors(floor.job(), floor.changes(), {floor.stamped[0].stamp}));
    floor.make(setWords(floor.job(), floor.device("ES2"), "own")); // since, by hand
    const DoorChanges later = floor.changes();
    EXPECT_EQ(linesOf(later.doors[0], DoorLineSort::Own).size(), 1u)
        << "it took the change before, then its own";
    EXPECT_EQ(linesOf(later.doors[0], DoorLineSort::Conflict).size(), 0u);
    EXPECT_EQ(linesOf(later.doors[1], DoorLineSort::Becomes).size(), 1u);
    floor.bringUpAll();
    EXPECT_EQ(deviceTagged(floor.job(), "ES2")->words, "own");
    EXPECT_EQ(deviceTagged(floor.job(), "ES3")->words, "first");
}

TEST(ChangesForStamps, BringNewDevicesCablesAndCoresUnderEachDoorsTags)
{
    Floor floor(2, {"201", "{door}-{tag}"});
    floor.Desk::device("SD1", catalogueKind("sounder"), floor.job().devices.find(floor.device("ES1"))->place);
    const DeviceId sounder = floor.device("SD1");
    Cable cable;
    cable.tag = "W9";
    cable.type = floor.job().cables.find(floor.cableTagged("W1"))->type;
    cable.from = floor.job().devices.find(floor.device("LM1"))->place;
    cable.to = floor.job().devices.find(sounder)->place;
    const auto [id, pull] = pullCable(floor.job(), floor.numbers(), cable);
    floor.make(pull);
    const Key plus = terminalsOf(*kindOf(floor.job(), sounder))[0]->key;
    const std::vector<const Conductor*> cores = coresOf(floor.job(), id);
    const ConductorId core = cores[0]->id;
    floor.make(
        setEnd(floor.job(), core, WhichEnd::From, {EndState::Landed, Landing{floor.device("TSP"), "5"}}));
    floor.make(setEnd(floor.job(), core, WhichEnd::To, {EndState::Landed, Landing{sounder, plus}}));

    const DoorChanges changes = floor.changes();
    EXPECT_EQ(linesOf(changes.doors[1], DoorLineSort::Becomes),
              (Lines{"device 202-SD1 is added.", "cable 202-W9 is added."}));
    floor.bringUpAll();
    const Device* again = deviceTagged(floor.job(), "202-SD1");
    ASSERT_TRUE(again);
    EXPECT_EQ(again->place, floor.job().devices.find(floor.device("202-ES1"))->place);
    const std::vector<const Conductor*> landed = conductorsOn(floor.job(), again->id);
    ASSERT_EQ(landed.size(), 1u);
    EXPECT_EQ(landed[0]->tag, "202-W9.1");
    EXPECT_EQ(nameOf(floor.job(), *landingOf(landed[0]->from)), "202-TSP:5");
    EXPECT_TRUE(floor.changes().doors[0].lines.empty());
}

TEST(ChangesForStamps, TakeAwayWhatTheTypicalNoLongerHas)
{
    Floor floor(2);
    floor.make(setWords(floor.job(), floor.device("OL3"), "seen from the stairs")); // the second door's own
    floor.make(removeDevice(floor.job(), floor.device("OL1")));
    floor.make(removeCable(floor.job(), floor.cableTagged("W4")));
    const DoorChanges changes = floor.changes();
    EXPECT_EQ(linesOf(changes.doors[0], DoorLineSort::Becomes),
              (Lines{"device OL2 goes.", "cable W11 goes."}));
    EXPECT_EQ(
        linesOf(changes.doors[1], DoorLineSort::Conflict),
        (Lines{"device OL3 is gone from the typical; here OL3 has something of its own on it, so it stays.",
               "cable W18 is gone from the typical; here OL3 has something of its own on it, so it stays."}));
    floor.bringUpAll();
    EXPECT_FALSE(deviceTagged(floor.job(), "OL2"));
    EXPECT_EQ(floor.job().places.size(), 18u) << "its place is empty, as the typical's is";
    ASSERT_TRUE(deviceTagged(floor.job(), "OL3"));
    EXPECT_EQ(conductorsOn(floor.job(), floor.device("OL3")).size(), 3u);
}

TEST(ChangesForStamps, TakeNothingOffADeviceThatStays)
{
    Floor floor(1);
    floor.make(setWords(floor.job(), floor.device("OL2"), "seen from the stairs"));
    floor.make(removeDevice(floor.job(), floor.device("OL1"))); // its cable stays, waiting
    const DoorChange door = floor.changes().doors[0];
    EXPECT_EQ(door.count(DoorLineSort::Becomes), 0);
    const Lines conflicts = linesOf(door, DoorLineSort::Conflict);
    ASSERT_EQ(conflicts.size(), 4u);
    EXPECT_EQ(conflicts[0], "W11.1: second end is OL2:COM here and stays; the typical goes from OL2:COM to waiting.");
    floor.bringUpAll();
    EXPECT_EQ(conductorsOn(floor.job(), floor.device("OL2")).size(), 3u);
}

TEST(ChangesForStamps, KeepWhatADoorWasDrawnOnToWhatGoes)
{
    Floor floor(1);
    floor.make(addWire(floor.job(), floor.numbers(), {EndState::Landed, Landing{floor.device("OL2"), "RED"}},
                       {EndState::Landed, Landing{floor.device("TSR2"), "6"}}, "X1")
                   .second);
    floor.make(removeDevice(floor.job(), floor.device("OL1")));
    floor.bringUpAll();
    EXPECT_TRUE(deviceTagged(floor.job(), "OL2")) << "a wire of the door's own is landed on it";
}

TEST(ChangesForStamps, LeaveOutWhatADoorHasTakenAway)
{
    Floor floor(1);
    floor.make(removeDevice(floor.job(), floor.device("OL2")));
    EXPECT_EQ(linesOf(floor.changes().doors[0], DoorLineSort::Own).front(),
              "device OL1 of the typical has been taken away here.");
    floor.make(setWords(floor.job(), floor.device("OL1"), "amber"));
    const DoorChanges changes = floor.changes();
    EXPECT_EQ(linesOf(changes.doors[0], DoorLineSort::Conflict),
              (Lines{"device OL1 has changed in the typical, and has been taken away here."}));
    floor.bringUpAll();
    EXPECT_FALSE(deviceTagged(floor.job(), "OL2"));
}

TEST(ChangesForStamps, KnowThePlaceThatTheTypicalsLastDeviceHasLeft)
{
    Floor floor(1);
    const PlaceId frame = floor.job().devices.find(floor.device("ES1"))->place;
    floor.make(setPlace(floor.job(), {floor.device("ES1").number},
                        floor.job().devices.find(floor.device("OL1"))->place));
    floor.bringUpAll();
    EXPECT_TRUE(floor.changes().doors[0].lines.empty());
    EXPECT_TRUE(floor.copiesIn(0).count(frame.number)) << "cables end there still";
}

TEST(ChangesForStamps, LeaveToTheHandWhatDoorsShare)
{
    Desk desk(sampleNamed("restroom-public"));
    const TypicalId typical =
        desk.make(markTypical(desk.job(), desk.numbers(), desk.job().openings.begin()->id)).first;
    desk.make(stampTypical(desk.job(), desk.numbers(), typical, 1));
    const auto changes = [&] {
        return changesForStamps(desk.job(), desk.numbers(), typical).value().doors[0];
    };
    // Landed by hand, which is no exception.
    desk.make(setEnd(desk.job(), conductorNamed(desk.job(), "waiting → LM2:+"), WhichEnd::From,
                     endNamed(desk.job(), "TSP:7")));
    EXPECT_TRUE(changes().lines.empty());
    // From one pole of the shared strip to another of its terminals: nobody knows where this door should go.
    desk.make(setEnd(desk.job(), conductorNamed(desk.job(), "TSP:2 → LM1:+"), WhichEnd::From,
                     endNamed(desk.job(), "TSN:8")));
    EXPECT_EQ(linesOf(changes(), DoorLineSort::Conflict),
              (Lines{"B7: first end is TSP:7 here and stays; the typical goes from TSP:2 to TSN:8."}));
    desk.make(setEnd(desk.job(), conductorNamed(desk.job(), "TSN:2 → LM1:-"), WhichEnd::From,
                     endNamed(desk.job(), "TSP:8")));
    EXPECT_EQ(linesOf(changes(), DoorLineSort::ByHand), (Lines{"B8 waits: B4 is on TSP:8."}));
}

TEST(ChangesForStamps, SayWhichRowCannotBeAsTheTypicalIs)
{
    Floor floor(1);
    const DeviceId own = floor.device("OL2");
    const KindSwap other = floor.make(setKind(floor.job(), floor.numbers(), own, [&] {
        Kind kind = *kindOf(floor.job(), own);
        kind.name = "lamp-of-another-make";
        return kind;
    }()));
    EXPECT_TRUE(other.leftBehind.empty());
    EXPECT_EQ(linesOf(floor.changes().doors[0], DoorLineSort::Own).size(), 1u);
    floor.make(setKind(floor.job(), floor.numbers(), floor.device("OL1"), [&] {
        Kind kind = *kindOf(floor.job(), floor.device("OL1"));
        kind.name = "lamp-of-a-third-make";
        return kind;
    }()));
    const DoorChange door = floor.changes().doors[0];
    EXPECT_EQ(
        linesOf(door, DoorLineSort::Conflict),
        (Lines{"OL2: kind is lamp-of-another-make here and stays; the typical goes from lamp-common-plus to "
               "lamp-of-a-third-make."}));
}

TEST(ChangesForStamps, KnowNothingOfTheTypicalBeforeWithoutAnEdition)
{
    Floor floor(1);
    Stamp old = floor.stampAt(0);
    old.edition = 0;
    floor.make(Change{{Put<Stamp>{old.id, old}}});
    floor.make(setWords(floor.job(), floor.device("ES1"), "silent strike"));
    EXPECT_EQ(linesOf(floor.changes().doors[0], DoorLineSort::Own),
              (Lines{"ES2: words is 'locked only while powered' here; the typical has 'silent strike'."}));
}

// ---- Properties

namespace {

// An edit that can be made on the typical's row, and on a stamp's in the same way.
using Edit = std::function<std::optional<Change>(const Job&, const Renumbering&)>;

std::uint32_t mapped(const Renumbering& to, std::uint32_t row)
{
    const auto found = to.find(row);
    return found == to.end() ? row : found->second;
}

std::optional<Change> taken(const Result<Change>& change)
{
    return change.ok() ? std::optional(change.value()) : std::nullopt;
}

template <class Row> std::uint32_t someOf(const Job& job, const Typical& typical, Random& random)
{
    std::vector<std::uint32_t> rows;
    for (std::uint32_t row : typical.rows)
        if (tableOf<Row>(job).find({row}))
            rows.push_back(row);
    return random.oneOf(rows);
}

Edit randomEdit(const Job& job, const Typical& typical, Random& random)
{
    const std::uint32_t device = someOf<Device>(job, typical, random),
                        other = someOf<Device>(job, typical, random),
                        cable = someOf<Cable>(job, typical, random),
                        conductor = someOf<Conductor>(job, typical, random),
                        place = someOf<Place>(job, typical, random),
                        opening = someOf<Opening>(job, typical, random);
    const std::string word = "word " + std::to_string(random.below(1000));
    const double metres = random.between(1, 90);
    const Point by{random.between(-300, 300), random.between(-300, 300)};
    const auto which = random.oneIn(2) ? WhichEnd::From : WhichEnd::To;
    switch (random.below(9)) {
    case 0:
        return [=](const Job& on, const Renumbering& to) {
            return taken(setWords(on, {mapped(to, device)}, word));
        };
    case 1:
        return [=](const Job& on, const Renumbering& to) {
            return taken(setCableLength(on, {mapped(to, cable)}, {metres}));
        };
    case 2:
        return [=](const Job& on, const Renumbering& to) {
            return taken(setPlace(on, {mapped(to, device)}, {mapped(to, place)}));
        };
    case 3:
        return [=](const Job& on, const Renumbering& to) {
            return taken(moveRows(on, {mapped(to, device)}, by));
        };
    case 4:
        return [=](const Job& on, const Renumbering& to) {
            return std::optional(
                setStanding(on, {mapped(to, device), mapped(to, cable)}, Standing::Existing));
        };
    case 5: {
        const Kind& kind = *kindOf(job, DeviceId{other});
        const Key terminal = random.oneOf(terminalsOf(kind))->key;
        return [=](const Job& on, const Renumbering& to) {
            return taken(setEnd(on, {mapped(to, conductor)}, which,
                                {EndState::Landed, Landing{{mapped(to, other)}, terminal}}));
        };
    }
    case 6:
        return [=](const Job& on, const Renumbering& to) {
            return taken(setEnd(on, {mapped(to, conductor)}, which, {EndState::Spare, {}}));
        };
    case 7:
        return [=](const Job& on, const Renumbering& to) -> std::optional<Change> {
            Opening row = *on.openings.find({mapped(to, opening)});
            if (row.promises.empty())
                return std::nullopt;
            return taken(setPromise(on, row.id, row.promises.front().situation, row.promises.front().device,
                                    metres > 45 ? Promised::Nothing : Promised::FreeButLatched));
        };
    default:
        return [=](const Job& on, const Renumbering& to) -> std::optional<Change> {
            Place row = *on.places.find({mapped(to, place)});
            row.words = word;
            return taken(alterPlace(on, row));
        };
    }
}

} // namespace

TEST(ChangesForStamps, AreTheSameEditsAsByHandInEachDoor)
{
    forEachSeed(60, [](Random& random) {
        Floor floor(2, {}, random.oneIn(2) ? "restroom-public" : "archive-room");
        Floor byHand = floor;
        for (int edits = random.between(1, 6); edits > 0; --edits) {
            const Edit edit = randomEdit(floor.job(), *floor.job().typicals.find(floor.typical), random);
            const std::optional<Change> change = edit(floor.job(), {});
            if (!change)
                continue;
            floor.make(*change);
            byHand.make(*change);
            for (std::size_t door = 0; door < 2; ++door)
                byHand.make(*edit(byHand.job(), byHand.copiesIn(door)));
        }
        floor.bringUpAll();
        EXPECT_EQ(withoutTypicals(floor.job()), withoutTypicals(byHand.job()));
        for (const DoorChange& door : floor.changes().doors)
            EXPECT_TRUE(door.lines.empty()) << inWords(door.lines.front().words);
    });
}

TEST(ChangesForStamps, NeverTouchARowThatTheTypicalDidNot)
{
    forEachSeed(60, [](Random& random) {
        Floor floor(1);
        const auto edits = [&](const Renumbering& to) {
            for (int count = random.between(1, 5); count > 0; --count) {
                const Edit edit = randomEdit(floor.job(), *floor.job().typicals.find(floor.typical), random);
                if (const std::optional<Change> change = edit(floor.job(), to))
                    floor.make(*change);
            }
        };
        const Job stamped = floor.job();
        edits(floor.copiesIn(0)); // the door's own
        const Job own = floor.job();
        edits({}); // the typical's
        std::set<std::uint32_t> touched;
        for (const Step& step : difference(own, floor.job()).steps)
            touched.insert(
                mapped(floor.copiesIn(0), std::visit([](const auto& put) { return put.id.number; }, step)));
        const Job before = floor.job();
        floor.bringUpAll();
        for (const Step& step : difference(before, floor.job()).steps)
            std::visit(
                [&]<class Row>(const Put<Row>& put) {
                    if constexpr (!std::is_same_v<Row, Stamp> && !std::is_same_v<Row, Typical>) {
                        EXPECT_TRUE(touched.count(put.id.number)) << put.id.number;
                    }
                },
                step);
        // What the door has of its own is there still, or it is as the typical now is.
        for (const Step& step : difference(stamped, own).steps)
            std::visit(
                [&]<class Row>(const Put<Row>& put) {
                    if (touched.count(put.id.number) == 0) {
                        EXPECT_EQ(*tableOf<Row>(floor.job()).find(put.id), *put.after);
                    }
                },
                step);
    });
}

} // namespace doorloom
