#pragma once

#include "graph/circuit.h"

#include <vector>

namespace doorloom {

// All throws of some operators, counted through; calls `visit` until it returns false.
// The position is changed in place; other operators stay.
template <class Visit>
void forEachPosition(const Circuit& circuit, const std::vector<MovedIndex>& operators, Position& position, Visit visit)
{
    for (MovedIndex each : operators)
        position[each] = 0;
    while (visit()) {
        std::size_t i = 0;
        while (i < operators.size() && ++position[operators[i]] == circuit.operators[operators[i]].throws)
            position[operators[i++]] = 0;
        if (i == operators.size())
            return;
    }
}

} // namespace doorloom
