#include "circuit.h"

#include "edit/details.h"
#include "edit/removeany.h"

// F: inputs with resistors in their loops. Inputs that share one.
namespace doorloom {

namespace {

void put(JobBuilder& job, const std::string& tags, const std::string& place)
{
    PlaceId id;
    for (const Place& row : job.job().places)
        if (row.tag == place)
            id = row.id;
    if (!id) {
        Numbers numbers(job.job());
        Place wanted;
        wanted.tag = place;
        const auto added = addPlace(job.job(), numbers, wanted);
        id = added.value().first;
        job.apply(added.value().second);
    }
    std::vector<std::uint32_t> rows;
    for (const std::string& tag : splitWords(tags))
        rows.push_back(deviceTagged(job.job(), tag)->id.number);
    job.apply(setPlace(job.job(), rows, id).value());
}

// With its conductors.
void takeOut(JobBuilder& job, const std::string& tag)
{
    job.apply(removeAny(job.job(), [&] {
                  const DeviceId device = deviceTagged(job.job(), tag)->id;
                  std::vector<std::uint32_t> rows{device.number};
                  for (const Conductor* conductor : conductorsOn(job.job(), device))
                      rows.push_back(conductor->id.number);
                  return rows;
              }()).value());
}

Kind resistorOf(double ohms)
{
    Kind kind = catalogueKind("resistor");
    kind.name += "-other";
    std::get<ResistorPart>(kind.parts.front().body).ohms = Ohms{ohms};
    return kind;
}

// Shut: RA alone, 2.2 kΩ. Open: RA and RB, 10.4 kΩ.
Job twoLoops()
{
    JobBuilder job = withDevices("AC1 access-controller; RA1 RA2 resistor; RB1 RB2 resistor-8k2; DPS1 DPS2 door-switch");
    for (const std::string n : {"1", "2"})
        job.wires("AC1:IN" + n + " → RA" + n + ":a; RA" + n + ":b → DPS" + n + ":A; DPS" + n + ":B → AC1:GND; RB" + n + ":a → DPS" + n +
                  ":A; RB" + n + ":b → DPS" + n + ":B");
    put(job, "AC1", "CABINET");
    put(job, "RA1 RB1 DPS1", "DOOR1");
    put(job, "RA2 RB2 DPS2", "DOOR2");
    return job.job();
}

JudgedCircuit supervisedLoops()
{
    const Job right = twoLoops();
    const std::string value = "end-of-line-value";
    JudgedCircuit circuit{.name = "F", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("F1", right, [](JobBuilder& job) { put(job, "RA1 RB1", "CABINET"); },
                                      {{.rule = "end-of-line-place", .severity = "doubt", .at = "AC1:IN1", .names = {"RA1", "RB1", "DOOR1"}}}));
    circuit.wrong.push_back(wrongForm("F2", right, [](JobBuilder& job) { job.kind("RA1", resistorOf(4700)); },
                                      {{.rule = value, .severity = "fault", .at = "AC1:IN1", .names = {"4.7 kΩ", "12.9 kΩ", "door shut", "door open"}}},
                                      Mending::InWords));
    circuit.wrong.push_back(wrongForm("F3", right, [](JobBuilder& job) { job.move("RA2:a → AC1:IN2", "RA1:a"); },
                                      {{.rule = "inputs-share-loop",
                                        .severity = "fault",
                                        .at = "AC1:IN1 AC1:IN2",
                                        .lines = {{"empty-terminal", "RA2:a"}}}}));
    circuit.wrong.push_back(wrongForm("F no resistor across the contact", right, [](JobBuilder& job) { takeOut(job, "RB1"); },
                                      {{.rule = value, .severity = "fault", .at = "AC1:IN1", .throws = {"DPS1=open"}}}, Mending::InWords));
    circuit.wrong.push_back(wrongForm("F no resistors", right,
                                      [](JobBuilder& job) {
                                          takeOut(job, "RA1");
                                          takeOut(job, "RB1");
                                          job.wire("AC1:IN1", "DPS1:A");
                                      },
                                      {{.rule = value, .severity = "fault", .at = "AC1:IN1"}}, Mending::InWords));
    circuit.wrong.push_back(wrongForm("F resistors exchanged", right,
                                      [](JobBuilder& job) {
                                          job.kind("RA1", "resistor-8k2").kind("RB1", "resistor");
                                      },
                                      {{.rule = value, .severity = "fault", .at = "AC1:IN1", .throws = {"DPS1=shut"}}}, Mending::InWords));
    circuit.wrong.push_back(wrongForm("F loop bridged", right, [](JobBuilder& job) { job.wire("DPS1:A", "DPS1:B"); },
                                      {{.rule = "always-operated", .severity = "fault", .at = "AC1:IN1"}}, Mending::InWords));
    circuit.wrong.push_back(wrongForm("F loop cut", right, [](JobBuilder& job) { job.takeOff("DPS1:B → AC1:GND"); },
                                      {{.rule = "never-operated", .severity = "fault", .at = "AC1:IN1"}}, Mending::InWords));
    return circuit;
}

// A tamper contact in the loop opens it on purpose: what it then reads is no state, and is wanted.
JudgedCircuit loopWithTamper()
{
    JobBuilder job(twoLoops(), Clamps::Roomy);
    job.device("TP1", "push-plate").move("AC1:GND → DPS1:B", "TP1:C").wire("TP1:NO", "AC1:GND");
    return {.name = "F tamper", .right = job.job(), .hints = {}, .wrong = {}};
}

// Two controllers that do not know of each other, on one plate.
JudgedCircuit sharedPlate()
{
    const Job right = withDevices("AC1 AC2 access-controller; EB1 EB2 exit-button")
                          .wires("EB1:C → AC1:GND; EB1:NO → AC1:REX; EB2:C → AC2:GND; EB2:NO → AC2:REX")
                          .job();
    JudgedCircuit circuit{.name = "shared plate", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("one plate on two inputs", right,
                                      [](JobBuilder& job) {
                                          job.move("EB2:C → AC2:GND", "EB1:C").move("EB2:NO → AC2:REX", "EB1:NO").remove("EB2");
                                      },
                                      {{.rule = "inputs-share-loop", .severity = "doubt", .at = "AC1:REX AC2:REX"}}, Mending::AnyOfSeveral));
    return circuit;
}

} // namespace

std::vector<JudgedCircuit> supervisedCircuits()
{
    return {supervisedLoops(), loopWithTamper(), sharedPlate()};
}

} // namespace doorloom
