#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"
#include "edit/operations.h"

#include <algorithm>
#include <map>

// What can be read from the landings alone: waiting ends, empty terminals, overfull clamps, tags used twice.
namespace doorloom {

namespace {

constexpr Text waitingWhy = {.en = "{conductor} has {count} that is not landed, capped or insulated.",
                             .es = "{conductor} tiene {count} sin conectar, sin tapar y sin aislar."};
constexpr Text oneEnd = {.en = "an end", .es = "un extremo"};
constexpr Text bothEnds = {.en = "both ends, each of them one", .es = "ambos extremos, cada uno"};
constexpr Text capWords = {.en = "Land the waiting end, or cap it as spare: {conductor}.",
                           .es = "Conecte el extremo pendiente, o tápelo como reserva: {conductor}."};
constexpr Text emptyWhy = {.en = "Nothing is landed on {terminals}, without which {device} does not work.",
                           .es = "No hay nada conectado en {terminals}; sin ello {device} no funciona."};
constexpr Text emptyRemedy = {.en = "Land {terminals}.", .es = "Conecte {terminals}."};
constexpr Text fullWhy = {.en = "{terminal} holds {count} conductors; its clamp takes {most}.",
                          .es = "{terminal} tiene {count} conductores; su borne admite {most}."};
constexpr Text fullRemedy = {.en = "Use a terminal strip or a splice, so that {terminal} holds no more than {most}.",
                             .es = "Use una regleta o un empalme, de modo que {terminal} no tenga más de {most}."};
constexpr Text twiceWhy = {.en = "The tag '{tag}' is on {count} conductors or cables: nobody can tell them apart.",
                           .es = "La etiqueta '{tag}' está en {count} conductores o cables: no se distinguen."};
constexpr Text twiceRemedy = {.en = "Give each of them a tag of its own, other than '{tag}'.",
                              .es = "Dé a cada uno una etiqueta propia, distinta de '{tag}'."};
constexpr Text conductorWords = {.en = "the conductor from {from} to {to}", .es = "el conductor de {from} a {to}"};
constexpr Text taggedWords = {.en = "conductor {tag}", .es = "el conductor {tag}"};
constexpr Text nowhere = {.en = "nowhere yet", .es = "ningún sitio aún"};

Message endName(const Job& job, const End& end)
{
    if (const Landing* landing = landingOf(end))
        return verbatim(nameOf(job, *landing));
    if (const SpliceId* splice = spliceOf(end))
        if (const Splice* row = job.splices.find(*splice))
            return verbatim(row->tag);
    return nowhere;
}

Message conductorName(const Job& job, const Conductor& conductor)
{
    if (!conductor.tag.empty())
        return {taggedWords, {{"tag", conductor.tag}}};
    return {conductorWords,
            {{"from", std::vector<Message>{endName(job, conductor.from)}},
             {"to", std::vector<Message>{endName(job, conductor.to)}}}};
}

std::vector<Finding> findWaiting(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Conductor& conductor : facts.job.conductors) {
        const int waiting = (conductor.from.state == EndState::Waiting) + (conductor.to.state == EndState::Waiting);
        if (waiting == 0)
            continue;
        Finding finding;
        finding.rule = "waiting-end";
        finding.severity = Severity::Doubt;
        finding.at = {{{}, {}, conductor.id, {}}};
        const std::vector<Message> name{conductorName(facts.job, conductor)};
        finding.why = {waitingWhy, {{"conductor", name}, {"count", std::vector<Message>{waiting == 1 ? oneEnd : bothEnds}}}};
        finding.remedy = {capWords, {{"conductor", name}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

std::vector<Finding> findEmpty(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Device& device : facts.job.devices) {
        const Kind* kind = kindOf(facts.job, device);
        Finding finding;
        std::vector<Message> names;
        for (const Terminal* terminal : kind ? terminalsOf(*kind) : std::vector<const Terminal*>{}) {
            const bool required = std::any_of(terminal->required.begin(), terminal->required.end(),
                                              [&](const Condition& when) { return holds(device, when); });
            const auto vertex = facts.net.vertexOf(device.id, terminal->key);
            if (!required || !vertex || facts.isLanded(*vertex))
                continue;
            finding.at.push_back(terminalSpot({device.id, terminal->key}));
            names.push_back(verbatim(nameOf(facts.job, Landing{device.id, terminal->key})));
        }
        if (names.empty())
            continue;
        finding.rule = "empty-terminal";
        finding.why = {emptyWhy, {{"terminals", names}, {"device", device.tag}}};
        finding.remedy = {emptyRemedy, {{"terminals", names}}};
        findings.push_back(std::move(finding));
    }
    return findings;
}

Finding overfull(Spot at, const std::string& name, std::size_t count, int most)
{
    Finding finding;
    finding.rule = "overfilled-terminal";
    finding.severity = Severity::Doubt;
    finding.at = {std::move(at)};
    finding.why = {fullWhy, {{"terminal", name}, {"count", std::to_string(count)}, {"most", std::to_string(most)}}};
    finding.remedy = {fullRemedy, {{"terminal", name}, {"most", std::to_string(most)}}};
    return finding;
}

// A conductor with both its ends on one clamp fills it twice.
std::map<Vertex, std::size_t> landingCounts(const Facts& facts)
{
    std::map<Vertex, std::size_t> counts;
    for (const Conductor& conductor : facts.job.conductors)
        for (const End* end : {&conductor.from, &conductor.to})
            if (const Landing* landing = landingOf(*end))
                if (const auto vertex = facts.net.vertexOf(landing->device, landing->terminal))
                    ++counts[*vertex];
    return counts;
}

std::vector<Finding> findOverfull(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const auto& [vertex, count] : landingCounts(facts)) {
        const Landing landing = *facts.landingAt(vertex);
        const int most = findTerminal(*kindOf(facts.job, landing.device), landing.terminal)->clampCapacity;
        if (count > static_cast<std::size_t>(most))
            findings.push_back(overfull(terminalSpot(landing), nameOf(facts.job, landing), count, most));
    }
    for (const Splice& splice : facts.job.splices)
        if (const std::size_t count = conductorsOn(facts.job, splice.id).size();
            count > static_cast<std::size_t>(splice.capacity))
            findings.push_back(overfull({{}, splice.tag, {}, {}}, splice.tag, count, splice.capacity));
    return findings;
}

std::vector<Finding> findTwice(const Facts& facts)
{
    std::map<std::string, std::vector<Spot>> tagged;
    for (const Conductor& conductor : facts.job.conductors)
        if (!conductor.tag.empty())
            tagged[conductor.tag].push_back({{}, {}, conductor.id, {}});
    for (const Cable& cable : facts.job.cables)
        if (!cable.tag.empty())
            tagged[cable.tag].push_back({{}, {}, {}, cable.id});
    std::vector<Finding> findings;
    for (const auto& [tag, spots] : tagged)
        if (spots.size() > 1) {
            Finding finding;
            finding.rule = "duplicate-tag";
            finding.severity = Severity::Doubt;
            finding.at = spots;
            finding.why = {twiceWhy, {{"tag", tag}, {"count", std::to_string(spots.size())}}};
            finding.remedy = {twiceRemedy, {{"tag", tag}}};
            findings.push_back(std::move(finding));
        }
    return findings;
}

} // namespace

extern const Check waitingEnd = {
    .code = "waiting-end",
    .worst = Severity::Doubt,
    .title = {.en = "Waiting core end", .es = "Extremo de hilo pendiente"},
    .notCovered = {.en = "ends that are capped or insulated in the job and not on site",
                   .es = "extremos tapados o aislados en el trabajo pero no en la obra"},
    .run = findWaiting,
};

extern const Check emptyTerminal = {
    .code = "empty-terminal",
    .worst = Severity::Fault,
    .title = {.en = "Empty required terminal", .es = "Borne necesario vacío"},
    .notCovered = {.en = "terminals that only some functions need", .es = "bornes que solo necesitan algunas funciones"},
    .run = findEmpty,
};

extern const Check overfilledTerminal = {
    .code = "overfilled-terminal",
    .worst = Severity::Doubt,
    .title = {.en = "Overfilled terminal", .es = "Borne con demasiados conductores"},
    .notCovered = {.en = "gauges that do not fit the clamp", .es = "secciones que no caben en el borne"},
    .run = findOverfull,
};

extern const Check duplicateTag = {
    .code = "duplicate-tag",
    .worst = Severity::Doubt,
    .title = {.en = "Tag used twice", .es = "Etiqueta repetida"},
    .notCovered = {.en = "tags of places and splices", .es = "etiquetas de lugares y empalmes"},
    .run = findTwice,
};

} // namespace doorloom
