#include "check/cablecores.h"
#include "check/check.h"
#include "check/tell.h"

#include <algorithm>

// Cores that must not lie beside each other: mains and low voltage in one cable; data and a lock's feed without a shield.
namespace doorloom {

namespace {

constexpr Text mainsWhy = {.en = "{cable} carries mains to {mains} and low voltage to {low}: one nick puts mains on everything that a hand touches.",
                           .es = "{cable} lleva red a {mains} y baja tensión a {low}: un corte pone la red en todo lo que se toca."};
constexpr Text mainsRemedy = {.en = "Pull a cable of its own for {low}, apart from the mains, which is a licensed electrician's.",
                              .es = "Tienda un cable propio para {low}, separado de la red, que es de un electricista autorizado."};
constexpr Text dataWhy = {.en = "{cable} has no shield and carries data to {data} beside the feed of {lock}: each switching is read as data.",
                          .es = "{cable} no tiene pantalla y lleva datos a {data} junto a la alimentación de {lock}: cada maniobra se lee como dato."};
constexpr Text dataRemedy = {.en = "Use a shielded cable for {data}, or pull one of its own for {lock}.",
                             .es = "Use un cable apantallado para {data}, o tienda uno propio para {lock}."};

std::string namesOfEnds(const Job& job, const Conductor& conductor)
{
    std::string text;
    for (const End* end : {&conductor.from, &conductor.to})
        if (const Landing* landing = landingOf(*end))
            text += (text.empty() ? "" : " – ") + nameOf(job, *landing);
    return text;
}

Finding findingFor(const Cable& cable, std::string_view rule, Severity severity)
{
    Finding finding;
    finding.rule = rule;
    finding.severity = severity;
    finding.at = {{{}, {}, {}, cable.id}};
    return finding;
}

// Most jobs have no such part anywhere, and need not be walked.
template <class Body> bool isInSomeKind(const Job& job)
{
    return std::any_of(job.kinds.begin(), job.kinds.end(), [](const JobKind& row) {
        return std::any_of(row.kind.parts.begin(), row.kind.parts.end(), [](const Part& part) { return std::holds_alternative<Body>(part.body); });
    });
}

// A landed core that is neither mains nor earth; null: none.
const Conductor* lowVoltageIn(const Job& job, CableId cable, const std::vector<const Conductor*>& mains)
{
    const auto earthed = coresOn(job, cable, isEarth);
    for (const Conductor* core : coresOn(job, cable, [](const Device&, const Kind&, const Key&) { return true; }))
        if (std::find(mains.begin(), mains.end(), core) == mains.end() && std::find(earthed.begin(), earthed.end(), core) == earthed.end())
            return core;
    return nullptr;
}

std::vector<Finding> findMains(const Job& job)
{
    std::vector<Finding> findings;
    if (!isInSomeKind<MainsPart>(job))
        return findings;
    for (const Cable& cable : job.cables) {
        const auto mains = coresOn(job, cable.id, isMains);
        const Conductor* low = mains.empty() ? nullptr : lowVoltageIn(job, cable.id, mains);
        if (!low)
            continue;
        Finding finding = findingFor(cable, "mains-beside", Severity::Danger);
        finding.why = {mainsWhy, {{"cable", cable.tag}, {"mains", namesOfEnds(job, *mains.front())}, {"low", namesOfEnds(job, *low)}}};
        finding.remedy = {mainsRemedy, {{"low", namesOfEnds(job, *low)}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

std::vector<Finding> findData(const Job& job)
{
    std::vector<Finding> findings;
    if (!isInSomeKind<SignalPart>(job))
        return findings;
    for (const Cable& cable : job.cables) {
        const CableType* type = job.cableTypes.find(cable.type);
        if (!type || type->shielded)
            continue;
        const auto data = coresOn(job, cable.id, isSignal);
        const auto locks = data.empty() ? data : coresOn(job, cable.id, isOnLoadOfLock);
        if (locks.empty())
            continue;
        Finding finding = findingFor(cable, "data-beside-power", Severity::Doubt);
        const std::string dataName = namesOfEnds(job, *data.front()), lockName = namesOfEnds(job, *locks.front());
        finding.why = {dataWhy, {{"cable", cable.tag}, {"data", dataName}, {"lock", lockName}}};
        finding.remedy = {dataRemedy, {{"data", dataName}, {"lock", lockName}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

} // namespace

extern const Check mainsBeside = {
    .code = "mains-beside",
    .worst = Severity::Danger,
    .title = {.en = "Mains and low voltage in one cable", .es = "Red y baja tensión en un mismo cable"},
    .notCovered = {.en = "mains behind a contact or a strip; boxes that hold both, and their barriers", .es = "red tras un contacto o una regleta; cajas con ambas y sus separadores"},
    .runOnJob = findMains,
};

extern const Check dataBesidePower = {
    .code = "data-beside-power",
    .worst = Severity::Doubt,
    .title = {.en = "Data beside a lock's feed without a shield", .es = "Datos junto a la alimentación de una cerradura sin pantalla"},
    .notCovered = {.en = "cores that reach reader or lock through strips or transfers; cables side by side",
                   .es = "hilos que llegan al lector o a la cerradura por regletas o pasos; cables contiguos"},
    .runOnJob = findData,
};

} // namespace doorloom
