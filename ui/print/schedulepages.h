#pragma once

#include "papers/schedule.h"
#include "print/printedpage.h"

namespace doorloom {

// The terminal schedule laid out. A box starts on a sheet of its own, so that it can be handed to whoever
// stands there; other places follow each other. A device that does not fit goes on under 'continued' with its
// column heads. Nothing is clipped or elided: what is too wide is wrapped. Errors: a word that is wider than
// its column can ever be, or a letter that the font does not hold
Result<std::vector<PrintedPage>> schedulePages(const Schedule& schedule, const PaperFont& font,
                                               const PageSetup& setup);

} // namespace doorloom
