#include "circuit.h"

#include <algorithm>

// N: which contact of a module's dry relay feeds a strike.
namespace doorloom {

namespace {

enum class AtRest { Locked, Free };
enum class Relay { AtRest, HeldIn };

struct Row {
    std::string name;
    FailMode strike;
    AtRest wanted;
    std::string contact; // that does it
    Relay relay = Relay::AtRest;
    Egress egress = Egress::ByHand;
    bool fireRated = false;
    std::string severity = "fault"; // of every wrong form
};

const std::string& kindOfStrike(FailMode mode)
{
    static const std::string secure = "strike-fail-secure", safe = "strike-fail-safe";
    return mode == FailMode::Secure ? secure : safe;
}

Promised promisedWhen(bool locked)
{
    return locked ? Promised::Locked : Promised::Free;
}

OpeningSketch openingOf(const Row& row)
{
    const bool locked = row.wanted == AtRest::Locked;
    const bool byElectricity = row.egress == Egress::ByElectricity;
    const std::string asked = row.relay == Relay::AtRest ? "LM1:K1=in" : "LM1:K1=rest";
    OpeningSketch sketch{
        .locks = {"ES1"},
        .egress = row.egress,
        .fireRated = row.fireRated,
        .requests = {{"PB1", "PB1=pressed " + asked}},
        .releases = byElectricity ? std::vector<ActSketch>{{"button", "EB1=pressed"}} : std::vector<ActSketch>{},
        .promises = {{"rest", promisedWhen(locked)}, {"request PB1", promisedWhen(!locked)}}};
    if (row.egress == Egress::ByHand)
        sketch.promises.push_back({"all power lost", promisedWhen(row.strike == FailMode::Secure)});
    return sketch;
}

Job rightJob(const Row& row)
{
    JobBuilder job = withDevices("PS1 dc-supply-24; PB1 push-plate; ES1 " + kindOfStrike(row.strike));
    addModule(job, "LM1").power("PS1", "LM1").wires("PB1:C → LM1:COM; PB1:NO → LM1:IN1; ES1:2 → PS1:−");
    if (row.egress == Egress::ByElectricity) // then a fail-safe lock needs a release of its own
        job.device("EB1", "exit-button").wires("PS1:+ → EB1:C; EB1:NC → LM1:K1.C");
    else
        job.wire("PS1:+", "LM1:K1.C");
    job.wire("LM1:K1." + row.contact, "ES1:1");
    if (row.relay == Relay::HeldIn)
        job.idle("LM1:K1", "in");
    return job.opening(openingOf(row)).job();
}

Expected wrongAtRest(const Row& row, const std::vector<std::string>& alsoWrong)
{
    Expected expected{
        .rule = "wrong-in-situation", .severity = row.severity, .at = "ES1", .throws = {"rest"}};
    for (const std::string& situation : alsoWrong)
        expected.lines.push_back({"wrong-in-situation", "ES1", "", {situation}});
    return expected;
}

JudgedCircuit circuitOf(const Row& row)
{
    const Job right = rightJob(row);
    const std::string other = row.contact == "NO" ? "NC" : "NO";
    const auto exchangeContact = [&](JobBuilder& job) {
        job.move("LM1:K1." + row.contact + " → ES1:1", "LM1:K1." + other);
    };
    const auto exchangeStrike = [&](JobBuilder& job) {
        job.kind("ES1", kindOfStrike(row.strike == FailMode::Secure ? FailMode::Safe : FailMode::Secure));
    };
    // Where nothing is promised for a loss of power, the other contact would mend another strike as well.
    std::vector<std::string> strikeAlso = {"request PB1"};
    Mending mending = Mending::AnyOfSeveral;
    if (row.egress == Egress::ByHand) {
        strikeAlso.push_back("all power lost");
        mending = Mending::TheReverseEdit;
    }
    return {
        row.name,
        right,
        {},
        {wrongForm(row.name + " other contact", right, exchangeContact, {wrongAtRest(row, {"request PB1"})}),
         wrongForm(row.name + " other strike", right, exchangeStrike, {wrongAtRest(row, strikeAlso)},
                   mending)}};
}

} // namespace

std::vector<JudgedCircuit> whichContactCircuits()
{
    using enum FailMode;
    const std::vector<Row> rows = {
        {"N1", Secure, AtRest::Locked, "NO"},
        {"N2", Safe, AtRest::Locked, "NC"},
        {"N3", Secure, AtRest::Free, "NC"},
        {"N4", Safe, AtRest::Free, "NO"},
        {"N1 held in", Secure, AtRest::Locked, "NC", Relay::HeldIn},
        {"N2 held in", Safe, AtRest::Locked, "NO", Relay::HeldIn},
        {"N3 held in", Secure, AtRest::Free, "NO", Relay::HeldIn},
        {"N4 held in", Safe, AtRest::Free, "NC", Relay::HeldIn},
        {"N1 fire-rated", Secure, AtRest::Locked, "NO", Relay::AtRest, Egress::ByHand, true, "danger"},
        {"N3 egress by electricity", Secure, AtRest::Free, "NC", Relay::AtRest, Egress::ByElectricity, false,
         "danger"},
        {"N4 egress by electricity", Safe, AtRest::Free, "NO", Relay::AtRest, Egress::ByElectricity, false,
         "danger"}};
    std::vector<JudgedCircuit> circuits;
    std::transform(rows.begin(), rows.end(), std::back_inserter(circuits), circuitOf);
    return circuits;
}

} // namespace doorloom
