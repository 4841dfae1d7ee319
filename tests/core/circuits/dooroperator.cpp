#include "circuit.h"

// A door operator that a module's relay 2 starts, and what its opening promises of it.
namespace doorloom {

namespace {

Job startedByRelay()
{
    JobBuilder job = withDevices("PS1 dc-supply-24; PB1 push-plate; KS1 key-switch; DO1 door-operator");
    addModule(job, "LM1").power("PS1", "LM1");
    job.wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1; KS1:C → LM1:COM; KS1:NO → LM1:IN2");
    job.wires("LM1:K2.C → DO1:ACOM; LM1:K2.NO → DO1:ACT");
    OpeningSketch sketch{.locks = {},
                         .doorOperators = {"DO1"},
                         .requests = {{"PB1", "PB1=pressed LM1:K2=in"}, {"unheard", "PB1=pressed"}},
                         .occupied = "KS1=on"};
    sketch.promises = {{"rest", Promised::MustNotStart, "DO1"},
                       {"request PB1", Promised::MayStart, "DO1"},
                       {"request unheard while occupied", Promised::MustNotStart, "DO1"},
                       {"all power lost", Promised::MustNotStart, "DO1"}};
    return job.opening(sketch).job();
}

Expected wrongIn(std::string severity, std::string situation, const std::vector<std::string>& also = {})
{
    Expected expected{.rule = "operator-in-situation",
                      .severity = std::move(severity),
                      .at = "DO1:ACT",
                      .throws = {std::move(situation)}};
    for (const std::string& other : also)
        expected.lines.push_back({"operator-in-situation", "DO1:ACT", "", {other}});
    return expected;
}

// H: the strike's relay at once, the operator's half a second later; the strike takes 0.1 s.
JudgedCircuit strikeBeforeOperator()
{
    Kind quick = catalogueKind("relay-module-negative");
    for (Setting& setting : quick.settings)
        if (setting.key == "delay.K2")
            setting.least = 0;
    JobBuilder job = withDevices("PS1 dc-supply-24; WO1 wave-actuator; ES1 strike-fail-secure; DO1 door-operator");
    job.device("LM1", quick).option("LM1", "K1", "dry").option("LM1", "K3", "dry").power("PS1", "LM1 WO1");
    job.wires("WO1:C → LM1:COM; WO1:NO → LM1:IN1; PS1:+ → LM1:K1.C; LM1:K1.NO → ES1:1; ES1:2 → PS1:−; "
              "LM1:K2.C → DO1:ACOM; LM1:K2.NO → DO1:ACT");
    const Job right = job.opening({.locks = {"ES1"},
                                   .doorOperators = {"DO1"},
                                   .requests = {{"wave", "LM1:K1=in LM1:K2=in"}},
                                   .promises = {{"rest", Promised::Locked, "ES1"}, {"request wave", Promised::Free, "ES1"}}})
                          .job();
    return {"H",
            right,
            {},
            {wrongForm("H1", right, [](JobBuilder& wrong) { wrong.setting("LM1", "delay.K2", 0.05); },
                       {{.rule = "starts-early", .severity = "fault", .at = "DO1:ACT", .throws = {"LM1:K1=in LM1:K2=in"}, .names = {"0.05", "0.10"}}})}};
}

// The operator's own lock relay, and its own delay behind it.
JudgedCircuit operatorsOwnRelay()
{
    const Job right = withDevices("PS1 dc-supply-24; WO1 wave-actuator; ES1 strike-fail-secure; DO1 door-operator-lock")
                          .option("DO1", "LK", "dry")
                          .option("DO1", "SAF", "not-used")
                          .setting("WO1", "hold", 2.0)
                          .power("PS1", "WO1")
                          .wires("WO1:C → DO1:ACOM; WO1:NO → DO1:ACT; PS1:+ → DO1:LK.C; DO1:LK.NO → ES1:1; ES1:2 → PS1:−")
                          .opening({.locks = {"ES1"},
                                    .doorOperators = {"DO1"},
                                    .requests = {{"wave", "WO1=waved DO1=in"}},
                                    .promises = {{"rest", Promised::Locked, "ES1"}, {"request wave", Promised::Free, "ES1"}}})
                          .job();
    return {"T3",
            right,
            {},
            {wrongForm("M47", right, [](JobBuilder& wrong) { wrong.setting("DO1", "delay.ACT", 0.0); },
                       {{.rule = "starts-early", .severity = "fault", .at = "DO1:ACT", .throws = {"DO1=in WO1=waved"}}})}};
}

} // namespace

std::vector<JudgedCircuit> doorOperatorCircuits()
{
    const Job right = startedByRelay();
    const std::string occupied = "request unheard while occupied";
    return {strikeBeforeOperator(), operatorsOwnRelay(),
            {"door operator",
             right,
             {},
             {wrongForm("started at rest", right,
                        [](JobBuilder& job) { job.move("LM1:K2.NO → DO1:ACT", "LM1:K2.NC"); },
                        {wrongIn("danger", occupied, {"rest", "request PB1"})}),
              wrongForm("started past its relay", right, [](JobBuilder& job) { job.wire("LM1:K2.C", "LM1:K2.NO"); },
                        {wrongIn("danger", occupied, {"rest"})}),
              wrongForm("never started", right, [](JobBuilder& job) { job.takeOff("LM1:K2.NO → DO1:ACT"); },
                        {wrongIn("fault", "request PB1")})}}};
}

} // namespace doorloom
