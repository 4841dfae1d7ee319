#include "check/check.h"
#include "check/tell.h"

#include "solve/gauge.h"

#include <map>

// Conductors too thin or too thick for the terminal that they are on.
namespace doorloom {

namespace {

constexpr Text thin = {.en = "{gauge} is too thin for {terminal}, which holds {least} to {most}: it falls out.",
                       .es = "{gauge} es demasiado fino para {terminal}, que admite de {least} a {most}: se suelta."};
constexpr Text thick = {.en = "{gauge} is too thick for {terminal}, which holds {least} to {most}: it does not go in whole.",
                        .es = "{gauge} es demasiado grueso para {terminal}, que admite de {least} a {most}: no entra entero."};
constexpr Text fit = {.en = "Land a conductor of {least} to {most} on {terminal}, with a splice to the other one.",
                      .es = "Conecte en {terminal} un hilo de {least} a {most}, con un empalme al otro."};

constexpr double sameSize = 1.02; // sizes that differ by less are one

// Areas of gauges already met: the same few stand on most conductors.
class Areas {
public:
    const std::optional<double>& of(const std::string& gauge)
    {
        const auto [found, isNew] = known_.try_emplace(gauge);
        if (isNew)
            found->second = squareMillimetresOf(gauge);
        return found->second;
    }

private:
    std::map<std::string, std::optional<double>> known_;
};

struct Misfit {
    std::string gauge;
    bool isThin = false;
};

std::optional<Misfit> misfitOf(Areas& areas, const std::string& gauge, const Terminal& terminal)
{
    const auto &area = areas.of(gauge), &least = areas.of(terminal.wire.thinnest), &most = areas.of(terminal.wire.thickest);
    if (!area || terminal.lead) // a flying wire is joined, not clamped
        return std::nullopt;
    if (least && *area * sameSize < *least)
        return Misfit{gauge, true};
    if (most && *area > *most * sameSize)
        return Misfit{gauge, false};
    return std::nullopt;
}

Finding findingFor(const Facts& facts, const Landing& landing, const Terminal& terminal, const Misfit& misfit)
{
    Finding finding;
    finding.rule = "wire-range";
    finding.reason = misfit.isThin ? "too thin" : "too thick";
    finding.at = {terminalSpot(landing)};
    const std::string name = nameOf(facts.job, landing);
    finding.why = {misfit.isThin ? thin : thick,
                   {{"gauge", misfit.gauge}, {"terminal", name}, {"least", terminal.wire.thinnest}, {"most", terminal.wire.thickest}}};
    finding.remedy = {fit, {{"terminal", name}, {"least", terminal.wire.thinnest}, {"most", terminal.wire.thickest}}};
    return finding;
}

std::vector<Finding> findMisfits(const Facts& facts)
{
    Areas areas;
    std::map<std::pair<DeviceId, Key>, Finding> byTerminal; // one for each
    for (const Conductor& conductor : facts.job.conductors) {
        const std::string gauge = gaugeOf(facts.job, conductor);
        if (gauge.empty())
            continue;
        for (const End* end : {&conductor.from, &conductor.to}) {
            const Landing* landing = landingOf(*end);
            const Kind* kind = landing ? kindOf(facts.job, landing->device) : nullptr;
            const Terminal* terminal = kind ? findTerminal(*kind, landing->terminal) : nullptr;
            if (!terminal)
                continue;
            if (const auto misfit = misfitOf(areas, gauge, *terminal))
                byTerminal.try_emplace({landing->device, landing->terminal}, findingFor(facts, *landing, *terminal, *misfit));
        }
    }
    std::vector<Finding> findings;
    for (auto& [at, finding] : byTerminal)
        findings.push_back(std::move(finding));
    return findings;
}

} // namespace

extern const Check wireRange = {
    .code = "wire-range",
    .worst = Severity::Fault,
    .title = {.en = "Conductor that the terminal does not hold", .es = "Hilo que el borne no sujeta"},
    .notCovered = {.en = "two conductors of unlike gauge in one clamp; gauges or ranges that are not known; splices and flying wires",
                   .es = "dos hilos de sección distinta en un borne; secciones o márgenes desconocidos; empalmes e hilos volantes"},
    .run = findMisfits,
};

} // namespace doorloom
