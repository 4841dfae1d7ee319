#pragma once

#include "edit/operations.h"

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

// Forty doors: one is drawn, marked as a typical, stamped with own tags, and changed once for all.
namespace doorloom {

// ---- Marking and stamping

// The opening with all that it has for itself becomes a typical. One opening is of one typical or stamp at most.
// In:     name: empty: the opening's words, or its tag; one that another typical has gets the opening's tag too
//         also: devices that are drawn again with each stamp too, such as the door's own supply
// Errors: an opening that is not there, or is part of a typical or stamp already
Result<std::pair<TypicalId, Change>> markTypical(const Job& job, Numbers& numbers, OpeningId opening,
                                                 std::string name = {},
                                                 const std::vector<DeviceId>& also = {});
// Its stamps become doors like any other.
Result<Change> unmarkTypical(const Job& job, TypicalId typical);

// The opening that a typical or stamp draws; nothing where it is gone.
OpeningId openingOf(const Job& job, const Typical& typical);
OpeningId openingOf(const Job& job, const Stamp& stamp);

struct Numbering {
    std::string firstDoor; // of the stamps, then counted on: 101, 102 …; empty: counted on from the typical's
    std::string pattern;   // of all other tags, "{door}-{tag}"; empty: each is counted on, ES1, ES2 …
};

struct StampedDoor {
    OpeningId opening;
    StampId stamp;
    std::string tag;
    std::vector<std::string> deviceTags;
    std::vector<std::uint32_t> rows; // devices and splices
};

struct StampedDoors {
    std::vector<StampedDoor> doors;
    Change change;
    std::vector<Message> leftWaiting; // a line for each conductor that leads to what is not drawn again
};

inline constexpr int mostStampsAtOnce = 200;

// So many doors more, each with its own tags, places and sheets; one change. They are at the typical as it is now.
// Errors: a typical or opening that is gone, fewer than 1 or more than mostStampsAtOnce, a tag or pattern that
//         can't be
// Cost:   each door's rows, and one walk along the job's tags
Result<StampedDoors> stampTypical(const Job& job, Numbers& numbers, TypicalId typical, int count,
                                  const Numbering& numbering = {});

// ---- Changing it once

enum class DoorLineSort {
    Becomes,  // what applying it does
    ByHand,   // what it leaves to be landed by hand, because the typical is landed on what doors share
    Conflict, // the typical changed what the door has of its own: the door's stays
    Own       // what the door has of its own, untouched by the typical's change
};

struct DoorLine {
    DoorLineSort sort = DoorLineSort::Becomes;
    Message words;

    friend bool operator==(const DoorLine&, const DoorLine&) = default;
};
using DoorLines = std::vector<DoorLine>;

struct DoorChange {
    StampId stamp;
    OpeningId opening;
    std::string tag; // the door's
    Change change;   // of this door alone, after the typical's own (see chosenDoors)
    DoorLines lines;

    bool doesNothing() const; // but note that the door is up to date
    int count(DoorLineSort sort) const;
};

struct DoorChanges {
    Typical typical; // as it should be: its rows and editions as of now
    std::vector<DoorChange> doors;
};

// What the typical's change since each door was last brought up to it does to that door. Three ways: the typical
// then, the typical now, the door. A door's own exceptions stay, and what can't be taken over is said.
// Errors: a typical that is gone, or its opening
// Cost:   the rows of all its doors, and for each one walk along the job's tags and a trial of its change
Result<DoorChanges> changesForStamps(const Job& job, Numbers& numbers, TypicalId typical);

// One change for these doors; the others stay at what they were last brought up to, and are asked about
// again.
Change chosenDoors(const Job& job, const DoorChanges& changes, const std::vector<StampId>& chosen);

} // namespace doorloom
