#pragma once

#include "base/json.h"
#include "file/jobfile.h"

#include <array>

// Older job files. Each upgrade makes a version out of the one before, in the tree, and keeps the lines.
namespace doorloom {

using Upgrade = void (*)(Json& file);

// What version 1 says of typicals and stamps means the same in version 2: they have no editions.
inline void nothingToUpgrade(Json&) {}

// upgrades[0] makes version 2 out of version 1.
inline constexpr std::array<Upgrade, jobFileVersion - 1> upgrades = {nothingToUpgrade};

inline void upgradeFrom(int version, Json& file)
{
    for (std::size_t next = static_cast<std::size_t>(version) - 1; next < upgrades.size(); ++next)
        upgrades[next](file);
}

} // namespace doorloom
