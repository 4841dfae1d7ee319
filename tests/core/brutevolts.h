#pragma once

#include "graph/netlist.h"
#include "model/job.h"

#include <optional>
#include <string>
#include <vector>

namespace doorloom {

// Volts and amperes of one position, densely, all states of the diodes tried one after another. Written without anything of
// core/solve: ohms of copper come out of published tables, and what has no ohms (joints, sources, conducting diodes) gets a
// ten-millionth, so that what lies side by side shares by itself. Slow: for three dozen vertices and a few diodes.
class BruteVolts {
public:
    BruteVolts(const Job& job, const Netlist& net);

    bool isBare(std::uint32_t joint) const { return ohmsOfJoint_[joint] == 0; } // no ohms are known of it

    enum class Level { Lowest, Nominal, Highest };
    struct Read {
        bool isCarried = true; // false: the line leaves a load of constant current or power too little, and nothing is read
        std::vector<double> volts;
        std::vector<Vertex> piece;                // the least vertex that hangs together with this one
        std::vector<double> throughJoint, outOf; // by joint, from a to b; by feed
        std::optional<double> between(Vertex x, Vertex y) const
        {
            return piece[x] == piece[y] ? std::optional(volts[x] - volts[y]) : std::nullopt;
        }
        double across(const Element& element) const { return between(element.a, element.b).value_or(0); }
    };
    // Nothing: no figure means anything, something carries without limit.
    std::optional<Read> read(const Position& position, Level level) const;

private:
    struct Branch { // amperes from a to b = siemens × volts + constant
        Vertex a, b;
        long double siemens, constant;
        bool isLeak = false;
    };
    using Branches = std::vector<Branch>;
    struct Solved {
        std::vector<long double> volts;
        Branches branches; // those of the diodes stand last
        long double through(std::size_t branch) const
        {
            const Branch& at = branches[branch];
            return at.siemens * (volts[at.a] - volts[at.b]) + at.constant;
        }
    };

    Branches branchesIn(const Position& position, Level level) const;
    std::vector<Vertex> piecesOf(const Branches& branches) const;
    std::vector<Vertex> withoutLeaks(Branches branches) const;
    std::vector<long double> dense(const Branches& branches) const;
    std::optional<Solved> withDiodes(Branches branches) const;
    std::optional<Solved> withDraws(const Branches& plain, bool& isCarried) const;
    Branches asOhms(Branches plain) const;

    struct Draw {
        std::uint32_t element;
        LoadLaw law;
        double amount, ohms, least;
    };
    const Circuit& circuit_;
    std::vector<double> ohmsOfJoint_; // 0: a joint
    std::vector<std::vector<double>> voltsOfFeed_; // by level
    std::vector<double> ohmsOfElement_;            // 0: it carries nothing by itself
    std::vector<double> wettingVolts_;
    std::vector<Draw> draws_;
};

} // namespace doorloom
