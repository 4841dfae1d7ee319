#pragma once

#include "edit/change.h"
#include "edit/operations.h"

namespace doorloom {

// The devices and splices of a sheet set out by box and door, as if nobody had placed them; its notes below
// them, in their order. What is on no sheet comes onto the first one. Conductors whose ends part from each
// other run as they like afterwards: their pinned bends go.
// Out:    no steps where the sheet is tidy already
// Errors: a sheet that is not in the job
Result<Change> tidySheet(const Job& job, Numbers& numbers, SheetId sheet);

// Every sheet of the job; one is added where it has none and something to draw.
Result<Change> tidySheets(const Job& job);

} // namespace doorloom
