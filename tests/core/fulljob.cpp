#include "core/fulljob.h"

#include "core/smallkinds.h"
#include "edit/change.h"

#include <stdexcept>

namespace doorloom {

namespace {

Kind lockWithEverything()
{
    Kind kind = kindOfParts("strike", {"a", "b.2", "+"});
    kind.family = "lock";
    kind.roles = {roleOf("bolt", OperatorNature::Bolt, "in", "out")};
    kind.options = {{"V",
                     {"volts", "voltios"},
                     {throwNamed("12"), throwNamed("24")},
                     {{"J1", {}}, {"J2", {}}},
                     "24",
                     ValueStanding::Memory}};
    kind.settings = {
        {"hold", {"hold", "retención"}, Setting::Form::Number, "s", 0, 30, {}, {}, {}, ValueStanding::Memory},
        {"mode",
         {"mode", "modo"},
         Setting::Form::Choice,
         "",
         0,
         0,
         {throwNamed("x"), throwNamed("y")},
         {},
         {},
         ValueStanding::Memory}};
    LoadPart coil;
    coil.a = "a";
    coil.b = "b.2";
    kind.parts = {{"coil", {{"V", "J1", "12"}}, coil, ValueStanding::Memory}};
    kind.lock.emplace();
    kind.lock->load = "coil";
    return kind;
}

Operator boltOf(OperatorId id, DeviceId owner)
{
    return {id, "", owner, "bolt", OperatorNature::Bolt, {throwNamed("in"), throwNamed("out")}, "in", "out"};
}

Operator door(OperatorId id)
{
    return {id, "D1", {}, "", OperatorNature::Door, {throwNamed("shut"), throwNamed("open")}, "shut", "shut"};
}

Opening opening()
{
    Opening row;
    row.id = {60};
    row.tag = "DOOR1";
    row.words = "Restroom";
    row.egress = Egress::ByElectricity;
    row.fireRated = true;
    row.audience = Audience::Staff;
    row.door = row.fire = {21};
    row.locks = {{30}};
    row.doorOperators = {{31}};
    row.requests = {{"wave", Side::Outside, {{{21}, "open"}}}};
    row.releases = {{"push", Side::Inside, {{{21}, "open"}, {{20}, "out"}}}, {"fire", Side::Both, {}}};
    row.occupied = {{{20}, "out"}};
    row.promises = {{{SituationKind::Request, "wave", {}}, {30}, Promised::FreeButLatched},
                    {{SituationKind::LostAlone, "", {21}}, {31}, Promised::MustNotStart},
                    {{SituationKind::Rest, "", {}}, {30}, Promised::Nothing}};
    return row;
}

Conductor conductor(ConductorId id, End from, End to)
{
    Conductor row;
    row.id = id;
    row.tag = "W\"" + std::to_string(id.number);
    row.from = std::move(from);
    row.to = std::move(to);
    return row;
}

template <class Row> Step there(Row row)
{
    const Id<Row> id = row.id;
    return Put<Row>{id, std::move(row)};
}

Change everyRow()
{
    Change change;
    const auto add = [&](auto row) { change.steps.push_back(there(std::move(row))); };
    add(JobInfo{
        {1}, "17", "Title", "Site", "Client", "Author", "B", "2024-05-06", "line 1\nline 2", false, true});
    add(JobKind{{2}, lockWithEverything()});
    add(CableType{
        {3},
        "22/2 shielded",
        {"two cores", "dos hilos"},
        {{1, "RD", "22 AWG", 1, false}, {2, "WH+BU", "22 AWG", 1, false}, {7, "", "24 AWG", 0, true}},
        true,
        true});
    add(Place{{4}, "CAB1", "above ceiling", Mounting::Cabinet, true, "panel B, 12"});
    add(Place{{5}, "FRAME", "", Mounting::Frame, false, ""});
    add(boltOf({20}, {30}));
    add(door({21}));
    add(Device{{30},
               "ES1",
               "strike",
               {2},
               {5},
               Standing::Existing,
               {{"V", "J1", "12"}, {"V", "J2", ""}},
               {{"hold", 2.5}, {"mode", std::string("y")}},
               {{"bolt", {20}}}});
    add(boltOf({22}, {31}));
    add(Device{{31},
               "ES2",
               "",
               {2},
               {},
               Standing::ByOthers,
               {{"V", "J2", "24"}, {"V", "J1", "24"}},
               {},
               {{"bolt", {22}}}});
    add(Cable{{40}, "C1", {3}, {4}, {5}, Metres{12.5}, "P1", Standing::Moved, "behind the duct"});
    add(Splice{{41}, "SP1", {4}, "grey, 3-way", 5});

    Conductor core =
        conductor({50}, {EndState::Landed, Landing{{30}, "b.2"}}, {EndState::Landed, SpliceId{41}});
    core.make = ConductorMake::Core;
    core.cable = {40};
    core.core = 2;
    add(core);
    Conductor lead = conductor({51}, {EndState::Spare, {}}, {EndState::Insulated, {}});
    lead.make = ConductorMake::Lead;
    lead.colour = "GN+YE";
    lead.gauge = "0.5 mm2";
    lead.length = Metres{0.3};
    lead.standing = Standing::LeaveAlone;
    add(lead);
    add(conductor({52}, {}, {EndState::Landed, Landing{{31}, "+"}}));

    add(opening());
    add(Sheet{{70}, "Door 1", 2});
    add(Placement{{71}, {70}, DeviceId{30}, {-1200, 350}, 3});
    add(Placement{{72}, {70}, SpliceId{41}, {0, 0}, 0});
    add(Bends{{73}, {50}, {{1, 2}, {3, -4}}});
    add(Note{{74}, {70}, {5, 6}, "ñ † Ω −"});
    add(SetAside{{75}, "waiting-end", "C1.7", "rest", "spare for later", "A. Nonymous", "2024-05-06"});
    add(Typical{{80},
                "restroom",
                {30, 50},
                {{3, {Place{{5}, "FRAME", "", Mounting::Frame, false, ""}, lead, opening()}},
                 {4, {boltOf({20}, {30}), Bends{{73}, {50}, {{1, 2}}}}}}});
    add(Stamp{{81}, {80}, "restroom 2", {{30, 31}, {50, 52}}, 3, "{door}-{tag}"});
    return change;
}

} // namespace

Job fullJob()
{
    Job job;
    if (const Result<Change> undo = applyChange(job, everyRow()); !undo.ok())
        throw std::runtime_error(inWords(undo.problem()));
    job.nextNumber = 100;
    return job;
}

} // namespace doorloom
