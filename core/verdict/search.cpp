#include "verdict/search.h"

#include <algorithm>

namespace doorloom {

bool impliedBy(const Guard& guard, const Position& partial)
{
    return std::any_of(guard.anyOf.begin(), guard.anyOf.end(), [&](const Term& term) {
        return std::all_of(term.begin(), term.end(), [&](const Atom& atom) {
            return partial[atom.moved] < leftOut && ((atom.mask >> partial[atom.moved]) & 1u);
        });
    });
}

bool possibleWith(const Guard& guard, const Position& partial)
{
    return std::any_of(guard.anyOf.begin(), guard.anyOf.end(), [&](const Term& term) {
        return std::all_of(term.begin(), term.end(), [&](const Atom& atom) {
            const ThrowIndex thrown = partial[atom.moved];
            return thrown == undecided || (thrown != leftOut && ((atom.mask >> thrown) & 1u));
        });
    });
}

void Coverage::add(const Coverage& other)
{
    positions += other.positions;
    covered += other.covered;
    steps += other.steps;
}

namespace {

class FewestSearch {
public:
    FewestSearch(const Growing& question, Budget& budget)
        : question_(question), budget_(budget), partial_(question.circuit.operators.size(), leftOut)
    {
    }

    Fewest run()
    {
        for (MovedIndex each : question_.operators)
            partial_[each] = undecided;
        if (!possible())
            return {};
        for (std::size_t size = 0; size <= question_.operators.size() && found_.cubes.empty(); ++size)
            descend(0, size);
        return std::move(found_);
    }

private:
    bool possible()
    {
        return question_.asked([&](const Guard& guard) {
            budget_.spend(1);
            return possibleWith(guard, partial_);
        });
    }
    bool implied()
    {
        return question_.asked([&](const Guard& guard) {
            budget_.spend(1);
            return impliedBy(guard, partial_);
        });
    }

    // Decides the operators from `next` on, with at most `left` more throws named.
    void descend(std::size_t next, std::size_t left)
    {
        if (found_.more)
            return;
        budget_.spend(1);
        if (left == 0) {
            const Position undecidedOnes = partial_;
            for (std::size_t i = next; i < question_.operators.size(); ++i)
                partial_[question_.operators[i]] = leftOut;
            if (implied() && (!question_.complete || question_.complete(partial_)))
                report();
            partial_ = undecidedOnes;
            return;
        }
        if (question_.operators.size() - next < left || !possible())
            return;
        const MovedIndex moved = question_.operators[next];
        for (ThrowIndex thrown = 0; thrown < question_.circuit.operators[moved].throws; ++thrown)
            if (question_.allowed(moved, thrown)) {
                partial_[moved] = thrown;
                cube_.push_back({moved, thrown});
                descend(next + 1, left - 1);
                cube_.pop_back();
            }
        partial_[moved] = leftOut;
        descend(next + 1, left);
        partial_[moved] = undecided;
    }

    void report()
    {
        if (!question_.canHappen(cube_))
            return;
        if (found_.cubes.size() == mostCubes)
            found_.more = true;
        else
            found_.cubes.push_back(cube_);
    }

    const Growing& question_;
    Budget& budget_;
    Position partial_;
    Cube cube_;
    Fewest found_;
};

} // namespace

Fewest fewestThrows(const Growing& question, Budget& budget) { return FewestSearch(question, budget).run(); }

void mergeFewest(Fewest& into, const Fewest& other)
{
    if (other.cubes.empty())
        return;
    if (into.cubes.empty() || other.cubes[0].size() < into.cubes[0].size()) {
        into = other;
        return;
    }
    if (other.cubes[0].size() > into.cubes[0].size())
        return;
    into.more = into.more || other.more;
    into.cubes.insert(into.cubes.end(), other.cubes.begin(), other.cubes.end());
    std::sort(into.cubes.begin(), into.cubes.end());
    into.cubes.erase(std::unique(into.cubes.begin(), into.cubes.end()), into.cubes.end());
    if (into.cubes.size() > mostCubes) {
        into.cubes.resize(mostCubes);
        into.more = true;
    }
}

} // namespace doorloom
