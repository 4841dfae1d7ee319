#include "edit/openings.h"

#include <algorithm>

namespace doorloom {

namespace {

class Usual {
public:
    Usual(const Job& job, const Opening& opening) : job_(job), opening_(opening) {}

    std::vector<Promise> promises()
    {
        add({SituationKind::Rest, {}, {}});
        for (const Act& act : opening_.requests)
            if (!isUnanswered(act))
                add({SituationKind::Request, act.name, {}});
        for (const Act& act : opening_.releases)
            add({SituationKind::Release, act.name, {}});
        if (!opening_.occupied.empty()) {
            add({SituationKind::Occupied, {}, {}});
            for (const Act& act : opening_.requests)
                if (act.side != Side::Inside && !namesAnswer(act))
                    add({SituationKind::RequestWhileOccupied, act.name, {}});
        }
        add({SituationKind::AllPowerLost, {}, {}});
        if (opening_.fire)
            add({SituationKind::FireAlarm, {}, {}});
        return std::move(promises_);
    }

private:
    // The same hands as another request's, which also names what a module answers with.
    bool isUnanswered(const Act& act) const
    {
        const auto isPartOf = [&](const Act& other) {
            return other.throws.size() > act.throws.size() &&
                   std::all_of(act.throws.begin(), act.throws.end(), [&](const Thrown& thrown) {
                       return std::find(other.throws.begin(), other.throws.end(), thrown) !=
                              other.throws.end();
                   });
        };
        return std::any_of(opening_.requests.begin(), opening_.requests.end(), isPartOf);
    }

    bool namesAnswer(const Act& act) const
    {
        return std::any_of(act.throws.begin(), act.throws.end(), [&](const Thrown& thrown) {
            const Operator* moved = job_.operators.find(thrown.moved);
            return moved && moved->nature == OperatorNature::Relay;
        });
    }

    void add(const Situation& situation)
    {
        for (DeviceId lock : opening_.locks)
            if (const Kind* kind = kindOf(job_, lock); kind && kind->lock)
                keep({situation, lock, lockPromise(situation.kind, *kind->lock)});
        for (DeviceId device : opening_.doorOperators)
            keep({situation, device, operatorPromise(situation.kind)});
    }

    void keep(const Promise& promise)
    {
        if (promise.promised != Promised::Nothing)
            promises_.push_back(promise);
    }

    Promised lockPromise(SituationKind situation, const Lock& lock) const
    {
        if (lock.holdsDoorOpen)
            return Promised::Nothing;
        switch (situation) {
        case SituationKind::Rest:
            return opening_.audience == Audience::Public ? Promised::Free : Promised::Locked;
        case SituationKind::Request:
        case SituationKind::Release:
            return Promised::Free;
        case SituationKind::Occupied:
        case SituationKind::RequestWhileOccupied:
            return Promised::Locked;
        case SituationKind::AllPowerLost:
            return lock.failMode == FailMode::Safe     ? Promised::Free
                   : lock.failMode == FailMode::Secure ? Promised::Locked
                                                       : Promised::Nothing;
        case SituationKind::FireAlarm:
            return lock.failMode == FailMode::Safe ? Promised::Free : Promised::Nothing;
        default:
            return Promised::Nothing;
        }
    }

    static Promised operatorPromise(SituationKind situation)
    {
        switch (situation) {
        case SituationKind::Request:
            return Promised::MayStart;
        case SituationKind::Rest:
        case SituationKind::Occupied:
        case SituationKind::RequestWhileOccupied:
        case SituationKind::AllPowerLost:
            return Promised::MustNotStart;
        default:
            return Promised::Nothing;
        }
    }

    const Job& job_;
    const Opening& opening_;
    std::vector<Promise> promises_;
};

} // namespace

std::vector<Promise> usualPromises(const Job& job, const Opening& opening)
{
    return Usual(job, opening).promises();
}

} // namespace doorloom
