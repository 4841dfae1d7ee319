#include "simplest.h"

namespace doorloom {

namespace {

const std::string strikeOnModule = "PS1:+ → LM1:+; PS1:− → LM1:−; ES1:1 → LM1:K1.C; ES1:2 → LM1:K1.NO";
const std::string moduleDevices = "PS1 dc-supply-24; LM1 relay-module-negative; ES1 strike-fail-secure; ";

// Its contact asks a module, whose wet relay drives the strike.
SimplestWiring asks(const std::string& kind, const std::string& wires, const std::string& options = "LM1.K3=dry")
{
    return {.kind = kind,
            .devices = moduleDevices + "X1 " + kind,
            .wires = strikeOnModule + "; " + wires,
            .options = "LM1.K1=wet " + options};
}

SimplestWiring plate()
{
    SimplestWiring wiring = asks("push-plate", "X1:C → LM1:COM; X1:NO → LM1:IN1");
    wiring.opening = openedFrom("ES1", {{"plate", "X1=pressed LM1:K1=in"}}, Promised::Locked);
    wiring.slip = Slip{[](JobBuilder& job) { job.wire("PS1:+", "LM1:IN1"); }, "foreign-volts", "LM1:IN1"};
    return wiring;
}

// In the plus of a mag lock, with whatever else the wires say.
SimplestWiring releases(const std::string& kind, const std::string& wires, const std::string& acts, const std::string& options = {})
{
    return {.kind = kind,
            .devices = "PS1 dc-supply-24; X1 " + kind + "; ML1 mag-lock",
            .wires = wires + "; ML1:− → PS1:−",
            .options = options,
            .opening = releasedFrom("ML1", {{"release", acts}})};
}

SimplestWiring exitBar()
{
    return {.kind = "exit-bar-switch",
            .devices = "PS1 dc-supply-24; RX1 exit-bar-switch; R1 relay; FR1 fire-relay; ML1 mag-lock",
            .wires = "PS1:+ → RX1:C; RX1:NC → R1:A1; R1:A2 → PS1:−; PS1:+ → FR1:C; FR1:NC → R1:C1; R1:NO1 → ML1:+; ML1:− → PS1:−",
            .opening = freeInFire(releasedFrom("ML1", {{"bar", "RX1=pressed"}}), "FR1"),
            .slip = Slip{[](JobBuilder& job) { job.exchange("RX1:NO", "RX1:NC").exchange("R1:NO1", "R1:NC1"); }, "direct-release", "RX1"}};
}

SimplestWiring keyed(const std::string& kind, const std::string& pole)
{
    const std::string contact = "PS1:+ → X1:C" + pole + "; X1:NO" + pole + " → OL1:+; OL1:− → PS1:−";
    return {.kind = kind,
            .devices = "PS1 dc-supply-24; X1 " + kind + "; OL1 lamp",
            .wires = contact,
            .slip = Slip{[pole](JobBuilder& job) { job.wire("X1:NC" + pole, "PS1:−"); }, "shorted", "PS1"}};
}

// A lamp hangs on each way of it.
SimplestWiring bothWays(const std::string& kind, const std::string& one, const std::string& other)
{
    return {.kind = kind,
            .devices = "PS1 dc-supply-24; X1 " + kind + "; OL1 OL2 lamp",
            .wires = "PS1:+ → X1:C; X1:" + one + " → OL1:+; OL1:− → PS1:−; X1:" + other + " → OL2:+; OL2:− → PS1:−",
            .slip = Slip{[one](JobBuilder& job) { job.wire("X1:" + one, "PS1:−"); }, "shorted", "PS1"}};
}

// The pull is heard and seen; its cancel button silences only the sounder.
SimplestWiring assistance(const std::string& kind)
{
    return {.kind = kind,
            .devices = "PS1 dc-supply-24; EP1 assistance-pull; SD1 sounder",
            .wires = "PS1:+ → EP1:C; EP1:NO → EP1:L+; EP1:L− → PS1:−; EP1:NO → EP1:XC; EP1:XNC → SD1:+; SD1:− → PS1:−",
            .slip = Slip{[](JobBuilder& job) { job.exchange("SD1:+", "SD1:−"); }, "reverse-polarity", "SD1"}};
}

// Its relay is held in, so a dead sensor frees like a motion.
SimplestWiring exitSensor()
{
    SimplestWiring wiring = releases("exit-sensor", "PS1:+ → X1:+; PS1:− → X1:−; PS1:+ → X1:C; X1:NO → ML1:+", "X1:sensing=motion",
                                     "X1.relay=held-in");
    wiring.opening->promises.push_back({"X1:held-in lost", Promised::Free});
    wiring.slip = Slip{[](JobBuilder& job) { job.move("X1:NO → ML1:+", "X1:NC"); }, "wrong-in-situation", "ML1"};
    return wiring;
}

// On a wet output, whose common is the lamp's.
SimplestWiring twoColours(const std::string& kind, const std::string& module, const std::string& theOther)
{
    return {.kind = kind,
            .devices = "PS1 dc-supply-24; LM1 " + module + "; PB1 push-plate; OL1 " + kind,
            .wires = "PS1:+ → LM1:+; PS1:− → LM1:−; PB1:C → LM1:COM; PB1:NO → LM1:IN1; OL1:COM → LM1:K3.C; OL1:RED → LM1:K3.NO; "
                     "OL1:GRN → LM1:K3.NC",
            .options = "LM1.K1=dry LM1.K3=wet",
            .slip = Slip{[theOther](JobBuilder& job) { job.kind("OL1", theOther); }, "reverse-polarity", "OL1"}};
}

// The operator's own relay frees the strike first; a sensor stops the swing.
SimplestWiring operatorWithLock(const std::string& kind)
{
    return {.kind = kind,
            .devices = "PS1 dc-supply-24; DO1 door-operator-lock; SS1 safety-sensor; PB1 push-plate; ES1 strike-fail-secure",
            .wires = "PB1:C → DO1:ACOM; PB1:NO → DO1:ACT; PS1:+ → DO1:LK.C; DO1:LK.NO → ES1:1; ES1:2 → PS1:−; DO1:+24 → SS1:+; "
                     "DO1:− → SS1:−; DO1:SCOM → SS1:C; SS1:NO → DO1:SAF",
            .options = "DO1.SAF=used DO1.LK=dry",
            .opening = openedFrom("ES1", {{"plate", "PB1=pressed DO1=in"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.option("DO1", "LK", "wet"); }, "wet-output", "DO1"}};
}

const std::string readerWires = "RD1:+12 → AC1:12V; RD1:GND → AC1:GND; RD1:D0 → AC1:D0; RD1:D1 → AC1:D1";

std::vector<SimplestWiring> askers()
{
    return {plate(),
            asks("push-to-lock", "X1:C → LM1:COM; X1:NO → LM1:IN3; X1:L+ → LM1:K3.C; X1:L− → LM1:K3.NO", "LM1.K3=wet"),
            asks("wave-actuator", "PS1:+ → X1:+; PS1:− → X1:−; X1:C → LM1:COM; X1:NO → LM1:IN1; X1:LC → LM1:K3.C; X1:LI → LM1:K3.NO"),
            asks("wave-actuator-lamp-to-minus",
                 "PS1:+ → X1:+; PS1:− → X1:−; X1:C → LM1:COM; X1:NO → LM1:IN1; X1:LC → LM1:K3.C; X1:LI → LM1:K3.NO"),
            asks("wave-actuator-led", "PS1:+ → X1:+; PS1:− → X1:−; X1:C → LM1:COM; X1:NO → LM1:IN1; X1:LED → LM1:K3.NO", "LM1.K3=wet"),
            asks("door-switch", "X1:A → LM1:COM; X1:B → LM1:IN4"),
            asks("wireless-receiver", "PS1:+ → X1:+; PS1:− → X1:−; X1:C → LM1:COM; X1:NO → LM1:IN1")};
}

} // namespace

std::vector<SimplestWiring> simplestSwitches()
{
    std::vector<SimplestWiring> all = askers();
    const auto add = [&](SimplestWiring wiring) { all.push_back(std::move(wiring)); };
    add(releases("exit-button", "PS1:+ → X1:C; X1:NC → ML1:+", "X1=pressed"));
    add(releases("exit-button-pneumatic", "PS1:+ → X1:C; X1:NC → ML1:+", "X1=pressed"));
    add(releases("exit-button-timed", "PS1:+ → X1:+; PS1:− → X1:−; PS1:+ → X1:C; X1:NO → ML1:+", "X1:hand=pressed"));
    add(releases("emergency-release", "PS1:+ → X1:C1; X1:NC1 → ML1:+", "X1=pulled"));
    add(exitBar());
    add(exitSensor());
    add(keyed("key-switch", ""));
    add(keyed("key-switch-2-pole", "1"));
    add(keyed("key-switch-momentary", ""));
    add(bothWays("selector", "A", "B"));
    add(bothWays("door-switch-changeover", "SHUT", "OPEN"));
    add(bothWays("bolt-monitor", "BACK", "THROWN"));
    add(assistance("assistance-pull"));
    add(assistance("sounder"));
    add({.kind = "lamp", .devices = "PS1 dc-supply-24; OL1 lamp", .wires = "PS1:+ → OL1:+; OL1:− → PS1:−"});
    add({.kind = "lamp-12", .devices = "PS1 dc-supply-12; OL1 lamp-12", .wires = "PS1:+ → OL1:+; OL1:− → PS1:−"});
    add(twoColours("lamp-common-plus", "relay-module-negative", "lamp-common-minus"));
    add(twoColours("lamp-common-minus", "relay-module-positive", "lamp-common-plus"));
    add({.kind = "reader", .devices = "AC1 access-controller; RD1 reader", .wires = readerWires});
    add({.kind = "reader-bus",
         .devices = "AC1 access-controller-two-doors; RD1 RD2 reader-bus",
         .wires = "RD1:+ → AC1:12V; RD1:GND → AC1:GND; RD1:A → AC1:A; RD1:B → AC1:B; RD2:+ → RD1:+; RD2:GND → RD1:GND; RD2:A → RD1:A; "
                  "RD2:B → RD1:B",
         .options = "AC1.EOL=none RD1.end=out RD2.end=in"});
    add({.kind = "door-operator",
         .devices = "DO1 door-operator; PB1 push-plate",
         .wires = "PB1:C → DO1:ACOM; PB1:NO → DO1:ACT",
         .slip = Slip{[](JobBuilder& job) { job.wire("DO1:ACT", "DO1:+24").wire("DO1:ACOM", "DO1:−"); }, "foreign-volts", "DO1:ACT"}});
    add(operatorWithLock("door-operator-lock"));
    add(operatorWithLock("safety-sensor"));
    add({.kind = "operator-mode-switch",
         .devices = "DO1 door-operator; SW1 operator-mode-switch; PB1 push-plate",
         .wires = "DO1:ACOM → SW1:C; SW1:ON → PB1:C; PB1:NO → DO1:ACT; SW1:HOLD → DO1:ACT"});
    return all;
}

} // namespace doorloom
