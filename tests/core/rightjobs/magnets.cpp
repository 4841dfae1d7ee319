#include "rightjob.h"

namespace doorloom {

namespace {

const ActSketch button{"button", "EB1=pressed"}, motion{"motion", "MS1:sensing=motion"}, bar{"bar", "RX1=pressed"};

OpeningSketch withCard(OpeningSketch door, const std::string& throws = "AC1=in")
{
    door.requests = {{"card", throws}};
    door.promises.push_back({"request card", Promised::Free});
    return door;
}

OpeningSketch tagged(OpeningSketch door, const std::string& tag)
{
    door.tag = tag;
    return door;
}

OpeningSketch keptOnBattery(OpeningSketch door)
{
    door.promises.push_back({"mains lost", Promised::Locked});
    return door;
}

RightJob sensorAndCard()
{
    OpeningSketch door = keptOnBattery(withCard(freeInFire(releasedFrom("ML1", {button, motion}), "FR1")));
    door.promises.push_back({"MS1:held-in lost", Promised::Free});
    return {.name = "T5",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; EB1 exit-button; MS1 exit-sensor; AC1 access-controller; ML1 mag-lock",
            .wires = "PS1:+ → MS1:+; PS1:− → MS1:−; PS1:+ → FR1:C; FR1:NC → EB1:C; EB1:NC → MS1:C; MS1:NO → AC1:LK.C; AC1:LK.NC → ML1:+; "
                     "ML1:− → PS1:−; MS1:C2 → AC1:GND; MS1:NC2 → AC1:REX",
            .options = "MS1.relay=held-in",
            .openings = {door}};
}

RightJob sensorAndCardAt12()
{
    return {.name = "T5 at 12 V",
            .devices = "PS1 dc-supply-12; EB1 exit-button; R1 relay-12; FR1 fire-relay; AC1 access-controller; ML1 mag-lock-12",
            .wires = "PS1:+ → FR1:C; FR1:NC → R1:A1; R1:A2 → PS1:−; PS1:+ → R1:C1; R1:NO1 → EB1:C; EB1:NC → AC1:LK.C; AC1:LK.NC → ML1:+; "
                     "ML1:− → PS1:−",
            .openings = {withCard(freeInFire(releasedFrom("ML1", {button}), "FR1"))}};
}

// The bar's switch carries the lock: it is a strong one.
RightJob strongBar()
{
    return {.name = "T6",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; PT1 power-transfer; RX1 exit-button; AC1 access-controller; ML1 mag-lock",
            .wires = "PS1:+ → FR1:C; FR1:NC → PT1:1; PT1:1' → RX1:C; RX1:NC → PT1:2'; PT1:2 → AC1:LK.C; AC1:LK.NC → ML1:+; ML1:− → PS1:−",
            .openings = {withCard(freeInFire(releasedFrom("ML1", {bar}), "FR1"))}};
}

// The bar's weak switch holds a relay in; its relay holds the lock.
RightJob weakBar()
{
    return {.name = "T22 with card",
            .devices = "PS1 dc-supply-24; PT1 power-transfer; RX1 exit-bar-switch; R1 relay; FR1 fire-relay; AC1 access-controller; ML1 mag-lock",
            .wires = "PS1:+ → PT1:1; PT1:1' → RX1:C; RX1:NC → PT1:2'; PT1:2 → R1:A1; R1:A2 → PS1:−; PS1:+ → FR1:C; FR1:NC → R1:C1; "
                     "R1:NO1 → AC1:LK.C; AC1:LK.NC → ML1:+; ML1:− → PS1:−",
            .openings = {withCard(freeInFire(releasedFrom("ML1", {bar}), "FR1"))}};
}

// Air lock, free at rest: an open door locks the other one. The panel's weak contact holds a strong relay.
RightJob airLock()
{
    const auto door = [](const std::string& n) {
        OpeningSketch one;
        one.tag = "DOOR" + n;
        one.locks = {"ML" + n};
        one.egress = Egress::ByElectricity;
        one.releases = {{"button", "EB" + n + "=pressed"}};
        one.fire = "FR1";
        one.promises = {{"rest", Promised::Free}, {"release button", Promised::Free}, {"fire alarm", Promised::Free}, {"all power lost", Promised::Free}};
        return one;
    };
    return {.name = "T11",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; FI1 fire-interface-relay; DPS1 DPS2 door-switch-changeover; R1 R2 relay; EB1 EB2 "
                       "exit-button; ML1 ML2 mag-lock",
            .wires = "PS1:+ → FR1:C; FR1:NC → FI1:+; FI1:− → PS1:−; PS1:+ → FI1:C1; FI1:NO1 → R1:C1; FI1:NO1 → R2:C1; PS1:+ → DPS1:C; "
                     "DPS1:OPEN → R1:A1; R1:A2 → PS1:−; PS1:+ → DPS2:C; DPS2:OPEN → R2:A1; R2:A2 → PS1:−; R1:NO1 → EB2:C; EB2:NC → ML2:+; "
                     "ML2:− → PS1:−; R2:NO1 → EB1:C; EB1:NC → ML1:+; ML1:− → PS1:−",
            .openings = {door("1"), door("2")}};
}

RightJob manyDoors()
{
    return {.name = "T13",
            .devices = "PS1 dc-supply-24-4a; DB1 distribution-board; AC1 access-controller-two-doors; ES1 strike-fail-secure; EB2 exit-button; "
                       "MS2 exit-sensor; ML2 mag-lock; FR1 fire-relay",
            .wires = "PS1:+ → DB1:IN+; PS1:− → DB1:IN−; DB1:F1+ → AC1:LK1.C; AC1:LK1.NO → ES1:1; ES1:2 → DB1:F1−; DB1:F2+ → EB2:C; "
                     "EB2:NC → MS2:C; MS2:NO → AC1:LK2.C; AC1:LK2.NC → ML2:+; ML2:− → DB1:F2−; PS1:+ → MS2:+; PS1:− → MS2:−; "
                     "FR1:C → DB1:FA1; FR1:NC → DB1:FA2",
            .options = "DB1.FA=used DB1.F1=stays DB1.F2=drops DB1.F3=stays DB1.F4=stays DB1.F5=stays DB1.F6=stays DB1.F7=stays DB1.F8=stays "
                       "MS2.relay=held-in AC1.EOL=none",
            .openings = {tagged(openedFrom("ES1", {{"card", "AC1:LK1=in"}}, Promised::Locked), "DOOR1"),
                         tagged(withCard(freeInFire(releasedFrom("ML2", {{"button", "EB2=pressed"}, {"motion", "MS2:sensing=motion"}}), "FR1"),
                                         "AC1:LK2=in"),
                                "DOOR2")}};
}

const std::string delayedWires = "KS1:C → DE1:COM; KS1:NO → DE1:RESET; AC1:LK.C → DE1:COM; AC1:LK.NO → DE1:BYPASS; DE1:− → PS1:−; ";

OpeningSketch delayedDoor()
{
    OpeningSketch door = openedFrom("DE1", {{"card", "AC1=in DE1:hold=rest"}}, Promised::Free);
    door.egress = Egress::DelayedInsideLock;
    return freeInFire(door, "FR1");
}

RightJob delayed()
{
    return {.name = "T17",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; KS1 key-switch; AC1 access-controller; DE1 delayed-egress-lock",
            .wires = delayedWires + "PS1:+ → FR1:C; FR1:NC → DE1:+",
            .options = "DE1.FIRE=not-used",
            .openings = {delayedDoor()}};
}

// The fire relay lands on the lock's own input; its sounder stands at the door.
RightJob delayedByItsInput()
{
    return {.name = "T17 with the fire relay on its FIRE input",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; KS1 key-switch; AC1 access-controller; DE1 delayed-egress-lock; SD1 sounder",
            .wires = delayedWires + "PS1:+ → DE1:+; FR1:C → DE1:COM; FR1:NC → DE1:FIRE; PS1:+ → DE1:OUT1; DE1:OUT2 → SD1:+; SD1:− → PS1:−",
            .options = "DE1.FIRE=used",
            .openings = {delayedDoor()}};
}

// Pneumatic and pull station in one chain; no electronics between plus and lock.
RightJob twoHands()
{
    return {.name = "pneumatic button and pull station",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; EP1 emergency-release; EB1 exit-button-pneumatic; ML1 mag-lock; SD1 sounder",
            .wires = "PS1:+ → FR1:C; FR1:NC → EP1:C1; EP1:NC1 → EB1:C; EB1:NC → ML1:+; ML1:− → PS1:−; PS1:+ → EP1:C2; EP1:NO2 → SD1:+; "
                     "SD1:− → PS1:−",
            .openings = {freeInFire(releasedFrom("ML1", {button, {"pull", "EP1=pulled"}}), "FR1")}};
}

RightJob timedButton()
{
    return {.name = "timed button, its relay held in",
            .devices = "PS1 dc-supply-24; EB1 exit-button-timed; KP1 keypad; ML1 mag-lock",
            .wires = "PS1:+ → EB1:+; PS1:− → EB1:−; PS1:+ → KP1:+; PS1:− → KP1:−; PS1:+ → EB1:C; EB1:NO → KP1:C; KP1:NC → ML1:+; ML1:− → PS1:−",
            .openings = {withCard(releasedFrom("ML1", {{"button", "EB1:hand=pressed"}}), "KP1:relay=in")}};
}

// The supply drops its plus behind the battery.
RightJob fireDrop()
{
    return {.name = "fire relay on the supply's fire input",
            .devices = "PS1 dc-supply-24-fire; FR1 fire-relay; EB1 exit-button; MS1 exit-sensor; ML1 mag-lock-sensor; AC1 access-controller",
            .wires = "PS1:+ → MS1:+; PS1:− → MS1:−; PS1:+ → EB1:C; EB1:NC → MS1:C; MS1:NO → AC1:LK.C; AC1:LK.NC → ML1:+; ML1:− → PS1:−; "
                     "FR1:C → PS1:FA1; FR1:NC → PS1:FA2; ML1:C → AC1:GND; ML1:NO → AC1:DPS",
            .options = "PS1.FA=used MS1.relay=held-in",
            .openings = {withCard(freeInFire(releasedFrom("ML1", {button, motion}), "FR1"))}};
}

// Two leaves, one chain of releases: 0.5 A of magnets through a strong fire interface relay, the button's 3 A contact.
RightJob twoLeaves()
{
    OpeningSketch pair = freeInFire(releasedFrom("ML1", {button}), "FR1");
    pair.locks = {"ML1", "ML2"};
    pair.promises.push_back({"rest", Promised::Locked, "ML2"});
    pair.promises.push_back({"release button", Promised::Free, "ML2"});
    pair.promises.push_back({"fire alarm", Promised::Free, "ML2"});
    return {.name = "two leaves on one chain",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; FI1 fire-interface-relay; EB1 exit-button; ML1 ML2 mag-lock",
            .wires = "PS1:+ → FR1:C; FR1:NC → FI1:+; FI1:− → PS1:−; PS1:+ → FI1:C1; FI1:NO1 → EB1:C; EB1:NC → ML1:+; EB1:NC → ML2:+; "
                     "ML1:− → PS1:−; ML2:− → PS1:−",
            .openings = {pair}};
}

RightJob shear()
{
    return {.name = "shear lock with two buttons",
            .devices = "PS1 dc-supply-24; FI1 fire-interface-relay; FR1 fire-relay; EB1 EB2 exit-button; ML1 shear-lock; OL1 lamp",
            .wires = "PS1:+ → FR1:C; FR1:NC → FI1:+; FI1:− → PS1:−; PS1:+ → FI1:C1; FI1:NO1 → EB1:C; EB1:NC → EB2:C; EB2:NC → ML1:+; "
                     "ML1:− → PS1:−; PS1:+ → ML1:C; ML1:NO → OL1:+; OL1:− → PS1:−",
            .openings = {freeInFire(releasedFrom("ML1", {button, {"desk", "EB2=pressed"}}), "FR1")}};
}

RightJob bolt()
{
    return {.name = "electric bolt on a sensor and a button",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; EB1 exit-button; MS1 exit-sensor; EL1 electric-bolt; OL1 lamp",
            .wires = "PS1:+ → MS1:+; PS1:− → MS1:−; PS1:+ → FR1:C; FR1:NC → EB1:C; EB1:NC → MS1:C; MS1:NO → EL1:+; EL1:− → PS1:−; "
                     "PS1:+ → EL1:C; EL1:THROWN → OL1:+; OL1:− → PS1:−",
            .options = "MS1.relay=held-in",
            .openings = {freeInFire(releasedFrom("EL1", {button, motion}), "FR1")}};
}

// Triggered outputs: a fail-safe one that is on until triggered and drops in fire, a fail-secure one that stays.
RightJob powerController()
{
    return {.name = "power controller with a mag lock and a strike",
            .devices = "PS1 dc-supply-24-4a; DB1 power-controller; AC1 access-controller-two-doors; FR1 fire-relay; EB1 exit-button; ML1 mag-lock; "
                       "ES2 strike-fail-secure",
            .wires = "PS1:+ → DB1:IN+; PS1:− → DB1:IN−; AC1:LK1.C → DB1:COM; AC1:LK1.NO → DB1:T1; AC1:LK2.C → DB1:COM; AC1:LK2.NO → DB1:T2; "
                     "DB1:OUT1+ → EB1:C; EB1:NC → ML1:+; ML1:− → DB1:OUT1−; DB1:OUT2+ → ES2:1; ES2:2 → DB1:OUT2−; FR1:C → DB1:FA1; "
                     "FR1:NC → DB1:FA2",
            .options = "DB1.FA=used DB1.OUT1=on DB1.F1=drops DB1.OUT2=off DB1.F2=stays DB1.OUT3=off DB1.F3=stays DB1.OUT4=off DB1.F4=stays "
                       "AC1.EOL=none",
            .openings = {tagged(withCard(freeInFire(releasedFrom("ML1", {button}), "FR1"), "AC1:LK1=in"), "DOOR1"),
                         tagged(openedFrom("ES2", {{"card", "AC1:LK2=in"}}, Promised::Locked), "DOOR2")}};
}

// Four mag doors: each pair on its own fused output, all dropped by one fire contact.
RightJob fourMagnets()
{
    RightJob job{.name = "four mag locks from one supply",
                 .devices = "PS1 dc-supply-24-4a; DB1 distribution-board; FR1 fire-relay",
                 .wires = "PS1:+ → DB1:IN+; PS1:− → DB1:IN−; FR1:C → DB1:FA1; FR1:NC → DB1:FA2",
                 .options = "DB1.FA=used DB1.F5=stays DB1.F6=stays DB1.F7=stays DB1.F8=stays"};
    for (int door = 1; door <= 4; ++door) {
        const std::string n = std::to_string(door);
        job.devices += "; EB" + n + " exit-button; ML" + n + " mag-lock";
        job.wires += "; DB1:F" + n + "+ → EB" + n + ":C; EB" + n + ":NC → ML" + n + ":+; ML" + n + ":− → DB1:F" + n + "−";
        job.options += " DB1.F" + n + "=drops";
        job.openings.push_back(tagged(freeInFire(releasedFrom("ML" + n, {{"button", "EB" + n + "=pressed"}}), "FR1"), "DOOR" + n));
    }
    return job;
}

// A lamp tells on the desk that the mains is lost while the battery holds the lock.
RightJob mainsLamp()
{
    return {.name = "mains-fail lamp beside a mag lock",
            .devices = "PS1 dc-supply-24-mains-fail; EB1 exit-button; ML1 mag-lock; OL1 lamp",
            .wires = "PS1:+ → EB1:C; EB1:NC → ML1:+; ML1:− → PS1:−; PS1:+ → PS1:MF.C; PS1:MF.NC → OL1:+; OL1:− → PS1:−",
            .openings = {keptOnBattery(releasedFrom("ML1", {button}))}};
}

} // namespace

std::vector<RightJob> rightMagnets()
{
    return {sensorAndCard(), sensorAndCardAt12(), strongBar(), weakBar(), airLock(), manyDoors(),       delayed(),     delayedByItsInput(), twoHands(),
            timedButton(),   fireDrop(),          twoLeaves(), shear(),   bolt(),    powerController(), fourMagnets(), mainsLamp()};
}

} // namespace doorloom
