#include "check/check.h"
#include "check/tell.h"

#include <algorithm>

// A conductor that leads nowhere: alone on a splice, or capped at one end while the other is on a source's pole.
namespace doorloom {

namespace {

constexpr Text aloneWhy = {.en = "Splice {splice} holds one conductor alone: it leads nowhere.", .es = "El empalme {splice} tiene un solo hilo: no lleva a nada."};
constexpr Text aloneRemedy = {.en = "Bring the other conductors to {splice}, or take it out and cap the end.",
                              .es = "Lleve los demás hilos a {splice}, o quítelo y tape el extremo."};
constexpr Text liveWhy = {.en = "A conductor on {terminal} is live and ends capped: {terminal} meets {pole}.",
                          .es = "Un hilo en {terminal} tiene tensión y acaba tapado: {terminal} llega a {pole}."};
constexpr Text liveRemedy = {.en = "Lift the spare from {terminal} and cap it at both ends.", .es = "Suelte la reserva de {terminal} y tápela en ambos extremos."};

bool isCapped(const End& end) { return end.state == EndState::Spare || end.state == EndState::Insulated; }

// The landed end of a conductor whose other end is capped; a drain is insulated on purpose.
const Landing* landedEndOfSpare(const Facts& facts, const Conductor& conductor)
{
    const Core* core = coreOf(facts.job, conductor);
    if (core && core->drain)
        return nullptr;
    if (isCapped(conductor.from))
        return landingOf(conductor.to);
    return isCapped(conductor.to) ? landingOf(conductor.from) : nullptr;
}

const Pole* poleMetBy(const Facts& facts, Vertex vertex, const std::vector<Pole>& poles)
{
    const std::vector<Vertex> met = reachOf(facts, vertex);
    const auto found = std::find_if(poles.begin(), poles.end(), [&](const Pole& pole) { return std::binary_search(met.begin(), met.end(), pole.vertex); });
    return found == poles.end() ? nullptr : &*found;
}

Finding findingFor(std::string_view reason, Spot at, Message why, Message remedy)
{
    Finding finding;
    finding.rule = "lone-end";
    finding.reason = reason;
    finding.severity = Severity::Doubt;
    finding.at = {std::move(at)};
    finding.why = std::move(why);
    finding.remedy = std::move(remedy);
    return finding;
}

std::vector<Finding> findLoneEnds(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Splice& splice : facts.job.splices)
        if (conductorsOn(facts.job, splice.id).size() == 1)
            findings.push_back(findingFor("alone on a splice", {{}, splice.tag, {}, {}}, {aloneWhy, {{"splice", splice.tag}}},
                                          {aloneRemedy, {{"splice", splice.tag}}}));
    for (const Conductor& conductor : facts.job.conductors) {
        const Landing* landing = landedEndOfSpare(facts, conductor);
        const auto vertex = landing ? facts.net.vertexOf(landing->device, landing->terminal) : std::nullopt;
        if (!vertex)
            continue;
        const std::vector<Pole> poles = polesNear(facts, *vertex);
        if (const Pole* pole = poleMetBy(facts, *vertex, poles))
            findings.push_back(findingFor("live spare", terminalSpot(*landing),
                                          {liveWhy, {{"terminal", nameOf(facts, *vertex)}, {"pole", nameOf(facts, pole->vertex)}}},
                                          {liveRemedy, {{"terminal", nameOf(facts, *vertex)}}}));
    }
    return findings;
}

} // namespace

extern const Check loneEnd = {
    .code = "lone-end",
    .worst = Severity::Doubt,
    .title = {.en = "Conductor that leads nowhere", .es = "Hilo que no lleva a nada"},
    .notCovered = {.en = "volts that a dry input puts on a spare", .es = "tensión que una entrada seca pone en una reserva"},
    .run = findLoneEnds,
};

} // namespace doorloom
