#include "circuit.h"

// What only volts and amperes find.
namespace doorloom {

namespace {

// Every wire of one gauge and length.
void wiredWith(JobBuilder& job, const std::string& gauge, double metres)
{
    Change change;
    for (const Conductor& row : job.job().conductors) {
        Conductor changed = row;
        changed.gauge = gauge;
        changed.length = {metres};
        change.steps.emplace_back(Put<Conductor>{row.id, changed});
    }
    job.apply(change);
}

// 24.0 V at the least, 0.12 A at 24 V (200 ohms), from 20.4 V on. 24 AWG has 84.2 ohms a kilometre: 3 × 180 m in line
// (45.5 ohms) leave 24 · 200 / 245.5 = 19.6 V; 16 AWG (13.2 ohms a kilometre, 7.1 in all) 23.2 V, and 20.3 V at the end of
// the battery (21 V): 12 AWG, 20.7 V.
JudgedCircuit strikeAtTheEndOfALongLine()
{
    JobBuilder job = withDevices("PS1 dc-supply-24; KS1 key-switch; ES1 strike-fail-secure");
    job.wires("PS1:+ → KS1:C; KS1:NO → ES1:1; ES1:2 → PS1:−");
    wiredWith(job, "12 AWG", 180);
    const Job right = job.job();
    JudgedCircuit circuit{.name = "long line", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("long thin line", right, [](JobBuilder& wrong) { wiredWith(wrong, "24 AWG", 180); },
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

} // namespace

std::vector<JudgedCircuit> numberCircuits()
{
    return {strikeAtTheEndOfALongLine(), magnetsThroughOneFireContact(), strikeOnTheOperatorsOutput()};
}

} // namespace doorloom
