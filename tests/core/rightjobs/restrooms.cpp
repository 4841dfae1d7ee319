#include "rightjob.h"

namespace doorloom {

namespace {

// Module, outside wave, inside wave, lock button, door switch and door operator of a single-occupancy restroom.
const std::string kit = "LM1 relay-module-negative; WO1 wave-actuator-led; WI1 wave-actuator; PB1 push-to-lock; DPS1 door-switch; "
                        "DO1 door-operator";
const std::string kitWires =
    "PS1:+ → LM1:+; PS1:− → LM1:−; PS1:+ → WO1:+; PS1:− → WO1:−; PS1:+ → WI1:+; PS1:− → WI1:−; WO1:C → LM1:COM; WO1:NO → LM1:IN1; "
    "WI1:C → LM1:COM; WI1:NO → LM1:IN2; PB1:C → LM1:COM; PB1:NO → LM1:IN3; DPS1:A → LM1:COM; DPS1:B → LM1:IN4; "
    "LM1:K2.C → DO1:ACOM; LM1:K2.NO → DO1:ACT";
const std::string wetStrike = "; ES1:1 → LM1:K1.C; ES1:2 → LM1:K1.NO";
const std::string dryStrike = "; PS1:+ → LM1:K1.C; LM1:K1.NO → ES1:1; ES1:2 → PS1:−";
const std::string wetLight = "; OL1:COM → LM1:K3.C; OL1:RED → LM1:K3.NO; OL1:GRN → LM1:K3.NC; WO1:LED → LM1:K3.NO";

// Locks only while occupied: K1 in is locked.
OpeningSketch unlockedAtRest()
{
    OpeningSketch room;
    room.locks = {"ES1"};
    room.doorOperators = {"DO1"};
    room.requests = {{"outside", "WO1=waved LM1:K2=in", Side::Outside}, {"inside", "WI1=waved LM1:K2=in", Side::Inside}};
    room.occupied = "LM1:K1=in LM1:K3=in";
    room.promises = {{"rest", Promised::Free},
                     {"request outside", Promised::Free},
                     {"request inside", Promised::Free},
                     {"occupied", Promised::Locked},
                     {"all power lost", Promised::Free}};
    return room;
}

// Unlocks only to be entered: K1 in is free.
OpeningSketch lockedAtRest()
{
    OpeningSketch room;
    room.locks = {"ES1"};
    room.doorOperators = {"DO1"};
    room.requests = {{"outside", "WO1=waved LM1:K1=in LM1:K2=in", Side::Outside},
                     {"inside", "WI1=waved LM1:K1=in LM1:K2=in", Side::Inside}};
    room.occupied = "LM1:K3=in";
    room.promises = {{"rest", Promised::Locked},
                     {"request outside", Promised::Free},
                     {"request inside", Promised::Free},
                     {"occupied", Promised::Locked},
                     {"all power lost", Promised::Locked}};
    return room;
}

OpeningSketch withKey(OpeningSketch room)
{
    room.requests.push_back({"key", "KS1=on LM1:K1=in", Side::Outside});
    room.promises.push_back({"request key", Promised::Free});
    return room;
}

// The plus is switched: the strike and the light hang between the contact and a common that is always minus.
RightJob plusSwitched()
{
    return {.name = "T1 with a module that switches the plus",
            .devices = "PS1 dc-supply-24; LM1 relay-module-positive; WO1 wave-actuator; WI1 wave-actuator; PB1 push-to-lock; "
                       "DPS1 door-switch; DO1 door-operator; ES1 strike-fail-safe; OL1 lamp-common-minus",
            .wires = kitWires + "; ES1:1 → LM1:K1.NO; ES1:2 → LM1:K1.C; OL1:COM → LM1:K3.C; OL1:RED → LM1:K3.NO; OL1:GRN → LM1:K3.NC",
            .options = "LM1.K1=wet LM1.K3=wet",
            .openings = {unlockedAtRest()}};
}

// The job asks that a fire alarm frees the room: the relay stands in the strike's plus.
RightJob freeInFireAlarm()
{
    return {.name = "T1d with a fire relay in the strike's plus",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; ES1 strike-fail-safe; OL1 lamp-common-plus; " + kit,
            .wires = kitWires + "; PS1:+ → FR1:C; FR1:NC → LM1:K1.C; LM1:K1.NO → ES1:1; ES1:2 → PS1:−" + wetLight,
            .options = "LM1.K1=dry LM1.K3=wet",
            .openings = {freeInFire(unlockedAtRest(), "FR1")}};
}

// A battery keeps privacy until it is flat.
RightJob onBattery()
{
    return {.name = "T1 on a supply with two batteries in series",
            .devices = "PS1 dc-supply-24-charger; BT1 BT2 battery-12; ES1 strike-fail-safe; OL1 lamp-common-plus; " + kit,
            .wires = kitWires + wetStrike + wetLight + "; PS1:B+ → BT1:+; BT1:− → BT2:+; BT2:− → PS1:B−",
            .options = "LM1.K1=wet LM1.K3=wet",
            .openings = {unlockedAtRest()}};
}

// 10.5 V at the end of the battery: what is on it works from 10.2.
RightJob twelveVolts()
{
    return {.name = "T1 at 12 V",
            .devices = "PS1 dc-supply-12; LM1 relay-module-negative; WO1 wave-actuator; WI1 wave-actuator; PB1 push-plate; "
                       "DPS1 door-switch; DO1 door-operator; ES1 strike-fail-safe-12; OL1 lamp-12",
            .wires = kitWires + wetStrike + "; OL1:+ → LM1:K3.C; OL1:− → LM1:K3.NO",
            .options = "LM1.K1=wet LM1.K3=wet",
            .openings = {unlockedAtRest()}};
}

RightJob assistance()
{
    return {.name = "T18",
            .devices = "PS1 dc-supply-24; EP1 assistance-pull; DL1 lamp; CX1 exit-button; SD1 sounder",
            .wires = "PS1:+ → EP1:C; EP1:NO → DL1:+; DL1:− → PS1:−; EP1:NO → CX1:C; CX1:NC → SD1:+; SD1:− → PS1:−"};
}

// The dome light outside, the cord's own lamp inside, and a second pull on the same circuit.
RightJob twoPulls()
{
    return {.name = "T18 with two pulls and the cord's own lamp",
            .devices = "PS1 dc-supply-24; EP1 EP2 assistance-pull; DL1 lamp; SD1 sounder",
            .wires = "PS1:+ → EP1:C; PS1:+ → EP2:C; EP2:NO → EP1:NO; EP1:NO → EP1:L+; EP1:L− → PS1:−; EP2:NO → EP2:L+; EP2:L− → PS1:−; "
                     "EP1:NO → DL1:+; DL1:− → PS1:−; EP1:NO → EP1:XC; EP1:XNC → SD1:+; SD1:− → PS1:−"};
}

} // namespace

std::vector<RightJob> rightRestrooms()
{
    const std::string safe = "PS1 dc-supply-24; ES1 strike-fail-safe; OL1 lamp-common-plus; " + kit,
                      secure = "PS1 dc-supply-24; ES1 strike-fail-secure; OL1 lamp-common-plus; KS1 key-switch; " + kit;
    const std::string key = "; KS1:C → LM1:COM; KS1:NO → LM1:IN5";
    return {{.name = "T1",
             .devices = safe,
             .wires = kitWires + wetStrike + wetLight,
             .options = "LM1.K1=wet LM1.K3=wet",
             .openings = {unlockedAtRest()}},
            {.name = "T1d",
             .devices = safe,
             .wires = kitWires + dryStrike + wetLight,
             .options = "LM1.K1=dry LM1.K3=wet",
             .openings = {unlockedAtRest()}},
            {.name = "T2",
             .devices = secure,
             .wires = kitWires + wetStrike + wetLight + key,
             .options = "LM1.K1=wet LM1.K3=wet",
             .openings = {withKey(lockedAtRest())}},
            {.name = "T2 with K1 dry",
             .devices = secure,
             .wires = kitWires + dryStrike + wetLight + key,
             .options = "LM1.K1=dry LM1.K3=wet",
             .openings = {withKey(lockedAtRest())}},
            plusSwitched(),
            freeInFireAlarm(),
            onBattery(),
            twelveVolts(),
            assistance(),
            twoPulls()};
}

} // namespace doorloom
