#pragma once

#include "graph/circuit.h"

#include <algorithm>
#include <numeric>
#include <vector>

namespace doorloom {

// Disjoint sets of small numbers.   Cost: all but constant each.
class JoinedSets {
public:
    explicit JoinedSets(std::size_t count) : parent_(count) { std::iota(parent_.begin(), parent_.end(), std::uint32_t{0}); }

    std::uint32_t find(std::uint32_t member)
    {
        while (parent_[member] != member)
            member = parent_[member] = parent_[parent_[member]];
        return member;
    }
    // The lower one stays the root, so that roots do not hang on the order of joining.
    void join(std::uint32_t a, std::uint32_t b)
    {
        a = find(a);
        b = find(b);
        parent_[std::max(a, b)] = std::min(a, b);
    }
    // The set of each, as a number: counted in the order of their first members.
    std::vector<std::uint32_t> numbers()
    {
        std::vector<std::uint32_t> number(parent_.size());
        std::uint32_t next = 0;
        for (std::uint32_t member = 0; member < number.size(); ++member)
            number[member] = find(member) == member ? next++ : number[find(member)];
        return number;
    }

private:
    std::vector<std::uint32_t> parent_;
};

} // namespace doorloom
