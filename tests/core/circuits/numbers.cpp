#include "circuit.h"

#include <functional>

// What only volts and amperes find.
namespace doorloom {

namespace {

// 24.0 V at the least, 0.12 A at 24 V (200 ohms), from 20.4 V on. 24 AWG has 84.2 ohms a kilometre: 3 × 180 m in line
// (45.5 ohms) leave 24 · 200 / 245.5 = 19.6 V; 16 AWG (13.2 ohms a kilometre, 7.1 in all) 23.2 V, and 20.3 V at the end of
// the battery (21 V): 12 AWG, 20.7 V.
JudgedCircuit strikeAtTheEndOfALongLine()
{
    JobBuilder job = withDevices("PS1 dc-supply-24; KS1 key-switch; ES1 strike-fail-secure");
    job.wires("PS1:+ → KS1:C; KS1:NO → ES1:1; ES1:2 → PS1:−");
    gaugeAll(job, "12 AWG", 180);
    const Job right = job.job();
    JudgedCircuit circuit{.name = "long line", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("long thin line", right, [](JobBuilder& wrong) { gaugeAll(wrong, "24 AWG", 180); },
                                      {{.rule = "under-voltage", .severity = "fault", .at = "ES1", .throws = {"KS1=on"}}}, Mending::InWords));
    circuit.wrong.push_back(wrongForm("strike for twelve volts", right, [](JobBuilder& wrong) { wrong.kind("ES1", "strike-fail-secure-12"); },
                                      {{.rule = "over-voltage", .severity = "danger", .at = "ES1", .throws = {"KS1=on"}}}, Mending::InWords));
    return circuit;
}

// L4: eight magnets of 0.25 A through a fire relay's contact of 0.5 A for coils.
JudgedCircuit magnetsThroughOneFireContact()
{
    const auto magnets = [](JobBuilder& job, int from, int to) {
        for (int i = from; i <= to; ++i) {
            const std::string n = std::to_string(i);
            job.device("EB" + n, "exit-button").device("ML" + n, "mag-lock");
            job.wire("FR1:NC", "EB" + n + ":C").wire("EB" + n + ":NC", "ML" + n + ":+").wire("ML" + n + ":−", "PS1:−");
        }
    };
    JobBuilder job = withDevices("PS1 dc-supply-24-4a; FR1 fire-relay");
    job.wire("PS1:+", "FR1:C");
    magnets(job, 1, 1);
    const Job right = job.job();
    JudgedCircuit circuit{.name = "L4", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("L4 overloaded", right, [&](JobBuilder& wrong) { magnets(wrong, 2, 8); },
                                      {{.rule = "overloaded-contact", .severity = "fault", .at = "FR1:NC"}}, Mending::InWords));
    return circuit;
}

// H2: on a door operator's 0.5 A output stand 0.39 A; a strike of 0.12 A is too many.
JudgedCircuit strikeOnTheOperatorsOutput()
{
    Kind accessory = catalogueKind("lamp");
    std::get<LoadPart>(accessory.parts.front().body).rated = {{{24}, {0.39}}}; // of 0.5 A: 78 %
    const Job right = withDevices("PS1 dc-supply-24; DO1 door-operator; KS1 key-switch; ES1 strike-fail-secure")
                          .device("SS1", accessory)
                          .wires("DO1:+24 → SS1:+; SS1:− → DO1:−; PS1:+ → KS1:C; KS1:NO → ES1:1; ES1:2 → PS1:−")
                          .job();
    JudgedCircuit circuit{.name = "H2", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("H2 overloaded", right,
                                      [](JobBuilder& job) { job.move("PS1:+ → KS1:C", "DO1:+24").move("PS1:− → ES1:2", "DO1:−"); },
                                      {{.rule = "overloaded-supply", .severity = "fault", .at = "DO1:+24", .throws = {"KS1=on"}}},
                                      Mending::InWords));
    return circuit;
}

// A lamp's kind with another load.
Kind lampThat(const std::function<void(LoadPart&)>& is)
{
    Kind kind = catalogueKind("lamp");
    is(std::get<LoadPart>(kind.parts.front().body));
    return kind;
}

// B3: 12 V and 24 V with minuses tied, two strikes on one return. Without it the 12 V between the pluses drive 50 mA through
// 192 + 48 ohms: 9.6 V at one, 2.4 V backwards at the other.
JudgedCircuit returnOfTwoVoltagesOpened()
{
    JobBuilder job = withDevices("PS1 dc-supply-12; PS2 dc-supply-24; ES1 strike-fail-secure-12; ES2 strike-fail-secure; TS1 terminal-strip-4x; KS1 key-switch");
    const Job plain = job.job();
    const auto drawn = [&](const std::string& back) {
        return JobBuilder(plain, Clamps::Roomy)
            .kind("ES2", [] {
                Kind kind = catalogueKind("strike-fail-secure");
                for (Part& part : kind.parts)
                    if (auto* load = std::get_if<LoadPart>(&part.body))
                        load->rated = {{{24}, {0.125}}}; // 192 ohms
                return kind;
            }())
            .wires("PS1:− → PS2:−; PS1:+ → ES1:1; ES1:2 → TS1:1; PS2:+ → ES2:1; ES2:2 → TS1:1; " + back)
            .job();
    };
    const Job right = drawn("TS1:1 → PS1:−");
    JudgedCircuit circuit{.name = "B3", .right = right, .hints = {{.rule = "two-feeds", .severity = "hint", .at = "PS1 PS2"}}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("B3 return switched", right,
                                      [](JobBuilder& wrong) { wrong.move("PS1:− → TS1:1", "KS1:C").wire("KS1:NO", "PS1:−"); },
                                      {{.rule = "half-fed", .severity = "fault", .at = "TS1:1", .throws = {"KS1=off"}}}, Mending::InWords));
    return circuit;
}

// J3: 2 A in all, of which 0.7 A charge a battery: 1.0 A of loads leave room for them, 1.5 A do not.
JudgedCircuit noAmperesForTheBattery()
{
    const auto lampOf = [](double amperes) {
        return lampThat([&](LoadPart& load) { load.rated = {{{24}, {amperes}}}; });
    };
    JobBuilder job = withDevices("PSB1 dc-supply-24-charger; BT1 BT2 battery-12");
    job.device("OL1", lampOf(1.0)).wires("PSB1:B+ → BT1:+; BT1:− → BT2:+; BT2:− → PSB1:B−; PSB1:+ → OL1:+; OL1:− → PSB1:−");
    const Job right = job.job();
    JudgedCircuit circuit{.name = "J3", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("J3 larger load", right, [&](JobBuilder& wrong) { wrong.kind("OL1", lampOf(1.5)); },
                                      {{.rule = "no-spare-for-recharging", .severity = "doubt", .at = "PSB1", .throws = {"PSB1:battery=flat"}}},
                                      Mending::InWords));
    return circuit;
}

// 4 h at 1.0 A want 4 Ah, and a fifth more for age: 5 Ah. The batteries have 7.
JudgedCircuit hoursOnABattery()
{
    Kind lamp = lampThat([](LoadPart& load) { load.rated = {{{24}, {1.0}}}; });
    JobBuilder job = withDevices("PSB1 dc-supply-24-charger; BT1 BT2 battery-12");
    job.device("OL1", lamp).wires("PSB1:B+ → BT1:+; BT1:− → BT2:+; BT2:− → PSB1:B−; PSB1:+ → OL1:+; OL1:− → PSB1:−");
    const Job right = job.setting("PSB1", "standby", 4.0).job();
    JudgedCircuit circuit{.name = "standby", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("eight hours", right, [](JobBuilder& wrong) { wrong.setting("PSB1", "standby", 8.0); },
                                      {{.rule = "short-standby", .severity = "doubt", .at = "PSB1"}}, Mending::InWords));
    return circuit;
}

// A latch that is drawn back with 12 A for a moment and held with 0.4 A, from a supply of 16 A; 15 % may drop: 3.6 V at 12 A
// are 0.3 ohms out and back. 12 AWG (5.21 ohms a kilometre) twice 20 m: 0.21 ohms; 16 AWG (13.2): 0.53 ohms, 6.3 V.
Kind latchRetraction()
{
    return lampThat([](LoadPart& load) {
        load.use = LoadUse::Lock;
        load.rated = {{{24}, {0.4}}};
        load.inrush = Amperes{12};
        load.leastVolts = Volts{20.4};
        load.suppressed = true;
    });
}

Kind supplyOf(double amperes)
{
    Kind kind = catalogueKind("dc-supply-24");
    for (Part& part : kind.parts)
        if (auto* source = std::get_if<SourcePart>(&part.body)) {
            source->most = {amperes};
            source->supplyClass.clear();
            source->lowestOnBattery = {};
        }
    return kind;
}

JudgedCircuit latchDrawnBack()
{
    Kind strong = catalogueKind("key-switch");
    for (Part& part : strong.parts)
        if (auto* contact = std::get_if<ContactPart>(&part.body))
            contact->rating.dcResistive = Amperes{16};
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", supplyOf(16)).device("KS1", strong).device("LR1", latchRetraction());
    job.wires("PS1:+ → KS1:C; KS1:NO → LR1:+; LR1:− → PS1:−");
    gaugeAll(job, "12 AWG", 20.0 / 3 * 2); // three wires, 40 m in all
    const Job right = job.job();
    JudgedCircuit circuit{.name = "inrush", .right = right, .hints = {}, .wrong = {}};
    const Cubes on{"KS1=on"};
    circuit.wrong.push_back(wrongForm("thin for the inrush", right, [](JobBuilder& wrong) { gaugeAll(wrong, "16 AWG", 20.0 / 3 * 2); },
                                      {{.rule = "under-voltage", .severity = "fault", .at = "LR1", .throws = on},
                                       {.rule = "thin-conductor", .severity = "doubt", .at = "PS1"}}, // 16 A, and no fuse
                                      Mending::InWords));
    circuit.wrong.push_back(wrongForm("supply too small for the inrush", right, [](JobBuilder& wrong) { wrong.kind("PS1", supplyOf(10)); },
                                      {{.rule = "overloaded-supply", .severity = "fault", .at = "PS1", .throws = on}}, Mending::InWords));
    circuit.wrong.push_back(wrongForm("contact too small for the inrush", right, [](JobBuilder& wrong) { wrong.kind("KS1", "key-switch"); },
                                      {{.rule = "overloaded-contact", .severity = "fault", .at = "KS1:NO", .throws = on}}, Mending::InWords));
    return circuit;
}

// Fed at rest by the switch's other contact it pulls in alone when the mains comes back: 12 A, and the supply is made for 10.
JudgedCircuit allPullInAtOnce()
{
    Kind strong = catalogueKind("key-switch");
    for (Part& part : strong.parts)
        if (auto* contact = std::get_if<ContactPart>(&part.body))
            contact->rating.dcResistive = Amperes{16};
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", supplyOf(16)).device("LR1", latchRetraction()).power("PS1", "LR1");
    const Job right = job.job();
    JudgedCircuit circuit{.name = "mains back", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("supply too small when the mains comes back", right, [](JobBuilder& wrong) { wrong.kind("PS1", supplyOf(10)); },
                                      {{.rule = "overloaded-supply", .severity = "doubt", .at = "PS1"}}, Mending::InWords));
    return circuit;
}

// 10 ohms across 24 V (27.6 V at the most) are 2.76 A: more than 2 A; 2.2 kilohms are 13 mA.
JudgedCircuit resistorAcrossASupply()
{
    const auto resistorOf = [](double ohms) {
        Kind kind = catalogueKind("resistor");
        for (Part& part : kind.parts)
            if (auto* resistor = std::get_if<ResistorPart>(&part.body))
                resistor->ohms = {ohms};
        return kind;
    };
    JobBuilder job = withDevices("PS1 dc-supply-24; KS1 key-switch");
    job.device("R1", resistorOf(2200)).wires("PS1:+ → KS1:C; KS1:NO → R1:a; R1:b → PS1:−");
    const Job right = job.job();
    JudgedCircuit circuit{.name = "resistor", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("ten ohms", right, [&](JobBuilder& wrong) { wrong.kind("R1", resistorOf(10)); },
                                      {{.rule = "nearly-shorted",
                                        .severity = "danger",
                                        .at = "PS1",
                                        .throws = {"KS1=on"},
                                        .lines = {{"overloaded-supply", "PS1"}, {"overloaded-contact", "KS1:NO"}}}}, Mending::AnyOfSeveral));
    return circuit;
}

// A lamp's minus on a dry input: 24 V come through the lamp to an input that puts out 5 V of its own.
JudgedCircuit lampOnAnInput()
{
    JobBuilder job = withDevices("PS1 dc-supply-24; OL1 lamp");
    addModule(job, "LM1").power("PS1", "LM1").wires("PS1:+ → OL1:+; OL1:− → PS1:−");
    const Job right = job.job();
    JudgedCircuit circuit{.name = "lamp on an input", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("lamp returns through an input", right, [](JobBuilder& wrong) { wrong.move("PS1:− → OL1:−", "LM1:IN1"); },
                                      {{.rule = "never-fed",
                                        .severity = "danger",
                                        .at = "OL1",
                                        .reason = reason::missingReturn,
                                        .lines = {{"volts-through-load", "LM1:IN1"}}}}, Mending::AnyOfSeveral));
    return circuit;
}

// 24 VAC, 21.6 V at the least, over 3 × 40 m to a strike of 32 ohms (0.75 A, lagging: 19.2 + 25.6j) that works from 20.4 V:
// 14 AWG (8.29 ohms a kilometre, 1.0 in all) leave 21.6 · 32 / |20.2 + 25.6j| = 21.2 V, 20 AWG (33.3, 4.0 in all) 20.0 V.
JudgedCircuit strikeOnAlternatingCurrent()
{
    JobBuilder job = withDevices("TX1 transformer-24; PB1 push-plate; ACS1 strike-ac");
    job.wires("TX1:1 → PB1:C; PB1:NO → ACS1:1; ACS1:2 → TX1:2");
    gaugeAll(job, "14 AWG", 40);
    const Job right = job.job();
    JudgedCircuit circuit{.name = "G line", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("G long thin line", right, [](JobBuilder& wrong) { gaugeAll(wrong, "20 AWG", 40); },
                                      {{.rule = "under-voltage", .severity = "fault", .at = "ACS1", .throws = {"PB1=pressed"}}}, Mending::InWords));
    return circuit;
}

} // namespace

std::vector<JudgedCircuit> numberCircuits()
{
    return {strikeAtTheEndOfALongLine(), magnetsThroughOneFireContact(), strikeOnTheOperatorsOutput(), returnOfTwoVoltagesOpened(),
            noAmperesForTheBattery(),    latchDrawnBack(),               allPullInAtOnce(),            resistorAcrossASupply(),
            lampOnAnInput(),             strikeOnAlternatingCurrent(), hoursOnABattery()};
}

} // namespace doorloom
