#include "circuit.h"

// G: alternating current. J: batteries on a charger. M: what lies across a lock.
namespace doorloom {

namespace {

JudgedCircuit alternating()
{
    const Job right = withDevices("TX1 transformer-24; PB1 push-plate; ACS1 strike-ac")
                          .wires("TX1:1 → PB1:C; PB1:NO → ACS1:1; ACS1:2 → TX1:2")
                          .job();
    JudgedCircuit circuit{.name = "G", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("G1", right, [](JobBuilder& job) { job.device("D1", "diode").wires("D1:K → ACS1:1; D1:A → ACS1:2"); },
                                      {{.rule = "shorted", .severity = "danger", .at = "TX1", .throws = {"PB1=pressed"}}},
                                      Mending::AnyOfSeveral));
    circuit.wrong.push_back(wrongForm("G2", right,
                                      [](JobBuilder& job) {
                                          job.device("PS1", "dc-supply-24").move("TX1:1 → PB1:C", "PS1:+");
                                          job.move("TX1:2 → ACS1:2", "PS1:−").remove("TX1");
                                      },
                                      {{.rule = "wrong-current", .severity = "danger", .at = "ACS1", .throws = {"PB1=pressed"}}},
                                      Mending::InWords));
    return circuit;
}

JudgedCircuit boards()
{
    const Job right = withDevices("TX1 transformer-24; HB1 half-wave-board; BB1 bridge-board")
                          .wires("TX1:1 → HB1:~A; TX1:2 → HB1:~B; TX1:1 → BB1:~1; TX1:2 → BB1:~2")
                          .job();
    const std::vector<Expected> always{{.rule = "shorted", .severity = "danger", .at = "TX1"}};
    JudgedCircuit circuit{.name = "Gb", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("G3", right, [](JobBuilder& job) { job.wire("HB1:−", "BB1:−"); }, always, Mending::AnyOfSeveral));
    circuit.wrong.push_back(wrongForm("G4", right, [](JobBuilder& job) { job.wire("TX1:1", "BB1:−"); }, always, Mending::AnyOfSeveral));
    circuit.wrong.push_back(wrongForm("G6", right, [](JobBuilder& job) { job.device("TX2", "transformer-24").wires("TX2:1 → TX1:1; TX2:2 → TX1:2"); },
                                      {{.rule = "two-feeds", .severity = "danger", .at = "TX1 TX2"}}, Mending::AnyOfSeveral));
    return circuit;
}

JudgedCircuit twoHalfWaveBoards()
{
    const Job right = withDevices("TX1 transformer-24; HB1 HB2 half-wave-board")
                          .wires("TX1:1 → HB1:~A; TX1:2 → HB1:~B; TX1:1 → HB2:~A; TX1:2 → HB2:~B; HB1:− → HB2:−")
                          .job();
    JudgedCircuit circuit{.name = "G5", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("G5 legs swapped", right, [](JobBuilder& job) { job.exchange("HB2:~A", "HB2:~B"); },
                                      {{.rule = "shorted", .severity = "danger", .at = "TX1"}}, Mending::AnyOfSeveral));
    return circuit;
}

JudgedCircuit batteries()
{
    const Job right = withDevices("PSB1 dc-supply-24-charger; BT1 BT2 battery-12; OL1 lamp")
                          .wires("PSB1:B+ → BT1:+; BT1:− → BT2:+; BT2:− → PSB1:B−; PSB1:+ → OL1:+; OL1:− → PSB1:−")
                          .job();
    const std::vector<Expected> wrong{{.rule = "battery-wrong", .severity = "danger", .at = "BT1"}};
    JudgedCircuit circuit{.name = "J", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("J1", right, [](JobBuilder& job) { job.exchange("BT1:+", "BT1:−"); }, wrong));
    circuit.wrong.push_back(wrongForm("J2", right,
                                      [](JobBuilder& job) { job.move("BT2:+ → BT1:−", "PSB1:B−").takeOff("BT2:− → PSB1:B−").remove("BT2"); },
                                      wrong, Mending::InWords));
    return circuit;
}

JudgedCircuit acrossAStrike()
{
    const Job right = withDevices("PS1 dc-supply-24; KS1 key-switch; ES2 strike-fail-secure-bare; V1 varistor-34")
                          .wires("PS1:+ → KS1:C; KS1:NO → ES2:1; ES2:2 → PS1:−; V1:a → ES2:1; V1:b → ES2:2")
                          .job();
    JudgedCircuit circuit{.name = "M strike", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("M6", right, [](JobBuilder& job) { job.takeOff("V1:a → ES2:1").takeOff("V1:b → ES2:2").remove("V1"); },
                                      {{.rule = "suppression", .severity = "doubt", .at = "ES2", .reason = "none"}}, Mending::InWords));
    circuit.wrong.push_back(wrongForm("M5 swapped", right,
                                      [](JobBuilder& job) {
                                          job.takeOff("V1:a → ES2:1").takeOff("V1:b → ES2:2").remove("V1").device("D1", "diode").wires("D1:A → ES2:1; D1:K → ES2:2");
                                      },
                                      {{.rule = "shorted", .severity = "danger", .at = "PS1", .throws = {"KS1=on"}}},
                                      Mending::AnyOfSeveral));
    return circuit;
}

JudgedCircuit acrossAMagnet()
{
    const Job right = withDevices("PS1 dc-supply-24; EB1 exit-button; ML1 mag-lock")
                          .wires("PS1:+ → EB1:C; EB1:NC → ML1:+; ML1:− → PS1:−")
                          .job();
    JudgedCircuit circuit{.name = "M magnet", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("M2", right, [](JobBuilder& job) { job.device("D1", "diode").wires("D1:K → ML1:+; D1:A → ML1:−"); },
                                      {{.rule = "suppression", .severity = "doubt", .at = "ML1", .reason = "doubled"}}, Mending::AnyOfSeveral));
    circuit.wrong.push_back(wrongForm("M4", right, [](JobBuilder& job) { job.device("OL1", "lamp").wires("OL1:+ → ML1:+; OL1:− → ML1:−"); },
                                      {{.rule = "suppression", .severity = "doubt", .at = "ML1", .reason = "load beside"}},
                                      Mending::InWords));
    return circuit;
}

} // namespace

std::vector<JudgedCircuit> currentCircuits()
{
    return {alternating(), boards(), twoHalfWaveBoards(), batteries(), acrossAStrike(), acrossAMagnet()};
}

} // namespace doorloom
