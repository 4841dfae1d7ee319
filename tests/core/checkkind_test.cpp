#include "catalogue/kindjson.h"
#include "core/fullkind.h"

#include <gtest/gtest.h>

#include <functional>
#include <limits>
#include <stdexcept>
#include <string>

namespace doorloom {

namespace {

// All that is said against the full kind once it has been changed, a line each.
std::string saidAfter(const std::function<void(Kind&)>& change)
{
    Kind kind = fullKind();
    change(kind);
    std::string said;
    for (const Problem& problem : checkKind(kind))
        said += (said.empty() ? "" : "\n") + inWords(problem);
    return said;
}

// The first part of this type.
template <class Body> Body& part(Kind& kind)
{
    for (Part& each : kind.parts)
        if (auto* body = std::get_if<Body>(&each.body))
            return *body;
    throw std::logic_error("the full kind has a part of every type");
}

Terminal& plus(Kind& kind)
{
    return kind.strips[0].terminals[0];
}

} // namespace

TEST(CheckKind, SaysNothingAgainstAGoodKind)
{
    EXPECT_EQ(saidAfter([](Kind&) {}), "");
}

TEST(CheckKind, WantsANameInPlainLetters)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.name = "Relay 1"; }),
              "name: 'Relay 1' cannot be a kind's name. Use lower-case letters, digits and '-'.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.name = ""; }),
              "name: '' cannot be a kind's name. Use lower-case letters, digits and '-'.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.title.en = ""; }),
              "title: The words in English are missing. Write what people call it, in English and Spanish.");
}

TEST(CheckKind, WantsKeysThatCanBeWritten)
{
    const std::string remedy =
        " Keys have no blanks and no ':', and do not begin with '.'; those of options and "
        "jumpers have no '.' at all.";
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.parts[0].key = "a b"; }),
              "parts[0].key: 'a b' cannot be a key." + remedy);
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.parts[0].key = "a:b"; }),
              "parts[0].key: 'a:b' cannot be a key." + remedy);
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.parts[0].key = ".a"; }),
              "parts[0].key: '.a' cannot be a key." + remedy);
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.parts[0].key = "a.b"; }), "");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.parts[0].key = ""; }),
              "parts[0].key: The key is empty. Give it a short name of its own.");
    EXPECT_EQ(
        saidAfter([](Kind& kind) { kind.options.push_back(kind.options[0]), kind.options[1].key = "K.2"; }),
        "options[1].key: 'K.2' cannot be a key." + remedy);
}

TEST(CheckKind, WantsKeysOnce)
{
    const std::string twice = " is used twice. Give each its own.";
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  kind.strips[1].terminals = {plus(kind)};
                  kind.strips[1].terminals.push_back(kind.strips[0].terminals[1]);
                  kind.strips[1].terminals[0].printed = "p";
                  kind.strips[1].terminals[1].key = "IN1";
                  kind.strips[1].terminals[1].printed = "q";
              }),
              "strips[1].terminals[0].key: '+'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.strips[1].terminals[0].printed = "+"; }),
              "strips[1].terminals[0].printed: '+'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.roles.push_back(kind.roles[0]); }),
              "roles[3].key: 'K1'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.roles[2].throws.push_back(kind.roles[2].throws[0]); }),
              "roles[2].throws[2].key: 'on'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.options.push_back(kind.options[0]); }),
              "options[1].key: 'K1'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  kind.options[0].jumpers.push_back({"JB", {}});
              }),
              "options[0].jumpers[2].key: 'JB'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.settings[1].key = "hold"; }),
              "settings[1].key: 'hold'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.parts[0].key = "fuse"; }), "parts[14].key: 'fuse'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.outputs.push_back(kind.outputs[0]); }),
              "outputs[1].key: 'K1'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  part<ContactPart>(kind).closedIn = {"in", "in"};
              }),
              "parts[1].closedIn[1]: 'in'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  part<SourcePart>(kind).live[0].push_back({"mains", "lost"});
              }),
              "parts[5].live[0].mains: 'mains'" + twice);
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  kind.parts[1].when.push_back({"K1", "JA", "dry"});
              }),
              "parts[1].when.K1.JA: 'K1.JA'" + twice);
}

TEST(CheckKind, WantsRolesWithTwoThrows)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.roles[2].throws.pop_back(); }),
              "roles[2].throws: This list has fewer than 2 entries. List 2 or more.\n"
              "roles[2].unpowered: 'lost' is not there. Use one of: on.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.roles[0].idle = "out"; }),
              "roles[0].idle: 'out' is not there. Use one of: rest, in.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.roles[0].throws[1].words = {}; }),
              "roles[0].throws[1].words: The words in English are missing. Write what people call it, in "
              "English and "
              "Spanish.");
}

TEST(CheckKind, WantsTerminalsThatFitTheirConditions)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { plus(kind).printed = ""; }),
              "strips[0].terminals[0].printed: The terminal's printed name is missing. Write it as it stands "
              "on the "
              "device.");
    EXPECT_EQ(saidAfter([](Kind& kind) { plus(kind).required[1][0].option = "K2"; }),
              "strips[0].terminals[0].required[1].K2.JA: 'K2' is not there. Use one of: K1.");
    EXPECT_EQ(saidAfter([](Kind& kind) { plus(kind).signs[0].when[1].jumper = "JC"; }),
              "strips[0].terminals[0].signs[0].when.K1.JC: 'JC' is not there. Use one of: JA, JB.");
    EXPECT_EQ(saidAfter([](Kind& kind) { plus(kind).signs[0].when[1].value = "damp"; }),
              "strips[0].terminals[0].signs[0].when.K1.JB: 'damp' is not there. Use one of: wet, dry.");
    EXPECT_EQ(saidAfter([](Kind& kind) { plus(kind).clampCapacity = 0; }),
              "strips[0].terminals[0].clampCapacity: 0 is too small. Write more than 0.");
    EXPECT_EQ(saidAfter([](Kind& kind) { plus(kind).torque = NewtonMetres{-1}; }),
              "strips[0].terminals[0].torqueNewtonMetres: -1 is too small. Write more than 0.");
}

TEST(CheckKind, WantsOptionsWithJumpersAndValues)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.options[0].factory = "damp"; }),
              "options[0].factory: 'damp' is not there. Use one of: wet, dry.");
    EXPECT_EQ(
        saidAfter([](Kind& kind) {
            kind.options.push_back({"K2", {"o", "o"}, {{"a", {"a", "a"}}}, {}, "", ValueStanding::Memory});
        }),
        "options[1].values: This list has fewer than 2 entries. List 2 or more.\n"
        "options[1].jumpers: This list has fewer than 1 entries. List 1 or more.");
}

TEST(CheckKind, AllowsFourThousandAndNinetySixWaysOfTheJumpersAndNoMore)
{
    const auto withOptions = [](int count) {
        return saidAfter([&](Kind& kind) {
            for (int i = 0; i < count; ++i) {
                kind.options.push_back(kind.options[0]);
                kind.options.back().key = "X" + std::to_string(i);
            }
        });
    };
    EXPECT_EQ(withOptions(5), ""); // 4 ways each: 4 to the power of 6
    EXPECT_EQ(
        withOptions(6),
        "options: The jumpers can stand in more than 4096 ways. Make two kinds of it, each with some of "
        "the options.");
    EXPECT_EQ(withOptions(999), withOptions(6)); // no overflow on the way
}

TEST(CheckKind, StopsAtListsThatNoDeviceHas)
{
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  kind.strips.resize(2000);
                  for (Strip& strip : kind.strips)
                      strip.terminals.resize(1);
                  kind.parts.resize(1001);
              }),
              "strips: There are 2000 of them. List 1000 or fewer.\n"
              "parts: There are 1001 of them. List 1000 or fewer.");
}

TEST(CheckKind, WantsSettingsWhoseValuesFit)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.settings[0].factory = 31.0; }),
              "settings[0].factory: This value does not fit the setting. Write a number from 0.5 to 30.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.settings[0].beforePower = "a"; }),
              "settings[0].beforePower: This value does not fit the setting. Write a number from 0.5 to 30.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.settings[0].least = 60; }),
              "settings[0].least: 'least' is 60, more than 'most', which is 30. Correct one of the two.\n"
              "settings[0].factory: This value does not fit the setting. Write a number from 60 to 30.\n"
              "settings[0].beforePower: This value does not fit the setting. Write a number from 60 to 30.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.settings[1].factory = "c"; }),
              "settings[1].factory: 'c' is not there. Use one of: a, b.");
    EXPECT_EQ(
        saidAfter([](Kind& kind) { kind.settings[1].factory = 1.0; }),
        "settings[1].factory: This value does not fit the setting. Write the key of one of its values.");
    EXPECT_EQ(
        saidAfter([](Kind& kind) { kind.settings[0].values = kind.settings[1].values; }),
        "settings[0].values: A setting that is a number lists no values. Use 'least' and 'most', or the form "
        "'choice'.");
}

TEST(CheckKind, WantsPartsOnNodesThatAreThere)
{
    const std::string there = " is not there. Use one of: +, -, IN1.";
    EXPECT_EQ(saidAfter([](Kind& kind) { part<LinkPart>(kind).a = "x"; }), "parts[0].a: 'x'" + there);
    EXPECT_EQ(saidAfter([](Kind& kind) { part<LinkPart>(kind).a = "."; }), "parts[0].a: '.'" + there);
    EXPECT_EQ(saidAfter([](Kind& kind) { part<DryInputPart>(kind).reference = "x"; }),
              "parts[4].reference: 'x'" + there);
    EXPECT_EQ(saidAfter([](Kind& kind) { part<SourcePart>(kind).minus = "x"; }),
              "parts[5].minus: 'x'" + there);
    EXPECT_EQ(saidAfter([](Kind& kind) { part<SignalPart>(kind).terminal = "x"; }),
              "parts[8].terminal: 'x'" + there);
    EXPECT_EQ(saidAfter([](Kind& kind) { part<EarthPart>(kind).terminal = "x"; }),
              "parts[9].terminal: 'x'" + there);
    EXPECT_EQ(saidAfter([](Kind& kind) { part<MainsPart>(kind).terminal = "x"; }),
              "parts[10].terminal: 'x'" + there);
    EXPECT_EQ(saidAfter([](Kind& kind) { part<DiodePart>(kind).cathode = "x"; }),
              "parts[11].cathode: 'x'" + there);
    EXPECT_EQ(saidAfter([](Kind& kind) { part<FusePart>(kind).b = "x"; }), "parts[14].b: 'x'" + there);
}

TEST(CheckKind, WantsTheTwoEndsOfAPartApart)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { part<LoadPart>(kind).b = "+"; }),
              "parts[2].b: Both ends are on '+'. Put them on two different nodes.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<BatteryPart>(kind).minus = "+"; }),
              "parts[7].minus: Both ends are on '+'. Put them on two different nodes.");
}

TEST(CheckKind, WantsContactsOfItsRoles)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { part<ContactPart>(kind).role = "K9"; }),
              "parts[1].role: 'K9' is not there. Use one of: K1, magnet, mains.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<ContactPart>(kind).closedIn = {"on"}; }),
              "parts[1].closedIn[0]: 'on' is not there. Use one of: rest, in.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<ContactPart>(kind).closedIn.clear(); }),
              "parts[1].closedIn: This list has fewer than 1 entries. List 1 or more.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<ContactPart>(kind).rating.mostVolts = Volts{0.5}; }),
              "parts[1].rating.leastVolts: 'leastVolts' is 1, more than 'mostVolts', which is 0.5. Correct "
              "one of the two.");
}

TEST(CheckKind, WantsNumbersThatCanBe)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { part<LoadPart>(kind).rated[1].volts = Volts{0}; }),
              "parts[2].rated[1].volts: 0 is too small. Write more than 0.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<LoadPart>(kind).releaseVolts = Volts{9.5}; }),
              "parts[2].releaseVolts: 'releaseVolts' is 9.5, more than 'pullInVolts', which is 9. Correct "
              "one of the two.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<LoadPart>(kind).leastVolts = Volts{29}; }),
              "parts[2].leastVolts: 'leastVolts' is 29, more than 'mostVolts', which is 28. Correct one of "
              "the two.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<SourcePart>(kind).highest = Volts{23.5}; }),
              "parts[5].nominalVolts: 'nominalVolts' is 24, more than 'highestVolts', which is 23.5. Correct "
              "one of the two.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<SourcePart>(kind).most = Amperes{0}; }),
              "parts[5].mostAmperes: 0 is too small. Write more than 0.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<DiodePart>(kind).drop = Volts{-0.7}; }),
              "parts[11].dropVolts: -0.7 is too small. Write 0 or more.");
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  part<ResistorPart>(kind).ohms = Ohms{std::numeric_limits<double>::quiet_NaN()};
              }),
              "parts[12].ohms: nan is too small. Write more than 0.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<DryInputPart>(kind).bands[0].least = Ohms{200}; }),
              "parts[4].bands[0].leastOhms: 'leastOhms' is 200, more than 'mostOhms', which is 100. Correct "
              "one of the two.");
}

TEST(CheckKind, WantsToKnowWhatMovesARole)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { part<MovePart>(kind).powered = "fuse"; }),
              "parts[3].powered: 'fuse' is no part that can stand here. Name a part of type load.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<MovePart>(kind).by = {"fuse"}; }),
              "parts[3].by[0]: 'fuse' is no part that can stand here. Name a part of type dryInput, load or "
              "signal.");
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  part<MovePart>(kind).powered = "";
                  part<MovePart>(kind).poweredIn.clear();
              }),
              "parts[3]: It is not said what powers it. Give 'powered' the load that must be fed, or "
              "'poweredIn' a role "
              "and its throw.");
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  part<MovePart>(kind).poweredIn = {{"mains", "off"}};
              }),
              "parts[3].poweredIn.mains: 'off' is not there. Use one of: on, lost.");
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  part<MovePart>(kind).sense = "";
                  part<MovePart>(kind).by.clear();
              }),
              "parts[3]: It is not said what it follows. Give 'sense' a role, or 'by' an input.");
    EXPECT_EQ(saidAfter([](Kind& kind) { part<MovePart>(kind).sense = "mains"; }),
              "parts[3].sense: 'mains' has other throws than 'K1'. Give both roles the same throws.");
    EXPECT_EQ(
        saidAfter([](Kind& kind) { part<MovePart>(kind).manner = MoveManner::Programmed; }),
        "parts[3].sense: Only a part that follows has a 'sense'. Take it out, or make the manner 'follows'.");
    EXPECT_EQ(saidAfter([](Kind& kind) {
                  part<MovePart>(kind).manner = MoveManner::Plain;
                  part<MovePart>(kind).sense = part<MovePart>(kind).powered = "";
              }),
              "parts[3]: A plain coil needs the load that moves it. Give 'powered' that load.");
}

TEST(CheckKind, WantsOutputsThatFitTheirOption)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.outputs[0].terminals[2] = "NC"; }),
              "outputs[0].terminals[2]: 'NC' is not there. Use one of: +, -, IN1.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.outputs[0].option = "K2"; }),
              "outputs[0].option: 'K2' is not there. Use one of: K1.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.outputs[0].wetValue = "damp"; }),
              "outputs[0].wetValue: 'damp' is not there. Use one of: wet, dry.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.outputs[0].option = ""; }),
              "outputs[0]: An output that can be wet needs its option. Name the option in 'option', or take "
              "'wetValue' out.");
}

TEST(CheckKind, WantsALockWithItsLoad)
{
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.lock->load = ""; }),
              "lock.load: '' is no part that can stand here. Name a part of type load.");
    EXPECT_EQ(saidAfter([](Kind& kind) { kind.lock->load = "fuse"; }),
              "lock.load: 'fuse' is no part that can stand here. Name a part of type load.");
}

} // namespace doorloom
