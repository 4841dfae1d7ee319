#pragma once

#include "edit/doorrows.h"
#include "edit/doortags.h"
#include "edit/duplicatedoor.h"
#include "edit/renumber.h"

namespace doorloom {

// What several doors that are drawn again in one change have in common.
struct DrawingAgain {
    const Job& job;
    Numbers& numbers;
    FreshTags tags;
    int lastSheet = 0;

    DrawingAgain(const Job& from, Numbers& take);
};

// A conductor's row under its new numbers; ends on what is not drawn again wait.
Conductor conductorAgain(Conductor row, const Renumbering& again);
// Whether an end is on something that is not drawn again.
bool isShared(const End& end, const Renumbering& again);
// "W12 waits: W2 is on PS1:+."
Message waitsWords(const Job& job, const std::string& tag, const Conductor& old, const End& shared);

// The door once more, under these tags.
DuplicatedDoor doorAgain(DrawingAgain& drawing, const DoorRows& door, const std::string& pattern,
                         std::string newTag);

} // namespace doorloom
