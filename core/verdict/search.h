#pragma once

#include "verdict/region.h"
#include "verdict/verdict.h"

#include <functional>
#include <vector>

namespace doorloom {

// Steps left for one question. Thrown when they run out; the question that set the budget catches it.
struct BudgetSpent {};
class Budget {
public:
    explicit Budget(std::uint64_t steps) : left_(steps), all_(steps) {}
    void spend(std::uint64_t steps)
    {
        if (steps > left_) {
            left_ = 0;
            throw BudgetSpent{};
        }
        left_ -= steps;
    }
    std::uint64_t spent() const { return all_ - left_; }

private:
    std::uint64_t left_, all_;
};

constexpr ThrowIndex undecided = 0xFF, leftOut = 0xFE;

// Does a guard hold by what is decided alone / can it still hold? Operators left out satisfy nothing.
bool impliedBy(const Guard& guard, const Position& partial);
bool possibleWith(const Guard& guard, const Position& partial);

// Cubes with the fewest throws for a question that only grows as joints close.
struct Growing {
    const Circuit& circuit;
    std::vector<MovedIndex> operators;                  // sorted; those that may be named
    // Yes with the joints that `closed` accepts? Called with impliedBy and with possibleWith.
    std::function<bool(const std::function<bool(const Guard&)>& closed)> asked;
    std::function<bool(const Position& partial)> complete; // a yes that may also be reported; none: all
    std::function<bool(MovedIndex, ThrowIndex)> allowed;   // throws that can happen at all
    std::function<bool(const Cube&)> canHappen;
};
// Out: all witnesses with the fewest throws, sorted, no more than mostCubes, and whether there are others.
struct Fewest {
    std::vector<Cube> cubes;
    bool more = false;
};
Fewest fewestThrows(const Growing& question, Budget& budget);

// Takes in cubes of another search of the same question: the fewest of both.
void mergeFewest(Fewest& into, const Fewest& other);

} // namespace doorloom
