#include "check/situations.h"

#include "verdict/positions.h"

#include <algorithm>

namespace doorloom {

namespace {

class SituationAt {
public:
    SituationAt(const Facts& facts, const Opening& opening, const Situation& situation)
        : facts_(facts), position_(atRest(facts.circuit()))
    {
        switch (situation.kind) {
        case SituationKind::Rest:
        case SituationKind::FireReset:
            break;
        case SituationKind::Request:
            act(opening.requests, situation.act);
            break;
        case SituationKind::Release:
            act(opening.releases, situation.act);
            break;
        case SituationKind::RequestWhileOccupied:
            throwAll(opening.occupied);
            act(opening.requests, situation.act);
            break;
        case SituationKind::Occupied:
            throwAll(opening.occupied);
            break;
        case SituationKind::OtherDoorOpen:
            otherDoors(opening);
            break;
        case SituationKind::MainsLost:
            lose({OperatorNature::Mains});
            break;
        case SituationKind::AllPowerLost:
            lose({OperatorNature::Mains, OperatorNature::Battery});
            break;
        case SituationKind::LostAlone:
            unpower(situation.lost);
            break;
        case SituationKind::FireAlarm:
            moveAway(opening.fire);
            everyThrow_ = true;
            everyDoor_ = true;
            break;
        }
    }

    std::vector<Position> settledFor(const std::vector<MovedIndex>& mattering)
    {
        std::vector<MovedIndex> tried;
        for (MovedIndex moved : mattering) {
            const Drive* drive = driveOf(moved);
            const bool option = !facts_.net.moved(moved).id;
            if (option || (everyThrow_ && drive && drive->manner == Drive::Manner::Programmed) || (everyDoor_ && isADoor(moved)))
                tried.push_back(moved);
        }
        std::vector<Position> all;
        const Position base = position_;
        if (tried.empty()) {
            addSettled(base, all);
            return all;
        }
        Position position = base;
        forEachPosition(facts_.circuit(), tried, position, [&] {
            addSettled(position, all);
            return all.size() < 256;
        });
        return all;
    }

private:
    const Drive* driveOf(MovedIndex moved) const
    {
        for (const Drive& drive : facts_.circuit().drives)
            if (drive.moved == moved)
                return &drive;
        return nullptr;
    }

    bool isADoor(MovedIndex moved) const
    {
        const Operator* row = facts_.job.operators.find(facts_.net.moved(moved).id);
        return row && row->nature == OperatorNature::Door;
    }

    void put(OperatorId moved, const Key& thrown)
    {
        const auto index = facts_.net.indexOf(moved);
        if (!index)
            return;
        if (const auto at = findThrow(facts_.net.moved(*index).throws, thrown))
            position_[*index] = static_cast<ThrowIndex>(*at);
    }

    void throwAll(const std::vector<Thrown>& throws)
    {
        for (const Thrown& each : throws)
            put(each.moved, each.thrown);
    }

    void act(const std::vector<Act>& acts, const std::string& name)
    {
        for (const Act& each : acts)
            if (each.name == name)
                throwAll(each.throws);
    }

    void otherDoors(const Opening& opening)
    {
        for (const Operator& moved : facts_.job.operators)
            if (moved.nature == OperatorNature::Door && moved.id != opening.door)
                moveAway(moved.id);
    }

    void lose(const std::vector<OperatorNature>& natures)
    {
        for (const Operator& moved : facts_.job.operators)
            if (std::find(natures.begin(), natures.end(), moved.nature) != natures.end())
                put(moved.id, moved.unpowered);
        everyThrow_ = true;
    }

    void unpower(OperatorId moved)
    {
        if (const Operator* row = facts_.job.operators.find(moved))
            put(moved, row->unpowered);
        if (const auto index = facts_.net.indexOf(moved))
            dead_.push_back(*index);
        everyThrow_ = true;
    }

    // To the throw that it does not have at rest.
    void moveAway(OperatorId moved)
    {
        if (const auto index = facts_.net.indexOf(moved))
            position_[*index] = facts_.circuit().operators[*index].idle == 0 ? 1 : 0;
    }

    // A programmed output without power falls back, and what hangs on it follows.
    void addSettled(Position given, std::vector<Position>& all)
    {
        for (std::size_t round = 0; round <= facts_.circuit().drives.size(); ++round) {
            const auto settled = facts_.ask.settled(given, dead_);
            if (!settled)
                return;
            bool changed = false;
            for (const Drive& drive : facts_.circuit().drives) {
                const ThrowIndex unpowered = facts_.circuit().operators[drive.moved].unpowered;
                if (drive.manner == Drive::Manner::Plain || (*settled)[drive.moved] == unpowered)
                    continue;
                if (doorloom::holds(drive.powered, *settled) && (!drive.load || facts_.ask.returnedIn(*settled, *drive.load)))
                    continue;
                given[drive.moved] = unpowered;
                changed = true;
            }
            if (!changed) {
                if (std::find(all.begin(), all.end(), *settled) == all.end())
                    all.push_back(*settled);
                return;
            }
        }
    }

    const Facts& facts_;
    Position position_;
    std::vector<MovedIndex> dead_; // lost alone: nothing drives it
    bool everyThrow_ = false, everyDoor_ = false; // people run through them in a fire
};

} // namespace

std::vector<Position> positionsIn(const Facts& facts, const Opening& opening, const Situation& situation,
                                  const std::vector<MovedIndex>& mattering)
{
    return SituationAt(facts, opening, situation).settledFor(mattering);
}

bool isOccupied(const Situation& situation)
{
    return situation.kind == SituationKind::Occupied || situation.kind == SituationKind::RequestWhileOccupied;
}

LockState lockStateAt(const Facts& facts, const Position& position, const Lock& lock, std::uint32_t element)
{
    if (lock.failMode == FailMode::StaysPut)
        return LockState::Unknown;
    const bool fed = facts.ask.returnedIn(position, element);
    return fed == (lock.failMode == FailMode::Safe) ? LockState::Locked : LockState::Free;
}

} // namespace doorloom
