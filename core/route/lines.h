#pragma once

#include "route/cost.h"

#include <cstdlib>
#include <vector>

namespace doorloom::routing {

// The lines of one axis on which conductors may lie, rising.
struct Lines {
    std::vector<double> at;
    std::vector<Cost> step;    // [i]: what it costs to go from line i − 1 to i
    std::vector<int> distance; // [i]: the sum of the steps up to i
    std::vector<int>
        nearFirst; // [i]: the first and last line nearer than the wanted gap; i itself where there is none
    std::vector<int> nearLast;

    int count() const { return static_cast<int>(at.size()); }
    int between(int a, int b) const { return std::abs(nth(distance, a) - nth(distance, b)); }
    int firstFrom(double place) const; // count() where there is none
    int nearest(double place) const;
    bool has(double place) const;
};

// In:  needed: lines that have to be there (edges of boxes, ports, pinned bends)
//      spare: how many to add outside; most: in the space between two needed ones
//      scale: cost of a unit of length
// Out: the needed ones, and others between them wherever they keep the wanted gap
Lines layLines(std::vector<double> needed, int spare, int most, double scale);

} // namespace doorloom::routing
