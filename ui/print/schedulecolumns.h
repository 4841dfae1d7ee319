#pragma once

#include "papers/schedule.h"
#include "print/tablecells.h"

namespace doorloom {

inline constexpr double terminalPrint = 12, tickPrint = 15; // points

enum class CellUse { Head, Body };

// The cells of the schedule as they are printed: the terminal and where a wire goes stand out; only a lone tick box is
// large, words in its column stay small.
PrintedCells printedCells(const ScheduleCells& cells, CellUse use);

// Errors: the text that is too wide, when even broken words do not fit
Result<FittedColumns> fittedColumns(const Schedule& schedule, const PaperFont& font, Language language,
                                    double room);

// A row without a conductor says one thing, across the columns that it leaves empty.
inline bool spansColumns(const ScheduleRow& row)
{
    return !row.conductor;
}

} // namespace doorloom
