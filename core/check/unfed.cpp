#include "check/unfed.h"

#include <algorithm>

namespace doorloom {

UnfedLoad::UnfedLoad(const Facts& of, std::uint32_t element_)
    : facts(of), number(element_), element(of.circuit().elements[element_]), poles(polesNear(of, element.a))
{
}

std::string UnfedLoad::name() const
{
    const Spot at = place();
    return at.key.empty() ? tagOf(facts.job, at.device) : nameOf(facts.job, Landing{at.device, at.key});
}

bool UnfedLoad::meets(Vertex side, const Pole& pole) const
{
    return occurs(facts.ask.allJoined({{side, pole.vertex, opposite(pole)}}));
}

Vertex UnfedLoad::opposite(const Pole& pole) const
{
    const Feed& feed = facts.circuit().feeds[pole.feed];
    return pole.isPlus ? feed.minus : feed.plus;
}

std::optional<Vertex> UnfedLoad::cutSide() const
{
    for (Vertex side : {element.b, element.a})
        if (std::none_of(poles.begin(), poles.end(), [&](const Pole& pole) { return meets(side, pole); }))
            return side;
    return std::nullopt;
}

namespace {

// A core may be there already, its far end capped or waiting.
void landFreeEnds(const Facts& facts, Vertex side, Vertex pole, Remedies& remedies)
{
    const auto landing = facts.landingAt(pole);
    if (!landing)
        return;
    for (Vertex vertex : reachOf(facts, side))
        for (const Conductor* conductor : facts.conductorsAt(vertex))
            if (conductor->from.state != EndState::Landed || conductor->to.state != EndState::Landed)
                remedies.landFreeEnd(*conductor, *landing);
}

} // namespace

void UnfedLoad::landCutSide(Remedies& remedies) const
{
    const auto cut = cutSide();
    if (!cut)
        return;
    const Vertex other = *cut == element.b ? element.a : element.b;
    for (const Pole& pole : poles)
        if (meets(other, pole)) {
            landFreeEnds(facts, *cut, opposite(pole), remedies);
            remedies.land(*cut, opposite(pole));
        }
}

} // namespace doorloom
