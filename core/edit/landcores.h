#pragma once

#include "edit/operations.h"

#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

// Landing the cores of a cable at the places where it ends, and what else becomes of ends.
namespace doorloom {

// What a conductor's end may be landed on.
using LandingPoint = std::variant<Landing, SpliceId>;

End landedAt(const LandingPoint& joint);
PlaceId placeOf(const Job& job, const LandingPoint& joint); // of its device or splice; nothing when not said
std::string nameOfPoint(const Job& job, const LandingPoint& joint); // "LM1:K1.C", "S1"

// A splice, device or terminal that is not there.
std::optional<Problem> pointProblem(const Job& job, const LandingPoint& joint);

struct ConductorEnd {
    ConductorId conductor;
    WhichEnd which = WhichEnd::From;

    friend bool operator==(const ConductorEnd&, const ConductorEnd&) = default;
};

const End& endOf(const Conductor& conductor, WhichEnd which);
WhichEnd otherEnd(WhichEnd which);
// Where an end is: a core's at its cable's place, a wire's where it is landed. Nothing when not said.
PlaceId placeOfEnd(const Job& job, const ConductorEnd& end);
// Cores of a cable in the order in which they are used up.
std::vector<const Conductor*> coresInOrder(const Job& job, const Cable& cable);

struct Landed {
    ConductorId conductor;
    Change change;
};

// The cable's next core, in the order of its type, whose end at the joint's place waits.
// Errors: a joint that is not there or at neither end of the cable; no core waits there
Result<Landed> landNext(const Job& job, CableId cable, const LandingPoint& at);

// Caps: spare. Errors: no such conductor, an end that is landed, one to be left alone
Result<Change> capEnd(const Job& job, const ConductorEnd& end);
// On purpose: a drain at its far end. Errors: as capEnd
Result<Change> insulateEnd(const Job& job, const ConductorEnd& end);
// Every core of the cable that waits at both ends becomes spare at both.
Result<Change> capUnused(const Job& job, CableId cable);
// An end waits again.
Result<Change> freeEnd(const Job& job, const ConductorEnd& end);

struct Spliced {
    SpliceId splice;
    Change change;
};
// Joins waiting or landed ends in a new splice, where the first of them is that has a place. A splice takes
// its size from how many there are.   In: its tag; empty: the next one
// Errors: fewer than two, one twice, ends at different places, a tag that another splice has
Result<Spliced> joinAtSplice(const Job& job, Numbers& numbers, const std::vector<ConductorEnd>& ends,
                             std::string tag = {});

} // namespace doorloom
