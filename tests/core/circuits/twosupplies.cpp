#include "circuit.h"

// B: two voltages with one tie. C: a lock on a supply of its own.
namespace doorloom {

namespace {

const Expected tie{.rule = "two-feeds", .severity = "hint", .at = "PS1 PS2"};

Job twoVoltages()
{
    JobBuilder job = withDevices("PS1 dc-supply-12; PS2 dc-supply-24; TR1 timer-relay; PB1 push-plate; "
                                 "OL1 lamp-12; OL2 lamp");
    job.wires("PS1:− → PS2:−").power("PS1", "TR1 OL1").power("PS2", "OL2");
    return job.wires("PS2:+ → PB1:C; PB1:NO → TR1:TRIG").job();
}

JudgedCircuit oneTie()
{
    const Job right = twoVoltages();
    Expected hint = tie;
    hint.names = {"PS1:−", "PS2:−", "TR1:TRIG"};
    return {
        "B",
        right,
        {hint},
        {wrongForm("B1", right, [](JobBuilder& job) { job.takeOff("PS1:− → PS2:−"); },
                   {{.rule = "never-fed", .severity = "fault", .at = "TR1:TRIG", .reason = reason::untied}}),
         wrongForm("B2", right, [](JobBuilder& job) { job.wire("PS1:+", "PS2:+"); },
                   {{.rule = "two-feeds", .severity = "danger", .at = "PS1 PS2"}})}};
}

// The lock's own supply through a dry output of a module on another.
JobBuilder ownSupply()
{
    JobBuilder job = withDevices("PS1 PS2 dc-supply-24; PB1 push-plate; ES1 strike-fail-secure");
    addModule(job, "LM1").power("PS1", "LM1").wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1");
    return job.wires("PS2:+ → LM1:K1.C; LM1:K1.NO → ES1:1; ES1:2 → PS2:−");
}

// K1 wet, its C empty, the strike between the other supply's plus and K1.NO.
void returnThroughModule(JobBuilder& job)
{
    job.option("LM1", "K1", "wet").move("LM1:K1.C → PS2:+", "ES1:1").move("ES1:1 → LM1:K1.NO", "ES1:2");
    job.takeOff("ES1:2 → PS2:−");
}

JudgedCircuit untied()
{
    const Job right = ownSupply().job();
    return {"C",
            right,
            {},
            {wrongForm("C1", right, [](JobBuilder& job) { job.option("LM1", "K1", "wet"); },
                       {{.rule = "wet-output",
                         .severity = "danger",
                         .at = "LM1:K1",
                         .lines = {{"two-feeds", "PS1 PS2"}, {"never-fed", "ES1"}},
                         .names = {"JA", "JB", "LM1:K1.C"}}}),
             wrongForm("C5", right, returnThroughModule,
                       {{.rule = "never-fed",
                         .severity = "fault",
                         .at = "ES1",
                         .reason = reason::untied,
                         .names = {"LM1:K1"}}},
                       Mending::AnyOfSeveral)}};
}

JudgedCircuit tied()
{
    const Job right = ownSupply().wire("PS1:−", "PS2:−").job();
    return {"Ct",
            right,
            {tie},
            {wrongForm("C2", right, [](JobBuilder& job) { job.option("LM1", "K1", "wet"); },
                       {{.rule = "wet-output",
                         .severity = "danger",
                         .at = "LM1:K1",
                         .lines = {{"two-feeds", "PS1 PS2"}, {"never-fed", "ES1", reason::onePole}},
                         .names = {"JA", "JB"}}}),
             wrongForm("C4", right, returnThroughModule,
                       {{.rule = "wet-output", .severity = "doubt", .at = "LM1:K1", .throws = {"LM1:K1=in"}}},
                       Mending::AnyOfSeveral)}};
}

JudgedCircuit secondSupplyInTheBox()
{
    const Job right = oneDoor().device("PS2", "dc-supply-24").device("OL2", "lamp").power("PS2", "OL2").job();
    return {"C second supply",
            right,
            {},
            {wrongForm("C3", right, [](JobBuilder& job) { job.wire("PS2:+", "LM1:K1.C"); },
                       {{.rule = "wet-output",
                         .severity = "danger",
                         .at = "LM1:K1",
                         .lines = {{"two-feeds", "PS1 PS2"}},
                         .names = {"LM1:K1.C"}}})}};
}

} // namespace

std::vector<JudgedCircuit> twoSupplyCircuits()
{
    return {oneTie(), untied(), tied(), secondSupplyInTheBox()};
}

} // namespace doorloom
