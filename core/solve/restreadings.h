#pragma once

#include "base/text.h"
#include "graph/netlist.h"
#include "model/job.h"
#include "solve/network.h"

#include <optional>
#include <string>
#include <vector>

namespace doorloom {

// What a meter reads at rest at each terminal of a job, against a minus of the source that its potential hangs on.
// Owns: all that it needs; the job may go.   Cost: one netlist and one solution, linear but for what does not fold
class RestReadings {
public:
    explicit RestReadings(const Job& job);

    // "23.97 V against PS1:− at rest"; empty: no such terminal, or coils never settle at rest.
    Message at(const Landing& terminal) const;
    // The minus that it is read against; nothing: it floats, or the minus is no terminal.
    std::optional<Landing> minusFor(const Landing& terminal) const;

private:
    Netlist net_;
    std::optional<Solution> solution_;           // nothing: no figure means anything
    std::vector<std::uint32_t> feedOf_;          // by piece: a feed whose minus is in it; none: it floats
    std::vector<std::string> minusNames_;        // by feed
    std::vector<std::optional<Landing>> minuses_; // by feed

    std::uint32_t feedAt(const Landing& terminal, std::optional<Vertex>& vertex) const;
};

} // namespace doorloom
