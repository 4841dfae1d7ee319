#include "graph/circuit.h"

#include <algorithm>

namespace doorloom {

bool Guard::always() const
{
    return std::any_of(anyOf.begin(), anyOf.end(), [](const Term& term) { return term.empty(); });
}

bool holds(const Guard& guard, const Position& position)
{
    return std::any_of(guard.anyOf.begin(), guard.anyOf.end(), [&](const Term& term) {
        return std::all_of(term.begin(), term.end(),
                           [&](const Atom& atom) { return (atom.mask >> position[atom.moved]) & 1u; });
    });
}

namespace {

void hold(Guard& guard, MovedIndex moved, ThrowIndex thrown)
{
    std::erase_if(guard.anyOf, [&](Term& term) {
        const bool fails = std::any_of(term.begin(), term.end(),
                                       [&](const Atom& atom) { return atom.moved == moved && !((atom.mask >> thrown) & 1u); });
        std::erase_if(term, [&](const Atom& atom) { return atom.moved == moved; });
        return fails;
    });
}

} // namespace

Position atRest(const Circuit& circuit)
{
    Position position;
    for (const MovedOperator& moved : circuit.operators)
        position.push_back(moved.idle);
    return position;
}

Circuit held(Circuit circuit, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws)
{
    for (const auto& [moved, thrown] : throws) {
        for (Joint& joint : circuit.joints)
            hold(joint.guard, moved, thrown);
        for (Feed& feed : circuit.feeds)
            hold(feed.live, moved, thrown);
        for (Drive& drive : circuit.drives)
            hold(drive.powered, moved, thrown);
        std::erase_if(circuit.drives, [&, held = moved](const Drive& drive) { return drive.moved == held; });
    }
    return circuit;
}

} // namespace doorloom
