#pragma once

#include "base/result.h"
#include "papers/papers.h"
#include "papers/schedule.h"
#include "print/printedpage.h"

#include <string>
#include <string_view>

class QPrinter;

// Papers as PDF bytes, to be written with saveBytes (core/file), or onto a printer. All need a QGuiApplication
// (paperApplication()). The text can be selected, and comes out of the page in the order of the rows; only
// the shipped font is used.
namespace doorloom {

// Errors: the font is missing; a name is too long or has letters that the font does not hold
Result<std::string> schedulePdf(const Schedule& schedule, const PageSetup& setup);

// ---- Papers of papers/papers.h by name.

// Errors: as schedulePdf; of tags, as labelPages
Result<std::string> paperPdf(std::string_view paper, const Job& job, const PaperSetup& setup, const PageSetup& page);
// Onto a printer.
// Errors: as paperPdf; the printer does not begin, or does not go on
Result<Done> printPaper(std::string_view paper, const Job& job, const PaperSetup& setup, const PageSetup& page,
                        QPrinter& printer);

} // namespace doorloom
