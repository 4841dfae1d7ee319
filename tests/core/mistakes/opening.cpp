#include "sample.h"

#include "core/circuits/simplest.h"
#include "core/rightjobs/rightjob.h"

#include <algorithm>

namespace doorloom {

namespace {

// T1, and what its door operator must not do: what the outside plate does by itself, while somebody is inside.
Job restroomWithPromisedOperator()
{
    for (RightJob right : allRightJobs())
        if (right.name == "T1") {
            right.openings[0].requests.push_back({"unheard", "WO1=waved", Side::Outside});
            right.openings[0].promises.push_back({"request unheard while occupied", Promised::MustNotStart, "DO1"});
            return jobOf(right);
        }
    return {};
}

OpeningSketch pulled(Promised withoutPower)
{
    return openedFrom("ES1", {{"key", "KS1=on"}, {"pull", "EP1=pulled"}}, withoutPower);
}

OpeningSketch fireDoor(Promised inFire)
{
    OpeningSketch door = openedFrom("ES1", {{"card", "AC1=in"}}, Promised::Locked);
    door.fireRated = true;
    door.fire = "FR1";
    door.promises.push_back({"fire alarm", inFire});
    return door;
}

MistakeSample failSafeStrikeOnAFireDoor()
{
    OpeningSketch door{.locks = {"ES1"}, .fireRated = true, .requests = {{"key", "KS1=on"}}};
    door.promises = {{"rest", Promised::Locked}, {"request key", Promised::Free}};
    const Job right = drawnJob("PS1 dc-supply-24; KS1 key-switch; ES1 strike-fail-secure", "PS1:+ → KS1:C; KS1:NO → ES1:1; ES1:2 → PS1:−", "", {door});
    return mistake("fail-safe strike on a fire door", right, [](JobBuilder& job) {
        job.kind("ES1", "strike-fail-safe").move("KS1:NO → ES1:1", "KS1:NC");
    });
}

MistakeSample fireContactOfAFailSecureStrike()
{
    OpeningSketch door = openedFrom("ES1", {{"key", "KS1=on"}}, Promised::Locked);
    const Job right = drawnJob("PS1 dc-supply-24; FR1 fire-relay; KS1 key-switch; ES1 strike-fail-secure",
                               "PS1:+ → FR1:C; FR1:NO → ES1:1; PS1:+ → KS1:C; KS1:NO → ES1:1; ES1:2 → PS1:−", "", {freeInFire(door, "FR1")});
    return mistake("fire contact in line with a fail-secure strike", right,
                   [](JobBuilder& job) { job.takeOff("FR1:NO → ES1:1").move("PS1:+ → KS1:C", "FR1:NC"); });
}

MistakeSample operatorInAFire()
{
    OpeningSketch door{.locks = {}, .doorOperators = {"DO1"}, .fireRated = true, .requests = {{"plate", "PB1=pressed LM1:K2=in"}}, .fire = "FR1"};
    door.promises = {{"rest", Promised::MustNotStart, "DO1"}, {"request plate", Promised::MayStart, "DO1"}, {"fire alarm", Promised::MustNotStart, "DO1"}};
    const Job right = drawnJob("PS1 dc-supply-24; LM1 relay-module-negative; PB1 push-plate; FR1 fire-relay; DO1 door-operator",
                               "PS1:+ → LM1:+; PS1:− → LM1:−; PB1:C → LM1:COM; PB1:NO → LM1:IN1; LM1:K2.C → FR1:C; FR1:NC → DO1:ACOM; LM1:K2.NO → DO1:ACT",
                               "LM1.K1=dry LM1.K3=dry", {door});
    return mistake("operator not blocked in a fire", right, [](JobBuilder& job) { job.move("FR1:NC → DO1:ACOM", "LM1:K2.C"); });
}

MistakeSample shortExitTimer()
{
    const OpeningSketch door = releasedFrom("ML1", {{"button", "EB1=pressed"}, {"motion", "MS1:sensing=motion"}});
    const Job right = drawnJob("PS1 dc-supply-24; EB1 exit-button-pneumatic; MS1 exit-sensor; ML1 mag-lock",
                               "PS1:+ → MS1:+; PS1:− → MS1:−; PS1:+ → EB1:C; EB1:NC → MS1:C; MS1:NO → ML1:+; ML1:− → PS1:−", "MS1.relay=held-in", {door});
    return mistake("exit timer of ten seconds", right, [](JobBuilder& job) { job.setting("EB1", "hold", 10.0); });
}

OpeningSketch swungDoor(const std::string& lock, const std::string& request)
{
    OpeningSketch door = lock.empty() ? OpeningSketch{.locks = {}} : openedFrom(lock, {}, Promised::Locked);
    door.doorOperators = {"DO1"};
    door.requests = {{"wave", request}};
    door.promises = {{"request wave", Promised::MayStart, "DO1"}};
    return door;
}

MistakeSample requestOfOneSecond()
{
    const Job right = drawnJob("PS1 dc-supply-24; WO1 wave-actuator; DO1 door-operator",
                               "PS1:+ → WO1:+; PS1:− → WO1:−; WO1:C → DO1:ACOM; WO1:NO → DO1:ACT", "WO1.hold=1.5",
                               {swungDoor("", "WO1=waved")});
    return mistake("request of one second", right, [](JobBuilder& job) { job.setting("WO1", "hold", 1.0); });
}

MistakeSample operatorAskedWithItsLock()
{
    const Job right = drawnJob("PS1 dc-supply-24; LM1 relay-module-negative; WO1 wave-actuator; ES1 strike-fail-secure; DO1 door-operator",
                               "PS1:+ → LM1:+; PS1:− → LM1:−; PS1:+ → WO1:+; PS1:− → WO1:−; WO1:C → LM1:COM; WO1:NO → LM1:IN1; "
                               "LM1:K1.C → PS1:+; LM1:K1.NO → ES1:1; ES1:2 → PS1:−; LM1:K2.C → DO1:ACOM; LM1:K2.NO → DO1:ACT",
                               "LM1.K1=dry LM1.K3=dry LM1.delay.K2=0.5", {swungDoor("ES1", "WO1=waved LM1:K1=in LM1:K2=in")});
    return mistake("operator asked a quarter second after its lock", right,
                   [](JobBuilder& job) { job.setting("LM1", "delay.K2", 0.25); });
}

MistakeSample startedByADroppedRelay()
{
    const Job right = drawnJob("PS1 dc-supply-24; MS1 exit-sensor; DO1 door-operator",
                               "PS1:+ → MS1:+; PS1:− → MS1:−; MS1:C → DO1:ACOM; MS1:NO → DO1:ACT", "MS1.relay=on-motion", {});
    return mistake("operator started by a dropped relay", right,
                   [](JobBuilder& job) { job.option("MS1", "relay", "held-in").move("MS1:NO → DO1:ACT", "MS1:NC"); });
}

MistakeSample actuatorsTenInchesApart()
{
    const Job right = drawnJob("PS1 dc-supply-24; WO1 WO2 wave-actuator; DO1 door-operator",
                               "PS1:+ → WO1:+; PS1:− → WO1:−; PS1:+ → WO2:+; PS1:− → WO2:−; WO1:C → DO1:ACOM; WO1:NO → DO1:ACT; "
                               "WO2:C → DO1:ACOM; WO2:NO → DO1:ACT",
                               "WO1.spacing=305", {});
    return mistake("two actuators ten inches apart", right, [](JobBuilder& job) { job.setting("WO1", "spacing", 254.0); });
}

// A module that comes with no function chosen.
MistakeSample functionLeftAtNothing()
{
    Kind module = catalogueKind("relay-module-negative");
    for (Setting& setting : module.settings)
        if (setting.key == "mode") {
            setting.values.push_back({"none", {"no function", "sin función"}});
            setting.factory = "none";
        }
    JobBuilder right = withDevices("PS1 dc-supply-24; PB1 push-plate; ES1 strike-fail-secure");
    right.device("LM1", module).option("LM1", "K1", "dry").option("LM1", "K3", "dry").setting("LM1", "mode", "normally-locked");
    right.wires("PS1:+ → LM1:+; PS1:− → LM1:−; PB1:C → LM1:COM; PB1:NO → LM1:IN1; PS1:+ → LM1:K1.C; LM1:K1.NO → ES1:1; ES1:2 → PS1:−");
    return mistake("function left as it comes, at nothing", right.job(), [](JobBuilder& job) { job.setting("LM1", "mode", "none"); });
}

} // namespace

std::vector<MistakeSample> openingMistakes()
{
    const Job pullFrees = drawnJob("PS1 dc-supply-24; EP1 emergency-release; KS1 key-switch; ES1 strike-fail-secure",
                                   "PS1:+ → KS1:C; KS1:NO → ES1:1; PS1:+ → EP1:C1; EP1:NO1 → ES1:1; ES1:2 → PS1:−", "", {pulled(Promised::Locked)});
    const Job cardOnAFireDoor = drawnJob("PS1 dc-supply-24; FR1 fire-relay; AC1 access-controller; ES1 strike-fail-secure",
                                         "PS1:+ → FR1:C; FR1:NC → AC1:LK.C; AC1:LK.NO → ES1:1; ES1:2 → PS1:−", "", {fireDoor(Promised::Locked)});
    return {mistake("outside plate past the lock", restroomWithPromisedOperator(),
                    [](JobBuilder& job) { job.move("LM1:COM → WO1:C", "DO1:ACOM").move("LM1:IN1 → WO1:NO", "DO1:ACT"); }),
            mistake("pull in line with a fail-secure strike", pullFrees,
                    [](JobBuilder& job) { job.takeOff("EP1:NO1 → ES1:1").move("PS1:+ → KS1:C", "EP1:NC1"); }),
            mistake("strike of a fire door held by its card relay", cardOnAFireDoor,
                    [](JobBuilder& job) { job.takeOff("PS1:+ → FR1:C").move("FR1:NC → AC1:LK.C", "PS1:+"); }),
            // With one door open the other one is locked, and the fire alarm frees neither.
            mistake("fire contact bridged beside an open door", rightJobCalled("T11"), [](JobBuilder& job) { job.wire("FR1:C", "FR1:NC"); }),
            failSafeStrikeOnAFireDoor(),
            fireContactOfAFailSecureStrike(),
            operatorInAFire(),
            requestOfOneSecond(),
            operatorAskedWithItsLock(),
            startedByADroppedRelay(),
            functionLeftAtNothing(),
            actuatorsTenInchesApart(),
            shortExitTimer()};
}

} // namespace doorloom
