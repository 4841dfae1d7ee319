#include "circuit.h"

// I: actuators whose lamp inputs share one contact of a module.
namespace doorloom {

namespace {

// A plate on IN1, without which no input could move relay 3.
JobBuilder threeActuators(const std::string& kind)
{
    JobBuilder job = withDevices("PS1 dc-supply-24; PB1 push-plate; WO1 WO2 WO3 " + kind);
    addModule(job, "LM1").power("PS1", "LM1 WO1 WO2 WO3").wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1");
    return job.wires("LM1:K3.C → WO1:LC; WO1:LC → WO2:LC; WO2:LC → WO3:LC; "
                     "LM1:K3.NO → WO1:LI; WO1:LI → WO2:LI; WO2:LI → WO3:LI");
}

void wetLamps(JobBuilder& job)
{
    job.option("LM1", "K3", "wet");
}

JudgedCircuit isolatedInputs()
{
    const Job right = threeActuators("wave-actuator").job();
    return {"I",
            right,
            {},
            {wrongForm("I1", right, wetLamps,
                       {{.rule = "foreign-volts",
                         .severity = "danger",
                         .at = "LM1:K3",
                         .throws = {"LM1:K3=in"},
                         .lines = {{"foreign-volts", "WO1:LI"},
                                   {"foreign-volts", "WO2:LI"},
                                   {"foreign-volts", "WO3:LI"}},
                         .names = {"JA", "JB"}}})}};
}

JudgedCircuit inputsLinkedToMinus()
{
    const Job right = threeActuators("wave-actuator-lamp-to-minus").job();
    return {"I linked",
            right,
            {},
            {wrongForm("I2", right, wetLamps,
                       {{.rule = "shorted", .severity = "danger", .at = "PS1", .names = {"JA"}}})}};
}

JudgedCircuit lampsPulledToMinus()
{
    JobBuilder job =
        withDevices("PS1 dc-supply-24; PB1 push-plate; WO1 wave-actuator-led; OL3 lamp-common-plus");
    addModule(job, "LM1").option("LM1", "K3", "wet").power("PS1", "LM1 WO1");
    job.wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1; LM1:K3.NO → WO1:LED; "
              "OL3:COM → LM1:K3.C; OL3:RED → LM1:K3.NO; OL3:GRN → LM1:K3.NC");
    return {"I3", job.job(), {}, {}};
}

} // namespace

std::vector<JudgedCircuit> lampInputCircuits()
{
    return {isolatedInputs(), inputsLinkedToMinus(), lampsPulledToMinus()};
}

} // namespace doorloom
