#pragma once

#include "verdict/verdict.h"

#include <functional>
#include <memory>
#include <optional>
#include <vector>

namespace doorloom {

struct Region; // core/verdict/region.h

// Which way current runs through a load.
enum class Direction { Forward, Reverse, Either };

// Answers for one circuit. Keeps what several questions share: which coils can pull in, what is always joined.
// Cost:  each question pays for the operators that matter to it alone, up to the budget of steps; past that
//        the answer is Unknown.
// Owns:  nothing of the circuit, which must outlive it.
class Questions {
public:
    explicit Questions(const Circuit& circuit, std::uint64_t budget = commandBudget);
    ~Questions();
    Questions(const Questions&) = delete;
    Questions& operator=(const Questions&) = delete;

    const Circuit& circuit() const;

    // Sources that hang together with this vertex through parts of any kind.
    std::vector<std::uint32_t> feedsNear(Vertex vertex) const;
    bool sameIsland(Vertex x, Vertex y) const;
    // Would x and y be one net with every contact closed? Where not, no position joins them.
    bool couldMeet(Vertex x, Vertex y) const;
    Vertex netOf(Vertex vertex) const; // what is joined in every position by conductors and links is one net
    // Operators that can make a difference to whether this load is fed, those of its sources and of the coils among
    // them too, sorted.
    std::vector<MovedIndex> operatorsThatMatter(std::uint32_t element) const;
    std::vector<MovedIndex> operatorsThatMatterToInput(std::uint32_t input) const; // to whether it is operated

    struct Pair {
        Vertex x, y;
        std::optional<Vertex> avoiding{}; // a net that the way must not pass: a source's other pole, say
    };
    // Are x and y one net? Diodes do not join. `without`: joints that are taken out for this question.
    Verdict joined(Vertex x, Vertex y, const std::vector<std::uint32_t>& without = {}) const;
    // All pairs at once: for 'both poles joined'.
    Verdict allJoined(const std::vector<Pair>& pairs, const std::vector<std::uint32_t>& without = {}) const;

    // The poles of one source joined through joints and forward diodes alone (their drops under its highest volts).
    // A source that is off shorts nothing: where a witness names operators of the source's own guard, it names
    // enough of them to have it live.
    Verdict shorted(std::uint32_t feed) const;

    // A simple cycle of nets through the source and the load, all else forward diodes and resistors (and other
    // live sources from minus to plus: stacks), the source not shorted. Liveness as in shorted.
    Verdict returnedVia(std::uint32_t element, std::uint32_t feed, Direction direction) const;
    // By any source, each polarised load the right way round.
    Verdict returned(std::uint32_t element) const;
    // Returned by this source in every position that can happen in which the source is live.
    Answer alwaysReturnedVia(std::uint32_t element, std::uint32_t feed) const;

    // Joints, or resistors up to its band in all, close the input.
    Verdict operated(std::uint32_t input) const;

    // All that lies on a way between the input's terminal and its reference, which are its ends: joints, and resistors of
    // any size. What is always joined is one vertex.
    Region loopOf(std::uint32_t input) const;

    // Positions that can happen in which it is so, all those of these operators counted through, the others as at rest.
    Verdict wherever(const std::vector<MovedIndex>& operators, const std::function<bool(const Position&)>& isSo) const;

    // Can this operator leave its unpowered throw at all? (Coils that pull in, logic that is powered and asked.)
    bool canMove(MovedIndex moved) const;

    // A position that can happen with these throws (and this source live), idle and unpowered elsewhere as far
    // as may be. Nothing: none, or the budget ran out.
    std::optional<Position> positionWith(const Cube& throws, std::optional<std::uint32_t> liveFeed = {}) const;

    // ---- In one position, no search.
    bool returnedIn(const Position& position, std::uint32_t element) const;
    bool shortedIn(const Position& position, std::uint32_t feed) const;
    bool operatedIn(const Position& position, std::uint32_t input) const;
    bool canHappen(const Position& position) const;

    // From all driven operators unpowered, plain and following ones take what the circuit gives, the others stay
    // as given, until nothing changes. Nothing: they never settle (buzz).
    // `dead`: operators that stay as given, whatever drives them.
    std::optional<Position> settled(Position fixed, const std::vector<MovedIndex>& dead = {}) const;
    // Throws of hands, doors, logic … in which this coil (alone or with others) never settles.
    Verdict buzzes(std::uint32_t drive) const;

    Coverage coverage() const; // of all questions asked so far

    struct Inside; // core/verdict/inside.h

private:
    std::unique_ptr<Inside> inside_;
};

} // namespace doorloom
