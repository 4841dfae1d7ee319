#pragma once

#include "edit/operations.h"

#include <cstdint>
#include <vector>

namespace doorloom {

// Takes away whatever was chosen: devices, splices, cables, notes, sheets, openings, places, findings set
// aside. Of conductors, cores are taken off and wires go; so do wires that would be left with both ends in
// the air. Rows that are gone already are passed over.
// Errors: one that is to be left alone
Result<Change> removeAny(const Job& job, const std::vector<std::uint32_t>& rows);

} // namespace doorloom
