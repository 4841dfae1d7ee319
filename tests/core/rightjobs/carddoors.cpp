#include "rightjob.h"

namespace doorloom {

namespace {

const std::string reader = "RD1:+12 → AC1:12V; RD1:GND → AC1:GND; RD1:D0 → AC1:D0; RD1:D1 → AC1:D1";

// Bare strike with its diode, reader, supervised loop, sensor that only silences the forced-door alarm.
RightJob cardDoor()
{
    return {.name = "T7",
            .devices = "PS1 dc-supply-24; AC1 access-controller; RD1 reader; ES1 strike-fail-secure-bare; D1 diode; DPS1 door-switch; "
                       "RA1 resistor; RB1 resistor-8k2; MS1 exit-sensor",
            .wires = "PS1:+ → AC1:LK.C; AC1:LK.NO → ES1:1; ES1:2 → PS1:−; D1:K → ES1:1; D1:A → ES1:2; " + reader +
                     "; AC1:IN1 → RA1:a; RA1:b → DPS1:A; DPS1:B → AC1:GND; RB1:a → DPS1:A; RB1:b → DPS1:B; PS1:+ → MS1:+; PS1:− → MS1:−; "
                     "MS1:C → AC1:GND; MS1:NO → AC1:REX",
            .options = "MS1.relay=on-motion",
            .openings = {openedFrom("ES1", {{"card", "AC1=in"}}, Promised::Locked)}};
}

RightJob cardDoorAt12()
{
    return {.name = "T7 at 12 V, plain door switch and button",
            .devices = "PS1 dc-supply-12; AC1 access-controller; RD1 reader; ES1 strike-fail-secure-12; DPS1 door-switch; EB1 exit-button",
            .wires = "PS1:+ → AC1:LK.C; AC1:LK.NO → ES1:1; ES1:2 → PS1:−; " + reader +
                     "; DPS1:A → AC1:DPS; DPS1:B → AC1:GND; EB1:C → AC1:GND; EB1:NO → AC1:REX",
            .openings = {openedFrom("ES1", {{"card", "AC1=in"}}, Promised::Locked)}};
}

RightJob stair()
{
    OpeningSketch door = openedFrom("EL1", {{"card", "AC1=in"}}, Promised::FreeButLatched);
    door.fireRated = true;
    door.fire = "FR1";
    door.promises.push_back({"fire alarm", Promised::FreeButLatched});
    return {.name = "T8",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; AC1 access-controller; PT1 power-transfer; EL1 lever-lock-fail-safe",
            .wires = "PS1:+ → FR1:C; FR1:NC → AC1:LK.C; AC1:LK.NC → PT1:1; PT1:1' → EL1:+; EL1:− → PT1:2'; PT1:2 → PS1:−",
            .openings = {door}};
}

// Lever lock through a hinge; its inside lever tells the controller.
RightJob leverThroughHinge()
{
    return {.name = "lever lock through a hinge, its RX to the controller",
            .devices = "PS1 dc-supply-24; AC1 access-controller; PT1 hinge-transfer; EL1 lever-lock-fail-secure",
            .wires = "PS1:+ → AC1:LK.C; AC1:LK.NO → PT1:1; PT1:1' → EL1:+; EL1:− → PT1:2'; PT1:2 → PS1:−; EL1:RX.C → PT1:3'; "
                     "PT1:3 → AC1:GND; EL1:RX.NO → PT1:4'; PT1:4 → AC1:REX",
            .openings = {openedFrom("EL1", {{"card", "AC1=in"}}, Promised::Locked)}};
}

OpeningSketch interlocked(const std::string& tag, const std::string& lock, const std::string& card)
{
    OpeningSketch door = openedFrom(lock, {{"card", card}}, Promised::Locked);
    door.tag = tag;
    return door;
}

// Each card works only while the other door is shut.
RightJob interlock()
{
    return {.name = "T12",
            .devices = "PS1 dc-supply-24; AC1 access-controller-two-doors; DPS1 DPS2 door-switch; R1 R2 relay; ES1 ES2 strike-fail-secure",
            .wires = "PS1:+ → DPS2:A; DPS2:B → R2:A1; R2:A2 → PS1:−; PS1:+ → AC1:LK1.C; AC1:LK1.NO → R2:C1; R2:NO1 → ES1:1; "
                     "ES1:2 → PS1:−; PS1:+ → DPS1:A; DPS1:B → R1:A1; R1:A2 → PS1:−; PS1:+ → AC1:LK2.C; AC1:LK2.NO → R1:C1; "
                     "R1:NO1 → ES2:1; ES2:2 → PS1:−",
            .options = "AC1.EOL=none",
            .openings = {interlocked("DOOR1", "ES1", "AC1:LK1=in"), interlocked("DOOR2", "ES2", "AC1:LK2=in")}};
}

RightJob lockOnOtherSupply()
{
    return {.name = "T14",
            .devices = "PS1 PS2 dc-supply-24; LM1 relay-module-negative; PB1 push-plate; ES1 strike-fail-secure",
            .wires = "PS1:+ → LM1:+; PS1:− → LM1:−; PB1:C → LM1:COM; PB1:NO → LM1:IN1; PS2:+ → LM1:K1.C; LM1:K1.NO → ES1:1; ES1:2 → PS2:−",
            .options = "LM1.K1=dry LM1.K3=dry",
            .openings = {openedFrom("ES1", {{"plate", "PB1=pressed LM1:K1=in"}}, Promised::Locked)}};
}

// A 12 V supply for the module's side, 24 V for the strike, their minuses joined because the timer's trigger comes from the other.
RightJob commonReturn()
{
    return {.name = "two supplies with a common return",
            .devices = "PS1 dc-supply-12; PS2 dc-supply-24; PB1 push-plate; TR1 timer-relay; ES1 strike-fail-secure",
            .wires = "PS1:+ → TR1:+; PS1:− → TR1:−; PS1:− → PS2:−; PS2:+ → PB1:C; PB1:NO → TR1:TRIG; PS2:+ → TR1:C; TR1:NO → ES1:1; "
                     "ES1:2 → PS2:−",
            .openings = {openedFrom("ES1", {{"plate", "PB1=pressed TR1=in"}}, Promised::Locked)}};
}

RightJob keypad()
{
    return {.name = "T16",
            .devices = "PS1 dc-supply-24; KP1 keypad; EB1 exit-button; ES1 strike-fail-secure-bare; D1 diode",
            .wires = "PS1:+ → KP1:+; PS1:− → KP1:−; PS1:+ → KP1:C; KP1:NO → ES1:1; ES1:2 → PS1:−; EB1:C → KP1:GND; EB1:NO → KP1:REX; "
                     "D1:K → ES1:1; D1:A → ES1:2",
            .openings = {openedFrom("ES1", {{"code", "KP1:relay=in"}, {"button", "EB1=pressed KP1:relay=in"}}, Promised::Locked)}};
}

// The bell button sounds beside the desk, on the keypad's own supply.
RightJob keypadFailSafe()
{
    return {.name = "T16 with a fail-safe strike on NC, and its bell",
            .devices = "PS1 dc-supply-24; KP1 keypad; ES1 strike-fail-safe; SD1 sounder",
            .wires = "PS1:+ → KP1:+; PS1:− → KP1:−; PS1:+ → KP1:C; KP1:NC → ES1:1; ES1:2 → PS1:−; PS1:+ → KP1:B1; KP1:B2 → SD1:+; "
                     "SD1:− → PS1:−",
            .openings = {openedFrom("ES1", {{"code", "KP1:relay=in"}}, Promised::Free)}};
}

// A relay keeps the controller's circuit apart from a lock on another supply.
RightJob isolated()
{
    return {.name = "isolated relay between controller and lock",
            .devices = "PS1 dc-supply-12; PS2 dc-supply-24; AC1 access-controller; IR1 relay-12; ES1 strike-fail-secure",
            .wires = "PS1:+ → AC1:LK.C; AC1:LK.NO → IR1:A1; IR1:A2 → PS1:−; PS2:+ → IR1:C1; IR1:NO1 → ES1:1; ES1:2 → PS2:−",
            .openings = {openedFrom("ES1", {{"card", "AC1=in"}}, Promised::Locked)}};
}

// Two readers in a chain on the bus, the far one with the end resistor, both door switches with 4.7 kΩ pairs at the door.
RightJob twoDoorsOnABus()
{
    const auto door = [](const std::string& n) {
        return "PS1:+ → AC1:LK" + n + ".C; AC1:LK" + n + ".NO → ES" + n + ":1; ES" + n + ":2 → PS1:−; AC1:DPS" + n + " → RA" + n + ":a; RA" + n +
               ":b → DPS" + n + ":A; DPS" + n + ":B → AC1:GND; RB" + n + ":a → DPS" + n + ":A; RB" + n + ":b → DPS" + n + ":B; ";
    };
    return {.name = "two doors on one controller, bus readers, end-of-line resistors",
            .devices = "PS1 dc-supply-24; AC1 access-controller-two-doors; RD1 RD2 reader-bus; ES1 ES2 strike-fail-secure; DPS1 DPS2 "
                       "door-switch; RA1 RB1 RA2 RB2 resistor-4k7",
            .wires = door("1") + door("2") + "RD1:+ → AC1:12V; RD1:GND → AC1:GND; RD1:A → AC1:A; RD1:B → AC1:B; RD2:+ → RD1:+; "
                                             "RD2:GND → RD1:GND; RD2:A → RD1:A; RD2:B → RD1:B",
            .options = "AC1.EOL=4k7 RD1.end=out RD2.end=in",
            .openings = {interlocked("DOOR1", "ES1", "AC1:LK1=in"), interlocked("DOOR2", "ES2", "AC1:LK2=in")}};
}

// The latch monitor and the door switch in series: secured only while both are.
RightJob monitoredStrike()
{
    return {.name = "strike with latch monitor and door switch in series",
            .devices = "PS1 dc-supply-24; AC1 access-controller; ES1 strike-monitor-fail-secure; DPS1 door-switch",
            .wires = "PS1:+ → AC1:LK.C; AC1:LK.NO → ES1:1; ES1:2 → PS1:−; AC1:DPS → DPS1:A; DPS1:B → ES1:C; ES1:NO → AC1:GND",
            .openings = {openedFrom("ES1", {{"card", "AC1=in"}}, Promised::Locked)}};
}

// Motor lever: seven tenths of an ampere for a moment through thin wires, then next to nothing.
RightJob motorLever()
{
    return {.name = "motor lever lock behind a keypad",
            .devices = "PS1 dc-supply-24; KP1 keypad; PT1 power-transfer; EL1 lever-lock-motor; KS1 key-switch-momentary",
            .wires = "PS1:+ → KP1:+; PS1:− → KP1:−; PS1:+ → KP1:C; KP1:NO → PT1:1; PS1:+ → KS1:C; KS1:NO → PT1:1; PT1:1' → EL1:+; "
                     "EL1:− → PT1:2'; PT1:2 → PS1:−",
            .openings = {openedFrom("EL1", {{"code", "KP1:relay=in"}, {"key", "KS1=on"}}, Promised::Locked)}};
}

// A key and a card, each by itself; a fuse of the strike's own.
RightJob keyBesideCard()
{
    return {.name = "key beside card, fused",
            .devices = "PS1 dc-supply-24-4a; F1 fuse-1; AC1 access-controller; KS1 key-switch; ES1 strike-fail-secure",
            .wires = "PS1:+ → F1:a; F1:b → AC1:LK.C; F1:b → KS1:C; AC1:LK.NO → ES1:1; KS1:NO → ES1:1; ES1:2 → PS1:−",
            .openings = {openedFrom("ES1", {{"card", "AC1=in"}, {"key", "KS1=on"}}, Promised::Locked)}};
}

// Trim with a timer: the key's push frees the outside lever for a while.
RightJob trim()
{
    return {.name = "exit trim on a timer",
            .devices = "PS1 dc-supply-24; PB1 key-switch; TR1 timer-relay-dry; ET1 exit-trim-fail-secure",
            .wires = "PS1:+ → TR1:+; PS1:− → TR1:−; PB1:C → TR1:COM; PB1:NO → TR1:TRIG; PS1:+ → TR1:C; TR1:NO → ET1:+; ET1:− → PS1:−",
            .openings = {openedFrom("ET1", {{"key", "PB1=on TR1=in"}}, Promised::Locked)}};
}

// Eight strikes on eight outputs, a pair each, no shared minus.
RightJob eightDoors()
{
    RightJob job{.name = "eight doors from one supply",
                 .devices = "PS1 dc-supply-24-4a; DB1 distribution-board",
                 .wires = "PS1:+ → DB1:IN+; PS1:− → DB1:IN−",
                 .options = "DB1.FA=not-used"};
    for (int door = 1; door <= 8; ++door) {
        const std::string n = std::to_string(door);
        job.devices += "; AC" + n + " access-controller; ES" + n + " strike-fail-secure";
        job.wires += "; DB1:F" + n + "+ → AC" + n + ":LK.C; AC" + n + ":LK.NO → ES" + n + ":1; ES" + n + ":2 → DB1:F" + n + "−";
        job.options += " DB1.F" + n + "=stays";
        job.openings.push_back(interlocked("DOOR" + n, "ES" + n, "AC" + n + "=in"));
    }
    return job;
}

} // namespace

std::vector<RightJob> rightCardDoors()
{
    return {cardDoor(), cardDoorAt12(),   stair(),    leverThroughHinge(), interlock(),     lockOnOtherSupply(), commonReturn(), keypad(),
            keypadFailSafe(), isolated(), twoDoorsOnABus(), monitoredStrike(), motorLever(), keyBesideCard(), trim(), eightDoors()};
}

} // namespace doorloom
