#include "edit/operations.h"

#include "smallkinds.h"

#include "core/jobs.h"

#include <gtest/gtest.h>

#include <utility>

namespace doorloom {

namespace {

End landedOn(DeviceId device, const Key& terminal)
{
    return {EndState::Landed, Landing{device, terminal}};
}

void make(Job& job, const Change& change)
{
    const auto made = applyChange(job, change);
    ASSERT_TRUE(made.ok()) << inWords(made.problem());
    for (const Problem& problem : verifyJob(job))
        ADD_FAILURE() << inWords(problem);
}

void make(Job& job, const Result<Change>& change)
{
    ASSERT_TRUE(change.ok()) << inWords(change.problem());
    make(job, change.value());
}

template <class Id, class Value> Id make(Job& job, const std::pair<Id, Value>& made)
{
    make(job, made.second);
    return made.first;
}

template <class T> std::string refusal(const Result<T>& result)
{
    return result.ok() ? "made" : inWords(result.problem());
}

DeviceId place(Job& job, const Kind& kind, const std::string& tag)
{
    Numbers numbers(job);
    return make(job, placeDevice(job, numbers, kind, tag));
}

ConductorId wire(Job& job, End from, End to)
{
    Numbers numbers(job);
    return make(job, addWire(job, numbers, std::move(from), std::move(to)));
}

OperatorId moverOf(const Job& job, DeviceId device, const Key& role)
{
    return boundTo(*job.devices.find(device), role);
}

} // namespace

TEST(PlaceDevice, GivesItAnOperatorForEachRoleAndFactorySettings)
{
    Job job;
    const DeviceId module = place(job, smallModule(), "LM1");
    const Device& device = *job.devices.find(module);
    EXPECT_EQ(deviceTagged(job, "LM1"), &device);
    EXPECT_EQ(device.choices, (std::vector<Choice>{{"out1", "JA", ""}, {"out1", "JB", ""}}));
    EXPECT_EQ(device.settings, (std::vector<SettingChoice>{{"hold", 5.0}, {"mode", "timed"}}));
    const Operator& relay = *job.operators.find(boundTo(device, "K1"));
    EXPECT_EQ(relay.owner, module);
    EXPECT_EQ(relay.ownerRole, "K1");
    EXPECT_EQ(relay.tag, "");
    EXPECT_EQ(relay.idle, "out");
}

TEST(PlaceDevice, TakesAKindIntoTheJobOnce)
{
    Job job;
    place(job, smallStrike(), "EL1");
    place(job, smallStrike(), "EL2");
    EXPECT_EQ(job.kinds.size(), 1u);
}

TEST(RemoveDevice, LeavesItsConductorsWaiting)
{
    Job job;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    const DeviceId supply = place(job, smallSupply(), "PS1");
    const ConductorId plus = wire(job, landedOn(supply, "+"), landedOn(strike, "a"));
    make(job, removeDevice(job, strike));
    EXPECT_EQ(job.devices.find(strike), nullptr);
    EXPECT_EQ(job.conductors.find(plus)->to, End{});
    EXPECT_EQ(job.conductors.find(plus)->from, landedOn(supply, "+"));
}

TEST(RemoveDevice, TakesItsOwnOperatorsAlong)
{
    Job job;
    const DeviceId supply = place(job, smallSupply(), "PS1");
    make(job, removeDevice(job, supply));
    EXPECT_TRUE(job.operators.empty());
}

TEST(RemoveDevice, LeavesAnOperatorThatAnotherDeviceSharesAndKeepsItsName)
{
    Job job;
    const DeviceId first = place(job, smallDoorSwitch(), "DS1");
    const DeviceId second = place(job, smallDoorSwitch(), "DS2");
    const OperatorId door = moverOf(job, first, "door");
    make(job, bindRole(job, second, "door", door));
    EXPECT_EQ(job.operators.size(), 1u);
    make(job, removeDevice(job, first));
    ASSERT_NE(job.operators.find(door), nullptr);
    EXPECT_EQ(nameOf(job, door), "DS1");
    EXPECT_FALSE(job.operators.find(door)->owner);
}

TEST(OperatorsFor, AreThoseWithTheRolesThrowsAndNature)
{
    Job job;
    const DeviceId supply = place(job, smallSupply(), "PS1");
    const DeviceId first = place(job, smallDoorSwitch(), "DS1");
    const DeviceId second = place(job, smallDoorSwitch(), "DS2");
    EXPECT_EQ(operatorsFor(job, first, "door"),
              (std::vector{moverOf(job, first, "door"), moverOf(job, second, "door")}));
    EXPECT_TRUE(operatorsFor(job, first, "no such role").empty());
    EXPECT_TRUE(operatorsFor(job, {}, "door").empty());
    EXPECT_EQ(operatorsFor(job, supply, "mains").size(), 1u);
}

TEST(RemoveDevice, TakesAnOperatorAlongThatOnlyItWasStillBoundTo)
{
    Job job;
    const DeviceId owner = place(job, smallDoorSwitch(), "DS1");
    const DeviceId sharer = place(job, smallDoorSwitch(), "DS2");
    const DeviceId other = place(job, smallDoorSwitch(), "DS3");
    const OperatorId door = moverOf(job, owner, "door");
    make(job, bindRole(job, sharer, "door", door));
    make(job, bindRole(job, owner, "door", moverOf(job, other, "door")));
    ASSERT_NE(job.operators.find(door), nullptr);
    make(job, removeDevice(job, sharer));
    EXPECT_EQ(job.operators.find(door), nullptr);
}

TEST(RemoveDevice, TakesAwayWhatWasPromisedOfItsLoss)
{
    Job job;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    const DeviceId supply = place(job, smallSupply(), "PS1");
    Opening opening;
    opening.id = {job.nextNumber};
    opening.tag = "D1";
    opening.locks = {strike};
    opening.promises = {
        {{SituationKind::LostAlone, "", moverOf(job, supply, "mains")}, strike, Promised::Locked},
        {{SituationKind::Rest, "", {}}, strike, Promised::Locked}};
    make(job, Change{{Put<Opening>{opening.id, opening}}});
    make(job, removeDevice(job, supply));
    ASSERT_EQ(job.openings.find(opening.id)->promises.size(), 1u);
    EXPECT_EQ(job.openings.find(opening.id)->promises[0].situation.kind, SituationKind::Rest);
}

TEST(RemoveDevice, IsForgottenByTypicalsAndStamps)
{
    Job job;
    const DeviceId drawn = place(job, smallStrike(), "EL1");
    const DeviceId drawnButton = place(job, smallButton(), "PB1");
    const DeviceId stamped = place(job, smallStrike(), "EL2");
    const DeviceId stampedButton = place(job, smallButton(), "PB2");
    const TypicalId typical{job.nextNumber};
    const StampId stamp{job.nextNumber + 1};
    make(job, Change{{Put<Typical>{typical, Typical{typical, "restroom", {drawn.number, drawnButton.number}, {}}},
                      Put<Stamp>{stamp, Stamp{stamp,
                                              typical,
                                              "second floor",
                                              {{drawn.number, stamped.number},
                                               {drawnButton.number, stampedButton.number}},
                                              0,
                                              {}}}}});
    make(job, removeDevice(job, stamped));
    EXPECT_EQ(job.stamps.find(stamp)->rows.size(), 1u);
    make(job, removeDevice(job, drawnButton));
    EXPECT_EQ(job.typicals.find(typical)->rows, (std::vector<std::uint32_t>{drawn.number}));
    // Who was whom is still known once the typical's row is gone.
    EXPECT_EQ(job.stamps.find(stamp)->rows.size(), 1u);
}

TEST(RemoveDevice, IsForgottenByItsOpening)
{
    Job job;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    const DeviceId button = place(job, smallButton(), "PB1");
    Opening opening;
    opening.id = {job.nextNumber};
    opening.tag = "D1";
    opening.locks = {strike};
    opening.requests = {{"button", Side::Inside, {{moverOf(job, button, "hand"), "pushed"}}}};
    opening.promises = {{{SituationKind::Request, "button", {}}, strike, Promised::Free}};
    make(job, Change{{Put<Opening>{opening.id, opening}}});
    make(job, removeDevice(job, button));
    EXPECT_TRUE(job.openings.find(opening.id)->requests.at(0).throws.empty());
    EXPECT_EQ(job.openings.find(opening.id)->promises.size(), 1u);
    make(job, removeDevice(job, strike));
    EXPECT_TRUE(job.openings.find(opening.id)->locks.empty());
    EXPECT_TRUE(job.openings.find(opening.id)->promises.empty());
}

TEST(RemoveDevice, RefusesWhatIsToBeLeftAlone)
{
    Job job;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    Device existing = *job.devices.find(strike);
    existing.standing = Standing::LeaveAlone;
    make(job, Change{{Put<Device>{strike, existing}}});
    EXPECT_EQ(refusal(removeDevice(job, strike)), "EL1: 'EL1' is marked to be left alone. "
                                                  "Give it another standing first, if it may be touched.");
}

TEST(PullCable, MakesARowForEachCore)
{
    Job job;
    CableType type{{1}, "18/2", {}, {}};
    type.cores.resize(2);
    type.cores[1].number = 2;
    make(job, Change{{Put<CableType>{type.id, type}}});
    Numbers numbers(job);
    Cable cable;
    cable.tag = "C1";
    cable.type = type.id;
    const CableId pulled = make(job, pullCable(job, numbers, cable));
    const auto cores = coresOf(job, pulled);
    ASSERT_EQ(cores.size(), 2u);
    EXPECT_EQ(cores[1]->tag, "C1.2");
    EXPECT_EQ(cores[1]->core, 2);
    EXPECT_EQ(cores[1]->from.state, EndState::Waiting);

    const ConductorId first = cores[0]->id;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    make(job, setEnd(job, first, WhichEnd::To, landedOn(strike, "a")));
    make(job, takeOff(job, first));
    EXPECT_EQ(job.conductors.find(first)->to, End{});
    make(job, removeCable(job, pulled));
    EXPECT_TRUE(job.conductors.empty());
    EXPECT_TRUE(job.cables.empty());
}

TEST(TakeOff, RemovesAWireWithItsBends)
{
    Job job;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    const ConductorId loose = wire(job, landedOn(strike, "a"), {});
    const BendsId bends{job.nextNumber};
    make(job, Change{{Put<Bends>{bends, Bends{bends, loose, {{1, 2}}}}}});
    make(job, takeOff(job, loose));
    EXPECT_TRUE(job.conductors.empty());
    EXPECT_TRUE(job.bends.empty());
}

TEST(SetEnd, RefusesATerminalThatIsNotThere)
{
    Job job;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    const ConductorId loose = wire(job, {}, {});
    EXPECT_EQ(refusal(setEnd(job, loose, WhichEnd::From, landedOn(strike, "NO2"))),
              "EL1: EL1 has no terminal 'NO2'. Use one of: a, b.");
    EXPECT_EQ(refusal(setEnd(job, loose, WhichEnd::From, {EndState::Landed, SpliceId{999}})),
              "That splice is not in the job any more. Choose another, or undo its removal.");
    make(job, setEnd(job, loose, WhichEnd::From, {EndState::Spare, Landing{strike, "a"}}));
    EXPECT_EQ(job.conductors.find(loose)->from, (End{EndState::Spare, {}}));
}

TEST(ExchangeTerminals, MovesEveryConductorOnThem)
{
    Job job;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    const ConductorId first = wire(job, landedOn(strike, "a"), landedOn(strike, "b"));
    const ConductorId second = wire(job, {}, landedOn(strike, "a"));
    make(job, exchangeTerminals(job, strike, "a", "b"));
    EXPECT_EQ(job.conductors.find(first)->from, landedOn(strike, "b"));
    EXPECT_EQ(job.conductors.find(first)->to, landedOn(strike, "a"));
    EXPECT_EQ(job.conductors.find(second)->to, landedOn(strike, "b"));
    EXPECT_EQ(refusal(exchangeTerminals(job, strike, "a", "c")),
              "EL1: EL1 has no terminal 'c'. Use one of: a, b.");
}

TEST(SetEnd, LeavesAConductorAloneThatIsMarkedSo)
{
    JobBuilder job = oneDoor();
    const ConductorId wire = conductorNamed(job.job(), "ES1:1 → LM1:K1.C");
    Conductor row = *job.job().conductors.find(wire);
    row.standing = Standing::LeaveAlone;
    job.apply({{Put<Conductor>{wire, row}}});

    EXPECT_FALSE(setEnd(job.job(), wire, WhichEnd::From, {EndState::Spare, {}}).ok());
    const DeviceId strike = deviceTagged(job.job(), "ES1")->id, module = deviceTagged(job.job(), "LM1")->id;
    EXPECT_FALSE(exchangeTerminals(job.job(), strike, "1", "2").ok());
    EXPECT_TRUE(exchangeTerminals(job.job(), module, "K1.NO", "K1.NC").ok()); // nothing of it is there
}

TEST(ExchangeTerminals, LeavesADeviceAloneThatIsMarkedSo)
{
    JobBuilder job = oneDoor();
    Device row = *deviceTagged(job.job(), "ES1");
    row.standing = Standing::LeaveAlone;
    job.apply({{Put<Device>{row.id, row}}});
    const Result<Change> change = exchangeTerminals(job.job(), row.id, "1", "2");
    ASSERT_FALSE(change.ok());
    EXPECT_NE(inWords(change.problem()).find("ES1"), std::string::npos);
}

TEST(SetJumper, PutsOneAndAnOptionPutsAll)
{
    Job job;
    const DeviceId module = place(job, smallModule(), "LM1");
    make(job, setJumper(job, module, "out1", "JB", "wet"));
    EXPECT_EQ(chosen(*job.devices.find(module), "out1", "JA"), std::nullopt);
    EXPECT_EQ(chosen(*job.devices.find(module), "out1", "JB"), "wet");
    make(job, setOption(job, module, "out1", "dry"));
    EXPECT_TRUE(holds(*job.devices.find(module), {{"out1", "JA", "dry"}, {"out1", "JB", "dry"}}));
    make(job, setJumper(job, module, "out1", "JA", ""));
    EXPECT_EQ(chosen(*job.devices.find(module), "out1", "JA"), std::nullopt);

    EXPECT_EQ(refusal(setJumper(job, module, "out1", "JC", "wet")),
              "LM1: LM1 has no jumper 'JC' for the option 'out1'. "
              "Use one of the jumpers of its kind: out1.JA, out1.JB.");
    EXPECT_EQ(refusal(setJumper(job, module, "out1", "JA", "damp")),
              "LM1: Jumper JA of LM1 can't stand at 'damp'. Use one of: dry, wet; or leave it not chosen.");
    EXPECT_EQ(refusal(setOption(job, module, "out2", "wet")),
              "LM1: LM1 has no option 'out2'. Use one of: out1.");
}

TEST(SetSetting, RefusesWhatIsOutOfLimits)
{
    Job job;
    const DeviceId module = place(job, smallModule(), "LM1");
    make(job, setSetting(job, module, "hold", 30.0));
    EXPECT_EQ(settingOf(*job.devices.find(module), "hold"), SettingValue(30.0));
    EXPECT_EQ(refusal(setSetting(job, module, "hold", 31.0)),
              "LM1: Hold time of LM1 can't be '31'. Use a number from 1 to 30 s.");
    EXPECT_EQ(refusal(setSetting(job, module, "mode", "never")),
              "LM1: Mode of LM1 can't be 'never'. Use one of: timed, toggle.");
    EXPECT_EQ(refusal(setSetting(job, module, "tone", 1.0)),
              "LM1: LM1 has no setting 'tone'. Use the settings of its kind: hold, mode.");
}

TEST(SetKind, CarriesOverWhatTheNewKindKnows)
{
    Job job;
    const DeviceId module = place(job, smallModule(), "LM1");
    const OperatorId relay = moverOf(job, module, "K1");
    make(job, setOption(job, module, "out1", "wet"));
    make(job, setSetting(job, module, "hold", 20.0));
    make(job, setIdle(job, relay, "in"));
    Kind newer = smallModule();
    newer.options[0].jumpers.pop_back();
    newer.settings[0].most = 10;
    newer.roles[0].words = {"Relay 1", "Relé 1"};
    Numbers numbers(job);
    const auto swap = setKind(job, numbers, module, newer);
    ASSERT_TRUE(swap.ok());
    make(job, swap.value().change);
    const Device& device = *job.devices.find(module);
    EXPECT_EQ(*kindOf(job, device), newer);
    EXPECT_EQ(device.choices, (std::vector<Choice>{{"out1", "JA", "wet"}}));
    EXPECT_EQ(settingOf(device, "hold"), SettingValue(5.0));
    EXPECT_EQ(boundTo(device, "K1"), relay);
    EXPECT_EQ(job.operators.find(relay)->idle, "in");
    std::vector<std::string> lines;
    for (const Message& line : swap.value().leftBehind)
        lines.push_back(inWords(line));
    EXPECT_EQ(lines, (std::vector<std::string>{"LM1: jumper JB at 'wet' (out1) was not carried over.",
                                               "LM1: the setting 'hold' at '20' was not carried over."}));
}

TEST(SetKind, RefusesToStrandALanding)
{
    Job job;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    wire(job, landedOn(strike, "a"), {});
    Numbers numbers(job);
    EXPECT_EQ(refusal(setKind(job, numbers, strike, smallSupply())),
              "EL1: Small supply does not have terminals that are in use: 'EL1:a' (EL1:a – …). "
              "Move these conductors to one of +, - of EL1 first, or choose another kind.");
}

TEST(SetKind, SaysThatAnOpeningLosesItsLock)
{
    Job job;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    Opening opening;
    opening.id = {job.nextNumber};
    opening.tag = "D1";
    opening.locks = {strike};
    make(job, Change{{Put<Opening>{opening.id, opening}}});
    Numbers numbers(job);
    const auto swap = setKind(job, numbers, strike, smallDoorSwitch());
    ASSERT_TRUE(swap.ok());
    make(job, swap.value().change);
    EXPECT_TRUE(job.openings.find(opening.id)->locks.empty());
    ASSERT_EQ(swap.value().leftBehind.size(), 1u);
    EXPECT_EQ(inWords(swap.value().leftBehind[0]),
              "EL1 is not a lock of D1 any more, and what was promised of it is dropped.");
}

TEST(SetKind, GivesARoleThatTheOldKindDidNotHaveAnOperator)
{
    Job job;
    const DeviceId button = place(job, smallButton(), "PB1");
    const OperatorId hand = moverOf(job, button, "hand");
    Opening opening;
    opening.id = {job.nextNumber};
    opening.tag = "D1";
    opening.requests = {{"button", Side::Inside, {{hand, "pushed"}}}};
    make(job, Change{{Put<Opening>{opening.id, opening}}});
    Numbers numbers(job);
    const auto swap = setKind(job, numbers, button, smallDoorSwitch());
    ASSERT_TRUE(swap.ok());
    make(job, swap.value().change);
    EXPECT_EQ(job.operators.find(hand), nullptr);
    EXPECT_EQ(job.operators.find(moverOf(job, button, "door"))->owner, button);
    EXPECT_TRUE(job.openings.find(opening.id)->requests.at(0).throws.empty());
    ASSERT_EQ(swap.value().leftBehind.size(), 2u);
    EXPECT_EQ(inWords(swap.value().leftBehind[0]), "PB1: 'hand' is not moved by PB1 any more.");
    EXPECT_EQ(inWords(swap.value().leftBehind[1]), "PB1: D1 does not name PB1 any more.");
}

TEST(SetKind, LeavesAnOperatorThatOthersShareToThem)
{
    Job job;
    const DeviceId first = place(job, smallDoorSwitch(), "DS1");
    const DeviceId second = place(job, smallDoorSwitch(), "DS2");
    const OperatorId door = moverOf(job, first, "door");
    make(job, bindRole(job, second, "door", door));
    Numbers numbers(job);
    make(job, setKind(job, numbers, first, smallStrike()).value().change);
    EXPECT_EQ(moverOf(job, second, "door"), door);
    EXPECT_EQ(nameOf(job, door), "DS1");
    EXPECT_FALSE(job.operators.find(door)->owner);
}

TEST(BindRole, HandsWhatAnOpeningSaysOverToTheNewOperator)
{
    Job job;
    const DeviceId first = place(job, smallDoorSwitch(), "DS1");
    const DeviceId second = place(job, smallDoorSwitch(), "DS2");
    const OperatorId old = moverOf(job, second, "door");
    const OperatorId door = moverOf(job, first, "door");
    Opening opening;
    opening.id = {job.nextNumber};
    opening.tag = "D1";
    opening.door = old;
    opening.occupied = {{old, "shut"}, {door, "shut"}};
    make(job, Change{{Put<Opening>{opening.id, opening}}});
    make(job, bindRole(job, second, "door", door));
    EXPECT_EQ(job.operators.find(old), nullptr);
    EXPECT_EQ(job.openings.find(opening.id)->door, door);
    EXPECT_EQ(job.openings.find(opening.id)->occupied, (std::vector<Thrown>{{door, "shut"}}));
}

TEST(BindRole, KeepsWhatAnOpeningSaidOfTheNewOperatorAlready)
{
    Job job;
    const DeviceId first = place(job, smallDoorSwitch(), "DS1");
    const DeviceId second = place(job, smallDoorSwitch(), "DS2");
    const DeviceId strike = place(job, smallStrike(), "ES1");
    const OperatorId old = moverOf(job, second, "door");
    const OperatorId door = moverOf(job, first, "door");
    Opening opening;
    opening.id = {job.nextNumber};
    opening.tag = "D1";
    opening.locks = {strike};
    opening.requests = {{"press", Side::Both, {{old, "open"}, {door, "shut"}}}};
    opening.promises = {{{SituationKind::LostAlone, {}, old}, strike, Promised::Free},
                        {{SituationKind::LostAlone, {}, door}, strike, Promised::Locked}};
    make(job, Change{{Put<Opening>{opening.id, opening}}});
    make(job, bindRole(job, second, "door", door));
    const Opening& after = *job.openings.find(opening.id);
    EXPECT_EQ(after.requests.front().throws, (std::vector<Thrown>{{door, "shut"}}));
    EXPECT_EQ(after.promises,
              (std::vector<Promise>{{{SituationKind::LostAlone, {}, door}, strike, Promised::Locked}}));
}

TEST(BindRole, LeavesAnOperatorThatNobodyOwnsOrOthersShare)
{
    Job job;
    const DeviceId first = place(job, smallDoorSwitch(), "DS1");
    const DeviceId second = place(job, smallDoorSwitch(), "DS2");
    const OperatorId shared = moverOf(job, first, "door");
    Operator leaf = *job.operators.find(shared);
    leaf.id = {job.nextNumber};
    leaf.tag = "D1";
    leaf.owner = {};
    make(job, Change{{Put<Operator>{leaf.id, leaf}}});
    make(job, bindRole(job, second, "door", shared));
    make(job, bindRole(job, second, "door", leaf.id));
    EXPECT_NE(job.operators.find(shared), nullptr); // DS1 is bound to it
    make(job, bindRole(job, second, "door", shared));
    EXPECT_NE(job.operators.find(leaf.id), nullptr); // a door of its own
}

TEST(BindRole, RefusesThrowsThatDoNotMatch)
{
    Job job;
    const DeviceId doorSwitch = place(job, smallDoorSwitch(), "DS1");
    const DeviceId button = place(job, smallButton(), "PB1");
    EXPECT_EQ(refusal(bindRole(job, doorSwitch, "door", moverOf(job, button, "hand"))),
              "DS1: PB1 can't move 'door' of DS1: it has the throws released, pushed, not shut, open. "
              "Choose an operator with the throws shut, open.");
}

TEST(SetIdle, RefusesAThrowThatIsNotThere)
{
    Job job;
    const DeviceId button = place(job, smallButton(), "PB1");
    EXPECT_EQ(refusal(setIdle(job, moverOf(job, button, "hand"), "in")),
              "PB1: PB1 can't be at 'in' at rest. Use one of its throws: released, pushed.");
}

TEST(RenameDevice, RefusesATagThatIsTakenOrUnfit)
{
    Job job;
    const DeviceId strike = place(job, smallStrike(), "EL1");
    place(job, smallStrike(), "EL2");
    make(job, renameDevice(job, strike, "EL7"));
    EXPECT_EQ(deviceTagged(job, "EL7")->id, strike);
    EXPECT_EQ(refusal(renameDevice(job, strike, "EL2")),
              "EL2: The tag 'EL2' is on two devices. Give one of them another tag.");
    EXPECT_EQ(
        refusal(renameDevice(job, strike, "EL 2")),
        "EL 2: The tag 'EL 2' has a blank or ':' in it. Give it a tag such as 'PS1', without blanks or ':'.");
    EXPECT_EQ(refusal(renameDevice(job, {999}, "EL3")),
              "That device is not in the job any more. Choose another, or undo its removal.");
}

} // namespace doorloom
