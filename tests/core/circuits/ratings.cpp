#include "circuit.h"

// What parts, contacts, fuses and conductors bear.
namespace doorloom {

namespace {

// M3
JudgedCircuit varistorAcrossAStrike()
{
    const Job right = withDevices("PS1 dc-supply-24; KS1 key-switch; ES2 strike-fail-secure-bare; V1 varistor-34")
                          .wires("PS1:+ → KS1:C; KS1:NO → ES2:1; ES2:2 → PS1:−; V1:a → ES2:1; V1:b → ES2:2")
                          .job();
    JudgedCircuit circuit{.name = "M varistor", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("M3", right, [](JobBuilder& job) { job.kind("V1", "varistor-22"); },
                                      {{.rule = "varistor-rating", .severity = "fault", .at = "V1", .throws = {"KS1=on"}, .names = {"27.6"}}},
                                      Mending::InWords));
    return circuit;
}

// 24 V AC, 27.5 V with little load, have peaks of 38.9 V.
JudgedCircuit varistorOnAc()
{
    Kind varistor = catalogueKind("varistor-34");
    varistor.name = "varistor-47";
    std::get<SuppressorPart>(varistor.parts.front().body).rating = Volts{47};
    const Job right = withDevices("TX1 transformer-24; PB1 push-plate; ACS1 strike-ac")
                          .device("V1", varistor)
                          .wires("TX1:1 → PB1:C; PB1:NO → ACS1:1; ACS1:2 → TX1:2; V1:a → ACS1:1; V1:b → ACS1:2")
                          .job();
    JudgedCircuit circuit{.name = "G varistor", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("varistor below the peak of AC", right, [](JobBuilder& job) { job.kind("V1", "varistor-34"); },
                                      {{.rule = "varistor-rating", .severity = "fault", .at = "V1", .throws = {"PB1=pressed"}, .names = {"38.9"}}},
                                      Mending::InWords));
    return circuit;
}

} // namespace

std::vector<JudgedCircuit> ratingCircuits()
{
    return {varistorAcrossAStrike(), varistorOnAc()};
}

} // namespace doorloom
