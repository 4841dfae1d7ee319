#pragma once

#include "verdict/questions.h"

#include <functional>
#include <optional>
#include <vector>

// The answers of Questions from their definitions alone, over every position multiplied out. Written without
// the code that it judges, and slow: for circuits of eight operators at most.
namespace doorloom {

struct BruteVerdict {
    Answer answer = Answer::Never;
    std::vector<Cube> cubes; // all with the fewest throws, sorted, however many
};

class BruteForce {
public:
    explicit BruteForce(const Circuit& circuit);

    using Pairs = std::vector<Questions::Pair>;
    using Joints = std::vector<std::uint32_t>;
    BruteVerdict joined(Vertex x, Vertex y, const Joints& without = {}) const;
    BruteVerdict allJoined(const Pairs& pairs, const Joints& without = {}) const;
    BruteVerdict shorted(std::uint32_t feed) const;
    BruteVerdict returnedVia(std::uint32_t element, std::uint32_t feed, Direction direction) const;
    // Always when it is so by one of the feeds.
    BruteVerdict returned(std::uint32_t element) const;
    Answer alwaysReturnedVia(std::uint32_t element, std::uint32_t feed) const;
    BruteVerdict operated(std::uint32_t input) const;
    bool canMove(MovedIndex moved) const { return able_[moved]; }

    bool joinedIn(const Position& position, Vertex x, Vertex y) const;
    bool returnedIn(const Position& position, std::uint32_t element) const;
    bool operatedIn(const Position& position, std::uint32_t input) const;
    bool shortedIn(const Position& position, std::uint32_t feed) const;
    bool canHappen(const Position& position) const;
    bool canHappenWith(const Cube& throws, std::optional<std::uint32_t> liveFeed) const;

    std::optional<Position> settled(Position fixed) const;
    BruteVerdict buzzes(std::uint32_t drive) const;

    const std::vector<Position>& positions() const { return positions_; }

private:
    using OverPositions = std::vector<char>; // yes or no, by the number of a position
    using OverCubes = std::vector<char>;     // by the number of a cube
    using CubeNumber = std::size_t;
    using Closed = std::vector<bool>; // by joint

    struct Run { // until it settles, or the positions that come round again and again
        std::optional<Position> settled;
        std::vector<Position> round;
    };

    std::size_t numberOf(const Position& position) const;
    Cube cubeAt(CubeNumber number) const;
    // Of all completions of each cube.
    OverCubes everyCompletion(const OverPositions& over) const;
    OverCubes someCompletion(const OverPositions& over) const;
    std::vector<Cube> fewest(const std::function<bool(CubeNumber)>& isWitness) const;
    bool namesLiveness(const Cube& cube, std::uint32_t feed) const;

    OverPositions happening(const std::vector<bool>& able) const;
    bool happensIn(std::size_t position, const std::vector<bool>& able) const;
    bool fedIn(std::size_t position, const Drive& drive) const;
    bool becomesAble(const Drive& drive, const OverPositions& happens) const;
    void findAble();

    Closed withoutNet(Closed closed, Vertex vertex) const;
    BruteVerdict answered(const OverPositions& over, const OverPositions& asked,
                          const std::function<bool(const Cube&)>& holdsWithContactsOpen) const;
    OverPositions withCoilsLetGo() const;
    bool isWithinReach(const Position& position) const;
    bool namesACoil(const Cube& cube) const;
    bool buzzesFrom(const Position& fixed, MovedIndex moved) const;
    Position next(const Position& now, const Position& fixed) const;
    Position nextOneByOne(Position now, const Position& fixed) const;
    Run run(const Position& fixed, const std::function<Position(const Position&)>& step) const;

    const Circuit& circuit_;
    std::vector<Position> positions_;
    std::vector<std::vector<CubeNumber>> cubesBySize_;
    CubeNumber cubes_ = 1;
    std::vector<bool> able_;
    OverPositions happens_;
    std::vector<OverPositions> live_, shorted_;                 // by feed
    std::vector<std::vector<OverPositions>> forward_, reverse_; // by element, then feed
    std::vector<OverPositions> returned_;                       // by element
    std::vector<OverPositions> operated_;                       // by input
};

} // namespace doorloom
