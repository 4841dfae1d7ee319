#include "circuit.h"

// What parts, contacts, fuses and conductors bear.
namespace doorloom {

namespace {

// A push plate whose contacts want so much to stay clean.
Kind plateThatWants(double volts, double amperes)
{
    Kind kind = catalogueKind("push-plate");
    kind.name += "-rated";
    for (Part& part : kind.parts)
        if (auto* contact = std::get_if<ContactPart>(&part.body)) {
            contact->rating.leastVolts = Volts{volts};
            contact->rating.leastCurrent = Amperes{amperes};
        }
    return kind;
}

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

Kind fuseOf(double amperes)
{
    Kind kind = catalogueKind("resistor");
    kind.name = "fuse-" + std::to_string(amperes);
    kind.parts = {{"fuse", {}, FusePart{"a", "b", Amperes{amperes}}}};
    return kind;
}

Change gauges(const Job& job, const std::string& gauge)
{
    Change change;
    for (const Conductor& row : job.conductors) {
        Conductor changed = row;
        changed.gauge = gauge;
        change.steps.emplace_back(Put<Conductor>{row.id, changed});
    }
    return change;
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

// A supply of 10 A that is no Class 2 one: 22 AWG bears 3 A in a bundle, and 6 A are more than any of its kind bears long.
JudgedCircuit fusedBranch()
{
    JobBuilder job = withDevices("OL1 lamp").device("PS1", supplyOf(10, "")).device("F1", fuseOf(2));
    job.wires("PS1:+ → F1:a; F1:b → OL1:+; OL1:− → PS1:−");
    job.apply(gauges(job.job(), "22 AWG"));
    Change thick;
    Conductor feed = *job.job().conductors.find(conductorNamed(job.job(), "PS1:+ → F1:a"));
    feed.gauge = "16 AWG";
    thick.steps.emplace_back(Put<Conductor>{feed.id, feed});
    job.apply(thick);
    const Job right = job.job();
    const auto thin = [](const std::string& severity, const std::string& at) {
        return std::vector<Expected>{{.rule = "thin-conductor", .severity = severity, .at = at, .names = {"22 AWG"}}};
    };
    JudgedCircuit circuit{.name = "M45", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("M45 fuse larger than its conductor", right, [](JobBuilder& wrong) { wrong.kind("F1", fuseOf(7)); },
                                      thin("danger", "F1"), Mending::InWords));
    circuit.wrong.push_back(wrongForm("M45 fuse somewhat larger", right, [](JobBuilder& wrong) { wrong.kind("F1", fuseOf(5)); }, thin("doubt", "F1"),
                                      Mending::InWords));
    circuit.wrong.push_back(wrongForm("M46 no fuse", right,
                                      [](JobBuilder& wrong) { wrong.takeOff("PS1:+ → F1:a").move("F1:b → OL1:+", "PS1:+").remove("F1"); },
                                      thin("danger", "PS1"), Mending::InWords));
    return circuit;
}

JudgedCircuit fuseOnASmallSupply()
{
    const Job right = withDevices("PS1 dc-supply-24; OL1 lamp").device("F1", fuseOf(1)).wires("PS1:+ → F1:a; F1:b → OL1:+; OL1:− → PS1:−").job();
    JudgedCircuit circuit{.name = "fuse", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("fuse that never blows", right, [](JobBuilder& job) { job.kind("F1", fuseOf(3)); },
                                      {{.rule = "large-fuse", .severity = "doubt", .at = "F1"}}, Mending::InWords));
    return circuit;
}

// M62
JudgedCircuit wiresInClamps()
{
    JobBuilder job; // clamps as printed
    job.device("PS1", "dc-supply-24").device("OL1", "lamp").power("PS1", "OL1");
    job.apply(gauges(job.job(), "18 AWG"));
    const Job right = job.job();
    JudgedCircuit circuit{.name = "M62", .right = right, .hints = {}, .wrong = {}};
    const auto atEach = [](const std::string& reason) {
        std::vector<Expected> all;
        for (const char* at : {"OL1:+", "OL1:−", "PS1:+", "PS1:−"})
            all.push_back({.rule = "wire-range", .severity = "fault", .at = at, .reason = reason});
        return all;
    };
    circuit.wrong.push_back(wrongForm("M62 too thin", right, [](JobBuilder& wrong) { wrong.apply(gauges(wrong.job(), "26 AWG")); },
                                      atEach("too thin"), Mending::InWords));
    circuit.wrong.push_back(wrongForm("M62 too thick", right, [](JobBuilder& wrong) { wrong.apply(gauges(wrong.job(), "10 AWG")); },
                                      atEach("too thick"), Mending::InWords));
    return circuit;
}

// 5 V behind 4.7 kΩ: 1.06 mA.
JudgedCircuit plateOnADryInput()
{
    const Job right = withDevices("AC1 access-controller")
                          .device("PB1", plateThatWants(5, 0.001))
                          .wires("PB1:C → AC1:GND; PB1:NO → AC1:REX")
                          .job();
    JudgedCircuit circuit{.name = "contact least", .right = right, .hints = {}, .wrong = {}};
    const std::vector<Expected> starved{{.rule = "contact-least", .severity = "doubt", .at = "PB1:NO"}};
    circuit.wrong.push_back(wrongForm("contact that wants 10 mA", right,
                                      [](JobBuilder& job) { job.kind("PB1", plateThatWants(5, 0.01)); }, starved,
                                      Mending::InWords));
    circuit.wrong.push_back(wrongForm("contact that wants 12 V", right,
                                      [](JobBuilder& job) { job.kind("PB1", plateThatWants(12, 0.001)); }, starved,
                                      Mending::InWords));
    return circuit;
}

Kind solidStatePlate()
{
    Kind kind = catalogueKind("push-plate");
    kind.name += "-solid-state";
    for (Part& part : kind.parts)
        if (auto* contact = std::get_if<ContactPart>(&part.body); contact && contact->b == "NO")
            contact->solidState = true;
    return kind;
}

// In the plus, beside a bare contact that bridges it; in the minus.
JudgedCircuit solidStateContacts()
{
    const Job right = withDevices("PS1 dc-supply-24; KS1 key-switch; OL1 OL2 lamp")
                          .device("PB1", solidStatePlate())
                          .device("PB2", solidStatePlate())
                          .wires("PS1:+ → PB1:C; PB1:NO → OL1:+; OL1:− → PS1:−; PS1:+ → KS1:C; KS1:NO → OL1:+; "
                                 "PS1:+ → OL2:+; OL2:− → PB2:C; PB2:NO → PS1:−")
                          .job();
    JudgedCircuit circuit{.name = "solid state", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("solid state reversed in the minus", right, [](JobBuilder& job) { job.exchange("PB2:C", "PB2:NO"); },
                                      {{.rule = "solid-state", .severity = "fault", .at = "PB2:NO", .reason = "reversed"}}));
    return circuit;
}

JudgedCircuit solidStateOnAc()
{
    const Job right = withDevices("TX1 transformer-24; PB1 push-plate; ACS1 strike-ac")
                          .wires("TX1:1 → PB1:C; PB1:NO → ACS1:1; ACS1:2 → TX1:2")
                          .job();
    JudgedCircuit circuit{.name = "solid state AC", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("solid state on AC", right, [](JobBuilder& job) { job.kind("PB1", solidStatePlate()); },
                                      {{.rule = "solid-state", .severity = "fault", .at = "PB1:NO", .reason = "AC"}}, Mending::InWords));
    return circuit;
}

} // namespace

std::vector<JudgedCircuit> ratingCircuits()
{
    return {varistorAcrossAStrike(), varistorOnAc(),     class2Supply(),     fusedBranch(),       fuseOnASmallSupply(),
            wiresInClamps(),         plateOnADryInput(), solidStateContacts(), solidStateOnAc()};
}

} // namespace doorloom
