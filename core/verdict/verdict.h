#pragma once

#include "graph/circuit.h"

#include <cstdint>
#include <vector>

// Yes/no questions over all positions that can happen, with the fewest throws in which they are so.
namespace doorloom {

struct ThrowAt {
    MovedIndex moved = 0;
    ThrowIndex thrown = 0;
    friend auto operator<=>(const ThrowAt&, const ThrowAt&) = default;
};

// Some throws, sorted by operator. A witness: the answer is yes whatever the operators that it leaves out do
// (of joined, shorted and the like: with their contacts open), and a position with these throws can happen.
// Empty: always.
using Cube = std::vector<ThrowAt>;

enum class Answer { Never, Some, Always, Unknown };

struct Coverage {
    double positions = 0, covered = 0; // of the operators that matter; may pass 64 bits
    std::uint64_t steps = 0;           // joints and elements looked at

    void add(const Coverage& other);
};

struct Verdict {
    Answer answer = Answer::Never;
    std::vector<Cube> cubes; // all with the fewest throws, sorted; at most mostCubes
    bool more = false;       // there are others
    Coverage coverage;
};

inline constexpr std::size_t mostCubes = 8;
inline constexpr std::uint64_t windowBudget = 2'000'000, commandBudget = 200'000'000;

} // namespace doorloom
