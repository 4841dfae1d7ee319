#pragma once

#include "core/random.h"
#include "edit/change.h"

#include <span>
#include <string>

namespace doorloom::bench {

// An edit of one of the doors that manyDoors draws.
struct DoorEdit {
    const char* name;
    Change (*make)(const Job& job, const std::string& door, Random& random);
};
std::span<const DoorEdit> doorEdits();
std::string someDoor(const Job& job, Random& random); // its number, as its devices' tags end

} // namespace doorloom::bench
