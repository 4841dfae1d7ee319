#include "verdict/inside.h"

#include <algorithm>
#include <limits>
#include <set>

// What coils do by themselves once everything else stands still.
namespace doorloom {

namespace {

ThrowIndex pulledIn(const MovedOperator& moved) { return moved.unpowered == 0 ? 1 : 0; }

bool movesItself(const Drive& drive) { return drive.manner != Drive::Manner::Programmed; }

// Where a drive's operator goes from this position; a following one goes where its sensing has it.
ThrowIndex nextThrow(Questions::Inside& inside, const Drive& drive, const Position& position, const Position& given,
                     Budget& steps)
{
    const MovedOperator& moved = inside.circuit.operators[drive.moved];
    const bool fed = holds(drive.powered, position) && (!drive.load || inside.returnedIn(position, *drive.load, steps)) &&
                     (!drive.closedInput || inside.operatedIn(position, *drive.closedInput));
    if (!fed)
        return moved.unpowered;
    return drive.manner == Drive::Manner::Plain || drive.isSensing ? pulledIn(moved) : given[drive.moved];
}

std::optional<Position> settle(Questions::Inside& inside, const std::vector<const Drive*>& drives,
                               const Position& given, bool together, Budget& steps)
{
    Position position = given;
    for (const Drive* drive : drives)
        position[drive->moved] = inside.circuit.operators[drive->moved].unpowered;
    std::vector<Position> seen; // few: coils settle in as many rounds as they hang on each other
    while (std::find(seen.begin(), seen.end(), position) == seen.end()) {
        seen.push_back(position);
        Position next = position;
        for (const Drive* drive : drives)
            next[drive->moved] = nextThrow(inside, *drive, together ? position : next, given, steps);
        if (next == position)
            return position;
        position = std::move(next);
    }
    return std::nullopt;
}

std::vector<const Drive*> drivesThatMoveThemselves(const Circuit& circuit)
{
    std::vector<const Drive*> drives;
    for (const Drive& drive : circuit.drives)
        if (movesItself(drive))
            drives.push_back(&drive);
    return drives;
}

// The operators that matter to a coil, and to the coils among those, and so on.
std::vector<MovedIndex> closureOf(Questions::Inside& inside, const Drive& first)
{
    std::vector<MovedIndex> all;
    std::vector<const Drive*> queue{&first};
    std::set<const Drive*> seen{&first};
    for (std::size_t i = 0; i < queue.size(); ++i) {
        for (MovedIndex moved : inside.operatorsMoving(*queue[i])) {
            all.push_back(moved);
            const Drive* other = inside.driveOf[moved];
            if (other && movesItself(*other) && seen.insert(other).second)
                queue.push_back(other);
        }
    }
    sortOperators(all);
    return all;
}

} // namespace

std::optional<Position> Questions::settled(Position fixed, const std::vector<MovedIndex>& dead) const
{
    Budget steps(std::numeric_limits<std::uint64_t>::max());
    std::vector<const Drive*> drives = drivesThatMoveThemselves(inside_->circuit);
    std::erase_if(drives, [&](const Drive* drive) { return std::find(dead.begin(), dead.end(), drive->moved) != dead.end(); });
    if (auto position = settle(*inside_, drives, fixed, true, steps))
        return position;
    return settle(*inside_, drives, fixed, false, steps); // a race that settles in the field
}

Verdict Questions::buzzes(std::uint32_t number) const
{
    const Circuit& circuit = inside_->circuit;
    const Drive& drive = circuit.drives[number];
    Verdict verdict;
    if (!movesItself(drive))
        return verdict;
    const std::vector<MovedIndex> closure = closureOf(*inside_, drive);
    if (!std::binary_search(closure.begin(), closure.end(), drive.moved))
        return verdict; // nothing that it moves comes back to it
    std::vector<MovedIndex> free;
    std::vector<const Drive*> coils;
    for (MovedIndex moved : closure)
        if (inside_->driveOf[moved] && movesItself(*inside_->driveOf[moved]))
            coils.push_back(inside_->driveOf[moved]);
        else
            free.push_back(moved);
    Budget steps(inside_->budget);
    verdict.coverage.positions = verdict.coverage.covered = countPositions(circuit, free);
    try {
        std::vector<std::uint8_t> table;
        Position position(circuit.operators.size());
        for (MovedIndex moved = 0; moved < position.size(); ++moved)
            position[moved] = inside_->driveOf[moved] ? circuit.operators[moved].unpowered : circuit.operators[moved].idle;
        bool any = false, all = true;
        forEachPosition(circuit, free, position, [&] {
            if (!std::all_of(free.begin(), free.end(),
                             [&](MovedIndex moved) { return inside_->allowed(moved, position[moved]); })) {
                table.push_back(2);
                return true;
            }
            const bool buzz = !settle(*inside_, coils, position, true, steps) &&
                              !settle(*inside_, coils, position, false, steps);
            table.push_back(buzz ? 1 : 0);
            any = any || buzz;
            all = all && buzz;
            return true;
        });
        if (any) {
            Fewest fewest = fewestFromTable(
                circuit, free, table,
                [&](const Cube& cube) { return inside_->positionWith(cube, {}, steps).has_value(); }, steps);
            verdict.cubes = std::move(fewest.cubes);
            verdict.more = fewest.more;
            verdict.answer = verdict.cubes.empty() ? Answer::Never : all ? Answer::Always : Answer::Some;
        }
    } catch (const BudgetSpent&) {
        verdict.answer = Answer::Unknown;
    }
    verdict.coverage.steps = steps.spent();
    inside_->total.add(verdict.coverage);
    return verdict;
}

} // namespace doorloom
