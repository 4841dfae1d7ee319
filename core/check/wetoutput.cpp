#include "check/check.h"
#include "check/outputs.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>

// An output left wet meets a source that comes by a conductor.
namespace doorloom {

namespace {

constexpr Text otherSource = {
    .en = "{output} is wet, so it brings its module's own supply; {pole} of another supply is landed on {terminal}. "
          "Two supplies must never meet on one output.",
    .es = "{output} está con tensión, trae la alimentación de su módulo; en {terminal} llega {pole} de otra fuente. "
          "Dos fuentes nunca deben encontrarse en una salida."};
constexpr Text ownSource = {
    .en = "{output} is wet, so it brings plus and minus by itself; {load} is wired as to a dry contact, with {pole} "
          "landed as well, and is never fed.",
    .es = "{output} está con tensión y trae por sí misma positivo y negativo; {load} está cableado como a un contacto "
          "seco, con {pole} también conectado, y nunca recibe tensión."};
constexpr Text through = {
    .en = "{load} is fed from {pole} and returns through the wet output {output}: its current goes back through "
          "another device's supply lead.",
    .es = "{load} se alimenta de {pole} y retorna por la salida con tensión {output}: su corriente vuelve por la "
          "alimentación de otro aparato."};

bool feedsDevice(const OutputInJob& output, std::uint32_t feed)
{
    return std::find(output.ownFeeds.begin(), output.ownFeeds.end(), feed) != output.ownFeeds.end();
}

std::string outputName(const Facts& facts, const OutputInJob& output)
{
    return tagOf(facts.job, output.device) + ":" + output.output->key;
}

Finding begin(const Facts& facts, const OutputInJob& output, Severity severity)
{
    Finding finding;
    finding.rule = "wet-output";
    finding.severity = severity;
    finding.at = {optionSpot(output.device, output.output->option)};
    Remedies remedies(facts);
    remedies.setOtherValues(output.device, output.output->option);
    finding.remedies = remedies.taken();
    return finding;
}

struct Met {
    Vertex terminal;
    Pole pole;
    Verdict verdict;
};

// Poles that reach the output's terminals without passing through it.
std::vector<Met> polesMet(const Facts& facts, const OutputInJob& output)
{
    std::vector<Met> met;
    for (Vertex terminal : output.terminals)
        if (facts.isLanded(terminal))
            for (const Pole& pole : polesNear(facts, terminal)) {
                Verdict verdict = facts.ask.joined(terminal, pole.vertex, output.joints);
                if (occurs(verdict))
                    met.push_back({terminal, pole, std::move(verdict)});
            }
    return met;
}

void addWayBack(Finding& finding, const Facts& facts, const Met& met)
{
    finding.path = wayBetween(facts, met.verdict.cubes.front(), met.terminal, met.pole.vertex, false);
    Remedies remedies(facts);
    remedies.breakWay(finding.path);
    for (Remedy& remedy : remedies.taken())
        finding.remedies.push_back(std::move(remedy));
}

std::optional<Finding> meetsOtherSource(const Facts& facts, const OutputInJob& output, const std::vector<Met>& met)
{
    const auto other = std::find_if(met.begin(), met.end(),
                                    [&](const Met& each) { return !feedsDevice(output, each.pole.feed) &&
                                        std::none_of(output.ownFeeds.begin(), output.ownFeeds.end(), [&](std::uint32_t own) {
                                            const Feed& feed = facts.circuit().feeds[own];
                                            const auto always = [&](Vertex pole) {
                                                return facts.ask.joined(each.pole.vertex, pole, output.joints).answer == Answer::Always;
                                            };
                                            return always(feed.plus) || always(feed.minus);
                                        }); });
    if (other == met.end())
        return std::nullopt;
    Finding finding = begin(facts, output, Severity::Danger);
    happensIn(finding, facts, other->verdict);
    finding.why = {otherSource,
                   {{"output", outputName(facts, output)},
                    {"pole", nameOf(facts, other->pole.vertex)},
                    {"terminal", nameOf(facts, other->terminal)}}};
    addWayBack(finding, facts, *other);
    return finding;
}

// Loads that hang on the output by conductors alone, at the side named first.
struct Hanging {
    std::uint32_t element;
    Vertex side, farSide;
};

std::vector<Hanging> loadsOn(const Facts& facts, const OutputInJob& output)
{
    std::vector<Hanging> loads;
    std::vector<Vertex> hanging;
    for (Vertex terminal : output.terminals) {
        const std::vector<Vertex> always = alwaysWith(facts, terminal, output.joints);
        hanging.insert(hanging.end(), always.begin(), always.end());
    }
    std::sort(hanging.begin(), hanging.end());
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        const Element& element = facts.circuit().elements[number];
        if (element.kind != ElementKind::Load || facts.deviceOf(element.origin) == output.device)
            continue;
        for (const auto& [side, farSide] : {std::pair(element.a, element.b), std::pair(element.b, element.a)})
            if (std::binary_search(hanging.begin(), hanging.end(), side))
                loads.push_back({number, side, farSide});
    }
    return loads;
}

// Wired to a pole whatever the output does, as all that is on a supply's rail: then the output is not what it hangs on.
bool isOnPole(const Facts& facts, const OutputInJob& output, const Hanging& load)
{
    const std::vector<Pole> poles = polesNear(facts, load.side);
    return std::any_of(poles.begin(), poles.end(), [&](const Pole& pole) {
        return facts.ask.joined(load.side, pole.vertex, output.joints).answer == Answer::Always;
    });
}

std::optional<Finding> deadLoad(const Facts& facts, const OutputInJob& output, const std::vector<Met>& met)
{
    for (const Hanging& load : loadsOn(facts, output)) {
        if (facts.returned(load.element).answer != Answer::Never || isOnPole(facts, output, load))
            continue;
        for (const Met& each : met) {
            if (!feedsDevice(output, each.pole.feed))
                continue;
            Finding finding = begin(facts, output, Severity::Fault);
            finding.why = {ownSource,
                           {{"output", outputName(facts, output)},
                            {"load", tagOfOrigin(facts, facts.circuit().elements[load.element].origin)},
                            {"pole", nameOf(facts, each.pole.vertex)}}};
            addWayBack(finding, facts, each);
            return finding;
        }
    }
    return std::nullopt;
}

const Conductor* onlyConductorAt(const Facts& facts, Vertex vertex)
{
    const auto conductors = facts.conductorsAt(vertex);
    return conductors.size() == 1 ? conductors.front() : nullptr;
}

// The output dry, its common on the load's own plus, its contact on the load, and the load's other side on the
// minus of the same supply.
std::vector<Remedy> throughDryContact(const Facts& facts, const OutputInJob& output, const Hanging& load, Vertex back)
{
    const Conductor *feed = onlyConductorAt(facts, load.farSide), *switched = onlyConductorAt(facts, load.side);
    const auto fed = facts.landingAt(load.farSide), other = facts.landingAt(load.side);
    const auto common = facts.landingAt(output.terminals.front());
    if (!feed || !switched || !fed || !other || !common)
        return {};
    Remedies steps(facts);
    steps.setOtherValues(output.device, output.output->option);
    steps.moveEnd(*feed, *fed, *common);
    steps.moveEnd(*switched, *other, *fed);
    steps.land(load.side, back);
    Remedies remedies(facts);
    remedies.addTogether(steps.taken());
    return remedies.taken();
}

std::optional<Finding> returnsThrough(const Facts& facts, const OutputInJob& output)
{
    for (const Hanging& load : loadsOn(facts, output))
        for (const Pole& pole : polesNear(facts, load.farSide)) {
            const Feed& feed = facts.circuit().feeds[pole.feed];
            const Vertex back = pole.isPlus ? feed.minus : feed.plus;
            if (feedsDevice(output, pole.feed) || !occurs(facts.ask.joined(load.farSide, pole.vertex, output.joints)) ||
                occurs(facts.ask.joined(load.side, back, output.joints)))
                continue;
            const Verdict verdict = facts.ask.returnedVia(load.element, pole.feed, Direction::Either);
            if (!occurs(verdict))
                continue;
            Finding finding = begin(facts, output, Severity::Doubt);
            happensIn(finding, facts, verdict);
            finding.why = {through,
                           {{"output", outputName(facts, output)},
                            {"load", tagOfOrigin(facts, facts.circuit().elements[load.element].origin)},
                            {"pole", nameOf(facts, pole.vertex)}}};
            finding.remedies = throughDryContact(facts, output, load, back);
            finding.path = wayBetween(facts, verdict.cubes.front(), load.side, back, false);
            return finding;
        }
    return std::nullopt;
}

void onlyIfLeftWet(Finding& finding, const OutputInJob& output)
{
    for (Witness& witness : finding.throws)
        witness.throws.push_back({{}, output.device, output.output->option, output.output->wetValue});
}

std::vector<Finding> findWetOutputs(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const OutputInJob& output : outputsOf(facts)) {
        const OutputInJob::Stands stands = output.stands(facts.job);
        if (stands != OutputInJob::Stands::Wet && stands != OutputInJob::Stands::WetIfLeftSo)
            continue;
        const std::vector<Met> met = polesMet(facts, output);
        std::optional<Finding> finding = meetsOtherSource(facts, output, met);
        if (stands == OutputInJob::Stands::WetIfLeftSo) {
            if (finding) {
                onlyIfLeftWet(*finding, output);
                findings.push_back(std::move(*finding));
            }
            continue;
        }
        if (!finding)
            finding = deadLoad(facts, output, met);
        if (!finding)
            finding = returnsThrough(facts, output);
        if (finding)
            findings.push_back(std::move(*finding));
    }
    return findings;
}

} // namespace

extern const Check wetOutput = {
    .code = "wet-output",
    .worst = Severity::Danger,
    .title = {.en = "Wet output on an externally powered load",
              .es = "Salida con tensión en una carga con alimentación externa"},
    .notCovered = {.en = "how much current goes round where two supplies meet",
                   .es = "cuánta corriente circula donde se encuentran dos fuentes"},
    .run = findWetOutputs,
};

} // namespace doorloom
