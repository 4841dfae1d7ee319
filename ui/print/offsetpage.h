#pragma once

#include "print/labelpages.h"

namespace doorloom {

// Two pages on plain paper: two lines at a known distance from its edges, to be measured; then every label's outline with its
// number, to be held against the sheet in front of a light. The correction is in the outlines, not in the lines.
// Errors: the labels are on a tape, or no sheet is chosen
Result<LabelPages> offsetPages(const PaperFont& font, const LabelSetup& setup, Language language);

} // namespace doorloom
