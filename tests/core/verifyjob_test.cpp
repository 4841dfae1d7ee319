#include "edit/change.h"
#include "edit/lookups.h"
#include "edit/operations.h"

#include "smallkinds.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <limits>
#include <utility>

namespace doorloom {

namespace {

// One row of every sort, each sound; a broken promise is this and one Change.
struct Site {
    Job job;
    DeviceId supply, module, strike, doorSwitch;
    CableTypeId type;
    CableId cable;
    ConductorId core, secondCore, wire;
    PlaceId cabinet;
    SpliceId splice;
    OpeningId opening;
    OperatorId alarm;
    SheetId sheet;
    PlacementId placement;
    BendsId bends;
    TypicalId typical;
    StampId stamp;
    JobInfoId info;

    Site();

    std::uint32_t next() const { return job.nextNumber; }
    OperatorId mover(DeviceId device, const Key& role) const
    {
        return boundTo(*job.devices.find(device), role);
    }

    template <class Row> Id<Row> add(Row row)
    {
        row.id = {next()};
        make({{Put<Row>{row.id, row}}});
        return row.id;
    }
    void make(const Change& change)
    {
        const auto made = applyChange(job, change);
        EXPECT_TRUE(made.ok()) << inWords(made.problem());
    }
    DeviceId place(const Kind& kind, const std::string& tag)
    {
        Numbers numbers(job);
        const auto [id, change] = placeDevice(job, numbers, kind, tag);
        make(change);
        return id;
    }

    // A row altered by a function, as a Change.
    template <class Row, class Alter> Change alter(Id<Row> id, Alter alterRow) const
    {
        Row row = *tableOf<Row>(job).find(id);
        alterRow(row);
        return {{Put<Row>{id, std::move(row)}}};
    }
    // A new row, as a Change.
    template <class Row> Change put(Row row) const
    {
        row.id = {next()};
        const Id<Row> id = row.id;
        return {{Put<Row>{id, std::move(row)}}};
    }
    template <class Row> Change without(Id<Row> id) const { return {{Put<Row>{id, std::nullopt}}}; }
};

End landedOn(DeviceId device, const Key& terminal)
{
    return {EndState::Landed, Landing{device, terminal}};
}

Operator alarmOperator()
{
    Operator row;
    row.tag = "FIRE";
    row.nature = OperatorNature::Fire;
    row.throws = {throwNamed("quiet"), throwNamed("alarm")};
    row.unpowered = "alarm";
    row.idle = "quiet";
    return row;
}

Site::Site()
{
    JobInfo title;
    title.title = "Two doors";
    info = add(title);
    supply = place(smallSupply(), "PS1");
    module = place(smallModule(), "LM1");
    strike = place(smallStrike(), "EL1");
    doorSwitch = place(smallDoorSwitch(), "DS1");
    Place box;
    box.tag = "CAB1";
    cabinet = add(box);
    make(alter(supply, [&](Device& row) { row.place = cabinet; }));
    CableType pair;
    pair.name = "18/2";
    pair.cores.resize(2);
    pair.cores[1].number = 2;
    type = add(pair);
    Cable pulled;
    pulled.tag = "C1";
    pulled.type = type;
    Numbers numbers(job);
    const auto [pulledId, change] = pullCable(job, numbers, pulled);
    make(change);
    cable = pulledId;
    core = coresOf(job, cable)[0]->id;
    secondCore = coresOf(job, cable)[1]->id;
    make(setEnd(job, core, WhichEnd::From, landedOn(module, "NO1")).value());
    make(setEnd(job, core, WhichEnd::To, landedOn(strike, "a")).value());
    Splice joint;
    joint.tag = "S1";
    splice = add(joint);
    Conductor loose;
    loose.tag = "W1";
    loose.from = landedOn(supply, "+");
    loose.to = {EndState::Landed, splice};
    wire = add(loose);
    alarm = add(alarmOperator());
    Opening door;
    door.tag = "D1";
    door.door = mover(doorSwitch, "door");
    door.fire = alarm;
    door.locks = {strike};
    door.doorOperators = {module};
    door.requests = {{"button", Side::Inside, {{mover(module, "K1"), "in"}}}};
    door.releases = {{"fire", Side::Both, {{alarm, "alarm"}}}};
    door.promises = {{{SituationKind::Request, "button", {}}, strike, Promised::Free},
                     {{SituationKind::LostAlone, "", mover(supply, "mains")}, strike, Promised::Locked},
                     {{SituationKind::Rest, "", {}}, module, Promised::MayStart}};
    opening = add(door);
    sheet = add(Sheet{{}, "Door 1", 1});
    placement = add(Placement{{}, sheet, strike, {10, 10}, 0});
    bends = add(Bends{{}, core, {{1, 1}}});
    add(Note{{}, sheet, {}, "beside the door"});
    add(SetAside{{}, "never-fed", "EL1", "", "spare", "", ""});
    typical = add(Typical{{}, "restroom", {strike.number, core.number}, {}});
    stamp = add(Stamp{{}, typical, "second floor", {{strike.number, module.number}}, 0, {}});
}

// What the problems say is wrong, without place and remedy.
std::vector<std::string> wrongsOf(const std::vector<Problem>& problems)
{
    std::vector<std::string> words;
    for (const Problem& problem : problems)
        words.push_back(inWords(problem.what));
    return words;
}

// Written past applyChange, as no program should.
Job forced(Job job, const Change& change)
{
    for (const Step& step : change.steps)
        std::visit(
            [&]<class Row>(const Put<Row>& put) {
                tableOf<Row>(job).put(put.id, put.after);
                job.nextNumber = std::max(job.nextNumber, put.id.number + 1);
            },
            step);
    return withLookupsRebuilt(std::move(job));
}

// Both find the broken promise, each in its own way: applyChange refuses, verifyJob lists.
void expectBroken(const Site& site, const Change& change, const std::string& words)
{
    SCOPED_TRACE(words);
    Job job = site.job;
    const auto made = applyChange(job, change);
    EXPECT_FALSE(made.ok());
    EXPECT_EQ(job, site.job);
    if (!made.ok()) {
        EXPECT_EQ(inWords(made.problem().what), words);
        EXPECT_NE(inWords(made.problem().remedy), "");
        EXPECT_NE(inWords(made.problem().what, Language::Spanish), "");
    }
    const auto listed = wrongsOf(verifyJob(forced(site.job, change)));
    EXPECT_TRUE(std::find(listed.begin(), listed.end(), words) != listed.end())
        << ::testing::PrintToString(listed);
}

Device strikeTagged(const Site& site, const std::string& tag)
{
    Device row;
    row.tag = tag;
    row.kind = site.job.devices.find(site.strike)->kind;
    return row;
}

} // namespace

TEST(VerifyJob, FindsNothingInASoundJob)
{
    const Site site;
    EXPECT_EQ(wrongsOf(verifyJob(site.job)), std::vector<std::string>());
    forEachTable(site.job, [](const char* name, const auto& rows) { EXPECT_FALSE(rows.empty()) << name; });
}

TEST(VerifyJob, FindsReferencesThatLeadNowhere)
{
    const Site site;
    const auto lost = [&](const Change& change, const std::string& row, const std::string& noun) {
        expectBroken(site, change, "The " + row + " refers to a " + noun + " that is not in the job.");
    };
    lost(site.alter(site.strike, [](Device& row) { row.place = {999}; }), "device 'EL1'", "place");
    lost(site.alter(site.strike, [](Device& row) { row.kind = {999}; }), "device 'EL1'", "kind");
    lost(site.alter(site.supply, [](Device& row) { row.bindings[0].moved = {999}; }), "device 'PS1'",
         "operator");
    lost(site.alter(site.alarm, [](Operator& row) { row.owner = {999}; }), "operator 'FIRE'", "device");
    lost(site.alter(site.cable, [](Cable& row) { row.type = {999}; }), "cable 'C1'", "cable type");
    lost(site.alter(site.cable, [](Cable& row) { row.from = {999}; }), "cable 'C1'", "place");
    lost(site.alter(site.cable, [](Cable& row) { row.to = {999}; }), "cable 'C1'", "place");
    lost(site.alter(site.splice, [](Splice& row) { row.place = {999}; }), "splice 'S1'", "place");
    lost(site.alter(site.wire, [](Conductor& row) { row.from = landedOn({999}, "a"); }),
         "conductor 'W1 (:a – S1)'", "device");
    lost(site.alter(site.wire, [](Conductor& row) { row.to.on = SpliceId{999}; }),
         "conductor 'W1 (PS1:+ – …)'", "splice");
    lost(site.alter(site.core, [](Conductor& row) { row.cable = {999}; }),
         "conductor 'C1.1 (LM1:NO1 – EL1:a)'", "cable");
    lost(site.alter(site.opening, [](Opening& row) { row.door = {999}; }), "opening 'D1'", "operator");
    lost(site.alter(site.opening, [](Opening& row) { row.fire = {999}; }), "opening 'D1'", "operator");
    lost(site.alter(site.opening, [](Opening& row) { row.locks.push_back({999}); }), "opening 'D1'",
         "device");
    lost(site.alter(site.opening, [](Opening& row) { row.doorOperators.push_back({999}); }), "opening 'D1'",
         "device");
    lost(site.alter(site.opening, [](Opening& row) { row.requests[0].throws[0].moved = {999}; }),
         "opening 'D1'", "operator");
    lost(site.alter(site.opening, [](Opening& row) { row.releases[0].throws[0].moved = {999}; }),
         "opening 'D1'", "operator");
    lost(site.alter(site.opening,
                    [](Opening& row) {
                        row.occupied = {{{999}, "in"}};
                    }),
         "opening 'D1'", "operator");
    lost(site.alter(site.opening, [](Opening& row) { row.promises[0].device = {999}; }), "opening 'D1'",
         "device");
    lost(site.alter(site.opening, [](Opening& row) { row.promises[1].situation.lost = {999}; }),
         "opening 'D1'", "operator");
    lost(site.alter(site.placement, [](Placement& row) { row.sheet = {999}; }), "placement 'EL1'", "sheet");
    lost(site.alter(site.placement, [](Placement& row) { row.what = SpliceId{999}; }), "placement ''",
         "splice");
    lost(site.alter(site.placement, [](Placement& row) { row.what = DeviceId{999}; }), "placement ''",
         "device");
    lost(site.alter(site.bends, [](Bends& row) { row.conductor = {999}; }), "drawn line ''", "conductor");
    lost(site.put(Note{{}, {999}, {}, "lost"}), "note 'lost'", "sheet");
    lost(site.alter(site.typical, [](Typical& row) { row.rows.push_back(999); }), "typical 'restroom'",
         "row");
    lost(site.alter(site.stamp, [](Stamp& row) { row.typical = {999}; }), "stamp 'second floor'", "typical");
    lost(site.alter(site.stamp, [](Stamp& row) { row.rows[0].second = 999; }), "stamp 'second floor'", "row");
    // a number that leads to a row of another table
    lost(site.alter(site.strike, [&](Device& row) { row.place = {site.cable.number}; }), "device 'EL1'",
         "place");
}

TEST(VerifyJob, FindsWhatMustNotBeLeftOut)
{
    const Site site;
    const auto missing = [&](const Change& change, const std::string& words) {
        expectBroken(site, change, words);
    };
    missing(site.put(Device{{}, "EL2", {}, {}, {}, {}, {}, {}, {}}), "The device 'EL2' has no kind.");
    missing(site.put(Cable{{}, "C2", {}, {}, {}, {}, {}, {}, {}}), "The cable 'C2' has no cable type.");
    missing(site.put(Bends{}), "The drawn line '' has no conductor.");
    missing(site.put(Note{{}, {}, {}, "lost"}), "The note 'lost' has no sheet.");
    missing(site.put(Placement{{}, {}, site.strike, {}, 0}), "The placement 'EL1' has no sheet.");
    missing(site.put(Placement{{}, site.sheet, SpliceId{}, {}, 0}), "The placement '' has no splice.");
    missing(site.put(Stamp{{}, {}, "third floor", {}, 0, {}}), "The stamp 'third floor' has no typical.");
}

TEST(VerifyJob, FindsUnsoundNumbers)
{
    const Site site;
    expectBroken(site, {{Put<Sheet>{{site.strike.number}, Sheet{{site.strike.number}, "Door 2", 2}}}},
                 "Two rows of the job have the number '" + std::to_string(site.strike.number) + "'.");
    Job counter = site.job;
    counter.nextNumber = site.stamp.number;
    EXPECT_EQ(wrongsOf(verifyJob(counter)),
              (std::vector<std::string>{"The number '" + std::to_string(site.stamp.number) +
                                        "' is not below the job's counter, '" +
                                        std::to_string(site.stamp.number) + "'."}));
    Job job = site.job;
    for (const Change& change :
         {Change{{Put<Sheet>{{}, Sheet{}}}}, Change{{Put<Sheet>{{700}, Sheet{{701}, "", 1}}}},
          Change{{Put<Sheet>{{~0u}, Sheet{{~0u}, "", 1}}}}})
        EXPECT_FALSE(applyChange(job, change).ok());
    EXPECT_EQ(job, site.job);
}

TEST(VerifyJob, FindsASecondTitleBlock)
{
    const Site site;
    expectBroken(site, site.put(JobInfo{}), "The job would have a second title block beside 'Two doors'.");
}

TEST(VerifyJob, FindsUnsoundTags)
{
    const Site site;
    expectBroken(site, site.put(strikeTagged(site, "EL1")), "The tag 'EL1' is on two devices.");
    expectBroken(site, site.put(strikeTagged(site, "")), "A device has the tag ''.");
    expectBroken(site, site.put(strikeTagged(site, "EL 2")), "The tag 'EL 2' has a blank or ':' in it.");
    expectBroken(site, site.put(strikeTagged(site, "EL\u00a02")),
                 "The tag 'EL\u00a02' has a blank or ':' in it.");
    expectBroken(site, site.put(strikeTagged(site, "EL:2")), "The tag 'EL:2' has a blank or ':' in it.");
}

TEST(VerifyJob, FindsUnsoundLandings)
{
    const Site site;
    expectBroken(site,
                 site.alter(site.wire, [](Conductor& row) { std::get<Landing>(row.from.on).terminal = "x"; }),
                 "PS1 has no terminal 'x'.");
    expectBroken(site, site.alter(site.wire, [](Conductor& row) { row.from.state = EndState::Spare; }),
                 "An end of 'W1 (… – S1)' is on something and is not said to be landed.");
    expectBroken(site, site.alter(site.wire, [](Conductor& row) { row.to.on = {}; }),
                 "An end of 'W1 (PS1:+ – …)' is said to be landed and is on nothing.");
    expectBroken(site, site.alter(site.wire, [](Conductor& row) { row.to.on = SpliceId{}; }),
                 "An end of 'W1 (PS1:+ – …)' is said to be landed and is on nothing.");
    expectBroken(site,
                 site.alter(site.wire,
                            [](Conductor& row) {
                                row.to.on = Landing{{}, "a"};
                            }),
                 "An end of 'W1 (PS1:+ – :a)' is said to be landed and is on nothing.");
    expectBroken(site, site.alter(site.wire, [](Conductor& row) { row.length = {-1}; }),
                 "'W1 (PS1:+ – S1)' can't be '-1' metres long.");
    const double endless = std::numeric_limits<double>::infinity();
    expectBroken(site, site.alter(site.cable, [&](Cable& row) { row.length = {endless}; }),
                 "'C1' can't be 'inf' metres long.");
}

TEST(VerifyJob, FindsUnsoundCores)
{
    const Site site;
    const std::string second = "C1.2 (… – …)";
    expectBroken(site, site.alter(site.secondCore, [](Conductor& row) { row.core = 3; }),
                 "Cable C1 (18/2) has no core '3', which " + second + " is.");
    expectBroken(site, site.alter(site.secondCore, [](Conductor& row) { row.core = 1; }),
                 "Core '1' of cable C1 is there twice.");
    expectBroken(site, site.alter(site.secondCore, [](Conductor& row) { row.cable = {}; }),
                 second + " is core '2' of no cable.");
    expectBroken(site, site.alter(site.secondCore, [](Conductor& row) { row.make = ConductorMake::Wire; }),
                 second + " is a wire or lead and says that it is core '2' of a cable.");
    expectBroken(site, site.alter(site.type, [](CableType& row) { row.cores[1].number = 1; }),
                 "Cable type 18/2 has core '1' twice.");
}

TEST(VerifyJob, FindsUnsoundDevices)
{
    const Site site;
    const auto module = [&](auto alterRow) { return site.alter(site.module, alterRow); };
    expectBroken(site, module([](Device& row) { row.choices.pop_back(); }),
                 "Jumper 'JB' of LM1 is not recorded once.");
    expectBroken(site, module([](Device& row) { row.choices.push_back(row.choices[0]); }),
                 "Jumper 'JA' of LM1 is not recorded once.");
    expectBroken(site, module([](Device& row) {
                     row.choices.push_back({"out1", "JC", ""});
                 }),
                 "LM1 has no jumper 'JC' for the option 'out1'.");
    expectBroken(site, module([](Device& row) {
                     row.choices.push_back({"out2", "JA", ""});
                 }),
                 "LM1 has no jumper 'JA' for the option 'out2'.");
    expectBroken(site, module([](Device& row) { row.choices[0].value = "damp"; }),
                 "Jumper JA of LM1 can't stand at 'damp'.");
    expectBroken(site, module([](Device& row) { row.settings[0].value = 0.5; }),
                 "Hold time of LM1 can't be '0.5'.");
    expectBroken(site, module([](Device& row) { row.settings[0].value = 30.5; }),
                 "Hold time of LM1 can't be '30.5'.");
    expectBroken(site, module([](Device& row) { row.settings[0].value = "long"; }),
                 "Hold time of LM1 can't be 'long'.");
    expectBroken(site, module([](Device& row) { row.settings[1].value = "never"; }),
                 "Mode of LM1 can't be 'never'.");
    expectBroken(site, module([](Device& row) { row.settings[1].value = 1.0; }), "Mode of LM1 can't be '1'.");
    expectBroken(site, module([](Device& row) {
                     row.settings.push_back({"tone", 1.0});
                 }),
                 "LM1 has no setting 'tone'.");
    expectBroken(site, module([](Device& row) { row.settings.push_back(row.settings[0]); }),
                 "Setting 'hold' of LM1 is recorded twice.");
    expectBroken(site, module([](Device& row) { row.bindings.clear(); }),
                 "Role 'K1' of LM1 is not bound to one operator.");
    expectBroken(site, module([](Device& row) { row.bindings[0].moved = {}; }),
                 "Role 'K1' of LM1 is not bound to one operator.");
    expectBroken(site, module([](Device& row) { row.bindings.push_back(row.bindings[0]); }),
                 "Role 'K1' of LM1 is not bound to one operator.");
    expectBroken(site, module([](Device& row) {
                     row.bindings.push_back({"K2", row.bindings[0].moved});
                 }),
                 "LM1 has no role 'K2'.");
    expectBroken(site, module([&](Device& row) { row.bindings[0].moved = site.alarm; }),
                 "FIRE can't move 'K1' of LM1: it has the throws quiet, alarm, not out, in.");
}

TEST(VerifyJob, FindsUnsoundOperators)
{
    const Site site;
    const auto alarm = [&](auto alterRow) { return site.alter(site.alarm, alterRow); };
    expectBroken(site, alarm([](Operator& row) { row.idle = "gone"; }), "FIRE can't be at 'gone' at rest.");
    expectBroken(site, alarm([](Operator& row) { row.unpowered = "gone"; }),
                 "FIRE can't be at 'gone' without power.");
    expectBroken(site, alarm([](Operator& row) { row.throws.push_back(row.throws[0]); }),
                 "FIRE has the throw 'quiet' twice, or without a key.");
    expectBroken(site, alarm([](Operator& row) {
                     row.throws.resize(1);
                     row.unpowered = "quiet";
                 }),
                 "FIRE has fewer than two throws: 'quiet'.");
    expectBroken(site, alarm([](Operator& row) { row.tag.clear(); }),
                 "An operator that no device owns has the tag ''.");
    expectBroken(site, alarm([&](Operator& row) {
                     row.owner = site.module;
                     row.ownerRole = "K2";
                 }),
                 "FIRE belongs to the role 'K2' of LM1, which has no such role.");
}

TEST(VerifyJob, FindsUnsoundOpenings)
{
    const Site site;
    const auto opening = [&](auto alterRow) { return site.alter(site.opening, alterRow); };
    const std::string situation = "D1 makes a promise for a situation that it does not have (act '";
    const std::string stranger = "' that is not its lock or door operator.";
    expectBroken(site, opening([](Opening& row) { row.requests[0].throws[0].thrown = "gone"; }),
                 "D1 wants LM1 at 'gone', where it can't be.");
    expectBroken(site, opening([](Opening& row) {
                     row.occupied = {{{}, "in"}};
                 }),
                 "D1 wants the throw 'in' of no operator.");
    expectBroken(site, opening([&](Opening& row) {
                     row.releases[0].throws.push_back({site.alarm, "quiet"});
                 }),
                 "D1 names FIRE twice in one act, once at 'quiet'.");
    expectBroken(site, opening([](Opening& row) { row.requests.push_back(row.requests[0]); }),
                 "D1 has an act named 'button' twice, or without a name.");
    expectBroken(site, opening([](Opening& row) {
                     row.releases.push_back({"", Side::Both, {}});
                 }),
                 "D1 has an act named '' twice, or without a name.");
    expectBroken(site, opening([](Opening& row) { row.locks.push_back(row.locks[0]); }),
                 "D1 lists 'EL1' twice, or a device that is none.");
    expectBroken(site, opening([](Opening& row) { row.doorOperators.push_back({}); }),
                 "D1 lists '' twice, or a device that is none.");
    expectBroken(site, opening([&](Opening& row) { row.locks.push_back(site.supply); }),
                 "'PS1' can't be a lock of D1: its kind (Small supply) does not lock.");
    expectBroken(site, opening([](Opening& row) { row.promises[0].situation.act = "gone"; }),
                 situation + "gone').");
    expectBroken(site, opening([](Opening& row) {
                     row.promises[0].situation = {SituationKind::Release, "button", {}};
                 }),
                 situation + "button').");
    expectBroken(site, opening([](Opening& row) { row.promises[1].situation.lost = {}; }), situation + "').");
    expectBroken(site, opening([&](Opening& row) { row.promises[0].situation.lost = site.alarm; }),
                 situation + "button').");
    expectBroken(site, opening([](Opening& row) { row.promises[2].situation.act = "button"; }),
                 situation + "button').");
    expectBroken(site, opening([&](Opening& row) { row.promises[0].device = site.supply; }),
                 "D1 makes a promise for 'PS1" + stranger);
    expectBroken(site, opening([](Opening& row) { row.promises[0].promised = Promised::MayStart; }),
                 "D1 makes a promise for 'EL1" + stranger);
    expectBroken(site, opening([](Opening& row) { row.promises[2].promised = Promised::Locked; }),
                 "D1 makes a promise for 'LM1" + stranger);
    expectBroken(site, opening([](Opening& row) { row.promises.push_back(row.promises[0]); }),
                 "D1 promises twice how 'EL1' stands in one situation.");
}

TEST(VerifyJob, FindsUnsoundKindsTypicalsAndStamps)
{
    const Site site;
    const KindId kind = site.job.devices.find(site.module)->kind;
    const auto altered = [&](auto alterKind) {
        return site.alter(kind, [&](JobKind& row) { alterKind(row.kind); });
    };
    expectBroken(site, altered([](Kind& row) { row.strips.push_back(stripOf({"C1"})); }),
                 "module has the terminal 'C1' twice, or without a key.");
    expectBroken(site, altered([](Kind& row) { row.settings.push_back(row.settings[0]); }),
                 "module has the setting 'hold' twice, or without a key.");
    expectBroken(site, altered([](Kind& row) { row.options.push_back(row.options[0]); }),
                 "module has the option 'out1' twice, or without a key.");
    expectBroken(site, altered([](Kind& row) { row.options[0].jumpers[1].key = "JA"; }),
                 "module has the jumper 'out1.JA' twice, or without a key.");
    expectBroken(site, altered([](Kind& row) { row.roles.push_back(row.roles[0]); }),
                 "module has the role 'K1' twice, or without a key.");
    expectBroken(site, altered([](Kind& row) { row.roles[0].idle = "gone"; }),
                 "module:K1 can't be at 'gone' at rest.");
    expectBroken(site, site.alter(site.typical, [](Typical& row) { row.rows.push_back(row.rows[0]); }),
                 "The typical 'restroom' lists a row twice.");
    expectBroken(site, site.alter(site.stamp, [](Stamp& row) { row.rows.push_back(row.rows[0]); }),
                 "The stamp 'second floor' pairs a row twice.");
    for (const std::uint32_t number : {0u, 999u})
        expectBroken(site, site.alter(site.stamp, [&](Stamp& row) { row.rows[0].first = number; }),
                     "The stamp 'second floor' remembers a row that the job never had.");
    expectBroken(site, site.alter(site.stamp, [](Stamp& row) { row.edition = 2; }),
                 "The stamp 'second floor' is at edition 2, which its typical 'restroom' does not have.");
    const auto editions = [&](std::vector<Edition> wanted) {
        return site.alter(site.typical, [&](Typical& row) { row.editions = std::move(wanted); });
    };
    expectBroken(site, editions({{2, {}}, {2, {}}}),
                 "The typical 'restroom' has the edition 2 twice, or below 1.");
    expectBroken(site, editions({{0, {}}}), "The typical 'restroom' has the edition 0 twice, or below 1.");
    Device stranger = *site.job.devices.find(site.strike);
    stranger.place = {999};
    expectBroken(site, editions({{1, {stranger}}}),
                 "The typical 'restroom' remembers a row that the job never had.");
}

// The row that is put is sound; what hangs on it is not any more.
TEST(VerifyJob, FindsWhatARowBreaksInThoseThatReferToIt)
{
    const Site site;
    const auto kindOfDevice = [&](DeviceId device) { return site.job.devices.find(device)->kind; };
    const auto altered = [&](DeviceId device, auto alterKind) {
        return site.alter(kindOfDevice(device), [&](JobKind& row) { alterKind(row.kind); });
    };
    expectBroken(site, altered(site.strike, [](Kind& kind) { kind.strips = {stripOf({"b"})}; }),
                 "EL1 has no terminal 'a'.");
    expectBroken(site, altered(site.strike, [](Kind& kind) { kind.lock.reset(); }),
                 "'EL1' can't be a lock of D1: its kind (Small strike) does not lock.");
    expectBroken(site, altered(site.module, [](Kind& kind) { kind.options[0].jumpers.pop_back(); }),
                 "LM1 has no jumper 'JB' for the option 'out1'.");
    expectBroken(site, altered(site.module, [](Kind& kind) { kind.settings[0].most = 2; }),
                 "Hold time of LM1 can't be '5'.");
    expectBroken(site, altered(site.doorSwitch, [](Kind& kind) { kind.roles[0].key = "leaf"; }),
                 "DS1 has no role 'door'.");
    expectBroken(site, site.alter(site.type, [](CableType& row) { row.cores.pop_back(); }),
                 "Cable C1 (18/2) has no core '2', which C1.2 (… – …) is.");
    expectBroken(site,
                 joined(site.put(CableType{{}, "18/1", {}, {Core{}}, false, false}),
                        site.alter(site.cable, [&](Cable& row) { row.type = {site.next()}; })),
                 "Cable C1 (18/1) has no core '2', which C1.2 (… – …) is.");
    expectBroken(site,
                 site.alter(site.alarm, [](Operator& row) { row.throws[1].key = row.unpowered = "drill"; }),
                 "D1 wants FIRE at 'alarm', where it can't be.");
    expectBroken(site,
                 site.alter(site.mover(site.module, "K1"),
                            [](Operator& row) { row.throws[0].key = row.unpowered = row.idle = "off"; }),
                 "LM1 can't move 'K1' of LM1: it has the throws off, in, not out, in.");
    expectBroken(site, site.alter(site.strike, [&](Device& row) { row.kind = {site.job.nextNumber}; }),
                 "The device 'EL1' refers to a kind that is not in the job.");
    expectBroken(site,
                 joined(site.put(JobKind{{}, kindOfParts("lamp", {"x"})}),
                        site.alter(site.strike, [&](Device& row) { row.kind = {site.next()}; })),
                 "EL1 has no terminal 'a'.");
}

TEST(VerifyJob, FindsLookupsThatLie)
{
    const Site site;
    Job job = site.job;
    job.referrers.put({site.strike.number}, std::nullopt);
    EXPECT_EQ(wrongsOf(verifyJob(job)),
              (std::vector<std::string>{"What the job remembers about its rows ('referrers') "
                                        "is not what they say."}));
    job = site.job;
    job.deviceTags = {};
    EXPECT_EQ(wrongsOf(verifyJob(job)),
              (std::vector<std::string>{"What the job remembers about its rows ('deviceTags') "
                                        "is not what they say."}));
}

// A broken row, written past applyChange, shows who is judged again: not it, when its place is renamed.
TEST(ApplyChange, JudgesOnlyTheRowsThatHangOnTheChange)
{
    const Site site;
    Job job = forced(site.job, site.alter(site.supply, [](Device& row) { row.tag = "two words"; }));
    EXPECT_TRUE(applyChange(job, site.alter(site.cabinet, [](Place& row) { row.tag = "CAB2"; })).ok());
    EXPECT_TRUE(applyChange(job, site.alter(site.strike, [](Device& row) { row.tag = "EL2"; })).ok());
    const KindId kind = site.job.devices.find(site.supply)->kind;
    EXPECT_FALSE(
        applyChange(job, site.alter(kind, [](JobKind& row) { row.kind.words.en = "new words"; })).ok());
}

TEST(ApplyChange, NamesWhatStillUsesARemovedRow)
{
    const Site site;
    const auto inUse = [&](const Change& change, const std::string& words) {
        Job job = site.job;
        const auto made = applyChange(job, change);
        ASSERT_FALSE(made.ok());
        EXPECT_EQ(inWords(made.problem().what), "The " + words + ".");
        EXPECT_EQ(job, site.job);
        EXPECT_FALSE(verifyJob(forced(site.job, change)).empty());
    };
    inUse(site.without(site.cabinet), "place 'CAB1' is still in use by the device 'PS1'");
    inUse(site.without(site.type), "cable type '18/2' is still in use by the cable 'C1'");
    inUse(site.without(site.splice), "splice 'S1' is still in use by the conductor 'W1 (PS1:+ – …)'");
    inUse(site.without(site.alarm), "operator 'FIRE' is still in use by the opening 'D1'");
    inUse(site.without(site.sheet), "sheet 'Door 1' is still in use by the placement 'EL1'");
    inUse(site.without(site.typical), "typical 'restroom' is still in use by the stamp 'second floor'");
    inUse(site.without(site.job.devices.find(site.supply)->kind),
          "kind 'supply' is still in use by the device 'PS1'");
    inUse(site.without(site.core), "conductor 'C1.1 (LM1:NO1 – EL1:a)' is still in use by the drawn line ''");
}

} // namespace doorloom
