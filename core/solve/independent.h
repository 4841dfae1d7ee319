#pragma once

#include "solve/readings.h"

#include <vector>

namespace doorloom {

// Parts of a circuit that meet at nothing but the poles of sources, whose volts against each other are held: what happens in
// one changes no reading in another. A coil belongs with its contacts. (Sources of equal volts that contacts put side by side
// with no ohms at all between share their amperes evenly, those for other parts too: the volts alone are then apart.)
struct Independent {
    static constexpr std::uint32_t pole = ~0u;
    std::vector<std::uint32_t> ofVertex;   // the part's number; pole: one net with a pole of a source that is live at rest
    std::vector<std::uint32_t> ofOperator; // the part's number; an operator without contacts has one of its own
    std::uint32_t parts = 0;
    bool heldApart = false;    // some sources are not tied to others: what ties them by loads is one part
    std::uint32_t between = 0; // that part, where there is one
};

// AsJoints: conductors that are always there have no ohms, so that whatever meets at rails is apart: then a part still
// changes the readings in others by what drops in these.
enum class Rails { WithTheirOhms, AsJoints };

// Cost: linear
Independent independentParts(const Meter& meter, Rails rails);

} // namespace doorloom
