#include "rightjob.h"

namespace doorloom {

namespace {

OpeningSketch swung(OpeningSketch door, const std::string& doorOperator)
{
    door.doorOperators = {doorOperator};
    return door;
}

const std::string wave = "PS1:+ → WO1:+; PS1:− → WO1:−; WO1:C → DO1:ACOM; WO1:NO → DO1:ACT";

// The operator's own lock relay, dry: the strike has another supply than the operator's accessories.
RightJob ownRelayDry()
{
    return {.name = "T3 with a strike",
            .devices = "PS1 dc-supply-24; WO1 wave-actuator; DO1 door-operator-lock; ES1 strike-fail-secure",
            .wires = wave + "; PS1:+ → DO1:LK.C; DO1:LK.NO → ES1:1; ES1:2 → PS1:−",
            .options = "DO1.LK=dry DO1.SAF=not-used WO1.hold=2",
            .openings = {swung(openedFrom("ES1", {{"wave", "WO1=waved DO1=in"}}, Promised::Locked), "DO1")}};
}

// The same relay wet: the strike lives on the operator's 24 V, and no other supply lands there.
RightJob ownRelayWet()
{
    return {.name = "T3 with the lock relay wet",
            .devices = "WO1 wave-actuator; DO1 door-operator-lock; ES1 strike-fail-secure",
            .wires = "DO1:+24 → WO1:+; DO1:− → WO1:−; WO1:C → DO1:ACOM; WO1:NO → DO1:ACT; DO1:LK.NO → ES1:1; ES1:2 → DO1:−",
            .options = "DO1.LK=wet DO1.SAF=not-used WO1.hold=2",
            .openings = {swung(openedFrom("ES1", {{"wave", "WO1=waved DO1=in"}}, Promised::Locked), "DO1")}};
}

// LK opens to release; button and fire relay release without it.
RightJob ownRelayMagnet()
{
    OpeningSketch door = freeInFire(releasedFrom("ML1", {{"button", "EB1=pressed"}}), "FR1");
    door.requests = {{"wave", "WO1=waved DO1=in"}};
    door.promises.push_back({"request wave", Promised::Free});
    return {.name = "T3 with a mag lock",
            .devices = "PS1 dc-supply-24; WO1 wave-actuator; DO1 door-operator-lock; FR1 fire-relay; EB1 exit-button; ML1 mag-lock",
            .wires = wave + "; PS1:+ → FR1:C; FR1:NC → DO1:LK.C; DO1:LK.NC → EB1:C; EB1:NC → ML1:+; ML1:− → PS1:−",
            .options = "DO1.LK=dry DO1.SAF=not-used WO1.hold=2",
            .openings = {swung(door, "DO1")}};
}

RightJob sequenced()
{
    return {.name = "T4",
            .devices = "PS1 dc-supply-24; WO1 wave-actuator; SQ1 sequencer; DO1 door-operator; ES1 strike-fail-secure",
            .wires = "PS1:+ → SQ1:+; PS1:− → SQ1:−; PS1:+ → WO1:+; PS1:− → WO1:−; WO1:C → SQ1:COM; WO1:NO → SQ1:IN; "
                     "PS1:+ → SQ1:K1.C; SQ1:K1.NO → ES1:1; ES1:2 → PS1:−; SQ1:K2.C → DO1:ACOM; SQ1:K2.NO → DO1:ACT",
            .openings = {swung(openedFrom("ES1", {{"wave", "WO1=waved SQ1:K1=in SQ1:K2=in"}}, Promised::Locked), "DO1")}};
}

// Two operators, no locks; each has its own common, and the module's contacts are bare.
RightJob vestibule()
{
    return {.name = "T10",
            .devices = "PS1 dc-supply-24; LM1 relay-module-negative; WO1 WI1 WV1 WV2 wave-actuator; DO1 DO2 door-operator",
            .wires = "PS1:+ → LM1:+; PS1:− → LM1:−; PS1:+ → WO1:+; PS1:− → WO1:−; PS1:+ → WI1:+; PS1:− → WI1:−; PS1:+ → WV1:+; "
                     "PS1:− → WV1:−; PS1:+ → WV2:+; PS1:− → WV2:−; WO1:C → LM1:COM; WO1:NO → LM1:IN1; WI1:C → LM1:COM; "
                     "WI1:NO → LM1:IN2; WV1:C → LM1:COM; WV1:NO → LM1:IN3; WV2:C → LM1:COM; WV2:NO → LM1:IN4; LM1:K1.C → DO1:ACOM; "
                     "LM1:K1.NO → DO1:ACT; LM1:K2.C → DO2:ACOM; LM1:K2.NO → DO2:ACT",
            .options = "LM1.K1=dry LM1.K3=dry"};
}

// The outer door of a vestibule is locked at night: its strike goes before its operator, the inner one just swings.
RightJob vestibuleWithStrike()
{
    return {.name = "T10 with a strike on the outer door",
            .devices = "PS1 dc-supply-24; SQ1 sequencer; WO1 WV2 wave-actuator; ES1 strike-fail-secure; DO1 DO2 door-operator",
            .wires = "PS1:+ → SQ1:+; PS1:− → SQ1:−; PS1:+ → WO1:+; PS1:− → WO1:−; PS1:+ → WV2:+; PS1:− → WV2:−; WO1:C → SQ1:COM; "
                     "WO1:NO → SQ1:IN; PS1:+ → SQ1:K1.C; SQ1:K1.NO → ES1:1; ES1:2 → PS1:−; SQ1:K2.C → DO1:ACOM; SQ1:K2.NO → DO1:ACT; "
                     "WV2:C → DO2:ACOM; WV2:NO → DO2:ACT",
            .openings = {swung(openedFrom("ES1", {{"wave", "WO1=waved SQ1:K1=in SQ1:K2=in"}}, Promised::Locked), "DO1")}};
}

RightJob alternatingStrike()
{
    return {.name = "T15",
            .devices = "TX1 transformer-24; PB1 push-plate; ACS1 strike-ac",
            .wires = "TX1:1 → PB1:C; PB1:NO → ACS1:1; ACS1:2 → TX1:2",
            .openings = {openedFrom("ACS1", {{"button", "PB1=pressed"}}, Promised::Locked)}};
}

// Two buttons beside each other, inside and at the desk; both only for as long as they are pressed.
RightJob alternatingAt16()
{
    return {.name = "T15 at 16 V with two buttons",
            .devices = "TX1 transformer-16; PB1 PB2 push-plate; ACS1 strike-ac-16",
            .wires = "TX1:1 → PB1:C; TX1:1 → PB2:C; PB1:NO → ACS1:1; PB2:NO → ACS1:1; ACS1:2 → TX1:2",
            .openings = {openedFrom("ACS1", {{"button", "PB1=pressed"}, {"desk", "PB2=pressed"}}, Promised::Locked)}};
}

// A relay for AC keeps the door operator's dry input apart from the transformer.
RightJob alternatingRelay()
{
    return {.name = "AC relay between transformer and operator",
            .devices = "TX1 transformer-24; KS1 key-switch-momentary; IR1 relay-ac; DO1 door-operator",
            .wires = "TX1:1 → KS1:C; KS1:NO → IR1:A1; IR1:A2 → TX1:2; IR1:C1 → DO1:ACOM; IR1:NO1 → DO1:ACT"};
}

// The output sinks: the coil's plus is fed, the commons are joined, the operator sees a bare contact.
RightJob openCollector()
{
    return {.name = "T19",
            .devices = "PS1 dc-supply-24; AC1 access-controller-two-doors; IR1 relay; DO1 door-operator",
            .wires = "PS1:+ → IR1:A1; IR1:A2 → AC1:OC1; PS1:− → AC1:GND; IR1:C1 → DO1:ACOM; IR1:NO1 → DO1:ACT",
            .options = "AC1.EOL=none"};
}

RightJob boltBlocks()
{
    return {.name = "T20",
            .devices = "PS1 dc-supply-24; WO1 wave-actuator; BM1 bolt-monitor; DO1 door-operator",
            .wires = "PS1:+ → WO1:+; PS1:− → WO1:−; DO1:ACOM → BM1:C; BM1:BACK → WO1:C; WO1:NO → DO1:ACT"};
}

RightJob safety()
{
    return {.name = "T21",
            .devices = "DO1 door-operator-lock; SS1 safety-sensor; PB1 push-plate",
            .wires = "DO1:+24 → SS1:+; DO1:− → SS1:−; DO1:SCOM → SS1:C; SS1:NO → DO1:SAF; PB1:C → DO1:ACOM; PB1:NO → DO1:ACT",
            .options = "DO1.SAF=used DO1.LK=dry"};
}

// One sensor on each side of the leaf: either one opens the loop.
RightJob twoSafetySensors()
{
    return {.name = "T21 with two sensors in series",
            .devices = "DO1 door-operator-lock; SS1 SS2 safety-sensor; PB1 push-plate",
            .wires = "DO1:+24 → SS1:+; DO1:− → SS1:−; DO1:+24 → SS2:+; DO1:− → SS2:−; DO1:SCOM → SS1:C; SS1:NO → SS2:C; "
                     "SS2:NO → DO1:SAF; PB1:C → DO1:ACOM; PB1:NO → DO1:ACT",
            .options = "DO1.SAF=used DO1.LK=dry"};
}

// OFF starts nothing, HOLD stands in for a hand that stays on the plate.
RightJob modeSwitch()
{
    return {.name = "mode switch, plate and wireless receiver on one input",
            .devices = "DO1 door-operator; SW1 operator-mode-switch; PB1 push-plate; RR1 wireless-receiver",
            .wires = "DO1:+24 → RR1:+; DO1:− → RR1:−; DO1:ACOM → SW1:C; SW1:ON → PB1:C; PB1:NO → DO1:ACT; SW1:ON → RR1:C; "
                     "RR1:NO → DO1:ACT; SW1:HOLD → DO1:ACT"};
}

// Card enables the outside wave; K1 triggers the strong supply, K2 the operator half a second later.
RightJob retraction()
{
    OpeningSketch door = openedFrom("LR1", {{"card", "AC1=in WO1=waved LM1:K1=in LM1:K2=in"}, {"inside", "WI1=waved LM1:K1=in LM1:K2=in"}},
                                    Promised::Locked);
    door.fire = "FR1";
    door.promises.push_back({"fire alarm", Promised::Locked});
    return {.name = "T9",
            .devices = "PS1 dc-supply-24; LM1 relay-module-negative; AC1 access-controller; WO1 WI1 wave-actuator; "
                       "HP1 dc-supply-24-inrush; PT1 power-transfer-heavy; LR1 latch-retraction-solenoid; FR1 fire-relay; DO1 door-operator",
            .wires = "PS1:+ → LM1:+; PS1:− → LM1:−; PS1:+ → WO1:+; PS1:− → WO1:−; PS1:+ → WI1:+; PS1:− → WI1:−; AC1:LK.C → LM1:COM; "
                     "AC1:LK.NO → LM1:IN1; WO1:C → LM1:COM; WO1:NO → LM1:IN2; WI1:C → LM1:COM; WI1:NO → LM1:IN3; LM1:K1.C → HP1:TRC; "
                     "LM1:K1.NO → HP1:TR1; HP1:OUT1+ → PT1:1; PT1:1' → LR1:+; LR1:− → PT1:2'; PT1:2 → HP1:OUT1−; LM1:K2.C → DO1:ACOM; "
                     "LM1:K2.NO → DO1:ACT; FR1:C → HP1:FA1; FR1:NC → HP1:FA2",
            .options = "LM1.K1=dry LM1.K3=dry HP1.FA=used",
            .openings = {swung(door, "DO1")}};
}

// A motor needs no strong supply; its latch-back signal starts the operator, so that it cannot push a latched door.
RightJob motorRetraction()
{
    return {.name = "T9 with a motor whose latch-back signal starts the operator",
            .devices = "PS1 dc-supply-24-4a; AC1 access-controller; PT1 power-transfer; LR1 latch-retraction-motor; DO1 door-operator",
            .wires = "PS1:+ → AC1:LK.C; AC1:LK.NO → PT1:1; PT1:1' → LR1:+; LR1:− → PT1:2'; PT1:2 → PS1:−; DO1:ACOM → PT1:3; "
                     "PT1:3' → LR1:LB1; LR1:LB2 → PT1:4'; PT1:4 → DO1:ACT",
            .openings = {swung(openedFrom("LR1", {{"card", "AC1=in"}}, Promised::Locked), "DO1")}};
}

// The module's K1 for the strike, its K2 half a second later for the operator.
RightJob strikeThenOperator()
{
    return {.name = "strike on K1, operator on K2",
            .devices = "PS1 dc-supply-24; LM1 relay-module-negative; WO1 wave-actuator; ES1 strike-fail-secure; DO1 door-operator",
            .wires = "PS1:+ → LM1:+; PS1:− → LM1:−; PS1:+ → WO1:+; PS1:− → WO1:−; WO1:C → LM1:COM; WO1:NO → LM1:IN1; "
                     "PS1:+ → LM1:K1.C; LM1:K1.NO → ES1:1; ES1:2 → PS1:−; LM1:K2.C → DO1:ACOM; LM1:K2.NO → DO1:ACT",
            .options = "LM1.K1=dry LM1.K3=dry",
            .openings = {swung(openedFrom("ES1", {{"wave", "WO1=waved LM1:K1=in LM1:K2=in"}}, Promised::Locked), "DO1")}};
}

} // namespace

std::vector<RightJob> rightOperators()
{
    return {ownRelayDry(), ownRelayWet(),   ownRelayMagnet(),    sequenced(),  vestibule(), vestibuleWithStrike(), alternatingStrike(), alternatingAt16(), alternatingRelay(), openCollector(),
            boltBlocks(),  safety(), twoSafetySensors(), modeSwitch(), retraction(), motorRetraction(), strikeThenOperator()};
}

} // namespace doorloom
