#include "circuit.h"

// A: a module's wet output, which switches the minus. C is always at plus, and the moving contact at minus.
namespace doorloom {

namespace {

OpeningSketch staffDoor()
{
    return {.locks = {"ES1"},
            .requests = {{"PB1", "PB1=pressed LM1:K1=in"}},
            .promises = {{"rest", Promised::Locked},
                         {"request PB1", Promised::Free},
                         {"all power lost", Promised::Locked}}};
}

Job dryDoor()
{
    JobBuilder door = oneDoor();
    door.takeOff("ES1:1 → LM1:K1.C").takeOff("ES1:2 → LM1:K1.NO").option("LM1", "K1", "dry");
    door.wires("PS1:+ → LM1:K1.C; LM1:K1.NO → ES1:1; ES1:2 → PS1:−");
    return door.opening(staffDoor()).job();
}

Job lampOnWetOutput()
{
    JobBuilder job = withDevices("PS1 dc-supply-24; PB1 push-plate; OL1 lamp");
    addModule(job, "LM1").option("LM1", "K1", "wet").power("PS1", "LM1");
    return job.wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1; OL1:+ → LM1:K1.C; OL1:− → LM1:K1.NO").job();
}

const ExpectedLine staysLocked{"wrong-in-situation", "ES1", "", {"request PB1"}};

JudgedCircuit wetDoor()
{
    const Job right = oneDoor().opening(staffDoor()).job();
    return {"A",
            right,
            {},
            {wrongForm("A2", right, [](JobBuilder& job) { job.wire("PS1:−", "LM1:K1.C"); },
                       {{.rule = "shorted", .severity = "danger", .at = "PS1", .names = {"JA"}}}),
             wrongForm("A3", right, [](JobBuilder& job) { job.move("LM1:K1.NO → ES1:2", "PS1:−"); },
                       {{.rule = "wrong-in-situation",
                         .severity = "fault",
                         .at = "ES1",
                         .throws = {"rest"},
                         .lines = {{"always-fed", "ES1"}}}}),
             wrongForm("A4", right, [](JobBuilder& job) { job.jumper("LM1", "K1", "JB", "dry"); },
                       {{.rule = "jumpers-disagree",
                         .severity = "fault",
                         .at = "LM1:K1",
                         .lines = {{"never-fed", "ES1", reason::missingReturn}, staysLocked},
                         .names = {"JA", "JB"}}}),
             wrongForm("A5", right, [](JobBuilder& job) { job.jumper("LM1", "K1", "JA", "dry"); },
                       {{.rule = "jumpers-disagree",
                         .severity = "fault",
                         .at = "LM1:K1",
                         .lines = {{"never-fed", "ES1", reason::onePole}, staysLocked},
                         .names = {"JA", "JB"}}})}};
}

JudgedCircuit dryOutput()
{
    const Job right = dryDoor();
    return {"Ad",
            right,
            {},
            {wrongForm("A1", right, [](JobBuilder& job) { job.option("LM1", "K1", "wet"); },
                       {{.rule = "wet-output",
                         .severity = "fault",
                         .at = "LM1:K1",
                         .lines = {{"never-fed", "ES1", reason::onePole}, staysLocked},
                         .names = {"JA", "JB"}}})}};
}

JudgedCircuit polarisedLamp()
{
    const Job right = lampOnWetOutput();
    return {"A lamp",
            right,
            {},
            {wrongForm(
                "A6", right, [](JobBuilder& job) { job.kind("LM1", "relay-module-positive"); },
                {{.rule = "reverse-polarity", .severity = "fault", .at = "OL1", .throws = {"LM1:K1=in"}}},
                Mending::AnyOfSeveral)}};
}

} // namespace

std::vector<JudgedCircuit> wetOutputCircuits()
{
    return {wetDoor(), dryOutput(), polarisedLamp()};
}

} // namespace doorloom
