#pragma once

#include "edit/operations.h"

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

// Openings: what a door is, whom it serves, and what it promises.
namespace doorloom {

// ---- Operators of nobody: a door's leaf, the fire alarm

// Throws 'shut' and 'open', as door switches have them.
Operator doorLeaf(std::string tag);
// Throws 'normal' and 'alarm'.
Operator fireAlarm(std::string tag);
// Errors: no tag, or the name of another operator
Result<std::pair<OperatorId, Change>> addOperator(const Job& job, Numbers& numbers, Operator wanted);

// ---- The opening itself

// What doors like this promise as a rule (common practice, no source): a starting point to be altered.
//  - at rest a public one is free and a staff one locked; a request and a release make it free; occupied, it
//  is
//    locked, also against requests
//  - with all power lost, and in a fire alarm that it answers to, fail-safe locks are free; fail-secure ones
//  are
//    locked with all power lost
//  - its door operators start on a request, and not at rest, while occupied or without power
// A magnet that holds a door open, and a lock that stays put without power, promise nothing there.
std::vector<Promise> usualPromises(const Job& job, const Opening& opening);

// In:     tag, words, use, locks …; without a leaf it gets one ("D114"), without promises the usual ones
// Errors: a tag that another opening has, and what applyChange refuses
Result<std::pair<OpeningId, Change>> addOpening(const Job& job, Numbers& numbers, Opening wanted);
// The row as it should be: its tag, words, egress, fire rating, use, leaf and fire alarm are the caller's;
// what promises and acts would lead nowhere is refused.
Result<Change> alterOpening(const Job& job, Opening wanted);
Result<Change> removeOpening(const Job& job, OpeningId opening);

// The situations that it can make promises about, in the order of a door's day, then what may be lost; those that
// it speaks of already among them.
std::vector<Situation> situationsOf(const Opening& opening);
// What is promised there; nothing promised is a promise of nothing.
Promised promisedIn(const Opening& opening, const Situation& situation, DeviceId device);

// ---- What belongs to it; what is added brings its usual promises along

enum class OpeningPart { Lock, DoorOperator };
Result<Change> addToOpening(const Job& job, OpeningId opening, OpeningPart part, DeviceId device);
// Its promises go with it. A device that is not listed: no change.
Result<Change> takeFromOpening(const Job& job, OpeningId opening, DeviceId device);

enum class ActList { Requests, Releases };
// Errors: no name or one that is there, throws that are none
Result<Change> addAct(const Job& job, OpeningId opening, ActList list, Act act);
// In: the act in place of the one called so; promises follow its new name
Result<Change> alterAct(const Job& job, OpeningId opening, ActList list, const std::string& name, Act act);
Result<Change> removeAct(const Job& job, OpeningId opening, ActList list, const std::string& name);
// How the operators stand while somebody is inside; none: it is not asked any more.
Result<Change> setOccupied(const Job& job, OpeningId opening, std::vector<Thrown> throws);

// Nothing promised takes the promise away.
Result<Change> setPromise(const Job& job, OpeningId opening, const Situation& situation, DeviceId device,
                          Promised promised);

inline Result<Change> addRequest(const Job& job, OpeningId opening, Act act)
{
    return addAct(job, opening, ActList::Requests, std::move(act));
}
inline Result<Change> addRelease(const Job& job, OpeningId opening, Act act)
{
    return addAct(job, opening, ActList::Releases, std::move(act));
}

} // namespace doorloom
