#pragma once

#include "papers/schedule.h"
#include "print/paperfont.h"

#include <array>
#include <optional>

namespace doorloom {

inline constexpr double smallPrint = 9, terminalPrint = 12, tickPrint = 15; // points
inline constexpr double cellPadding = 4.5;

enum class CellUse { Head, Body };

// How one cell of the schedule is printed. Only a lone tick box is large; words in its column stay small.
double printSizeOf(std::size_t column, const QString& text, CellUse use);
Weight weightOf(std::size_t column, CellUse use);

using ColumnWidths = std::array<double, scheduleColumns>; // points, padding included

// The columns as wide as what stands in them: what has room to spare gives, and words are broken only where
// whole words do not fit.
struct FittedColumns {
    ColumnWidths widths{};
    Breaks breaks = Breaks::BetweenWords;
};

// Errors: the text that is too wide, when even broken words do not fit
Result<FittedColumns> fittedColumns(const Schedule& schedule, const PaperFont& font, Language language,
                                    double room);

// 'X is too long for the page.'
Problem tooLongForThePage(const QString& text);

// A row without a conductor says one thing, across the columns that it leaves empty.
inline bool spansColumns(const ScheduleRow& row)
{
    return !row.conductor;
}

} // namespace doorloom
