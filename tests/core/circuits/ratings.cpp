#include "circuit.h"

// What parts, contacts, fuses and conductors bear.
namespace doorloom {

namespace {

// A supply that is called so, with so many amperes.
Kind supplyOf(double amperes, const std::string& supplyClass)
{
    Kind kind = catalogueKind("dc-supply-24");
    kind.name += "-other";
    for (Part& part : kind.parts)
        if (auto* source = std::get_if<SourcePart>(&part.body)) {
            source->most = Amperes{amperes};
            source->supplyClass = supplyClass;
        }
    return kind;
}

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

// 100 VA at the 27.6 V of the charger are 3.62 A.
JudgedCircuit class2Supply()
{
    const Job right = withDevices("OL1 lamp").device("PS1", supplyOf(3.5, "Class 2")).power("PS1", "OL1").job();
    JudgedCircuit circuit{.name = "Class 2", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("more than Class 2 allows", right, [](JobBuilder& job) { job.kind("PS1", supplyOf(4, "Class 2")); },
                                      {{.rule = "class-2", .severity = "doubt", .at = "PS1", .names = {"3.62"}}}, Mending::InWords));
    return circuit;
}

} // namespace

std::vector<JudgedCircuit> ratingCircuits()
{
    return {varistorAcrossAStrike(), varistorOnAc(), class2Supply()};
}

} // namespace doorloom
