#include "circuit.h"

// Circuits that an obvious implementation judges wrong, by their letters.
namespace doorloom {

namespace {

const Expected tie{.rule = "two-feeds", .severity = "hint", .at = "PS1 PS2"};

Strip stripOf(const std::vector<Key>& keys)
{
    Strip strip;
    for (const Key& key : keys) {
        Terminal terminal;
        terminal.key = terminal.printed = key;
        strip.terminals.push_back(terminal);
    }
    return strip;
}

Kind withMainsFailRelay()
{
    Kind kind = catalogueKind("dc-supply-24");
    kind.name = "dc-supply-24-mains-fail-relay";
    kind.strips.push_back(stripOf({"MF.C", "MF.NO", "MF.NC"}));
    kind.parts.push_back({"MF.NC", {}, ContactPart{"MF.C", "MF.NC", "mains", {"lost"}, {}}});
    kind.parts.push_back({"MF.NO", {}, ContactPart{"MF.C", "MF.NO", "mains", {"on"}, {}}});
    return kind;
}

// Lives on mains that nobody draws; its relay LK is moved by its own logic, its output OC sinks.
Kind controller()
{
    Kind kind;
    kind.name = "controller-on-mains";
    kind.family = "logic";
    kind.roles = {*findRole(catalogueKind("door-operator"), "mains"),
                  *findRole(catalogueKind("relay-module-negative"), "K1"),
                  *findRole(catalogueKind("relay-module-negative"), "K2")};
    kind.roles[1].key = "LK";
    kind.roles[2].key = "OC";
    kind.strips = {stripOf({"LK.C", "LK.NO", "LK.NC", "OC", "GND"})};
    for (const char* role : {"LK", "OC"}) {
        MovePart move;
        move.role = role;
        move.manner = MoveManner::Programmed;
        move.poweredIn = {{"mains", "on"}};
        kind.parts.push_back({std::string(role) + ".move", {}, move});
    }
    kind.parts.push_back({"NO", {}, ContactPart{"LK.C", "LK.NO", "LK", {"in"}, {}}});
    kind.parts.push_back({"NC", {}, ContactPart{"LK.C", "LK.NC", "LK", {"rest"}, {}}});
    kind.parts.push_back({"sink", {}, ContactPart{"OC", "GND", "OC", {"in"}, {}, true}});
    return kind;
}

JudgedCircuit twoKeysInSeries()
{
    const Job right =
        withDevices("PS1 dc-supply-24; KS1 KS2 key-switch; OL1 lamp").wires("PS1:+ → KS1:C; KS1:NO → KS2:C; KS2:NO → OL1:+; OL1:− → PS1:−").job();
    return {
        "trap a",
        right,
        {},
        {wrongForm("trap a shorted", right, [](JobBuilder& job) { job.wire("KS2:NO", "PS1:−"); },
                   {{.rule = "shorted", .severity = "danger", .at = "PS1", .throws = {"KS1=on KS2=on"}}})}};
}

JudgedCircuit ownContactsInSeries()
{
    return {
        "trap b",
        withDevices("PS1 dc-supply-24; KS1 key-switch; R1 relay")
            .wires(
                "PS1:+ → KS1:C; KS1:NO → R1:A1; R1:A2 → PS1:−; PS1:+ → R1:C1; R1:NO1 → R1:C2; R1:NC2 → PS1:−")
            .job(),
        {},
        {}};
}

JudgedCircuit returnThatReachesOnlyPlus()
{
    Kind small = catalogueKind("resistor"); // so that the lamp has its volts behind it
    std::get<ResistorPart>(small.parts.front().body).ohms = {47};
    const Job right = withDevices("PS1 dc-supply-24; TS1 terminal-strip-4x; OL1 OL2 lamp")
                          .device("RES1", small)
                          .wires("PS1:+ → TS1:1; TS1:1 → TS1:2; OL2:+ → TS1:2; OL2:− → PS1:−; OL1:+ → TS1:1; "
                                 "OL1:− → TS1:3; RES1:a → TS1:3; RES1:b → PS1:−")
                          .job();
    return {"trap c",
            right,
            {},
            {wrongForm(
                "trap c no return", right, [](JobBuilder& job) { job.move("PS1:− → RES1:b", "TS1:2"); },
                {{.rule = "never-fed", .severity = "fault", .at = "OL1", .reason = reason::missingReturn}},
                Mending::AnyOfSeveral)}};
}

JudgedCircuit eightDoors()
{
    JobBuilder job = withDevices("PS1 dc-supply-24-4a");
    for (const std::string n : {"1", "2", "3", "4", "5", "6", "7", "8"}) {
        addModule(job, "LM" + n).device("PB" + n, "push-plate").device("ES" + n, "strike-fail-secure");
        job.power("PS1", "LM" + n);
        job.wire("PB" + n + ":C", "LM" + n + ":COM").wire("PB" + n + ":NO", "LM" + n + ":IN1");
        job.wire("PS1:+", "LM" + n + ":K1.C")
            .wire("LM" + n + ":K1.NO", "ES" + n + ":1")
            .wire("ES" + n + ":2", "PS1:−");
        job.opening({.tag = "DOOR" + n,
                     .locks = {"ES" + n},
                     .requests = {{"PB" + n, "PB" + n + "=pressed LM" + n + ":K1=in"}},
                     .promises = {{"rest", Promised::Locked}, {"request PB" + n, Promised::Free}}});
    }
    return {"trap d", job.job(), {}, {}};
}

JudgedCircuit shortedOnBattery()
{
    const Job right =
        withDevices("OL1 lamp").device("PS1", withMainsFailRelay()).wires("PS1:+ → PS1:MF.C; PS1:MF.NC → OL1:+; OL1:− → PS1:−").job();
    return {"trap f",
            right,
            {},
            {wrongForm("trap f shorted", right, [](JobBuilder& job) { job.wire("PS1:MF.NC", "PS1:−"); },
                       {{.rule = "shorted",
                         .severity = "danger",
                         .at = "PS1",
                         .throws = {"PS1:mains=lost PS1:battery=good"}}})}};
}

JudgedCircuit makesBeforeItBreaks()
{
    const Job right = withDevices("PS1 dc-supply-24; SW selector; OL1 lamp")
                          .wires("PS1:+ → SW:A; SW:C → OL1:+; OL1:− → PS1:−")
                          .job();
    return {"trap g",
            right,
            {},
            {wrongForm("trap g shorted", right, [](JobBuilder& job) { job.wire("PS1:−", "SW:B"); },
                       {{.rule = "shorted", .severity = "danger", .at = "PS1", .throws = {"SW=between"}}})}};
}

// Diodes in a forward chain across 13.8 V at most, 0.7 V each: 20 hold 14.0 V back, 19 do not.
JudgedCircuit diodeChain()
{
    JobBuilder job = withDevices("PS1 dc-supply-12");
    std::string last = "PS1:+";
    for (int n = 1; n <= 20; ++n) {
        const std::string tag = "D" + std::to_string(n);
        job.device(tag, "diode").wire(last, tag + ":A");
        last = tag + ":K";
    }
    const Job right = job.wire(last, "PS1:−").job();
    return {"trap h",
            right,
            {},
            {wrongForm(
                "trap h one bridged", right, [](JobBuilder& changed) { changed.wire("D20:A", "D20:K"); },
                {{.rule = "shorted", .severity = "danger", .at = "PS1"}}, Mending::AnyOfSeveral)}};
}

JudgedCircuit sharedReturnCut(const std::string& name, const std::string& devices,
                              const std::string& secondPlus, std::vector<Expected> hints,
                              const std::string& why)
{
    JobBuilder job = withDevices(devices + "; KS1 KS2 key-switch");
    job.wires("PS1:+ → KS1:C; KS1:NO → ES1:1; KS2:NO → ES2:1; ES1:2 → ES2:2; ES2:2 → PS1:−");
    job.wire(secondPlus, "KS2:C");
    if (!hints.empty())
        job.wire("PS1:−", "PS2:−");
    const Job right = job.job();
    return {
        name,
        right,
        std::move(hints),
        {wrongForm(name + " return cut", right, [](JobBuilder& changed) { changed.takeOff("ES2:2 → PS1:−"); },
                   {{.rule = "never-fed",
                     .severity = "fault",
                     .at = "ES1",
                     .reason = why,
                     .lines = {{"never-fed", "ES2", why}}}})}};
}

JudgedCircuit buttonOnDryInput()
{
    JobBuilder job = withDevices("PS1 dc-supply-24; PB1 push-plate");
    addModule(job, "LM1").power("PS1", "LM1").wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1");
    return {"trap j", job.job(), {}, {}};
}

JudgedCircuit twoVoltagesWithoutInput()
{
    return {"trap l",
            withDevices("PS1 dc-supply-12; PS2 dc-supply-24; OL1 lamp-12; OL2 lamp")
                .wires("PS1:− → PS2:−")
                .power("PS1", "OL1")
                .power("PS2", "OL2")
                .job(),
            {tie},
            {}};
}

JudgedCircuit nineLoads()
{
    JobBuilder job = withDevices("PS1 dc-supply-24; KS1 KS2 key-switch; "
                                 "OL1 OL2 OL3 OL4 OL5 OL6 OL7 OL8 OL9 lamp");
    job.power("PS1", "OL1 OL2 OL3 OL4 OL5 OL6 OL7 OL8").wires("PS1:+ → KS1:C; KS1:NO → KS2:C; KS2:NO → OL9:+; OL9:− → PS1:−");
    const Job right = job.job();
    return {"trap v",
            right,
            {},
            {wrongForm("trap v shorted by keys", right,
                       [](JobBuilder& changed) { changed.wire("KS2:NO", "PS1:−"); },
                       {{.rule = "shorted", .severity = "danger", .at = "PS1", .throws = {"KS1=on KS2=on"}}}),
             wrongForm("trap v shorted always", right,
                       [](JobBuilder& changed) { changed.wire("PS1:+", "PS1:−"); },
                       {{.rule = "shorted", .severity = "danger", .at = "PS1"}})}};
}

JudgedCircuit controllerOnMains()
{
    return {"trap w",
            withDevices("PS1 dc-supply-24; ES1 strike-fail-secure")
                .device("AC1", controller())
                .wires("PS1:+ → AC1:LK.C; AC1:LK.NO → ES1:1; ES1:2 → PS1:−")
                .job(),
            {},
            {}};
}

// A sinking output pulls a relay that another supply feeds; the minuses are tied.
JudgedCircuit sinkingOutput()
{
    return {"trap s",
            withDevices("PS1 dc-supply-24; R1 relay")
                .device("AC1", controller())
                .wires("PS1:+ → R1:A1; R1:A2 → AC1:OC; AC1:GND → PS1:−")
                .job(),
            {},
            {}};
}

} // namespace

// k is I, n is A1, o is D, u is C1.
std::vector<JudgedCircuit> trapCircuits()
{
    return {twoKeysInSeries(),
            ownContactsInSeries(),
            returnThatReachesOnlyPlus(),
            eightDoors(),
            shortedOnBattery(),
            makesBeforeItBreaks(),
            diodeChain(),
            sharedReturnCut("trap i1", "PS1 dc-supply-24; ES1 ES2 strike-fail-secure", "PS1:+", {},
                            reason::missingReturn),
            sharedReturnCut("trap i2",
                            "PS1 dc-supply-12; PS2 dc-supply-24; ES1 strike-fail-secure-12; "
                            "ES2 strike-fail-secure",
                            "PS2:+", {tie}, reason::inSeries),
            buttonOnDryInput(),
            twoVoltagesWithoutInput(),
            nineLoads(),
            controllerOnMains(),
            sinkingOutput()};
}

} // namespace doorloom
