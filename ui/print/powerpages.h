#pragma once

#include "papers/power.h"
#include "print/printedpage.h"

namespace doorloom {

// The power and voltage-drop sheet laid out: what its figures hold for, the loads, and under them the sources with what each
// feeds. Nothing is clipped or elided: what is too wide is wrapped.
// Errors: as schedulePages
Result<std::vector<PrintedPage>> powerPages(const PowerSheet& sheet, const PaperFont& font, const PageSetup& setup);

} // namespace doorloom
