#pragma once

#include "graph/joinedsets.h"
#include "verdict/positions.h"
#include "verdict/questions.h"
#include "verdict/region.h"
#include "verdict/search.h"

#include <functional>
#include <map>
#include <memory>
#include <tuple>

// What the questions of one circuit share. Not for others than core/verdict.
namespace doorloom {

// Where the two poles of a source could meet.
struct ShortCase {
    bool always = false;                 // one net whatever is thrown
    std::vector<Region> parts;           // structurally possible ones alone; each may be searched by itself
    std::vector<MovedIndex> operators;   // of all parts
};

// How a load could be fed by a source.
struct ReturnCase {
    Region region; // ends: the load's a and b, the source's plus and minus
    std::uint32_t element = 0, feed = 0;
    std::vector<MovedIndex> operators; // that matter, those of shorts and of sources included
    bool possible = false;
    bool simple = false;       // joints alone: it grows as joints close, as long as nothing is shorted
    bool liveMatters = false;  // the source's own operators are among those above
};

// A circuit with some of its joints taken out.
struct Cut {
    Cut(const Circuit& of, std::vector<std::uint32_t> joints) 
        : without(std::move(joints)), circuit(cutCircuit(of, without)), nets(circuit)
    {
    }

    std::vector<std::uint32_t> without;
    Circuit circuit;
    Nets nets;

private:
    static Circuit cutCircuit(Circuit circuit, const std::vector<std::uint32_t>& joints)
    {
        for (std::uint32_t joint : joints)
            circuit.joints[joint].guard.anyOf.clear();
        return circuit;
    }
};

struct Questions::Inside {
    Inside(const Circuit& of, std::uint64_t steps);

    const Circuit& circuit;
    std::uint64_t budget;
    Nets nets;
    std::vector<const Drive*> driveOf; // by operator; null: nothing drives it
    std::vector<char> movable;         // by operator
    Coverage total;

    const ShortCase& shortCase(std::uint32_t feed);
    const ReturnCase& returnCase(std::uint32_t element, std::uint32_t feed);

    // In a position of which at least the case's operators are decided.
    bool shortedAt(const ShortCase& at, std::uint32_t feed, const Position& position, Budget& steps);
    bool returnedAt(const ReturnCase& at, const Position& position, Direction direction, Budget& steps);
    // Could it be fed, with what is undecided as it likes? True when in doubt.
    bool couldReturn(const ReturnCase& at, const Position& partial, Budget& steps);

    std::optional<Position> positionWith(const Cube& throws, std::optional<std::uint32_t> liveFeed, Budget& steps);
    bool allowed(MovedIndex moved, ThrowIndex thrown) const;
    bool returnedIn(const Position& position, std::uint32_t element, Budget& steps);
    // Those on whose contacts it hangs whether this load is fed, and those that turn its sources on; sorted.
    std::vector<MovedIndex> operatorsFeeding(std::uint32_t element);
    // Those on which it hangs whether this drive's operator can move.
    std::vector<MovedIndex> operatorsMoving(const Drive& drive);
    // These, those that move them, and so on; sorted.
    std::vector<MovedIndex> withThoseThatMove(std::vector<MovedIndex> operators);
    Direction naturalDirection(std::uint32_t element) const;

    Verdict growing(const std::vector<Region>& parts,
                    const std::function<bool(const Region&, const std::function<bool(const Guard&)>&)>& asked,
                    std::optional<std::uint32_t> feed, Budget& steps);
    // Between its terminal and its reference.
    Region regionOfInput(std::uint32_t input, double resistorsUpToOhms) const;
    Region regionOfInput(std::uint32_t input) const { return regionOfInput(input, circuit.inputs[input].closedBelowOhms); }
    bool operatedIn(const Position& position, std::uint32_t input) const;
    Verdict operated(std::uint32_t input, Budget& steps);
    Verdict returnedVia(std::uint32_t element, std::uint32_t feed, Direction direction, Budget& steps);

    Verdict wherever(const std::vector<MovedIndex>& operators, const std::function<bool(const Position&)>& isSo, Budget& steps);

    void findMovable();

    // Are some of these joints part of a net that is always one? Then they must be cut before a search.
    bool mergedAny(const std::vector<std::uint32_t>& joints) const;
    const Cut& cutAt(const std::vector<std::uint32_t>& joints); // kept until another is asked for

private:
    ShortCase makeShortCase(std::uint32_t feed);
    ReturnCase makeReturnCase(std::uint32_t element, std::uint32_t feed);
    bool canBeMoved(const Drive& drive, Budget& steps);

    std::unique_ptr<Cut> lastCut_; // several questions in a row take out the same joints
    std::map<std::uint32_t, ShortCase> shorts_;
    std::map<std::pair<std::uint32_t, std::uint32_t>, ReturnCase> returns_;
};

// Do the poles meet in this part, with the joints that `closed` accepts?
bool shortedWith(const Region& part, const Circuit& circuit, const Feed& feed,
                 const std::function<bool(const Guard&)>& closed, Budget& steps);

double countPositions(const Circuit& circuit, const std::vector<MovedIndex>& operators);
// Past this many, a question that grows is not asked in each of them.
inline constexpr double exactTablePositions = 65536;

Verdict unknown();
Verdict alwaysYes(double positions);
std::vector<MovedIndex> operatorsOf(const Guard& guard);
// Is one of these operators decided?
bool names(const std::vector<MovedIndex>& operators, const Position& partial);
// Are the part's ends one net, two by two, with the joints that `closed` accepts?
bool endsJoined(const Region& part, const Circuit& circuit, const std::function<bool(const Guard&)>& closed);

// Fewest throws with which every completion of `operators` is a yes, from a table of all of them
// (0 no, 1 yes, 2 does not count), the first operator counting fastest.
Fewest fewestFromTable(const Circuit& circuit, const std::vector<MovedIndex>& operators,
                       const std::vector<std::uint8_t>& table, const std::function<bool(const Cube&)>& witnesses,
                       Budget& steps);

} // namespace doorloom
