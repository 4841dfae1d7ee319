#include "circuit.h"

#include <algorithm>

// E, K, L: a mag lock through which people get out only by electricity: its releases in series, its exit sensor, the fire
// alarm.
namespace doorloom {

namespace {

OpeningSketch onlyByElectricity(std::vector<ActSketch> requests, std::vector<ActSketch> releases, std::vector<PromiseSketch> promises)
{
    return {.locks = {"ML1"},
            .egress = Egress::ByElectricity,
            .requests = std::move(requests),
            .releases = std::move(releases),
            .promises = std::move(promises)};
}

const ActSketch card{"card", "AC1=in"}, button{"button", "EB1=pressed"}, motion{"motion", "MS1:sensing=motion"};

// The releases' order along the plus: fire relay, button, sensor, controller.
JobBuilder magLock(const std::string& supply, const std::string& fireRelay)
{
    JobBuilder job = withDevices("PS1 " + supply + "; MS1 exit-sensor; FR1 " + fireRelay +
                                 "; EB1 exit-button; AC1 access-controller; ML1 mag-lock");
    job.power("PS1", "MS1").option("MS1", "relay", "held-in");
    job.wires("EB1:NC → MS1:C; MS1:NO → AC1:LK.C; AC1:LK.NC → ML1:+; ML1:− → PS1:−; MS1:C2 → AC1:GND; MS1:NC2 → AC1:REX");
    return job;
}

OpeningSketch promisedAlike(std::vector<ActSketch> releases, const std::string& fire)
{
    OpeningSketch sketch = onlyByElectricity({card}, releases,
                                             {{"rest", Promised::Locked},
                                              {"request card", Promised::Free},
                                              {"fire alarm", Promised::Free},
                                              {"all power lost", Promised::Free},
                                              {"mains lost", Promised::Locked}});
    for (const ActSketch& release : releases)
        sketch.promises.push_back({"release " + release.name, Promised::Free});
    if (std::any_of(releases.begin(), releases.end(), [](const ActSketch& each) { return each.name == motion.name; }))
        sketch.promises.push_back({"MS1:held-in lost", Promised::Free}); // a dead sensor frees
    sketch.fire = fire;
    return sketch;
}

Job rightE()
{
    return magLock("dc-supply-24", "fire-relay")
        .wires("PS1:+ → FR1:C; FR1:NC → EB1:C")
        .opening(promisedAlike({button, motion}, "FR1"))
        .job();
}

JudgedCircuit releasesInSeries()
{
    const Job right = rightE();
    JudgedCircuit circuit{.name = "E", .right = right, .hints = {}, .wrong = {}};
    const std::string pressed = "EB1=pressed";
    circuit.wrong.push_back(wrongForm("E1", right, [](JobBuilder& job) { job.wire("EB1:C", "EB1:NC"); },
                                      {{.rule = "direct-release", .severity = "danger", .at = "EB1", .throws = {pressed}}}));
    circuit.wrong.push_back(wrongForm("E2", right,
                                      [](JobBuilder& job) {
                                          job.takeOff("EB1:NC → MS1:C").takeOff("FR1:NC → EB1:C");
                                          job.wires("FR1:NC → MS1:C; EB1:C → AC1:GND; EB1:NO → AC1:REX");
                                      },
                                      {{.rule = "direct-release", .severity = "danger", .at = "EB1", .throws = {pressed + " AC1=rest"}}},
                                      Mending::AnyOfSeveral));
    circuit.wrong.push_back(wrongForm("E3", right,
                                      [](JobBuilder& job) {
                                          job.takeOff("EB1:NC → MS1:C").takeOff("FR1:NC → EB1:C").takeOff("ML1:− → PS1:−");
                                          job.wires("FR1:NC → MS1:C; ML1:− → EB1:C; EB1:NC → PS1:−");
                                      },
                                      {{.rule = "release-in-minus", .severity = "doubt", .at = "EB1"}}, Mending::AnyOfSeveral));
    circuit.wrong.push_back(wrongForm("K1", right, [](JobBuilder& job) { job.move("MS1:NO → AC1:LK.C", "MS1:NC"); },
                                      {{.rule = "direct-release", .severity = "danger", .at = "MS1", .throws = {"MS1:sensing=motion"},
                                        .lines = {{"wrong-in-situation", "ML1"}}}}));
    circuit.wrong.push_back(wrongForm("K2", right,
                                      [](JobBuilder& job) {
                                          job.option("MS1", "relay", "on-motion").move("MS1:NO → AC1:LK.C", "MS1:NC");
                                          job.move("MS1:NC2 → AC1:REX", "MS1:NO2");
                                      },
                                      {{.rule = "direct-release", .severity = "danger", .at = "MS1",
                                        .throws = {"MS1:sensing=motion MS1:on-motion=still"}}},
                                      Mending::AnyOfSeveral));
    return circuit;
}

// A bar whose contact is too weak for the lock: it holds a relay in.
JudgedCircuit throughARelayHeldIn()
{
    OpeningSketch sketch = onlyByElectricity({}, {{"bar", "RX1=pressed"}},
                                             {{"rest", Promised::Locked},
                                              {"release bar", Promised::Free},
                                              {"fire alarm", Promised::Free},
                                              {"all power lost", Promised::Free}});
    sketch.fire = "FR1";
    const Job right = withDevices("PS1 dc-supply-24; RX1 exit-bar-switch; R1 relay; FR1 fire-relay; ML1 mag-lock")
                          .wires("PS1:+ → RX1:C; RX1:NC → R1:A1; R1:A2 → PS1:−; PS1:+ → FR1:C; FR1:NC → R1:C1; R1:NO1 → ML1:+; "
                                 "ML1:− → PS1:−")
                          .opening(sketch)
                          .job();
    JudgedCircuit circuit{.name = "Er", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("E5", right,
                                      [](JobBuilder& job) {
                                          job.move("RX1:NC → R1:A1", "RX1:NO").move("R1:NO1 → ML1:+", "R1:NC1");
                                      },
                                      {{.rule = "direct-release", .severity = "danger", .at = "RX1", .throws = {"RX1=pressed R1=rest"}}},
                                      Mending::AnyOfSeveral));
    return circuit;
}

JudgedCircuit withoutAnyRelease()
{
    const Job right = magLock("dc-supply-24", "fire-relay")
                          .wires("PS1:+ → FR1:C; FR1:NC → EB1:C")
                          .opening(promisedAlike({button}, "FR1"))
                          .job();
    JudgedCircuit circuit{.name = "E with one release", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back({"E4",
                             [&] {
                                 Opening opening = *right.openings.begin();
                                 opening.releases.clear();
                                 std::erase_if(opening.promises, [](const Promise& each) { return each.situation.kind == SituationKind::Release; });
                                 return Change{{Put<Opening>{opening.id, opening}}};
                             }(),
                             {{.rule = "direct-release", .severity = "danger", .at = "ML1", .reason = "no release at all"}},
                             Mending::AnyOfSeveral});
    return circuit;
}

// The fire relay's contact on the supply's own input, which lets the plus go behind the battery.
JudgedCircuit fireDropInTheSupply()
{
    const Job right = magLock("dc-supply-24-fire", "fire-relay")
                          .option("PS1", "FA", "used")
                          .wires("PS1:+ → EB1:C; FR1:C → PS1:FA1; FR1:NC → PS1:FA2")
                          .opening(promisedAlike({button, motion}, "FR1"))
                          .job();
    JudgedCircuit circuit{.name = "Lf", .right = right, .hints = {}, .wrong = {}};
    const std::vector<Expected> held{{.rule = "wrong-in-situation", .severity = "danger", .at = "ML1", .throws = {"fire alarm"}}};
    circuit.wrong.push_back(wrongForm("L3", right, [](JobBuilder& job) { job.kind("PS1", "dc-supply-24-fire-mains"); }, held,
                                      Mending::AnyOfSeveral));
    circuit.wrong.push_back(wrongForm("L2", right,
                                      [](JobBuilder& job) {
                                          job.takeOff("FR1:C → PS1:FA1").takeOff("FR1:NC → PS1:FA2").option("PS1", "FA", "not-used");
                                          job.wires("FR1:C → AC1:GND; FR1:NC → AC1:FIRE");
                                      },
                                      held, Mending::AnyOfSeveral));
    return circuit;
}

const char* const mainsWires = "MP1:L → PS1:L; MP1:N → PS1:N; MP1:PE → PS1:PE";

// L1: the fire alarm's contact in the mains of a supply that has a battery.
JudgedCircuit fireContactInTheMains()
{
    const Job right = magLock("dc-supply-24-mains-terminals", "fire-relay")
                          .device("MP1", "mains-point")
                          .wires("PS1:+ → FR1:C; FR1:NC → EB1:C")
                          .wires(mainsWires)
                          .opening(promisedAlike({button, motion}, "FR1"))
                          .job();
    JudgedCircuit circuit{.name = "L", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("L1", right,
                                      [](JobBuilder& job) {
                                          job.takeOff("PS1:+ → FR1:C").move("FR1:NC → EB1:C", "PS1:+").kind("FR1", "fire-relay-mains");
                                          job.move("PS1:L → MP1:L", "FR1:C").wire("FR1:NC", "PS1:L");
                                      },
                                      {{.rule = "wrong-in-situation", .severity = "danger", .at = "ML1", .throws = {"fire alarm"}}},
                                      Mending::AnyOfSeveral));
    return circuit;
}

// Without a battery the same contact frees: the supply has its mains only through it. On NO it takes the mains away in normal.
JudgedCircuit fireContactInTheMainsOfASupplyWithoutBattery()
{
    Kind plain = catalogueKind("dc-supply-24-mains-terminals");
    plain.name = "dc-supply-24-no-battery";
    for (Part& part : plain.parts)
        if (auto* source = std::get_if<SourcePart>(&part.body))
            source->live = {{{"mains", "on"}}};
    std::erase_if(plain.roles, [](const Role& role) { return role.key == "battery"; });
    OpeningSketch opening = promisedAlike({button, motion}, "FR1");
    std::erase_if(opening.promises, [](const PromiseSketch& each) { return each.situation == "mains lost"; });
    const Job right = magLock("dc-supply-24-mains-terminals", "fire-relay-mains")
                          .kind("PS1", plain)
                          .device("MP1", "mains-point")
                          .wires("PS1:+ → EB1:C; MP1:L → FR1:C; FR1:NC → PS1:L; MP1:N → PS1:N; MP1:PE → PS1:PE")
                          .opening(opening)
                          .job();
    JudgedCircuit circuit{.name = "fire contact in the mains, no battery", .right = right, .hints = {}, .wrong = {}};
    circuit.wrong.push_back(wrongForm("fire contact in the mains, with a battery", right,
                                      [](JobBuilder& job) { job.kind("PS1", "dc-supply-24-mains-terminals"); },
                                      {{.rule = "wrong-in-situation", .severity = "danger", .at = "ML1", .throws = {"fire alarm"}}},
                                      Mending::AnyOfSeveral));
    circuit.wrong.push_back(wrongForm("fire contact in the mains on NO", right,
                                      [](JobBuilder& job) { job.move("FR1:NC → PS1:L", "FR1:NO"); },
                                      {{.rule = "wrong-in-situation", .severity = "danger", .at = "ML1", .throws = {"fire alarm"}}},
                                      Mending::AnyOfSeveral));
    return circuit;
}

} // namespace

std::vector<JudgedCircuit> releaseCircuits()
{
    return {releasesInSeries(),    throughARelayHeldIn(),   withoutAnyRelease(),
            fireDropInTheSupply(), fireContactInTheMains(), fireContactInTheMainsOfASupplyWithoutBattery()};
}

} // namespace doorloom
