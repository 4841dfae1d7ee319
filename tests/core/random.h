#pragma once

#include <gtest/gtest.h>

#include <cstdint>
#include <cstdlib>
#include <functional>
#include <string>
#include <vector>

namespace doorloom {

// The same numbers for the same seed on every machine (the standard library's distributions promise less).
// Source: the mixing steps of splitmix64, published by S. Vigna, from memory.
class Random {
public:
    // The seed is mixed too: otherwise the numbers of one seed would be those of the one before, less the first.
    explicit Random(std::uint64_t seed) : state_(mixed(seed + 1)) {}

    std::uint64_t bits() { return mixed(state_ += 0x9e3779b97f4a7c15u); }

    // 0 … count − 1; count is at least 1.
    std::size_t below(std::size_t count) { return static_cast<std::size_t>(bits() % count); }
    int between(int least, int most)
    {
        return least + static_cast<int>(below(static_cast<std::size_t>(most - least + 1)));
    }
    bool oneIn(std::size_t times) { return below(times) == 0; }

    template <class Thing> const Thing& oneOf(const std::vector<Thing>& things)
    {
        return things[below(things.size())];
    }

    template <class Thing> void shuffle(std::vector<Thing>& things)
    {
        for (std::size_t left = things.size(); left > 1; --left)
            std::swap(things[left - 1], things[below(left)]);
    }

private:
    static std::uint64_t mixed(std::uint64_t bits)
    {
        bits = (bits ^ (bits >> 30)) * 0xbf58476d1ce4e5b9u;
        bits = (bits ^ (bits >> 27)) * 0x94d049bb133111ebu;
        return bits ^ (bits >> 31);
    }

    std::uint64_t state_;
};

// Runs a property for the seeds 1 … times, or for the one in the environment variable SEED alone.
// A failing seed is named, and is the last one that runs.
inline void forEachSeed(std::uint64_t times, const std::function<void(Random&)>& property)
{
    const char* only = std::getenv("SEED");
    const std::uint64_t first = only ? std::strtoull(only, nullptr, 10) : 1;
    const std::uint64_t last = only ? first : times;
    for (std::uint64_t seed = first; seed <= last; ++seed) {
        SCOPED_TRACE("SEED=" + std::to_string(seed));
        Random random(seed);
        property(random);
        if (::testing::Test::HasFailure())
            return;
    }
}

} // namespace doorloom
