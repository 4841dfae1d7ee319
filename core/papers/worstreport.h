#pragma once

#include "graph/netlist.h"
#include "model/job.h"
#include "verdict/verdict.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

// The worst of each reading over all positions, as rows, for people and for programs.
namespace doorloom {

using NamedPosition = std::vector<std::pair<std::string, std::string>>; // operators and throws that are not as at rest
NamedPosition namedPosition(const Job& job, const Netlist& net, const Position& position);

struct ReadingAt {
    double value = 0; // volts or amperes
    NamedPosition position;
};

struct WorstRow {
    Landing from, to;
    std::optional<ReadingAt> lowest, highest; // volts: of a load, the lowest while it is fed; of a source: amperes, highest alone
    std::optional<double> most;               // of a source: its amperes limit
};

struct WorstReport {
    std::vector<WorstRow> sources, loads, asked;
    std::optional<NamedPosition> floatingIn, unreadableIn; // of what was asked
    Coverage coverage;
    std::size_t conductors = 0, withoutOhms = 0;
};

// In:   between: two terminals whose reading alone is asked; else all supplies and loads
//       budget: steps
WorstReport worstReport(const Job& job, const Netlist& net, std::uint64_t budget, const std::optional<std::pair<Landing, Landing>>& between);

std::string worstText(const Job& job, const WorstReport& report, const std::string& file, Language language);
std::string worstJson(const Job& job, const WorstReport& report); // DEVELOPERS.md describes it

} // namespace doorloom
