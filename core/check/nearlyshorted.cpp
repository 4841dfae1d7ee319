#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

// A way from plus to minus with no load in it, through so little resistance that the source's limit is passed.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{amperes} A run from {source} through resistors alone, with no load in the way, and it is made for {most} A.",
                      .es = "De {source} salen {amperes} A solo por resistencias, sin carga en el camino, y está hecha para {most} A."};
constexpr Text remove = {.en = "Take the resistor out of the way between plus and minus of {source}, or fit one of the value that is wanted.",
                         .es = "Quite la resistencia del camino entre positivo y negativo de {source}, o monte una del valor debido."};

// Any of them out: the one after which least is wrong is the one.
std::vector<Remedy> withoutAResistor(const Facts& facts)
{
    Remedies remedies(facts);
    for (const Element& element : facts.circuit().elements)
        if (element.kind == ElementKind::Resistor)
            remedies.takeOut(facts.deviceOf(element.origin));
    return remedies.taken();
}

std::vector<Finding> findNearlyShorted(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t i = 0; i < facts.circuit().feeds.size(); ++i) {
        const auto* source = partBehind<SourcePart>(facts.job, facts.net.origin(facts.circuit().feeds[i].origin));
        const auto& worst = facts.figures().outPastLoads[i];
        if (!source || source->most.value <= 0 || !worst || worst->value <= source->most.value + 1e-9)
            continue;
        const std::string name = tagOfOrigin(facts, facts.circuit().feeds[i].origin);
        Finding finding;
        finding.rule = "nearly-shorted";
        finding.severity = Severity::Danger;
        finding.at = {deviceSpot(facts.deviceOfFeed(i))};
        finding.throws = {witnessAt(facts, worst->at)};
        finding.why = {why, {{"source", name}, {"amperes", figureText(worst->value)}, {"most", figureText(source->most.value)}}};
        finding.remedy = {remove, {{"source", name}}};
        finding.remedies = withoutAResistor(facts);
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check nearlyShorted = {
    .code = "nearly-shorted",
    .worst = Severity::Danger,
    .title = {.en = "Nearly shorted source", .es = "Fuente casi en cortocircuito"},
    .notCovered = {.en = "heat in the resistor where the source can bear its current", .es = "el calor en la resistencia si la fuente soporta su corriente"},
    .run = findNearlyShorted,
    .readsFigures = true};

} // namespace doorloom
