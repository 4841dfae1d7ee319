#include "simplest.h"

namespace doorloom {

namespace {

const std::string lampOnSupply = "PS1:+ → OL1:+; OL1:− → PS1:−";

SimplestWiring lampOn(const std::string& supply, const std::string& lamp)
{
    return {.kind = supply, .devices = "PS1 " + supply + "; OL1 " + lamp, .wires = lampOnSupply};
}

const std::string twoBatteries = "PSB1:B+ → BT1:+; BT1:− → BT2:+; BT2:− → PSB1:B−; PSB1:+ → OL1:+; OL1:− → PSB1:−";

SimplestWiring batteries(const std::string& kind)
{
    return {.kind = kind,
            .devices = "PSB1 dc-supply-24-charger; BT1 BT2 battery-12; OL1 lamp",
            .wires = twoBatteries,
            .slip = Slip{[](JobBuilder& job) { job.exchange("BT1:+", "BT1:−"); }, "battery-wrong", "BT1"}};
}

// The plus is dropped behind the battery: a mag lock may depend on it.
SimplestWiring droppedByFire()
{
    return {.kind = "dc-supply-24-fire",
            .devices = "PS1 dc-supply-24-fire; FR1 fire-relay; EB1 exit-button; ML1 mag-lock",
            .wires = "PS1:+ → EB1:C; EB1:NC → ML1:+; ML1:− → PS1:−; FR1:C → PS1:FA1; FR1:NC → PS1:FA2",
            .options = "PS1.FA=used",
            .opening = freeInFire(releasedFrom("ML1", {{"button", "EB1=pressed"}}), "FR1"),
            .slip = Slip{[](JobBuilder& job) { job.move("FR1:NC → PS1:FA2", "FR1:NO"); }, "wrong-in-situation", "ML1"}};
}

// Only mains and charger are dropped, so nothing fail-safe may depend on it.
SimplestWiring mainsDroppedByFire()
{
    return {.kind = "dc-supply-24-fire-mains",
            .devices = "PS1 dc-supply-24-fire-mains; FR1 fire-relay; KS1 key-switch; ES1 strike-fail-secure",
            .wires = "PS1:+ → KS1:C; KS1:NO → ES1:1; ES1:2 → PS1:−; FR1:C → PS1:FA1; FR1:NC → PS1:FA2",
            .options = "PS1.FA=used",
            .opening = openedFrom("ES1", {{"key", "KS1=on"}}, Promised::Locked)};
}

SimplestWiring mainsFail()
{
    return {.kind = "dc-supply-24-mains-fail",
            .devices = "PS1 dc-supply-24-mains-fail; OL1 lamp",
            .wires = "PS1:+ → PS1:MF.C; PS1:MF.NO → OL1:+; OL1:− → PS1:−",
            .slip = Slip{[](JobBuilder& job) { job.wire("PS1:MF.NC", "PS1:−"); }, "shorted", "PS1"}};
}

// A key triggers the supply; the solenoid's amperes pass through the heavy transfer alone.
const std::string retractionDevices = "PS1 dc-supply-24-inrush; KS1 key-switch; FR1 fire-relay; PT1 power-transfer-heavy; "
                                      "LR1 latch-retraction-solenoid";
const std::string retractionWires = "KS1:C → PS1:TRC; KS1:NO → PS1:TR1; PS1:OUT1+ → PT1:1; PT1:1' → LR1:+; LR1:− → PT1:2'; "
                                    "PT1:2 → PS1:OUT1−; FR1:C → PS1:FA1; FR1:NC → PS1:FA2";

SimplestWiring retraction(const std::string& kind)
{
    OpeningSketch opening = openedFrom("LR1", {{"key", "KS1=on"}}, Promised::Locked);
    opening.fire = "FR1";
    opening.promises.push_back({"fire alarm", Promised::Locked});
    return {.kind = kind,
            .devices = retractionDevices,
            .wires = retractionWires,
            .options = "PS1.FA=used",
            .opening = opening,
            .slip = Slip{[](JobBuilder& job) { job.move("KS1:NO → PS1:TR1", "KS1:NC"); }, "wrong-in-situation", "LR1"}};
}

// Its gulp is no matter for a plain supply of 2 A.
SimplestWiring onStrongSupply()
{
    SimplestWiring wiring = retraction("latch-retraction-solenoid");
    wiring.slip = Slip{[](JobBuilder& job) {
                           job.device("PS2", "dc-supply-24");
                           job.move("PS1:OUT1+ → PT1:1", "PS2:+").move("PS1:OUT1− → PT1:2", "PS2:−");
                       },
                       "overloaded-supply", "PS2"};
    return wiring;
}

SimplestWiring distribution()
{
    return {.kind = "distribution-board",
            .devices = "PS1 dc-supply-24-4a; DB1 distribution-board; FR1 fire-relay; EB1 exit-button; ML1 mag-lock; KS1 key-switch; "
                       "ES1 strike-fail-secure",
            .wires = "PS1:+ → DB1:IN+; PS1:− → DB1:IN−; DB1:F1+ → KS1:C; KS1:NO → ES1:1; ES1:2 → DB1:F1−; DB1:F2+ → EB1:C; "
                     "EB1:NC → ML1:+; ML1:− → DB1:F2−; FR1:C → DB1:FA1; FR1:NC → DB1:FA2",
            .options = "DB1.FA=used DB1.F1=stays DB1.F2=drops DB1.F3=stays DB1.F4=stays DB1.F5=stays DB1.F6=stays DB1.F7=stays "
                       "DB1.F8=stays",
            .opening = freeInFire(releasedFrom("ML1", {{"button", "EB1=pressed"}}), "FR1"),
            .slip = Slip{[](JobBuilder& job) { job.option("DB1", "F2", "stays"); }, "wrong-in-situation", "ML1"}};
}

SimplestWiring triggered()
{
    return {.kind = "power-controller",
            .devices = "PS1 dc-supply-24-4a; DB1 power-controller; FR1 fire-relay; EB1 exit-button; ML1 mag-lock; KS1 key-switch",
            .wires = "PS1:+ → DB1:IN+; PS1:− → DB1:IN−; KS1:C → DB1:COM; KS1:NO → DB1:T1; DB1:OUT1+ → EB1:C; EB1:NC → ML1:+; "
                     "ML1:− → DB1:OUT1−; FR1:C → DB1:FA1; FR1:NC → DB1:FA2",
            .options = "DB1.FA=used DB1.OUT1=on DB1.F1=drops DB1.OUT2=off DB1.F2=stays DB1.OUT3=off DB1.F3=stays DB1.OUT4=off "
                       "DB1.F4=stays",
            .opening = freeInFire(releasedFrom("ML1", {{"button", "EB1=pressed"}}), "FR1"),
            .slip = Slip{[](JobBuilder& job) { job.option("DB1", "OUT1", "off"); }, "wrong-in-situation", "ML1"}};
}

SimplestWiring onMains(const std::string& kind)
{
    return {.kind = kind,
            .devices = "MP1 mains-point; PS1 dc-supply-24-mains-terminals; OL1 lamp",
            .wires = "MP1:L → PS1:L; MP1:N → PS1:N; MP1:PE → PS1:PE; PS1:+ → OL1:+; OL1:− → PS1:−"};
}

// In the mains of a supply whose loads may do without.
SimplestWiring fireContactInMains()
{
    SimplestWiring wiring = onMains("fire-relay-mains");
    wiring.devices += "; FR1 fire-relay-mains";
    wiring.wires = "MP1:L → FR1:C; FR1:NC → PS1:L; MP1:N → PS1:N; MP1:PE → PS1:PE; PS1:+ → OL1:+; OL1:− → PS1:−";
    return wiring;
}

SimplestWiring alternating(const std::string& kind, const std::string& transformer, const std::string& strike)
{
    return {.kind = kind,
            .devices = "TX1 " + transformer + "; PB1 push-plate; ACS1 " + strike,
            .wires = "TX1:1 → PB1:C; PB1:NO → ACS1:1; ACS1:2 → TX1:2",
            .opening = openedFrom("ACS1", {{"plate", "PB1=pressed"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.device("D1", "diode").wires("D1:K → ACS1:1; D1:A → ACS1:2"); }, "shorted", "TX1"}};
}

SimplestWiring boards(const std::string& kind)
{
    return {.kind = kind,
            .devices = "TX1 transformer-24; HB1 half-wave-board; BB1 bridge-board",
            .wires = "TX1:1 → HB1:~A; TX1:2 → HB1:~B; TX1:1 → BB1:~1; TX1:2 → BB1:~2",
            .slip = Slip{[](JobBuilder& job) { job.wire("HB1:−", "BB1:−"); }, "shorted", "TX1"}};
}

SimplestWiring module(const std::string& kind, const std::string& toPlus, const std::string& toMinus)
{
    return {.kind = kind,
            .devices = "PS1 dc-supply-24; LM1 " + kind + "; PB1 push-plate; ES1 strike-fail-secure",
            .wires = "PS1:+ → LM1:+; PS1:− → LM1:−; PB1:C → LM1:COM; PB1:NO → LM1:IN1; ES1:1 → LM1:" + toPlus + "; ES1:2 → LM1:" +
                     toMinus,
            .options = "LM1.K1=wet LM1.K3=dry",
            .opening = openedFrom("ES1", {{"plate", "PB1=pressed LM1:K1=in"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.wire("PS1:+", "LM1:K1.C").wire("PS1:−", "LM1:K1.C"); }, "shorted", "PS1"}};
}

SimplestWiring cardDoor()
{
    return {.kind = "access-controller",
            .devices = "PS1 dc-supply-24; AC1 access-controller; ES1 strike-fail-secure-bare; D1 diode",
            .wires = "PS1:+ → AC1:LK.C; AC1:LK.NO → ES1:1; ES1:2 → PS1:−; D1:K → ES1:1; D1:A → ES1:2",
            .opening = openedFrom("ES1", {{"card", "AC1=in"}}, Promised::Locked)};
}

// Its small output sinks a relay's coil, so the coil's plus is fed and the commons are joined.
SimplestWiring twoDoors()
{
    return {.kind = "access-controller-two-doors",
            .devices = "PS1 dc-supply-24; AC1 access-controller-two-doors; RD1 reader-bus; ES1 ES2 strike-fail-secure; R1 relay; "
                       "DO1 door-operator",
            .wires = "PS1:+ → AC1:LK1.C; AC1:LK1.NO → ES1:1; ES1:2 → PS1:−; PS1:+ → AC1:LK2.C; AC1:LK2.NO → ES2:1; ES2:2 → PS1:−; "
                     "RD1:+ → AC1:12V; RD1:GND → AC1:GND; RD1:A → AC1:A; RD1:B → AC1:B; PS1:+ → R1:A1; R1:A2 → AC1:OC1; "
                     "PS1:− → AC1:GND; R1:C1 → DO1:ACOM; R1:NO1 → DO1:ACT",
            .options = "AC1.EOL=none RD1.end=in",
            .opening = openedFrom("ES1", {{"card", "AC1:LK1=in"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.exchange("R1:A1", "R1:A2"); }, "shorted", "PS1"}};
}

SimplestWiring lockThenOperator()
{
    return {.kind = "sequencer",
            .devices = "PS1 dc-supply-24; SQ1 sequencer; PB1 push-plate; ES1 strike-fail-secure; DO1 door-operator",
            .wires = "PS1:+ → SQ1:+; PS1:− → SQ1:−; PB1:C → SQ1:COM; PB1:NO → SQ1:IN; PS1:+ → SQ1:K1.C; SQ1:K1.NO → ES1:1; "
                     "ES1:2 → PS1:−; SQ1:K2.C → DO1:ACOM; SQ1:K2.NO → DO1:ACT",
            .opening = openedFrom("ES1", {{"plate", "PB1=pressed SQ1:K1=in"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.move("PS1:+ → SQ1:K1.C", "PS1:−"); }, "never-fed", "ES1"}};
}

SimplestWiring keypadDoor()
{
    return {.kind = "keypad",
            .devices = "PS1 dc-supply-24; KP1 keypad; EB1 exit-button; ES1 strike-fail-secure",
            .wires = "PS1:+ → KP1:+; PS1:− → KP1:−; PS1:+ → KP1:C; KP1:NO → ES1:1; ES1:2 → PS1:−; EB1:C → KP1:GND; EB1:NO → KP1:REX",
            .opening = openedFrom("ES1", {{"code", "KP1:relay=in"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.move("KP1:NO → ES1:1", "KP1:NC"); }, "wrong-in-situation", "ES1"}};
}

} // namespace

std::vector<SimplestWiring> simplestSupplies()
{
    return {lampOn("dc-supply-12", "lamp-12"),
            lampOn("dc-supply-24", "lamp"),
            lampOn("dc-supply-24-4a", "lamp"),
            batteries("dc-supply-24-charger"),
            batteries("battery-12"),
            droppedByFire(),
            mainsDroppedByFire(),
            mainsFail(),
            retraction("dc-supply-24-inrush"),
            retraction("power-transfer-heavy"),
            onStrongSupply(),
            distribution(),
            triggered(),
            alternating("transformer-24", "transformer-24", "strike-ac"),
            alternating("strike-ac", "transformer-24", "strike-ac"),
            alternating("transformer-16", "transformer-16", "strike-ac-16"),
            alternating("strike-ac-16", "transformer-16", "strike-ac-16"),
            boards("half-wave-board"),
            boards("bridge-board"),
            module("relay-module-negative", "K1.C", "K1.NO"),
            module("relay-module-positive", "K1.NO", "K1.C"),
            cardDoor(),
            twoDoors(),
            lockThenOperator(),
            keypadDoor(),
            onMains("dc-supply-24-mains-terminals"),
            onMains("mains-point"),
            fireContactInMains()};
}

} // namespace doorloom
