#include "edit/drawing.h"

#include "edit/removeany.h"
#include "edit/undowords.h"

#include "desk.h"

namespace doorloom {

namespace {

struct DrawnSite : SmallSite {
    SheetId sheet = make(addSheet(job(), numbers(), "Door 114")).first;

    void put(Placeable what, Point at, int turns = 0)
    {
        make(putOnSheet(job(), numbers(), sheet, what, at, turns));
    }
    Point at(DeviceId device) const { return placementOf(job(), device)->at; }
    ConductorId wire(std::string_view from, std::string_view to)
    {
        const auto [id, change] = addWire(job(), numbers(), endNamed(job(), from), endNamed(job(), to), "W1");
        make(change);
        return id;
    }
    NoteId note(const std::string& words)
    {
        return make(addNote(job(), numbers(), sheet, {10, 20}, words)).first;
    }
};

} // namespace

TEST(PutOnSheet, DrawsAThingOnce)
{
    DrawnSite site;
    site.put(site.supply, {100, 200});
    const SheetId other = site.make(addSheet(site.job(), site.numbers(), "Cabinet")).first;
    site.make(putOnSheet(site.job(), site.numbers(), other, site.supply, {5, 6}, -1));
    ASSERT_EQ(site.job().placements.size(), 1u);
    const Placement& placement = *placementOf(site.job(), site.supply);
    EXPECT_EQ(placement.sheet, other);
    EXPECT_EQ(placement.at, (Point{5, 6}));
    EXPECT_EQ(placement.quarterTurns, 3);
}

TEST(PutOnSheet, RefusesWhatIsNotThereOrFarOut)
{
    DrawnSite site;
    Numbers numbers(site.job());
    EXPECT_EQ(refusal(putOnSheet(site.job(), numbers, {999}, site.supply, {})),
              "That sheet is not in the job any more. Choose another, or undo its removal.");
    EXPECT_EQ(refusal(putOnSheet(site.job(), numbers, site.sheet, DeviceId{999}, {})),
              "That device is not in the job any more. Choose another, or undo its removal.");
    EXPECT_EQ(refusal(putOnSheet(site.job(), numbers, site.sheet, SpliceId{999}, {})),
              "That splice is not in the job any more. Choose another, or undo its removal.");
    EXPECT_EQ(
        refusal(putOnSheet(site.job(), numbers, site.sheet, site.supply, {2'000'000'000, 0})),
        "PS1: 'PS1' would lie 200000000 by 0 mm from the sheet's corner, where no sheet reaches. Keep it "
        "within 10000 mm.");
}

TEST(MoveRows, MovesManyAndTheBendsBetweenThem)
{
    DrawnSite site;
    site.put(site.supply, {0, 0});
    site.put(site.module, {500, 0});
    site.put(site.strike, {900, 0});
    const ConductorId inside = site.wire("PS1:+", "LM1:+"), outside = site.wire("PS1:−", "ES1:1");
    const NoteId note = site.note("existing frame");
    site.make(pinBends(site.job(), site.numbers(), inside, {{1, 1}, {2, 2}}));
    site.make(pinBends(site.job(), site.numbers(), outside, {{3, 3}}));
    site.make(
        moveRows(site.job(), {site.supply.number, site.module.number, note.number, inside.number}, {10, -5}));
    EXPECT_EQ(site.at(site.supply), (Point{10, -5}));
    EXPECT_EQ(site.at(site.module), (Point{510, -5}));
    EXPECT_EQ(site.at(site.strike), (Point{900, 0}));
    EXPECT_EQ(site.job().notes.find(note)->at, (Point{20, 15}));
    EXPECT_EQ(bendsOf(site.job(), inside)->pinned, (std::vector<Point>{{11, -4}, {12, -3}}));
    EXPECT_EQ(bendsOf(site.job(), outside)->pinned, (std::vector<Point>{{3, 3}}));
    EXPECT_FALSE(moveRows(site.job(), {site.supply.number}, {2'147'483'647, 0}).ok());
}

TEST(AlignRows, PutsEdgesInALine)
{
    DrawnSite site;
    site.put(site.supply, {0, 10});
    site.put(site.module, {50, 70});
    const std::vector<Outline> outlines = {{site.supply.number, {-10, 0}, {40, 90}},
                                           {site.module.number, {45, 60}, {65, 200}}};
    site.make(alignRows(site.job(), outlines, Edge::Right));
    EXPECT_EQ(site.at(site.supply), (Point{25, 10}));
    EXPECT_EQ(site.at(site.module), (Point{50, 70}));
    site.make(alignRows(site.job(), outlines, Edge::Top));
    EXPECT_EQ(site.at(site.module), (Point{50, 10}));
}

TEST(TurnRows, GoesRoundInFour)
{
    DrawnSite site;
    site.put(site.supply, {0, 0}, 3);
    site.make(turnRows(site.job(), {site.supply.number, site.strike.number}));
    EXPECT_EQ(placementOf(site.job(), site.supply)->quarterTurns, 0);
    site.make(turnRows(site.job(), {site.supply.number}, -1));
    EXPECT_EQ(placementOf(site.job(), site.supply)->quarterTurns, 3);
}

TEST(TakeOffSheet, KeepsTheDeviceAndDropsTheBends)
{
    DrawnSite site;
    site.put(site.supply, {0, 0});
    const ConductorId wire = site.wire("PS1:+", "LM1:+");
    site.make(pinBends(site.job(), site.numbers(), wire, {{1, 1}}));
    site.make(takeOffSheet(site.job(), {site.supply.number}));
    EXPECT_TRUE(site.job().devices.find(site.supply));
    EXPECT_FALSE(placementOf(site.job(), site.supply));
    EXPECT_TRUE(site.job().bends.empty());
}

TEST(PinBends, OfNoPointsLetsTheLineRunFreely)
{
    DrawnSite site;
    const ConductorId wire = site.wire("PS1:+", "LM1:+");
    site.make(pinBends(site.job(), site.numbers(), wire, {{1, 1}}));
    site.make(pinBends(site.job(), site.numbers(), wire, {{4, 4}}));
    ASSERT_EQ(site.job().bends.size(), 1u);
    EXPECT_EQ(bendsOf(site.job(), wire)->pinned, (std::vector<Point>{{4, 4}}));
    site.make(pinBends(site.job(), site.numbers(), wire, {}));
    EXPECT_TRUE(site.job().bends.empty());
}

TEST(Notes, AreWrittenRewordedAndGoWithoutWords)
{
    DrawnSite site;
    const NoteId note = site.note("as found");
    site.make(rewordNote(site.job(), note, "existing"));
    EXPECT_EQ(site.job().notes.find(note)->words, "existing");
    site.make(rewordNote(site.job(), note, " \n"));
    EXPECT_TRUE(site.job().notes.empty());
    Numbers numbers(site.job());
    EXPECT_EQ(refusal(addNote(site.job(), numbers, site.sheet, {}, "")),
              "A note has the words ''. Write what it should say.");
    EXPECT_EQ(refusal(removeNote(site.job(), note)),
              "That note is not in the job any more. Choose another, or undo its removal.");
}

TEST(Sheets, KeepTheirOrder)
{
    Desk desk;
    const SheetId one = desk.make(addSheet(desk.job(), desk.numbers(), "One")).first;
    const SheetId two = desk.make(addSheet(desk.job(), desk.numbers(), "Two")).first;
    const SheetId three = desk.make(addSheet(desk.job(), desk.numbers(), "Three")).first;
    const auto order = [&] {
        std::vector<SheetId> ids;
        for (const Sheet* sheet : sheetsInOrder(desk.job()))
            ids.push_back(sheet->id);
        return ids;
    };
    desk.make(moveSheet(desk.job(), three, 0));
    EXPECT_EQ(order(), (std::vector{three, one, two}));
    desk.make(moveSheet(desk.job(), three, 99));
    EXPECT_EQ(order(), (std::vector{one, two, three}));
    desk.make(renameSheet(desk.job(), two, "Zwei"));
    EXPECT_EQ(desk.job().sheets.find(two)->title, "Zwei");
    EXPECT_EQ(refusal(renameSheet(desk.job(), two, "One")),
              "One: There is a sheet 'One' already. Give this one another title.");
    EXPECT_TRUE(renameSheet(desk.job(), two, "Zwei").ok()) << "its own title is no other's";
    EXPECT_FALSE(addSheet(desk.job(), desk.numbers(), "Zwei").ok());
    EXPECT_EQ(refusal(renameSheet(desk.job(), two, " ")),
              "A sheet has the title ''. Give it a title such as 'Door 114'.");
}

TEST(RemoveSheet, TakesWhatIsDrawnAndLeavesTheWiring)
{
    DrawnSite site;
    site.put(site.supply, {0, 0});
    site.note("here");
    const ConductorId wire = site.wire("PS1:+", "LM1:+");
    site.make(pinBends(site.job(), site.numbers(), wire, {{1, 1}}));
    const std::size_t devices = site.job().devices.size();
    site.make(removeSheet(site.job(), site.sheet));
    EXPECT_TRUE(site.job().placements.empty());
    EXPECT_TRUE(site.job().notes.empty());
    EXPECT_TRUE(site.job().bends.empty());
    EXPECT_EQ(site.job().devices.size(), devices);
    EXPECT_TRUE(site.job().conductors.find(wire));
}

TEST(RemoveSheet, TakesTheDevicesTooWhereAsked)
{
    DrawnSite site;
    site.put(site.supply, {0, 0});
    site.put(site.module, {0, 0});
    const ConductorId inside = site.wire("PS1:+", "LM1:+"), outside = site.wire("PS1:−", "ES1:1");
    site.make(removeSheetAndDevices(site.job(), site.sheet));
    EXPECT_FALSE(site.job().devices.find(site.supply));
    EXPECT_FALSE(site.job().conductors.find(inside));
    EXPECT_EQ(site.drawn(outside), "W1: waiting – ES1:1");
}

TEST(RemoveAny, TakesCoresOffAndWiresAway)
{
    DrawnSite site;
    const ConductorId wire = site.wire("PS1:+", "LM1:+");
    const ConductorId core = coresOf(site.job(), site.cable1).front()->id;
    site.make(setEnd(site.job(), core, WhichEnd::From, endNamed(site.job(), "PS1:−")));
    const NoteId note = site.note("gone soon");
    site.make(removeAny(site.job(), {wire.number, core.number, note.number, site.contact.number, 4'000'000}));
    EXPECT_FALSE(site.job().conductors.find(wire));
    EXPECT_EQ(site.drawn(core), "C1.1: waiting – waiting");
    EXPECT_FALSE(site.job().devices.find(site.contact));
    EXPECT_TRUE(site.job().notes.empty());
    site.make(removeAny(site.job(), {core.number, site.cable1.number}));
    EXPECT_FALSE(site.job().conductors.find(core));
}

TEST(RemoveAny, LeavesAloneWhatIsMarkedSo)
{
    SmallSite site;
    Device strike = *site.job().devices.find(site.strike);
    strike.standing = Standing::LeaveAlone;
    site.make(Change{{Put<Device>{strike.id, strike}}});
    EXPECT_EQ(refusal(removeAny(site.job(), {site.contact.number, site.strike.number})),
              "ES1: 'ES1' is marked to be left alone. Give it another standing first, if it may be touched.");
}

TEST(SetInfo, KeepsOneTitleBlock)
{
    Desk desk;
    JobInfo info;
    info.title = "Restroom 114";
    desk.make(setInfo(desk.job(), desk.numbers(), info));
    info.title = "Restroom 115";
    desk.make(setInfo(desk.job(), desk.numbers(), info));
    ASSERT_EQ(desk.job().info.size(), 1u);
    EXPECT_EQ(desk.job().info.begin()->title, "Restroom 115");
    info.english = false;
    EXPECT_EQ(refusal(setInfo(desk.job(), desk.numbers(), info)),
              "The job's papers would be in no language. Choose English, Spanish or both.");
}

TEST(UndoWords, NameAFewRows)
{
    SmallSite site;
    const std::vector<std::uint32_t> rows = {site.supply.number, site.module.number, 9999, site.strike.number,
                                             site.contact.number};
    EXPECT_EQ(inWords(undoWords(site.job(), doing::move, rows)), "move PS1, LM1, ES1 +1");
    EXPECT_EQ(inWords(undoWords(site.job(), doing::move, rows), Language::Spanish), "mover PS1, LM1, ES1 +1");
    EXPECT_EQ(inWords(undoWords(site.job(), doing::fillInfo)), "fill in the title block");
}

} // namespace doorloom
