#pragma once

#include "papers/papers.h"
#include "papers/schedule.h"
#include "print/printedpage.h"

#include <string>
#include <string_view>

// Papers as PDF bytes, to be written with saveBytes (core/file). All need a QGuiApplication
// (paperApplication()). The text can be selected, and comes out of the page in the order of the rows; only
// the shipped font is used.
namespace doorloom {

// Errors: the font is missing; a name is too long or has letters that the font does not hold
Result<std::string> schedulePdf(const Schedule& schedule, const PageSetup& setup);

// How a paper of papers/papers.h is drawn; null when it has no pages (yet).
using PdfMaker = Result<std::string> (*)(const Job& job, const PaperSetup& paper, const PageSetup& page);
PdfMaker pdfMakerFor(std::string_view paper);

} // namespace doorloom
