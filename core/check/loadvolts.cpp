#include "check/check.h"
#include "check/tell.h"

#include <algorithm>

// Volts at each load, over every position: too few, too many, too few while it pulls in.
namespace doorloom {

namespace {

constexpr Text under = {.en = "{load} gets {volts} V at the least, and works from {least} V.",
                        .es = "{load} recibe {volts} V como mínimo y trabaja desde {least} V."};
constexpr Text underOnBattery = {.en = "At the end of the battery {load} gets {volts} V, and works from {least} V.",
                                 .es = "Al final de la batería {load} recibe {volts} V y trabaja desde {least} V."};
constexpr Text underPullingIn = {.en = "While it pulls in with {amperes} A {load} gets {volts} V, and works from {least} V: it may try and fall back.",
                                 .es = "Al atraer con {amperes} A {load} recibe {volts} V y trabaja desde {least} V: puede intentarlo y caer."};
constexpr Text notCarried = {.en = "The line can't carry the {amperes} A with which {load} pulls in.",
                             .es = "La línea no puede llevar los {amperes} A con que {load} atrae."};
constexpr Text thicker = {.en = "Use thicker conductors or a shorter way to {load}, or a supply of more volts.",
                          .es = "Use conductores más gruesos o un camino más corto hasta {load}, o una fuente de más tensión."};
constexpr Text over = {.en = "{load} gets {volts} V at the most, and takes no more than {most} V.",
                       .es = "{load} recibe hasta {volts} V y no admite más de {most} V."};
constexpr Text lower = {.en = "Feed {load} from a supply of fewer volts, or fit one made for {volts} V.",
                        .es = "Alimente {load} de una fuente de menos tensión, o monte una para {volts} V."};

constexpr double slack = 1e-6; // volts

Finding atLoad(const Facts& facts, std::uint32_t element, std::string_view rule, std::string_view reason, Severity severity, const Position& at)
{
    Finding made;
    made.rule = rule;
    made.reason = reason;
    made.severity = severity;
    made.at = {loadSpot(facts, element)};
    made.throws = {witnessAt(facts, at, facts.ask.operatorsThatMatter(element))};
    return made;
}

// A battery may run down where the door may be free then; a lock that must stay locked on it may not.
bool mustHoldOnBattery(const Facts& facts, std::uint32_t element)
{
    const DeviceId device = facts.deviceOf(facts.circuit().elements[element].origin);
    const Kind* kind = kindOf(facts.job, device);
    if (!kind || !kind->lock || kind->lock->failMode != FailMode::Safe)
        return false;
    return std::any_of(facts.job.openings.begin(), facts.job.openings.end(), [&](const Opening& opening) {
        return std::any_of(opening.promises.begin(), opening.promises.end(), [&](const Promise& promise) {
            return promise.device == device && promise.promised == Promised::Locked && promise.situation.kind == SituationKind::MainsLost;
        });
    });
}

std::vector<Finding> findUnder(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t i = 0; i < facts.circuit().elements.size(); ++i) {
        const LoadPart* load = facts.loadOf(i);
        if (!load || !load->leastVolts)
            continue;
        const double least = load->leastVolts->value - slack;
        const std::string name = tagOfOrigin(facts, facts.circuit().elements[i].origin);
        const auto isBelow = [&](const std::optional<Worst>& worst) { return worst && worst->value < least; };
        const auto add = [&](std::string_view reason, Severity severity, const Worst& worst, Text why) {
            findings.push_back(atLoad(facts, i, "under-voltage", reason, severity, worst.at));
            findings.back().why = {why,
                                   {{"load", name},
                                    {"volts", figureText(worst.value)},
                                    {"least", figureText(load->leastVolts->value)},
                                    {"amperes", figureText(load->inrush.value_or(Amperes{0}).value)}}};
            findings.back().remedy = {thicker, {{"load", name}}};
        };
        const Figures& figures = facts.figures();
        if (isBelow(figures.lowestVolts[i]))
            add("", Severity::Fault, *figures.lowestVolts[i], under);
        else if (isBelow(figures.lowestPullingIn[i]))
            add("pulling in", Severity::Fault, *figures.lowestPullingIn[i], figures.lowestPullingIn[i]->value > 0 ? underPullingIn : notCarried);
        else if (isBelow(figures.lowestOnBattery[i]))
            add("on battery", mustHoldOnBattery(facts, i) ? Severity::Fault : Severity::Doubt, *figures.lowestOnBattery[i], underOnBattery);
    }
    return findings;
}

std::vector<Finding> findOver(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t i = 0; i < facts.circuit().elements.size(); ++i) {
        const LoadPart* load = facts.loadOf(i);
        const auto& worst = facts.figures().highestVolts[i];
        if (!load || !load->mostVolts || !worst || worst->value <= load->mostVolts->value + slack)
            continue;
        const std::string name = tagOfOrigin(facts, facts.circuit().elements[i].origin);
        findings.push_back(atLoad(facts, i, "over-voltage", "", Severity::Danger, worst->at));
        findings.back().why = {over, {{"load", name}, {"volts", figureText(worst->value)}, {"most", figureText(load->mostVolts->value)}}};
        findings.back().remedy = {lower, {{"load", name}, {"volts", figureText(worst->value)}}};
    }
    return findings;
}

constexpr Text notCovered = {.en = "drop that doors judged apart cause each other; loads behind a rectifier on AC; conductors without a length or a "
                                   "gauge count as none",
                             .es = "caída que se causan puertas juzgadas por separado; cargas tras un rectificador en CA; los conductores sin "
                                   "longitud o calibre no cuentan"};

} // namespace

extern const Check underVoltage = {.code = "under-voltage",
                                   .worst = Severity::Fault,
                                   .title = {.en = "Too few volts", .es = "Tensión insuficiente"},
                                   .notCovered = notCovered,
                                   .run = findUnder,
                                   .readsFigures = true};
extern const Check overVoltage = {.code = "over-voltage",
                                  .worst = Severity::Danger,
                                  .title = {.en = "Too many volts", .es = "Tensión excesiva"},
                                  .notCovered = notCovered,
                                  .run = findOver,
                                  .readsFigures = true};

} // namespace doorloom
