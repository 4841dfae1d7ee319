#include "simplest.h"

namespace doorloom {

namespace {

// A key moves the coil, a changeover lights a lamp.
SimplestWiring coilAndLamp(const std::string& kind, const std::string& supply, const std::string& lamp)
{
    return {.kind = kind,
            .devices = "PS1 " + supply + "; KS1 key-switch; R1 " + kind + "; OL1 " + lamp,
            .wires = "PS1:+ → KS1:C; KS1:NO → R1:A1; R1:A2 → PS1:−; PS1:+ → R1:C1; R1:NO1 → OL1:+; OL1:− → PS1:−",
            .slip = Slip{[](JobBuilder& job) { job.exchange("R1:A1", "R1:A2"); }, "shorted", "PS1"}};
}

// Alternating current moves the coil; its dry contact starts the door operator.
SimplestWiring coilOnAc()
{
    return {.kind = "relay-ac",
            .devices = "TX1 transformer-24; PB1 push-plate; R1 relay-ac; DO1 door-operator",
            .wires = "TX1:1 → PB1:C; PB1:NO → R1:A1; R1:A2 → TX1:2; R1:C1 → DO1:ACOM; R1:NO1 → DO1:ACT",
            .slip = Slip{[](JobBuilder& job) { job.kind("R1", "relay"); }, "wrong-current", "R1"}};
}

// Held in by the panel's contact; two mag locks' worth of amperes are its own.
SimplestWiring fireInterface()
{
    return {.kind = "fire-interface-relay",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; FI1 fire-interface-relay; EB1 exit-button; ML1 mag-lock",
            .wires = "PS1:+ → FR1:C; FR1:NC → FI1:+; FI1:− → PS1:−; PS1:+ → FI1:C1; FI1:NO1 → EB1:C; EB1:NC → ML1:+; ML1:− → PS1:−",
            .opening = freeInFire(releasedFrom("ML1", {{"button", "EB1=pressed"}}), "FR1"),
            .slip = Slip{[](JobBuilder& job) { job.move("FI1:NO1 → EB1:C", "FI1:NC1"); }, "wrong-in-situation", "ML1"}};
}

SimplestWiring fireContact()
{
    return {.kind = "fire-relay",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; EB1 exit-button; ML1 mag-lock",
            .wires = "PS1:+ → FR1:C; FR1:NC → EB1:C; EB1:NC → ML1:+; ML1:− → PS1:−",
            .opening = freeInFire(releasedFrom("ML1", {{"button", "EB1=pressed"}}), "FR1"),
            .slip = Slip{[](JobBuilder& job) { job.move("FR1:NC → EB1:C", "FR1:NO"); }, "wrong-in-situation", "ML1"}};
}

SimplestWiring timerWithVoltage()
{
    return {.kind = "timer-relay",
            .devices = "PS1 dc-supply-24; PB1 push-plate; TR1 timer-relay; OL1 lamp",
            .wires = "PS1:+ → TR1:+; PS1:− → TR1:−; PS1:+ → PB1:C; PB1:NO → TR1:TRIG; PS1:+ → TR1:C; TR1:NO → OL1:+; OL1:− → PS1:−"};
}

SimplestWiring timerWithContact()
{
    return {.kind = "timer-relay-dry",
            .devices = "PS1 dc-supply-24; PB1 push-plate; TR1 timer-relay-dry; OL1 lamp",
            .wires = "PS1:+ → TR1:+; PS1:− → TR1:−; PB1:C → TR1:COM; PB1:NO → TR1:TRIG; PS1:+ → TR1:C; TR1:NO → OL1:+; OL1:− → PS1:−",
            .slip = Slip{[](JobBuilder& job) { job.wire("PS1:+", "TR1:TRIG"); }, "foreign-volts", "TR1:TRIG"}};
}

SimplestWiring rectified()
{
    return {.kind = "bridge-rectifier",
            .devices = "TX1 transformer-24; BR1 bridge-rectifier; SD1 sounder",
            .wires = "TX1:1 → BR1:~1; TX1:2 → BR1:~2; BR1:+ → SD1:+; BR1:− → SD1:−",
            .slip = Slip{[](JobBuilder& job) { job.wire("BR1:−", "TX1:2"); }, "shorted", "TX1"}};
}

SimplestWiring acrossAStrike(const std::string& kind, const std::string& supply, const std::string& strike, const std::string& toPlus,
                             const std::string& toMinus)
{
    return {.kind = kind,
            .devices = "PS1 " + supply + "; KS1 key-switch; ES1 " + strike + "; D1 " + kind,
            .wires = "PS1:+ → KS1:C; KS1:NO → ES1:1; ES1:2 → PS1:−; D1:" + toPlus + " → ES1:1; D1:" + toMinus + " → ES1:2",
            .opening = openedFrom("ES1", {{"key", "KS1=on"}}, Promised::Locked)};
}

SimplestWiring diode()
{
    SimplestWiring wiring = acrossAStrike("diode", "dc-supply-24", "strike-fail-secure-bare", "K", "A");
    wiring.slip = Slip{[](JobBuilder& job) { job.exchange("D1:K", "D1:A"); }, "shorted", "PS1"};
    return wiring;
}

// Shut 2.2 kΩ, open 10.4 kΩ.
SimplestWiring endOfLine(const std::string& kind)
{
    return {.kind = kind,
            .devices = "AC1 access-controller; DPS1 door-switch; RA1 resistor; RB1 resistor-8k2",
            .wires = "AC1:IN1 → RA1:a; RA1:b → DPS1:A; DPS1:B → AC1:GND; RB1:a → DPS1:A; RB1:b → DPS1:B"};
}

// Two alike on an input that expects them: one in series, one across the switch.
SimplestWiring twoAlike(const std::string& kind, const std::string& value, const std::string& another, const std::string& said)
{
    return {.kind = kind,
            .devices = "AC1 access-controller-two-doors; DPS1 door-switch; RA1 RB1 " + kind,
            .wires = "AC1:DPS1 → RA1:a; RA1:b → DPS1:A; DPS1:B → AC1:GND; RB1:a → DPS1:A; RB1:b → DPS1:B",
            .options = "AC1.EOL=" + value,
            .slip = Slip{[another](JobBuilder& job) { job.option("AC1", "EOL", another); }, said, "AC1:DPS1"}};
}

SimplestWiring fused(const std::string& kind, const std::string& supply)
{
    return {.kind = kind,
            .devices = "PS1 " + supply + "; F1 " + kind + "; OL1 lamp",
            .wires = "PS1:+ → F1:a; F1:b → OL1:+; OL1:− → PS1:−",
            .slip = Slip{[](JobBuilder& job) { job.wire("F1:b", "PS1:−"); }, "shorted", "PS1"}};
}

// A strike's two leads, and a lamp's.
SimplestWiring throughHinge(const std::string& kind)
{
    return {.kind = kind,
            .devices = "PS1 dc-supply-24; KS1 key-switch; PT1 " + kind + "; EL1 lever-lock-fail-secure",
            .wires = "PS1:+ → KS1:C; KS1:NO → PT1:1; PT1:1' → EL1:+; EL1:− → PT1:2'; PT1:2 → PS1:−",
            .opening = openedFrom("EL1", {{"key", "KS1=on"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.move("EL1:− → PT1:2'", "PT1:1'"); }, "never-fed", "EL1"}};
}

} // namespace

std::vector<SimplestWiring> simplestParts()
{
    return {coilAndLamp("relay", "dc-supply-24", "lamp"),
            coilAndLamp("relay-12", "dc-supply-12", "lamp-12"),
            coilOnAc(),
            fireContact(),
            fireInterface(),
            timerWithVoltage(),
            timerWithContact(),
            rectified(),
            diode(),
            acrossAStrike("varistor-34", "dc-supply-24", "strike-fail-secure-bare", "a", "b"),
            acrossAStrike("varistor-22", "dc-supply-12", "strike-fail-secure-12", "a", "b"),
            endOfLine("resistor"),
            endOfLine("resistor-8k2"),
            twoAlike("resistor-1k", "1k", "none", "never-operated"),
            twoAlike("resistor-4k7", "4k7", "1k", "end-of-line-value"),
            twoAlike("resistor-10k", "10k", "4k7", "end-of-line-value"),
            fused("fuse-1", "dc-supply-24"),
            fused("fuse-3", "dc-supply-24-4a"),
            fused("ptc-1", "dc-supply-24"),
            throughHinge("power-transfer"),
            throughHinge("hinge-transfer"),
            {.kind = "terminal-strip-8",
             .devices = "PS1 dc-supply-24; TS1 terminal-strip-8; OL1 OL2 lamp",
             .wires = "PS1:+ → TS1:1; TS1:2 → OL1:+; TS1:3 → OL2:+; OL1:− → PS1:−; OL2:− → PS1:−"},
            {.kind = "terminal-strip-4x",
             .devices = "PS1 dc-supply-24; TS1 terminal-strip-4x; OL1 lamp",
             .wires = "PS1:+ → TS1:1; TS1:1' → OL1:+; OL1:− → TS1:2'; TS1:2 → PS1:−"},
            {.kind = "earth-bar", .devices = "AC1 access-controller; PE1 earth-bar", .wires = "AC1:EARTH → PE1:1"}};
}

} // namespace doorloom
