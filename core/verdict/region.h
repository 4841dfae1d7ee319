#pragma once

#include "graph/circuit.h"

#include <cstdint>
#include <optional>
#include <vector>

// What may be looked at for one question: the joints, diodes, resistors and sources that can lie on a path or
// cycle which the question asks about. Vertices are numbered anew, those that are always joined as one.
namespace doorloom {

struct RegionJoint {
    Vertex a, b;
    std::uint32_t joint; // of the circuit
};
struct RegionEdge { // a diode from a to b, a resistor, another source from a (minus) to b (plus)
    Vertex a, b;
    enum class Sort { Diode, Resistor, Source } sort;
    std::uint32_t number; // of the circuit's diodes, elements or feeds
};

struct Region {
    Vertex vertices = 0;
    std::vector<RegionJoint> joints; // guarded ones, and those put there by jumpers
    std::vector<RegionEdge> edges;
    std::vector<Vertex> ends;           // the question's own vertices, in its order
    std::vector<MovedIndex> operators;  // that guard the joints, sorted
    bool possible = true;               // false: no path or cycle even with every contact closed
};

// The circuit with always-joined vertices made one, and its edges by vertex. What jumpers join stays an edge, so
// that a question can take it out.
class Nets {
public:
    explicit Nets(const Circuit& circuit);

    Vertex netOf(Vertex vertex) const { return net_[vertex]; }
    // Would they be one net with every contact closed?
    bool couldMeet(Vertex x, Vertex y) const { return reach_[net_[x]] == reach_[net_[y]]; }
    bool sameIsland(Vertex x, Vertex y) const { return island_[net_[x]] == island_[net_[y]]; }
    std::uint32_t islandOf(Vertex vertex) const { return island_[net_[vertex]]; }
    const std::vector<std::uint32_t>& feedsOfIsland(std::uint32_t island) const { return feeds_[island]; }

    struct Wanted {
        bool diodes = false, sources = false;
        double resistorsUpToOhms = -1; // below 0: none
        const std::vector<std::uint32_t>* without = nullptr; // joints taken out
        std::uint32_t notFeed = ~0u;
        std::optional<Vertex> avoiding{}; // a net that no path may pass
    };
    // The block of the virtual edges (start[i], start[i+1]) for even i, from a walk that starts at `starts` and
    // goes no further at `stops`. Cost: what the walk reaches.
    Region regionOf(const std::vector<Vertex>& virtualEnds, const std::vector<Vertex>& starts,
                    const std::vector<Vertex>& stops, const Wanted& wanted) const;

    // A region cut into the pieces that hang together without its first two ends.
    static std::vector<Region> parallelParts(const Region& region, const Circuit& circuit);

private:
    struct Edge {
        Vertex other;
        enum class Sort : std::uint8_t { Joint, Diode, Resistor, Source } sort;
        bool forward; // this vertex is a (anode, minus)
        std::uint32_t number;
    };
    bool taken(const Edge& edge, const Wanted& wanted) const;

    const Circuit& circuit_;
    std::vector<Vertex> net_;                  // by vertex
    std::vector<std::vector<Edge>> edgesAt_;   // by net
    std::vector<std::uint32_t> island_;        // by net
    std::vector<std::uint32_t> reach_;         // by net: what is one with every contact closed
    std::vector<std::vector<std::uint32_t>> feeds_; // by island
};

// Operators of a guard, and of a region's joints, sorted, each once.
void addOperators(std::vector<MovedIndex>& to, const Guard& guard);
void sortOperators(std::vector<MovedIndex>& operators);

} // namespace doorloom
