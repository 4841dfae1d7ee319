#include "check/class2.h"

#include "check/check.h"
#include "check/tell.h"

#include <fmt/format.h>

// A source that is called Class 2 and gives more than the class allows.
namespace doorloom {

namespace {

constexpr Text why = {.en = "{source} is called Class 2 and gives {amperes} A. At its highest {volts} V the class ends at {most} A.",
                      .es = "{source} consta como Clase 2 y da {amperes} A. A sus {volts} V como máximo, la clase acaba en {most} A."};
constexpr Text check = {.en = "Look at the nameplate of {source}: where it is not marked Class 2, wire it as an ordinary circuit, with fuses. The "
                              "figure is from memory: the code decides.",
                        .es = "Mire la placa de {source}: si no dice Clase 2, cablee como circuito ordinario, con fusibles. La cifra es de memoria: "
                              "decide la norma."};

std::vector<Finding> findTooLarge(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().feeds.size(); ++number) {
        const Feed& feed = facts.circuit().feeds[number];
        const auto* source = partBehind<SourcePart>(facts.job, facts.net.origin(feed.origin));
        if (!source || source->supplyClass != class2)
            continue;
        const double most = class2Amperes(source->highest, source->ac ? Current::Ac : Current::Dc).value_or(Amperes{0}).value;
        if (source->most.value <= most * 1.001) // nameplates are rounded
            continue;
        Finding finding;
        finding.rule = "class-2";
        finding.severity = Severity::Doubt;
        finding.at = {feedSpot(facts, number)};
        const std::string name = tagOfOrigin(facts, feed.origin);
        finding.why = {why,
                       {{"source", name},
                        {"amperes", fmt::format("{:.3g}", source->most.value)},
                        {"volts", fmt::format("{:.3g}", source->highest.value)},
                        {"most", fmt::format("{:.2f}", most)}}};
        finding.remedy = {check, {{"source", name}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

std::optional<Amperes> class2Amperes(Volts highest, Current current)
{
    constexpr double voltAmperes = 100, mostOfLow = 5, ofHigh = 0.005;
    const double volts = highest.value;
    if (volts <= 20)
        return Amperes{mostOfLow};
    if (volts <= (current == Current::Ac ? 30 : 60))
        return Amperes{voltAmperes / volts};
    return volts <= 150 ? std::optional(Amperes{ofHigh}) : std::nullopt;
}

extern const Check class2Limit = {
    .code = "class-2",
    .worst = Severity::Doubt,
    .title = {.en = "More than Class 2 allows", .es = "Más de lo que permite la Clase 2"},
    .notCovered = {.en = "what a source gives into a short; several sources joined; what the local code says of the class",
                   .es = "lo que da una fuente en cortocircuito; varias fuentes unidas; lo que dice la norma local de la clase"},
    .run = findTooLarge,
};

} // namespace doorloom
