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

} // namespace

std::vector<JudgedCircuit> doorOperatorCircuits()
{
    const Job right = startedByRelay();
    const std::string occupied = "request unheard while occupied";
    return {{"door operator",
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
