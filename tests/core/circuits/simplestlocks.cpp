#include "simplest.h"

namespace doorloom {

namespace {

std::string supplyFor(const std::string& kind)
{
    return kind.ends_with("-12") ? "dc-supply-12" : "dc-supply-24";
}

// Fed through a contact that is open at rest; egress by the lever.
SimplestWiring failSecure(const std::string& kind, const std::string& one, const std::string& other)
{
    return {.kind = kind,
            .devices = "PS1 " + supplyFor(kind) + "; KS1 key-switch; ES1 " + kind,
            .wires = "PS1:+ → KS1:C; KS1:NO → ES1:" + one + "; ES1:" + other + " → PS1:−",
            .opening = openedFrom("ES1", {{"key", "KS1=on"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.exchange("KS1:NO", "KS1:NC"); }, "wrong-in-situation", "ES1"}};
}

// Fed through contacts that are closed at rest; egress by the lever.
SimplestWiring failSafe(const std::string& kind, const std::string& one, const std::string& other)
{
    return {.kind = kind,
            .devices = "PS1 " + supplyFor(kind) + "; KS1 key-switch; ES1 " + kind,
            .wires = "PS1:+ → KS1:C; KS1:NC → ES1:" + one + "; ES1:" + other + " → PS1:−",
            .opening = openedFrom("ES1", {{"key", "KS1=on"}}, Promised::Free),
            .slip = Slip{[](JobBuilder& job) { job.exchange("KS1:NO", "KS1:NC"); }, "wrong-in-situation", "ES1"}};
}

// The same with its latch monitor on a lamp.
SimplestWiring monitored(SimplestWiring wiring)
{
    wiring.devices += "; OL1 lamp";
    wiring.wires += "; PS1:+ → ES1:C; ES1:NO → OL1:+; OL1:− → PS1:−";
    return wiring;
}

SimplestWiring bareCoil()
{
    return {.kind = "strike-fail-secure-bare",
            .devices = "PS1 dc-supply-24; KS1 key-switch; ES1 strike-fail-secure-bare; V1 varistor-34",
            .wires = "PS1:+ → KS1:C; KS1:NO → ES1:1; ES1:2 → PS1:−; V1:a → ES1:1; V1:b → ES1:2",
            .opening = openedFrom("ES1", {{"key", "KS1=on"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.remove("V1"); }, "suppression", "ES1"}};
}

// Nothing opens it by hand: a button in its plus does, and says so to nobody else.
SimplestWiring magnet(const std::string& kind, const std::string& besides = {}, const std::string& more = {})
{
    return {.kind = kind,
            .devices = "PS1 " + supplyFor(kind) + "; EB1 exit-button; FR1 fire-relay; ML1 " + kind + besides,
            .wires = "PS1:+ → FR1:C; FR1:NC → EB1:C; EB1:NC → ML1:+; ML1:− → PS1:−" + more,
            .opening = freeInFire(releasedFrom("ML1", {{"button", "EB1=pressed"}}), "FR1"),
            .slip = Slip{[](JobBuilder& job) { job.exchange("ML1:+", "ML1:−"); }, "reverse-polarity", "ML1"}};
}

// Stair side: locked while powered, free in a fire, latched either way; the inside lever opens and tells the controller.
SimplestWiring stairLever()
{
    OpeningSketch opening = openedFrom("EL1", {{"card", "AC1=in"}}, Promised::FreeButLatched);
    opening.fire = "FR1";
    opening.promises.push_back({"fire alarm", Promised::FreeButLatched});
    return {.kind = "lever-lock-fail-safe",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; AC1 access-controller; PT1 power-transfer; EL1 lever-lock-fail-safe",
            .wires = "PS1:+ → FR1:C; FR1:NC → AC1:LK.C; AC1:LK.NC → PT1:1; PT1:1' → EL1:+; EL1:− → PT1:2'; PT1:2 → PS1:−; "
                     "EL1:RX.C → PT1:3'; PT1:3 → AC1:GND; EL1:RX.NO → PT1:4'; PT1:4 → AC1:REX",
            .opening = opening,
            .slip = Slip{[](JobBuilder& job) { job.move("AC1:LK.NC → PT1:1", "AC1:LK.NO"); }, "wrong-in-situation", "EL1"}};
}

SimplestWiring storeLever(const std::string& kind)
{
    return {.kind = kind,
            .devices = "PS1 dc-supply-24; AC1 access-controller; PT1 power-transfer; EL1 " + kind,
            .wires = "PS1:+ → AC1:LK.C; AC1:LK.NO → PT1:1; PT1:1' → EL1:+; EL1:− → PT1:2'; PT1:2 → PS1:−; "
                     "EL1:RX.C → PT1:3'; PT1:3 → AC1:GND; EL1:RX.NO → PT1:4'; PT1:4 → AC1:REX",
            .opening = openedFrom("EL1", {{"card", "AC1=in"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.move("AC1:LK.NO → PT1:1", "AC1:LK.NC"); }, "wrong-in-situation", "EL1"}};
}

// The lamp tells that the latch is back.
SimplestWiring motorRetraction()
{
    return {.kind = "latch-retraction-motor",
            .devices = "PS1 dc-supply-24; KS1 key-switch; LR1 latch-retraction-motor; OL1 lamp",
            .wires = "PS1:+ → KS1:C; KS1:NO → LR1:+; LR1:− → PS1:−; PS1:+ → LR1:LB1; LR1:LB2 → OL1:+; OL1:− → PS1:−",
            .opening = openedFrom("LR1", {{"key", "KS1=on"}}, Promised::Locked),
            .slip = Slip{[](JobBuilder& job) { job.exchange("LR1:+", "LR1:−"); }, "reverse-polarity", "LR1"}};
}

// RESET by key, BYPASS by card, both dry; the fire relay stands in its plus, and FIRE keeps its link.
SimplestWiring delayedEgress()
{
    OpeningSketch opening = openedFrom("DE1", {{"card", "AC1=in DE1:hold=rest"}}, Promised::Free);
    opening.egress = Egress::DelayedInsideLock;
    return {.kind = "delayed-egress-lock",
            .devices = "PS1 dc-supply-24; FR1 fire-relay; KS1 key-switch; AC1 access-controller; DPS1 door-switch; DE1 delayed-egress-lock",
            .wires = "PS1:+ → FR1:C; FR1:NC → DE1:+; DE1:− → PS1:−; KS1:C → DE1:COM; KS1:NO → DE1:RESET; AC1:LK.C → DE1:COM; "
                     "AC1:LK.NO → DE1:BYPASS; DPS1:A → DE1:COM; DPS1:B → DE1:SENSE",
            .options = "DE1.FIRE=not-used",
            .opening = freeInFire(opening, "FR1"),
            .slip = Slip{[](JobBuilder& job) { job.exchange("DE1:+", "DE1:−"); }, "reverse-polarity", "DE1"}};
}

} // namespace

std::vector<SimplestWiring> simplestLocks()
{
    const std::string toController = "; ML1:C → AC1:GND; ML1:NO → AC1:DPS", controller = "; AC1 access-controller";
    return {failSecure("strike-fail-secure", "1", "2"),
            failSecure("strike-fail-secure-12", "1", "2"),
            bareCoil(),
            failSafe("strike-fail-safe", "1", "2"),
            failSafe("strike-fail-safe-12", "1", "2"),
            monitored(failSecure("strike-monitor-fail-secure", "1", "2")),
            monitored(failSafe("strike-monitor-fail-safe", "1", "2")),
            magnet("mag-lock"),
            magnet("mag-lock-12"),
            magnet("mag-lock-sensor", controller, toController),
            magnet("shear-lock", controller, toController),
            magnet("electric-bolt", controller, "; ML1:C → AC1:GND; ML1:THROWN → AC1:DPS"),
            stairLever(),
            storeLever("lever-lock-fail-secure"),
            storeLever("lever-lock-motor"),
            motorRetraction(),
            failSafe("exit-trim-fail-safe", "+", "−"),
            failSecure("exit-trim-fail-secure", "+", "−"),
            delayedEgress()};
}

} // namespace doorloom
