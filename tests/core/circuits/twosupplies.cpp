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

// A lamp that a key takes from its own minus to whatever is landed on the other side.
JudgedCircuit lampBetweenFeeds()
{
    JobBuilder job = withDevices("PS1 dc-supply-12; PS2 dc-supply-24; KS1 key-switch; OL1 lamp-12; OL2 lamp");
    const Job right = job.wires("PS1:− → PS2:−; PS1:+ → OL1:+; OL1:− → KS1:C; KS1:NO → PS1:−").power("PS2", "OL2").job();
    return {"Be",
            right,
            {tie},
            {wrongForm("higher plus on the other side", right, [](JobBuilder& wrong) { wrong.wire("PS2:+", "KS1:NC"); },
                       {{.rule = "two-feeds",
                         .severity = "doubt",
                         .at = "PS1 PS2",
                         .throws = {"KS1=off"},
                         .reason = "through a load",
                         .names = {"OL1", "KS1:NC", "PS2:+"}}})}};
}

// ---- Rings of more than two

// Each has a load of its own.
JobBuilder suppliesWithLamps(std::string_view devices, int count)
{
    JobBuilder job = withDevices(devices);
    for (int n = 1; n <= count; ++n)
        job.power("PS" + std::to_string(n), "OL" + std::to_string(n));
    return job;
}

Expected ring(std::string at, const std::vector<std::string>& stacks = {}, Cubes throws = {""})
{
    Expected expected{
        .rule = "two-feeds", .severity = "danger", .at = std::move(at), .throws = std::move(throws), .reason = "ring"};
    for (const std::string& pair : stacks)
        expected.lines.push_back({"two-feeds", pair, "stacked"});
    return expected;
}

// Like poles alone, four times: 24 V against 24 V against 24 V against 24 V.
JudgedCircuit ringOfFour()
{
    JobBuilder job = suppliesWithLamps("PS1 PS2 PS3 PS4 dc-supply-24; OL1 OL2 OL3 OL4 lamp; KS1 key-switch", 4);
    const Job right = job.wires("PS1:+ → PS2:+; PS2:− → PS3:−; PS3:+ → PS4:+").job();
    const auto hint = [](std::string at) { return Expected{.rule = "two-feeds", .severity = "hint", .at = std::move(at)}; };
    return {"ring of four",
            right,
            {hint("PS1 PS2"), hint("PS2 PS3"), hint("PS3 PS4")},
            {wrongForm("closed", right, [](JobBuilder& wrong) { wrong.wire("PS4:−", "PS1:−"); },
                       {ring("PS1 PS2 PS3 PS4")}, Mending::AnyOfSeveral),
             wrongForm("closed by a key", right,
                       [](JobBuilder& wrong) { wrong.wires("PS4:− → KS1:C; KS1:NO → PS1:−"); },
                       {ring("PS1 PS2 PS3 PS4", {}, {"KS1=on"})}, Mending::AnyOfSeveral)}};
}

// 24 V against 12 V and 12 V, and three that drive each other on.
JudgedCircuit ringsOfThree()
{
    const Job right =
        suppliesWithLamps("PS1 dc-supply-24; PS2 PS3 dc-supply-12; OL1 lamp; OL2 OL3 lamp-12", 3).job();
    return {"rings of three",
            right,
            {},
            {wrongForm("against each other", right,
                       [](JobBuilder& wrong) { wrong.wires("PS2:+ → PS3:−; PS1:+ → PS3:+; PS1:− → PS2:−"); },
                       {ring("PS1 PS2 PS3", {"PS2 PS3"})}, Mending::AnyOfSeveral),
             wrongForm("one after another", right,
                       [](JobBuilder& wrong) { wrong.wires("PS1:+ → PS2:−; PS2:+ → PS3:−; PS3:+ → PS1:−"); },
                       {ring("PS1 PS2 PS3", {"PS1 PS2", "PS2 PS3", "PS1 PS3"})}, Mending::AnyOfSeveral)}};
}

// ---- A board that feeds through a fuse each

Kind fusedBoard()
{
    Kind kind = catalogueKind("terminal-strip-8");
    kind.name = "fused-board";
    Strip& strip = kind.strips.front();
    const Terminal clamp = strip.terminals.front();
    strip.terminals.clear();
    for (const char* key : {"IN+", "IN-", "F1+", "F2+", "F1-", "F2-"}) {
        strip.terminals.push_back(clamp);
        strip.terminals.back().key = strip.terminals.back().printed = key;
    }
    kind.parts = {{"F1", {}, FusePart{"IN+", "F1+", {}}},
                  {"F2", {}, FusePart{"IN+", "F2+", {}}},
                  {"minus1", {}, LinkPart{"IN-", "F1-"}},
                  {"minus2", {}, LinkPart{"IN-", "F2-"}}};
    return kind;
}

JudgedCircuit fusedFeeds()
{
    JobBuilder job = withDevices("PS1 dc-supply-24; OL1 OL2 lamp; KS1 key-switch");
    job.device("DB1", fusedBoard()).wires("PS1:+ → DB1:IN+; PS1:− → DB1:IN-");
    const Job right = job.wires("DB1:F1+ → OL1:+; OL1:− → DB1:F1-; DB1:F2+ → OL2:+; OL2:− → DB1:F2-").job();
    const auto joined = [](Cubes throws) {
        return Expected{.rule = "two-feeds",
                        .severity = "fault",
                        .at = "DB1:F1+ DB1:F2+",
                        .throws = std::move(throws),
                        .reason = "past their fuses"};
    };
    return {"fused feeds",
            right,
            {},
            {wrongForm("joined", right, [](JobBuilder& wrong) { wrong.wire("OL1:+", "OL2:+"); }, {joined({""})}),
             wrongForm("joined by a key", right, [](JobBuilder& wrong) { wrong.wires("OL1:+ → KS1:C; KS1:NO → OL2:+"); },
                       {joined({"KS1=on"})}, Mending::AnyOfSeveral)}};
}

} // namespace

std::vector<JudgedCircuit> twoSupplyCircuits()
{
    return {oneTie(),           untied(),     tied(),         secondSupplyInTheBox(),
            lampBetweenFeeds(), ringOfFour(), ringsOfThree(), fusedFeeds()};
}

} // namespace doorloom
