#include "circuit.h"

#include "core/rightjobs/rightjob.h"

#include <stdexcept>

// Whole doors as they are built, and the mistakes that hold somebody in: no release in the lock's feed, one beside it, one
// that only a controller reads, a sensor that holds while it is dead, the fire contact left out or on the wrong pair.
namespace doorloom {

namespace {

Job drawn(const std::string& name)
{
    for (const RightJob& right : allRightJobs())
        if (right.name == name)
            return jobOf(right);
    throw std::runtime_error("No right job is called '" + name + "'");
}

JudgedCircuit topology(const std::string& name)
{
    return {.name = "topology " + name, .right = drawn(name), .hints = {}, .wrong = {}};
}

Expected heldIn(const std::string& release, const std::string& throws)
{
    return {.rule = "direct-release", .severity = "danger", .at = release, .throws = {throws}};
}

Expected heldInFire(const std::string& lock, const std::string& severity = "danger")
{
    return {.rule = "wrong-in-situation", .severity = severity, .at = lock, .throws = {"fire alarm"}};
}

// A mag lock with button, sensor and card in one chain of the plus.
JudgedCircuit sensorRelease()
{
    JudgedCircuit circuit = topology("T5");
    const Job& right = circuit.right;
    const auto add = [&](const std::string& name, const Edit& edit, std::vector<Expected> findings, Mending mending = Mending::TheReverseEdit) {
        circuit.wrong.push_back(wrongForm("T5 " + name, right, edit, std::move(findings), mending));
    };
    add("M15", [](JobBuilder& job) { job.wire("FR1:NC", "MS1:NO"); },
        {{.rule = "direct-release", .severity = "danger", .at = "EB1", .throws = {"EB1=pressed"}, .lines = {{"direct-release", "MS1"}}}});
    add("M16 M54",
        [](JobBuilder& job) {
            job.takeOff("EB1:NC → MS1:C").takeOff("FR1:NC → EB1:C").wires("FR1:NC → MS1:C; EB1:C → AC1:GND; EB1:NO → AC1:REX");
        },
        {heldIn("EB1", "EB1=pressed AC1=rest")}, Mending::AnyOfSeveral);
    add("M17",
        [](JobBuilder& job) {
            job.option("MS1", "relay", "on-motion").move("MS1:NO → AC1:LK.C", "MS1:NC").move("MS1:NC2 → AC1:REX", "MS1:NO2");
        },
        {heldIn("MS1", "MS1:sensing=motion MS1:on-motion=still")}, Mending::AnyOfSeveral);
    add("M18",
        [](JobBuilder& job) {
            job.takeOff("EB1:NC → MS1:C").takeOff("FR1:NC → EB1:C").wires("FR1:NC → MS1:C; EB1:C → AC1:LK.C; EB1:NC → AC1:LK.NC");
        },
        {heldIn("EB1", "EB1=pressed")}, Mending::AnyOfSeveral);
    add("M19", [](JobBuilder& job) { job.move("FR1:NC → EB1:C", "PS1:+"); }, {heldInFire("ML1")});
    add("M20", [](JobBuilder& job) { job.move("FR1:NC → EB1:C", "FR1:NO"); }, {heldInFire("ML1")});
    return circuit;
}

// The bar's own strong switch carries the lock's current, over the hinge.
JudgedCircuit strongBar()
{
    JudgedCircuit circuit = topology("T6");
    const Job& right = circuit.right;
    circuit.wrong.push_back(wrongForm("T6 M15", right, [](JobBuilder& job) { job.wire("PT1:1", "PT1:2"); }, {heldIn("RX1", "RX1=pressed")}));
    circuit.wrong.push_back(wrongForm("T6 M16 M54", right,
                                      [](JobBuilder& job) {
                                          job.takeOff("FR1:NC → PT1:1").move("PT1:2 → AC1:LK.C", "FR1:NC").move("RX1:NC → PT1:2'", "RX1:NO");
                                          job.wires("PT1:1 → AC1:GND; PT1:2 → AC1:REX");
                                      },
                                      {heldIn("RX1", "RX1=pressed AC1=rest")}, Mending::AnyOfSeveral));
    circuit.wrong.push_back(wrongForm("T6 M19", right, [](JobBuilder& job) { job.move("FR1:NC → PT1:1", "PS1:+"); }, {heldInFire("ML1")}));
    return circuit;
}

// Stair re-entry: people get out by the inside lever; in a fire the stair side must open, and stay latched.
JudgedCircuit stair()
{
    JudgedCircuit circuit = topology("T8");
    const Job& right = circuit.right;
    circuit.wrong.push_back(wrongForm("T8 M19", right, [](JobBuilder& job) { job.move("FR1:NC → AC1:LK.C", "PS1:+"); },
                                      {heldInFire("EL1", "fault")}));
    circuit.wrong.push_back(wrongForm("T8 M20", right, [](JobBuilder& job) { job.move("FR1:NC → AC1:LK.C", "FR1:NO"); },
                                      {{.rule = "wrong-in-situation",
                                        .severity = "fault",
                                        .at = "EL1",
                                        .throws = {"rest"},
                                        .lines = {{"wrong-in-situation", "EL1", "", {"fire alarm"}}}}}));
    return circuit;
}

// Two doors, each locked while the other is open.
JudgedCircuit airLock()
{
    JudgedCircuit circuit = topology("T11");
    const Job& right = circuit.right;
    circuit.wrong.push_back(wrongForm("T11 M15", right, [](JobBuilder& job) { job.wire("EB1:C", "EB1:NC"); }, {heldIn("EB1", "EB1=pressed")}));
    circuit.wrong.push_back(wrongForm("T11 M18", right,
                                      [](JobBuilder& job) {
                                          job.takeOff("R2:NO1 → EB1:C").move("EB1:NC → ML1:+", "R2:NO1").wires("EB1:C → R2:C1; EB1:NC → R2:NO1");
                                      },
                                      {heldIn("EB1", "EB1=pressed")}, Mending::AnyOfSeveral));
    return circuit;
}

// One supply, two of a board's outputs: a strike that stays, a mag lock that drops in a fire.
JudgedCircuit manyDoors()
{
    JudgedCircuit circuit = topology("T13");
    const Job& right = circuit.right;
    circuit.wrong.push_back(wrongForm("T13 M19", right, [](JobBuilder& job) { job.option("DB1", "F2", "stays"); }, {heldInFire("ML2")},
                                      Mending::AnyOfSeveral));
    circuit.wrong.push_back(wrongForm("T13 M20", right, [](JobBuilder& job) { job.move("FR1:NC → DB1:FA2", "FR1:NO"); }, {heldInFire("ML2")}));
    circuit.wrong.push_back(wrongForm("T13 M15", right, [](JobBuilder& job) { job.wire("EB2:C", "EB2:NC"); }, {heldIn("EB2", "EB2=pressed")}));
    return circuit;
}

// A bar whose weak switch holds a relay in.
JudgedCircuit weakBar()
{
    JudgedCircuit circuit = topology("T22 with card");
    const Job& right = circuit.right;
    circuit.wrong.push_back(wrongForm("T22 M15", right, [](JobBuilder& job) { job.wire("PT1:1", "PT1:2"); }, {heldIn("RX1", "RX1=pressed")}));
    circuit.wrong.push_back(wrongForm("T22 M18", right, [](JobBuilder& job) { job.wire("R1:C1", "R1:NO1"); }, {heldIn("RX1", "RX1=pressed")}));
    circuit.wrong.push_back(wrongForm("T22 M19", right, [](JobBuilder& job) { job.move("FR1:NC → R1:C1", "PS1:+"); }, {heldInFire("ML1")}));
    return circuit;
}

} // namespace

std::vector<JudgedCircuit> topologyCircuits()
{
    return {sensorRelease(), strongBar(), stair(), airLock(), manyDoors(), weakBar()};
}

} // namespace doorloom
