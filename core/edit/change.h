#pragma once

#include "base/result.h"
#include "model/job.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

// Edits are data: a Change says how things should be afterwards, and nothing else.
namespace doorloom {

// This value under this id, or nothing there.
template <class Row>
struct Put {
    Id<Row> id;
    std::optional<Row> after;

    friend bool operator==(const Put&, const Put&) = default;
};

using Step = std::variant<Put<JobInfo>, Put<JobKind>, Put<CableType>, Put<Place>, Put<Operator>, Put<Device>,
                          Put<Cable>, Put<Splice>, Put<Conductor>, Put<Opening>, Put<Sheet>, Put<Placement>,
                          Put<Bends>, Put<Note>, Put<SetAside>, Put<Typical>, Put<Stamp>>;

struct Change {
    std::vector<Step> steps;

    friend bool operator==(const Change&, const Change&) = default;
};

// Makes the change, or refuses and leaves the job as it was. The only function that writes to a Job.
// Out:    the change that puts everything back (the counter alone stays where it is)
// Errors: a reference that would lead nowhere, a tag used twice, a core that its cable type does not have …
//         (every promise that verifyJob lists)
// Cost:   grows with the change and what hangs on it, not with the job
Result<Change> applyChange(Job& job, const Change& change);
// Out: refusedRow: the number of the row that would break its promises, 0 when it is no single one
Result<Change> applyChange(Job& job, const Change& change, std::uint32_t& refusedRow);

// The net change that makes `newer` out of `older`: what differs, not the history with its detours.
// Cost: a walk along both jobs, chunks that they share left out.
Change difference(const Job& older, const Job& newer);

// Every broken promise of the model; none in a job that only applyChange has written.
//  - every id refers to a row that is there; numbers are unique in the job and below nextNumber
//  - a landed conductor end is on a terminal that the device's kind has, or on a splice; others are on nothing
//  - a core's number exists in its cable's type, and no core is there twice; a wire or lead is of no cable;
//    lengths are finite and not negative
//  - device tags are unique and not empty, without blanks or ':'
//  - a device has one choice for each jumper of its kind (its value one of the option's, or empty), one binding
//    for each role (to an operator with the role's throws, whatever their order), settings that its kind has and
//    within their limits
//  - an operator has two throws or more, unpowered and idle among them; its owner has the role, or it has a tag
//  - a kind's terminals, roles, options, jumpers and settings have keys, none twice (the rest is checkKind's)
//  - an opening's acts and promises name operators' throws, locks and acts that are there, each once; its locks
//    are of kinds that lock, so that no promise goes unasked
//  - a typical lists a row once, a stamp pairs it once and is at an edition that its typical has, if at any;
//    an edition's number is there once; what editions and pairs remember is, or was, a row of the job
//  - a job has at most one JobInfo
//  - referrers and deviceTags say what the tables say
std::vector<Problem> verifyJob(const Job& job);

// The change that does first one, then the other.
Change joined(Change first, Change second);

} // namespace doorloom
