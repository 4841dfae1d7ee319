#pragma once

#include "graph/circuit.h"

#include <cstdint>
#include <vector>

namespace doorloom {

// Plain enumeration, many positions at once: each bit of a word is one position. The first operators are spread
// over the bits, the others count on from block to block; position number = block · lanes + bit, the first
// operator counting fastest.
// Cost: a joint costs one step for up to 64 positions.
class Lanes {
public:
    Lanes(const Circuit& circuit, const std::vector<MovedIndex>& operators);

    unsigned lanes() const { return lanes_; }
    std::uint64_t all() const { return all_; }             // the bits in use
    std::uint64_t holding(const Guard& guard) const;       // positions of this block in which it holds
    bool next();                                           // the next block; false after the last

private:
    std::uint64_t holding(const Atom& atom) const;

    const Circuit& circuit_;
    std::vector<MovedIndex> counted_;                        // from block to block
    std::vector<ThrowIndex> at_;                             // by operator
    std::vector<std::vector<std::uint64_t>> spread_;         // by operator and throw; empty: counted, or not ours
    unsigned lanes_ = 1;
    std::uint64_t all_ = 1;
};

// A few vertices and the joints between them, closed in some positions of a block.
struct LaneNet {
    struct Joint {
        Vertex a, b;
        std::uint64_t closed;
    };
    Vertex vertices = 0;
    std::vector<Joint> joints;

    // Positions in which x and y are one net. `reached` is room to work in; `steps` counts joints looked at.
    std::uint64_t joined(Vertex x, Vertex y, std::uint64_t all, std::vector<std::uint64_t>& reached,
                         std::uint64_t& steps) const;
};

} // namespace doorloom
