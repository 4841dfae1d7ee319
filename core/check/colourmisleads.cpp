#include "check/check.h"
#include "check/tell.h"

#include <algorithm>
#include <set>

// A red conductor on a source's minus, or a black one on its plus: the next person reads it the other way. The red core
// of a cable to a dry contact often lies on a minus, and tells nobody anything: cores mislead where both poles are in the
// cable, each in the other's colour.
namespace doorloom {

namespace {

constexpr Text redWhy = {.en = "{conductor} is red and lies on {pole}, a minus.", .es = "{conductor} es rojo y está en {pole}, un negativo."};
constexpr Text blackWhy = {.en = "{conductor} is black and lies on {pole}, a plus.", .es = "{conductor} es negro y está en {pole}, un positivo."};
constexpr Text remedy = {.en = "Exchange the colours of {conductor} and its neighbour, or mark both its ends.",
                         .es = "Intercambie los colores de {conductor} y su vecino, o marque sus dos extremos."};

// A pole of a DC source that is one net with this vertex in every position; of both sorts: a short, and no matter of colours.
const Feed* poleAt(const Facts& facts, Vertex vertex, Vertex Feed::*pole, Vertex Feed::*opposite)
{
    const Vertex net = facts.ask.netOf(vertex);
    const Feed* found = nullptr;
    for (const Feed& feed : facts.circuit().feeds) {
        if (feed.ac)
            continue;
        if (facts.ask.netOf(feed.*opposite) == net)
            return nullptr;
        if (facts.ask.netOf(feed.*pole) == net)
            found = &feed;
    }
    return found;
}

Finding findingFor(const Conductor& conductor, const std::string& name, const Text& why, const std::string& pole)
{
    Finding finding;
    finding.rule = "colour-misleads";
    finding.severity = Severity::Hint;
    finding.at = {{{}, {}, conductor.id, {}}};
    finding.why = {why, {{"conductor", name}, {"pole", pole}}};
    finding.remedy = {remedy, {{"conductor", name}}};
    return finding;
}

struct Misleading {
    const Conductor* conductor;
    const Landing *from, *to;
    bool isRed;
    Vertex pole;
};

std::vector<Misleading> misleadingAlone(const Facts& facts)
{
    std::vector<Misleading> found;
    for (const Conductor& conductor : facts.job.conductors) {
        const std::string colour = colourOf(facts.job, conductor);
        const Landing *from = landingOf(conductor.from), *to = landingOf(conductor.to);
        if ((colour != "RD" && colour != "BK") || !from || !to)
            continue;
        const auto vertex = facts.net.vertexOf(from->device, from->terminal);
        const bool isRed = colour == "RD";
        const Feed* feed = !vertex ? nullptr : isRed ? poleAt(facts, *vertex, &Feed::minus, &Feed::plus) : poleAt(facts, *vertex, &Feed::plus, &Feed::minus);
        if (feed)
            found.push_back({&conductor, from, to, isRed, isRed ? feed->minus : feed->plus});
    }
    return found;
}

std::vector<Finding> findMisleading(const Facts& facts)
{
    std::vector<Finding> findings;
    const std::vector<Misleading> all = misleadingAlone(facts);
    for (const Misleading& each : all) {
        const CableId cable = each.conductor->cable;
        const auto isOpposite = [&](const Misleading& other) { return other.conductor->cable == cable && other.isRed != each.isRed; };
        if (!cable || std::any_of(all.begin(), all.end(), isOpposite))
            findings.push_back(findingFor(*each.conductor, nameOf(facts.job, *each.from) + " – " + nameOf(facts.job, *each.to),
                                          each.isRed ? redWhy : blackWhy, nameOf(facts, each.pole)));
    }
    return findings;
}

} // namespace

extern const Check colourMisleads = {
    .code = "colour-misleads",
    .worst = Severity::Hint,
    .title = {.en = "Colour that misleads", .es = "Color que engaña"},
    .notCovered = {.en = "colours other than red and black; conductors behind a contact", .es = "colores distintos de rojo y negro; hilos tras un contacto"},
    .run = findMisleading,
};

} // namespace doorloom
