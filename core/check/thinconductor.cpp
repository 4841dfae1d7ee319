#include "check/check.h"
#include "check/class2.h"
#include "check/protection.h"
#include "check/tell.h"

#include "solve/gauge.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <map>

// Conductors that bear less than the fuse or source before them lets through: in a short the conductor is the fuse.
namespace doorloom {

namespace {

constexpr Text bySource = {.en = "{source} gives {amperes} A, is not Class 2, and no fuse stands before {conductors}, which {gauge} bears {most} A: in a short the conductor is the fuse.",
                           .es = "{source} da {amperes} A, no es Clase 2, y ningún fusible precede a {conductors}; {gauge} soporta {most} A: en un cortocircuito el hilo es el fusible."};
constexpr Text byFuse = {.en = "{source} lets {amperes} A through to {conductors}; {gauge} bears {most} A: in a short the conductor is the fuse.",
                         .es = "{source} deja pasar {amperes} A hacia {conductors}; {gauge} soporta {most} A: en un cortocircuito el hilo es el fusible."};
constexpr Text fuse = {.en = "Before {conductors}, fit a fuse of no more than {most} A; or use a thicker conductor. The figure is from memory.",
                       .es = "Antes de {conductors}, ponga un fusible de {most} A como máximo; o use un hilo más grueso. La cifra es de memoria."};
constexpr Text line = {.en = "{conductors}, {gauge}, bears {most} A.", .es = "{conductors}, {gauge}, soporta {most} A."};

struct Size {
    double squareMillimetres, amperes;
};
// Copper in a bundle, 28 to 10 AWG, as control panels count it; from memory, no source at hand.
constexpr Size sizes[] = {{0.0809, 0.8}, {0.129, 1}, {0.205, 2}, {0.326, 3}, {0.518, 5}, {0.823, 7}, {1.31, 10}, {2.08, 15}, {3.31, 20}, {5.26, 30}};
// In free air the thin ones bear about twice as much before their insulation goes; from memory.
constexpr double inFreeAir = 2;

// What the next smaller size of the table bears. Nothing: not known, or off the table.
std::optional<double> borneBy(const std::string& gauge)
{
    const auto area = squareMillimetresOf(gauge);
    if (!area || *area > sizes[std::size(sizes) - 1].squareMillimetres * 1.02)
        return std::nullopt;
    const auto above = std::find_if(std::begin(sizes), std::end(sizes), [&](const Size& size) { return size.squareMillimetres > *area * 1.02; });
    return above == std::begin(sizes) ? above->amperes : (above - 1)->amperes;
}

struct Thin {
    const Conductor* conductor;
    std::string gauge;
    double bears;
    Vertex at; // its far end
    Protection before;
};

bool mayBeThin(const Facts& facts)
{
    return std::any_of(facts.circuit().feeds.begin(), facts.circuit().feeds.end(), [&](const Feed& feed) {
        const auto* source = partBehind<SourcePart>(facts.job, facts.net.origin(feed.origin));
        return source && source->supplyClass != class2;
    });
}

// Those by which a vertex is reached first; what lies side by side with one is not told.
std::vector<Thin> thinConductors(const Facts& facts, const std::vector<Protection>& protection)
{
    std::vector<Thin> thin;
    std::map<std::string, std::optional<double>> bears;
    for (Vertex vertex = 0; vertex < protection.size(); ++vertex) {
        const Protection& here = protection[vertex];
        if (here.cameBy >= facts.circuit().joints.size())
            continue;
        const Conductor* conductor = facts.job.conductors.find(facts.net.origin(facts.circuit().joints[here.cameBy].origin).conductor);
        if (!conductor)
            continue;
        const std::string gauge = gaugeOf(facts.job, *conductor);
        const auto [found, isNew] = bears.try_emplace(gauge);
        if (isNew)
            found->second = borneBy(gauge);
        if (found->second && here.amperes > *found->second + 1e-9)
            thin.push_back({conductor, gauge, *found->second, vertex, here});
    }
    return thin;
}

std::string nameOfConductor(const Facts& facts, const Thin& thin)
{
    return thin.conductor->tag.empty() ? nameOf(facts, thin.before.from) + " – " + nameOf(facts, thin.at) : thin.conductor->tag;
}

// The device at its far end; on a splice, the conductor.
Spot endOf(const Facts& facts, const Thin& thin)
{
    const DeviceId device = facts.net.vertex(thin.at).device;
    return device ? deviceSpot(device) : Spot{{}, {}, thin.conductor->id, {}};
}

Finding findingAt(Spot at, const Thin& thin)
{
    Finding finding;
    finding.rule = "thin-conductor";
    finding.severity = thin.before.amperes > inFreeAir * thin.bears + 1e-9 ? Severity::Danger : Severity::Doubt;
    finding.at = {std::move(at)};
    return finding;
}

std::vector<std::pair<std::string, Argument>> figuresOf(const Facts& facts, const Thin& thin)
{
    return {{"source", tagOfOrigin(facts, thin.before.limiter)},
            {"amperes", fmt::format("{:.3g}", thin.before.amperes)},
            {"conductors", nameOfConductor(facts, thin)},
            {"gauge", thin.gauge},
            {"most", fmt::format("{:.3g}", thin.bears)}};
}

// One for each fuse or source that lets too much through: the thinnest speaks, and each conductor is a line where it ends.
std::vector<Finding> findThin(const Facts& facts)
{
    std::vector<Finding> findings;
    if (!mayBeThin(facts))
        return findings;
    const std::vector<Protection> protection = protectionFrom(facts, Sources::NotClass2);
    std::map<std::uint32_t, std::vector<Thin>> byLimiter;
    for (Thin& thin : thinConductors(facts, protection))
        byLimiter[thin.before.limiter].push_back(std::move(thin));
    for (auto& [limiter, all] : byLimiter) {
        const Thin& worst = *std::min_element(all.begin(), all.end(), [&](const Thin& a, const Thin& b) {
            return std::pair(a.bears, nameOfConductor(facts, a)) < std::pair(b.bears, nameOfConductor(facts, b));
        });
        const bool isFuse = partBehind<FusePart>(facts.job, facts.net.origin(limiter)) != nullptr;
        Finding finding = findingAt(deviceSpot(facts.deviceOf(limiter)), worst);
        finding.reason = isFuse ? "fuse" : "source";
        finding.why = {isFuse ? byFuse : bySource, figuresOf(facts, worst)};
        finding.remedy = {fuse, figuresOf(facts, worst)};
        finding.path = wayTo(facts, protection, worst.at);
        for (const Thin& thin : all) {
            finding.lines.push_back(findingAt(endOf(facts, thin), thin));
            finding.lines.back().why = {line, figuresOf(facts, thin)};
            finding.lines.back().path = wayTo(facts, protection, thin.at);
        }
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check thinConductor = {
    .code = "thin-conductor",
    .worst = Severity::Danger,
    .title = {.en = "Conductor thinner than its fuse or source", .es = "Hilo más fino que su fusible o su fuente"},
    .notCovered = {.en = "conductors of the return side; those of Class 2 sources, which limit themselves; batteries; heat of bundles and "
                         "ceilings; gauges that are not known",
                   .es = "hilos del lado de retorno; los de fuentes de Clase 2, que se limitan solas; baterías; calor de mazos y techos; "
                         "secciones desconocidas"},
    .run = findThin,
};

} // namespace doorloom
