#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"
#include "verdict/search.h"

#include <algorithm>

// A dry input between two poles: it puts out its own wetting volts and wants none.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{input} is a dry input and gets {plus} and {minus} across it: it burns.",
                      .es = "{input} es una entrada seca y recibe {plus} y {minus} en sus bornes: se quema."};
constexpr Text whyOutput = {
    .en = "{output} is wet and puts its supply's volts across the dry inputs {inputs}: they burn.",
    .es = "{output} está con tensión y pone su alimentación en las entradas secas {inputs}: se queman."};

struct Touched {
    Pole terminal, reference;
    Verdict verdict;
};

// The fewest throws in which the input's two terminals lie on two different poles.
std::optional<Touched> polesAcross(const Facts& facts, const DryInput& input)
{
    std::optional<Touched> best;
    for (const Pole& first : polesNear(facts, input.terminal)) {
        if (!occurs(facts.ask.joined(input.terminal, first.vertex)))
            continue;
        for (const Pole& second : polesNear(facts, input.reference)) {
            if (facts.ask.joined(first.vertex, second.vertex).answer == Answer::Always)
                continue;
            Verdict verdict =
                facts.ask.allJoined({{input.terminal, first.vertex, second.vertex},
                                     {input.reference, second.vertex, first.vertex}});
            if (!occurs(verdict))
                continue;
            if (!best || verdict.cubes.front().size() < best->verdict.cubes.front().size())
                best = Touched{first, second, std::move(verdict)};
        }
    }
    return best;
}

Spot placeOf(const Facts& facts, const DryInput& input, const std::vector<Origin>& path)
{
    for (const Origin& origin : path)
        if (!origin.because.empty() && origin.device != facts.deviceOf(input.origin))
            return optionSpot(origin.device, origin.because.front().option);
    return spotOf(facts, input.terminal);
}

Finding findingFor(const Facts& facts, const DryInput& input, const Touched& touched)
{
    Finding finding;
    finding.rule = "foreign-volts";
    finding.severity = Severity::Danger;
    finding.at = {spotOf(facts, input.terminal)};
    happensIn(finding, facts, touched.verdict);
    finding.why = {why,
                   {{"input", nameOf(facts, input.terminal)},
                    {"plus", nameOf(facts, touched.terminal.vertex)},
                    {"minus", nameOf(facts, touched.reference.vertex)}}};
    const Cube& cube = touched.verdict.cubes.front();
    finding.path = wayBetween(facts, cube, touched.terminal.vertex, input.terminal, false);
    const std::vector<Origin> back = wayBetween(facts, cube, input.reference, touched.reference.vertex, false);
    finding.path.insert(finding.path.end(), back.begin(), back.end());
    Remedies remedies(facts);
    remedies.breakWay(finding.path);
    finding.remedies = remedies.taken();
    return finding;
}

// One wet output that wets several inputs is one finding, and the inputs its lines.
void addTo(const Facts& facts, std::vector<Finding>& findings, Spot place, Finding finding, const std::string& input)
{
    if (place == finding.at.front()) {
        findings.push_back(std::move(finding));
        return;
    }
    auto same = std::find_if(findings.begin(), findings.end(),
                             [&](const Finding& each) { return each.at == std::vector<Spot>{place}; });
    if (same == findings.end()) {
        Finding head = finding;
        head.at = {place};
        head.why = {whyOutput,
                    {{"output", tagOf(facts.job, place.device) + ":" + place.key}, {"inputs", std::vector<Message>{}}}};
        findings.push_back(std::move(head));
        same = findings.end() - 1;
    }
    std::get<std::vector<Message>>(same->why.arguments.back().second).push_back(verbatim(input));
    finding.remedies.clear();
    same->lines.push_back(std::move(finding));
}

std::vector<Finding> findForeignVolts(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const DryInput& input : facts.circuit().inputs)
        if (facts.isLanded(input.terminal))
            if (const auto touched = polesAcross(facts, input)) {
                Finding finding = findingFor(facts, input, *touched);
                const Spot place = placeOf(facts, input, finding.path);
                addTo(facts, findings, place, std::move(finding), nameOf(facts, input.terminal));
            }
    return findings;
}

} // namespace

extern const Check foreignVolts = {
    .code = "foreign-volts",
    .worst = Severity::Danger,
    .title = {.en = "Foreign volts at a dry input", .es = "Tensión ajena en una entrada seca"},
    .notCovered = {.en = "volts that reach an input through a load", .es = "tensión que llega a una entrada por una carga"},
    .run = findForeignVolts,
};

} // namespace doorloom
