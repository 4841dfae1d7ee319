#include "judge/lockstates.h"

#include "check/situations.h"
#include "edit/openings.h"
#include "judge/dividedjob.h"

namespace doorloom {
namespace {

LockDoes doesIn(const Facts& facts, const Opening& opening, const Situation& situation, const Lock& lock, std::uint32_t element)
{
    if (lock.failMode == FailMode::StaysPut)
        return LockDoes::StaysPut;
    bool isLocked = false, isFree = false;
    for (const Position& position : positionsIn(facts, opening, situation, facts.ask.operatorsThatMatter(element)))
        (lockStateAt(facts, position, lock, element) == LockState::Locked ? isLocked : isFree) = true;
    if (isLocked && isFree)
        return LockDoes::Depends;
    return isLocked ? LockDoes::StaysLocked : isFree ? LockDoes::IsFree : LockDoes::NotSettled;
}

LockInSituation lockIn(const Facts& facts, const Opening& opening, const Situation& situation, DeviceId device)
{
    LockInSituation lock{LockDoes::NotWired, promisedIn(opening, situation, device)};
    const Kind* kind = kindOf(facts.job, device);
    if (!kind || !kind->lock)
        return lock;
    if (const auto element = facts.net.elementOf(device, kind->lock->load))
        lock.does = doesIn(facts, opening, situation, *kind->lock, *element);
    return lock;
}

} // namespace

bool LockInSituation::keepsPromise() const
{
    const bool isSaid = does == LockDoes::StaysLocked || does == LockDoes::IsFree || does == LockDoes::Depends;
    if (promised == Promised::Nothing || !isSaid)
        return true;
    return does == (promised == Promised::Locked ? LockDoes::StaysLocked : LockDoes::IsFree);
}

LocksInSituations::LocksInSituations(const Job& job) : job_(job) {}
LocksInSituations::~LocksInSituations() = default;

LockStates LocksInSituations::of(OpeningId id) const
{
    const Opening* opening = job_.openings.find(id);
    if (!parts_)
        parts_ = std::make_unique<DividedJob>(job_);
    const Division* part = opening && !opening->locks.empty() ? parts_->of(id) : nullptr;
    if (!part)
        return {id, {}, {}};
    const Job alone = jobOf(*part, job_);
    const Facts facts(alone, windowBudget);
    LockStates states{id, opening->locks, {}};
    for (const Situation& situation : situationsOf(*opening)) {
        SituationLine line{situation, {}};
        for (const DeviceId lock : opening->locks)
            line.locks.push_back(lockIn(facts, *opening, situation, lock));
        states.lines.push_back(std::move(line));
    }
    return states;
}

} // namespace doorloom
