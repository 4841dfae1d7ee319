#pragma once

#include "bench/row.h"

#include <QString>

namespace doorloom::bench {

// In:  the large job's file
// Out: a process's exit code; 1: over a gate
int startRows(const QString& file, Gate gate); // exec to the first painted window: wall time, median of nine
int editRows(const QString& file, Gate gate);  // one edit, in every panel and on the sheet
int memoryRow(const QString& file, Gate gate); // the most it ever had

} // namespace doorloom::bench
