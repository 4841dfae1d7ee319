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

} // namespace

std::vector<JudgedCircuit> ratingCircuits()
{
    return {varistorAcrossAStrike(), varistorOnAc(), class2Supply(), fusedBranch(), fuseOnASmallSupply(), wiresInClamps()};
}

} // namespace doorloom
