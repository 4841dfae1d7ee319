#include "circuit.h"

// D: relays that lock each other out, hold themselves in, or cannot come to rest.
namespace doorloom {

namespace {

constexpr auto interlock = "PS1:+ → KS1:C; KS1:NO → R2:C1; R2:NC1 → R1:A1; R1:A2 → PS1:−; "
                           "PS1:+ → KS2:C; KS2:NO → R1:C1; R1:NC1 → R2:A1; R2:A2 → PS1:−";

JudgedCircuit twoOperators()
{
    const Job right = withDevices("PS1 dc-supply-24; KS1 KS2 key-switch; R1 R2 relay; DO1 DO2 door-operator")
                          .wires(interlock)
                          .wires("R1:C2 → DO1:ACOM; R1:NO2 → DO1:ACT; R2:C2 → DO2:ACOM; R2:NO2 → DO2:ACT")
                          .job();
    return {
        "D",
        right,
        {},
        {wrongForm("D2", right, [](JobBuilder& job) { job.exchange("R1:A1", "R1:A2"); },
                   {{.rule = "shorted", .severity = "danger", .at = "PS1", .throws = {"KS1=on R2=rest"}}})}};
}

JudgedCircuit oppositePoles()
{
    const Job right =
        withDevices("PS1 dc-supply-24; KS1 KS2 key-switch; R1 R2 relay; TS1 terminal-strip-8; OL1 lamp")
            .wires(interlock)
            .wires("PS1:+ → R1:C2; R1:NO2 → TS1:1; PS1:− → R2:C2; R2:NO2 → TS1:1; "
                   "TS1:1 → OL1:+; OL1:− → PS1:−")
            .job();
    const auto bothCanPullIn = [](JobBuilder& job) {
        job.move("R2:C1 → KS1:NO", "R1:A1").move("R1:C1 → KS2:NO", "R2:A1");
    };
    return {"Db",
            right,
            {},
            {wrongForm("D3", right, bothCanPullIn,
                       {{.rule = "shorted", .severity = "danger", .at = "PS1", .throws = {"R1=in R2=in"}}},
                       Mending::AnyOfSeveral)}};
}

JudgedCircuit sealIn()
{
    const Job right =
        withDevices("PS1 dc-supply-24; KS1 key-switch; PB1 push-plate; R1 relay; DO1 door-operator")
            .wires("PS1:+ → KS1:C; KS1:NC → R1:C1; R1:NO1 → R1:A1; PS1:+ → PB1:C; PB1:NO → R1:A1; "
                   "R1:A2 → PS1:−; R1:C2 → DO1:ACOM; R1:NO2 → DO1:ACT")
            .job();
    const auto noButton = [](JobBuilder& job) { job.takeOff("PS1:+ → PB1:C").takeOff("PB1:NO → R1:A1"); };
    return {"Dc",
            right,
            {},
            {wrongForm("D1", right, noButton,
                       {{.rule = "never-fed",
                         .severity = "fault",
                         .at = "R1",
                         .reason = reason::ownContact,
                         .lines = {{"never-operated", "DO1:ACT"}}}},
                       Mending::AnyOfSeveral)}};
}

JudgedCircuit plainCoil()
{
    const Job right = withDevices("PS1 dc-supply-24; KS1 key-switch; R1 relay")
                          .wires("PS1:+ → KS1:C; KS1:NO → R1:A1; R1:A2 → PS1:−")
                          .job();
    const auto throughItself = [](JobBuilder& job) {
        job.move("R1:A1 → KS1:NO", "R1:C1").wire("R1:NC1", "R1:A1");
    };
    return {"Dd",
            right,
            {},
            {wrongForm("D4", right, throughItself,
                       {{.rule = "buzzes", .severity = "fault", .at = "R1", .throws = {"KS1=on"}}})}};
}

} // namespace

std::vector<JudgedCircuit> relayCircuits()
{
    return {twoOperators(), oppositePoles(), sealIn(), plainCoil()};
}

} // namespace doorloom
