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

} // namespace doorloom
