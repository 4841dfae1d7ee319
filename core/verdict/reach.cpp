#include "verdict/inside.h"

#include <algorithm>

// Positions that can happen: a coil is in only where it is fed, logic moves its outputs only while powered.
namespace doorloom {

namespace {

class Reach {
public:
    Reach(Questions::Inside& inside, Budget& steps);

    std::optional<Position> withThrows(const Cube& throws, std::optional<std::uint32_t> liveFeed);
    // A position in which this drive's load is fed, its guard holds and its input is closed, its operator unpowered.
    bool canMove(const Drive& drive);
    bool canFeed(std::uint32_t element, MovedIndex unpowered);

private:
    struct Goal {
        const Guard* guard = nullptr;              // must hold
        std::optional<std::uint32_t> fed{};          // this load must be fed …
        std::optional<MovedIndex> orWithUnpowered{}; // … or would be, with this operator unpowered
        std::optional<std::uint32_t> closed{};       // this dry input must be closed
    };

    bool solve(std::vector<Goal> goals);
    bool hold(const Guard& guard, const std::vector<Goal>& rest);
    bool chooseAtoms(const Term& term, std::size_t next, const std::vector<Goal>& rest);
    bool feed(const Goal& goal, const std::vector<Goal>& rest);
    bool chooseThrows(const ReturnCase& at, const std::vector<MovedIndex>& open, std::size_t next, const Goal& goal,
                      const std::vector<Goal>& rest);
    bool close(std::uint32_t input, const std::vector<Goal>& rest);
    bool chooseClosing(std::uint32_t input, const std::vector<MovedIndex>& open, std::size_t next,
                       const std::vector<Goal>& rest);
    bool isFed(const ReturnCase& at, const Goal& goal);
    bool stillPossible(const ReturnCase& at, const Goal& goal);
    std::vector<ThrowIndex> throwsInOrder(MovedIndex moved) const;
    Position filled() const;

    Questions::Inside& inside_;
    Budget& steps_;
    Position partial_;
    std::vector<char> supported_;
};

Reach::Reach(Questions::Inside& inside, Budget& steps)
    : inside_(inside), steps_(steps), partial_(inside.circuit.operators.size(), undecided),
      supported_(inside.circuit.operators.size(), 0)
{
}

std::optional<Position> Reach::withThrows(const Cube& throws, std::optional<std::uint32_t> liveFeed)
{
    for (const ThrowAt& each : throws)
        partial_[each.moved] = each.thrown;
    std::vector<Goal> goals;
    if (liveFeed)
        goals.push_back({.guard = &inside_.circuit.feeds[*liveFeed].live});
    return solve(std::move(goals)) ? std::optional(filled()) : std::nullopt;
}

bool Reach::canMove(const Drive& drive)
{
    partial_[drive.moved] = inside_.circuit.operators[drive.moved].unpowered;
    std::vector<Goal> goals{{.guard = &drive.powered}};
    if (drive.load)
        goals.push_back({.fed = drive.load});
    if (drive.closedInput)
        goals.push_back({.closed = drive.closedInput});
    return solve(std::move(goals));
}

bool Reach::canFeed(std::uint32_t element, MovedIndex unpowered)
{
    partial_[unpowered] = inside_.circuit.operators[unpowered].unpowered;
    return solve({{.fed = element}});
}

// What an operator does by itself comes first: nobody wants a witness with more moved than need be.
std::vector<ThrowIndex> Reach::throwsInOrder(MovedIndex moved) const
{
    const MovedOperator& each = inside_.circuit.operators[moved];
    const ThrowIndex first = inside_.driveOf[moved] ? each.unpowered : each.idle;
    std::vector<ThrowIndex> order{first};
    for (ThrowIndex thrown = 0; thrown < each.throws; ++thrown)
        if (thrown != first && inside_.allowed(moved, thrown))
            order.push_back(thrown);
    return order;
}

bool Reach::solve(std::vector<Goal> goals)
{
    steps_.spend(1);
    if (!goals.empty()) {
        const Goal goal = goals.back();
        goals.pop_back();
        return goal.guard ? hold(*goal.guard, goals) : goal.closed ? close(*goal.closed, goals) : feed(goal, goals);
    }
    for (MovedIndex moved = 0; moved < partial_.size(); ++moved) {
        const Drive* drive = inside_.driveOf[moved];
        if (!drive || partial_[moved] == undecided || supported_[moved] ||
            partial_[moved] == inside_.circuit.operators[moved].unpowered)
            continue;
        if (!inside_.movable[moved])
            return false;
        supported_[moved] = 1;
        goals.push_back({.guard = &drive->powered});
        if (drive->load)
            goals.push_back({.fed = drive->load, .orWithUnpowered = moved});
        if (drive->closedInput)
            goals.push_back({.closed = drive->closedInput});
        const bool found = solve(std::move(goals));
        supported_[moved] = found;
        return found;
    }
    return true;
}

bool Reach::hold(const Guard& guard, const std::vector<Goal>& rest)
{
    return std::any_of(guard.anyOf.begin(), guard.anyOf.end(),
                       [&](const Term& term) { return chooseAtoms(term, 0, rest); });
}

bool Reach::chooseAtoms(const Term& term, std::size_t next, const std::vector<Goal>& rest)
{
    if (next == term.size())
        return solve(rest);
    const Atom& atom = term[next];
    if (partial_[atom.moved] != undecided)
        return ((atom.mask >> partial_[atom.moved]) & 1u) && chooseAtoms(term, next + 1, rest);
    for (ThrowIndex thrown : throwsInOrder(atom.moved)) {
        if (!((atom.mask >> thrown) & 1u))
            continue;
        partial_[atom.moved] = thrown;
        if (chooseAtoms(term, next + 1, rest))
            return true;
    }
    partial_[atom.moved] = undecided;
    return false;
}

bool Reach::feed(const Goal& goal, const std::vector<Goal>& rest)
{
    const auto& feeds = inside_.nets.feedsOfIsland(inside_.nets.islandOf(inside_.circuit.elements[*goal.fed].a));
    for (std::uint32_t number : feeds) {
        const ReturnCase& at = inside_.returnCase(*goal.fed, number);
        if (!at.possible)
            continue;
        std::vector<MovedIndex> open = at.operators;
        addOperators(open, inside_.circuit.feeds[number].live);
        sortOperators(open);
        std::erase_if(open, [&](MovedIndex moved) { return partial_[moved] != undecided; });
        if (chooseThrows(at, open, 0, goal, rest))
            return true;
    }
    return false;
}

bool Reach::chooseThrows(const ReturnCase& at, const std::vector<MovedIndex>& open, std::size_t next,
                         const Goal& goal, const std::vector<Goal>& rest)
{
    steps_.spend(1);
    if (next == open.size())
        return isFed(at, goal) && solve(rest);
    if (!stillPossible(at, goal))
        return false;
    for (ThrowIndex thrown : throwsInOrder(open[next])) {
        partial_[open[next]] = thrown;
        if (chooseThrows(at, open, next + 1, goal, rest))
            return true;
    }
    partial_[open[next]] = undecided;
    return false;
}

bool Reach::close(std::uint32_t input, const std::vector<Goal>& rest)
{
    std::vector<MovedIndex> open = inside_.regionOfInput(input).operators;
    std::erase_if(open, [&](MovedIndex moved) { return partial_[moved] != undecided; });
    return chooseClosing(input, open, 0, rest);
}

bool Reach::chooseClosing(std::uint32_t input, const std::vector<MovedIndex>& open, std::size_t next,
                          const std::vector<Goal>& rest)
{
    steps_.spend(1);
    if (next == open.size())
        return inside_.operatedIn(partial_, input) && solve(rest);
    for (ThrowIndex thrown : throwsInOrder(open[next])) {
        partial_[open[next]] = thrown;
        if (chooseClosing(input, open, next + 1, rest))
            return true;
    }
    partial_[open[next]] = undecided;
    return false;
}

bool Reach::isFed(const ReturnCase& at, const Goal& goal)
{
    const auto fedNow = [&] {
        return holds(inside_.circuit.feeds[at.feed].live, partial_) &&
               inside_.returnedAt(at, partial_, inside_.naturalDirection(at.element), steps_);
    };
    if (fedNow())
        return true;
    if (!goal.orWithUnpowered)
        return false;
    const ThrowIndex thrown = partial_[*goal.orWithUnpowered];
    partial_[*goal.orWithUnpowered] = inside_.circuit.operators[*goal.orWithUnpowered].unpowered;
    const bool found = fedNow();
    partial_[*goal.orWithUnpowered] = thrown;
    return found;
}

bool Reach::stillPossible(const ReturnCase& at, const Goal& goal)
{
    if (!goal.orWithUnpowered)
        return inside_.couldReturn(at, partial_, steps_);
    const ThrowIndex thrown = partial_[*goal.orWithUnpowered];
    partial_[*goal.orWithUnpowered] = undecided;
    const bool possible = inside_.couldReturn(at, partial_, steps_);
    partial_[*goal.orWithUnpowered] = thrown;
    return possible;
}

Position Reach::filled() const
{
    Position position = partial_;
    for (MovedIndex moved = 0; moved < position.size(); ++moved)
        if (position[moved] == undecided)
            position[moved] = inside_.driveOf[moved] ? inside_.circuit.operators[moved].unpowered
                                                     : inside_.circuit.operators[moved].idle;
    return position;
}

} // namespace

std::optional<Position> Questions::Inside::positionWith(const Cube& throws, std::optional<std::uint32_t> liveFeed,
                                                        Budget& steps)
{
    return Reach(*this, steps).withThrows(throws, liveFeed);
}

bool Questions::Inside::allowed(MovedIndex moved, ThrowIndex thrown) const
{
    return !driveOf[moved] || movable[moved] || thrown == circuit.operators[moved].unpowered;
}

bool Questions::Inside::canBeMoved(const Drive& drive, Budget& steps)
{
    if (!Reach(*this, steps).canMove(drive))
        return false;
    if (!drive.needsInput)
        return true;
    return std::any_of(drive.dryInputs.begin(), drive.dryInputs.end(),
                       [&](std::uint32_t input) { return operated(input, steps).answer != Answer::Never; }) ||
           std::any_of(drive.voltageInputs.begin(), drive.voltageInputs.end(), [&](std::uint32_t element) {
               return Reach(*this, steps).canFeed(element, drive.moved);
           });
}

// The least fixpoint: nothing is in until something that is already possible lets it in. So a relay that only
// its own contact feeds never is.
void Questions::Inside::findMovable()
{
    for (bool changed = true; changed;) {
        changed = false;
        for (const Drive& drive : circuit.drives) {
            if (movable[drive.moved])
                continue;
            Budget steps(budget);
            try {
                movable[drive.moved] = canBeMoved(drive, steps);
            } catch (const BudgetSpent&) {
                movable[drive.moved] = 1; // not proved impossible: its throws stay in every question
            }
            total.steps += steps.spent();
            changed = changed || movable[drive.moved];
        }
    }
}

} // namespace doorloom
