#include "sample.h"

#include <functional>

namespace doorloom {

namespace {

Job lampOnASupply()
{
    return withDevices("PS1 dc-supply-24; OL1 lamp").power("PS1", "OL1").job();
}

Job switchedStrike(const std::string& supply = "dc-supply-24", const std::string& strike = "strike-fail-secure")
{
    return withDevices("PS1 " + supply + "; KS1 key-switch; ES1 " + strike).wires("PS1:+ → KS1:C; KS1:NO → ES1:1; ES1:2 → PS1:−").job();
}

Job magnet()
{
    return withDevices("PS1 dc-supply-24; EB1 exit-button; ML1 mag-lock").wires("PS1:+ → EB1:C; EB1:NC → ML1:+; ML1:− → PS1:−").job();
}

Kind lampOf(double amperes)
{
    Kind kind = catalogueKind("lamp");
    std::get<LoadPart>(kind.parts.front().body).rated = {{{24}, {amperes}}};
    return kind;
}

void shorts(std::vector<MistakeSample>& all)
{
    all.push_back(mistake("button across the lock", magnet(),
                          [](JobBuilder& job) { job.device("EB2", "exit-button").wires("ML1:+ → EB2:C; EB2:NO → ML1:−"); }));
    all.push_back(mistake("return off", lampOnASupply(), [](JobBuilder& job) { job.takeOff("OL1:− → PS1:−"); }));
    all.push_back(mistake("both sides at plus", lampOnASupply(), [](JobBuilder& job) { job.move("PS1:− → OL1:−", "PS1:+"); }));
    const Job apart = withDevices("PS1 PS2 dc-supply-24; OL1 OL2 lamp").power("PS1", "OL1").power("PS2", "OL2").job();
    all.push_back(mistake("minuses tied", apart, [](JobBuilder& job) { job.wire("PS1:−", "PS2:−"); }));
    all.push_back(mistake("pluses joined as well", apart, [](JobBuilder& job) { job.wires("PS1:− → PS2:−; PS1:+ → PS2:+"); }));
}

void volts(std::vector<MistakeSample>& all)
{
    all.push_back(mistake("lock for 24 V at 12 V", switchedStrike("dc-supply-12", "strike-fail-secure-12"),
                          [](JobBuilder& job) { job.kind("ES1", "strike-fail-secure"); }));
    all.push_back(mistake("reader at 24 V",
                          withDevices("PS1 dc-supply-24; OL1 lamp; AC1 access-controller; RD1 reader")
                              .power("PS1", "OL1")
                              .wires("PS1:− → AC1:GND; RD1:+12 → AC1:12V; RD1:GND → AC1:GND; RD1:D0 → AC1:D0; RD1:D1 → AC1:D1")
                              .job(),
                          [](JobBuilder& job) { job.move("AC1:12V → RD1:+12", "PS1:+"); }));
    all.push_back(mistake("relay for 12 V at 24 V",
                          withDevices("PS1 dc-supply-24; KS1 key-switch; R1 relay").wires("PS1:+ → KS1:C; KS1:NO → R1:A1; R1:A2 → PS1:−").job(),
                          [](JobBuilder& job) { job.kind("R1", "relay-12"); }));
    all.push_back(mistake("AC strike held on",
                          withDevices("TX1 transformer-24; PB1 push-plate; ACS1 strike-ac").wires("TX1:1 → PB1:C; PB1:NO → ACS1:1; ACS1:2 → TX1:2").job(),
                          [](JobBuilder& job) { job.move("PB1:NO → ACS1:1", "PB1:NC"); }));
}

// 18 AWG has 21 ohms a kilometre. Eight strikes of 0.12 A with a pair of 40 m each lose 0.2 V of a battery's last 21 V and work
// from 20.4 V; one minus for all of them loses 0.8 V.
Job eightStrikes()
{
    JobBuilder job = withDevices("PS1 dc-supply-24; TS1 terminal-strip-8");
    for (int i = 1; i <= 8; ++i) {
        const std::string n = std::to_string(i), tag = "ES" + n;
        job.device(tag, "strike-fail-secure").wire("PS1:+", tag + ":1").wire(tag + ":2", "PS1:−");
    }
    gaugeAll(job, "18 AWG", 40);
    return job.job();
}

void amperes(std::vector<MistakeSample>& all)
{
    all.push_back(mistake("one minus for eight strikes", eightStrikes(), [](JobBuilder& job) {
        for (int i = 1; i <= 8; ++i)
            job.move("PS1:− → ES" + std::to_string(i) + ":2", "TS1:" + std::to_string(i));
        job.wire("TS1:1", "PS1:−");
        gaugeAll(job, "18 AWG", 40);
    }));
    all.push_back(mistake("strikes in a chain", eightStrikes(), [](JobBuilder& job) {
        for (int i = 2; i <= 8; ++i)
            for (const auto& [pole, side] : {std::pair<std::string, std::string>("PS1:+", ":1"), {"PS1:−", ":2"}})
                job.move(pole + " → ES" + std::to_string(i) + side, "ES" + std::to_string(i - 1) + side);
    }));
    all.push_back(mistake("nine tenths of the supply", withDevices("PS1 dc-supply-24").device("OL1", lampOf(1.0)).power("PS1", "OL1").job(),
                          [](JobBuilder& job) { job.kind("OL1", lampOf(1.8)); }));
    all.push_back(mistake("lock through a door switch",
                          withDevices("PS1 dc-supply-24; DPS1 door-switch; R1 relay; ML1 mag-lock")
                              .wires("PS1:+ → DPS1:A; DPS1:B → R1:A1; R1:A2 → PS1:−; PS1:+ → R1:C1; R1:NO1 → ML1:+; ML1:− → PS1:−")
                              .job(),
                          [](JobBuilder& job) { job.takeOff("PS1:+ → R1:C1").takeOff("R1:NO1 → ML1:+").wire("DPS1:B", "ML1:+"); }));
    all.push_back(mistake("two leaves on a weak contact",
                          withDevices("PS1 dc-supply-24; FR1 fire-relay; ML1 mag-lock").wires("PS1:+ → FR1:C; FR1:NC → ML1:+; ML1:− → PS1:−").job(),
                          [](JobBuilder& job) {
                              job.device("ML2", "mag-lock").device("ML3", "mag-lock");
                              job.wires("FR1:NC → ML2:+; ML2:− → PS1:−; FR1:NC → ML3:+; ML3:− → PS1:−");
                          }));
    const Job fused = withDevices("PS1 dc-supply-24-4a; F1 fuse-1; OL1 lamp").wires("PS1:+ → F1:a; F1:b → OL1:+; OL1:− → PS1:−").job();
    all.push_back(mistake("fuse of one ampere for two", fused, [](JobBuilder& job) { job.kind("OL1", lampOf(2.0)); }));
}

void outputs(std::vector<MistakeSample>& all)
{
    all.push_back(mistake("jumpers not set", oneDoor().job(), [](JobBuilder& job) { job.option("LM1", "K1", ""); }));
    all.push_back(mistake("A left dry", oneDoor().job(), [](JobBuilder& job) { job.option("LM1", "K1", "dry"); }));
    all.push_back(mistake("both sides at minus of a wet output", oneDoor().job(), [](JobBuilder& job) {
        job.takeOff("ES1:1 → LM1:K1.C").takeOff("ES1:2 → LM1:K1.NO").wires("ES1:1 → LM1:K1.NO; ES1:2 → PS1:−");
    }));
    all.push_back(mistake("second way back", oneDoor().job(), [](JobBuilder& job) { job.wire("ES1:2", "PS1:−"); }));
    JobBuilder starting = withDevices("PS1 dc-supply-24; PB1 push-plate; DO1 door-operator");
    addModule(starting, "LM1").power("PS1", "LM1").wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1; LM1:K1.C → DO1:ACOM; LM1:K1.NO → DO1:ACT");
    all.push_back(mistake("wet output on an operator", starting.job(), [](JobBuilder& job) { job.option("LM1", "K1", "wet"); }));
    all.push_back(mistake("trigger without volts",
                          withDevices("PS1 dc-supply-24; PB1 push-plate; TR1 timer-relay").power("PS1", "TR1").wires("PS1:+ → PB1:C; PB1:NO → TR1:TRIG").job(),
                          [](JobBuilder& job) { job.move("PS1:+ → PB1:C", "TR1:−"); }));
    all.push_back(mistake("coil to minus on a sinking output", rightJobCalled("T19"), [](JobBuilder& job) { job.move("PS1:+ → IR1:A1", "PS1:−"); }));
}

void inputs(std::vector<MistakeSample>& all)
{
    all.push_back(mistake("both sides on one input", rightJobCalled("T1"), [](JobBuilder& job) { job.move("LM1:IN2 → WI1:NO", "LM1:IN1"); }));
    all.push_back(mistake("door input bridged", rightJobCalled("T1"), [](JobBuilder& job) { job.wire("DPS1:A", "DPS1:B"); }));
    all.push_back(mistake("safety loop left empty", rightJobCalled("T21"),
                          [](JobBuilder& job) { job.takeOff("DO1:SCOM → SS1:C").takeOff("SS1:NO → DO1:SAF"); }));
    all.push_back(mistake("safety loop bridged", rightJobCalled("T21"), [](JobBuilder& job) { job.wire("DO1:SCOM", "DO1:SAF"); }));
    all.push_back(mistake("safety sensor on its other contact", rightJobCalled("T21"), [](JobBuilder& job) { job.move("SS1:NO → DO1:SAF", "SS1:NC"); }));
    all.push_back(mistake("safety sensor that is closed while dead", rightJobCalled("T21"), [](JobBuilder& job) {
        job.takeOff("DO1:SCOM → SS1:C").takeOff("SS1:NO → DO1:SAF").device("MS1", "exit-sensor").option("MS1", "relay", "on-motion");
        job.wires("DO1:+24 → MS1:+; DO1:− → MS1:−; DO1:SCOM → MS1:C; MS1:NC → DO1:SAF");
    }));
    all.push_back(mistake("fire input bridged", rightJobCalled("fire relay on the supply's fire input"),
                          [](JobBuilder& job) { job.wire("PS1:FA1", "PS1:FA2"); }));
    all.push_back(mistake("one plate on two operators",
                          withDevices("DO1 DO2 door-operator; PB1 PB2 push-plate")
                              .wires("PB1:C → DO1:ACOM; PB1:NO → DO1:ACT; PB2:C → DO2:ACOM; PB2:NO → DO2:ACT")
                              .job(),
                          [](JobBuilder& job) { job.move("PB2:C → DO2:ACOM", "PB1:C").move("PB2:NO → DO2:ACT", "PB1:NO"); }));
    all.push_back(mistake("sounder across a magnet", magnet(), [](JobBuilder& job) { job.device("SD1", "sounder").wires("ML1:+ → SD1:+; SD1:− → ML1:−"); }));
}

void landings(std::vector<MistakeSample>& all)
{
    const Job plate = withDevices("DO1 door-operator; PB1 PB2 push-plate")
                          .wires("PB1:C → DO1:ACOM; PB1:NO → DO1:ACT; PB2:C → DO1:ACOM; PB2:NO → DO1:ACT")
                          .job();
    all.push_back(mistake("contact landed on one side", plate, [](JobBuilder& job) { job.takeOff("PB1:NO → DO1:ACT"); }));
    all.push_back(mistake("plate beside its input", plate, [](JobBuilder& job) { job.move("DO1:ACT → PB1:NO", "DO1:+24"); }));
    all.push_back(mistake("request on NC", plate, [](JobBuilder& job) { job.move("PB1:NO → DO1:ACT", "PB1:NC"); }));
    all.push_back(mistake("both legs on one conductor", plate, [](JobBuilder& job) { job.wire("PB1:NO", "PB1:NC"); }));
    all.push_back(mistake("input left out", plate, [](JobBuilder& job) { job.move("DO1:ACT → PB1:NO", "DO1:+24").move("DO1:ACT → PB2:NO", "DO1:+24"); }));
    all.push_back(mistake("contact between two inputs", rightJobCalled("T1"), [](JobBuilder& job) { job.move("LM1:COM → WI1:C", "LM1:IN1"); }));
    all.push_back(mistake("hand that brings a lamp to an input", rightJobCalled("T1"),
                          [](JobBuilder& job) { job.move("LM1:COM → WO1:C", "LM1:K3.NO").move("LM1:K3.NO → WO1:LED", "LM1:COM"); }));
    all.push_back(mistake("one of two safety sensors bridged", rightJobCalled("T21 with two sensors in series"),
                          [](JobBuilder& job) { job.wire("SS1:C", "SS1:NO"); }));
    all.push_back(mistake("fuse bridged", rightJobCalled("key beside card, fused"), [](JobBuilder& job) { job.wire("F1:a", "F1:b"); }));
    const Job charged = withDevices("PSB1 dc-supply-24-charger; BT1 BT2 battery-12; OL1 lamp")
                            .wires("PSB1:B+ → BT1:+; BT1:− → BT2:+; BT2:− → PSB1:B−; PSB1:+ → OL1:+; OL1:− → PSB1:−")
                            .job();
    all.push_back(mistake("battery terminals joined", charged, [](JobBuilder& job) { job.wire("PSB1:B+", "PSB1:B−"); }));
    all.push_back(mistake("battery on one terminal", charged, [](JobBuilder& job) { job.move("PSB1:B+ → BT1:+", "PSB1:B−"); }));
}

} // namespace

std::vector<MistakeSample> wiringMistakes()
{
    std::vector<MistakeSample> all;
    for (auto add : {shorts, volts, amperes, outputs, inputs, landings})
        add(all);
    return all;
}

} // namespace doorloom
