#pragma once

#include "print/labelsetup.h"
#include "print/printedpage.h"

namespace doorloom {

struct LabelPages {
    PageSize size; // of every page: the sheet as it goes through the printer, or one label of the tape
    std::vector<PrintedPage> pages;
};

// Tags on sheets of labels, or on a tape: a page is one label of it, all as long as the longest must be. Or the offset page
// for the sheet. Text is scaled to fit; nothing is clipped.
// Errors: no sheet is chosen, or it has no label of that number; there is nothing to tag; what fits on no label, by name; a letter
//         that the font does not hold; a code that would be too fine to read, or that would be wrapped round a cable
Result<LabelPages> labelPages(const TagSheet& tags, const PaperFont& font, const LabelSetup& setup, Language language);

} // namespace doorloom
