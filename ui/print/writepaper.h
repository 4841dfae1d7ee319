#pragma once

#include "papers/papers.h"
#include "print/printedpage.h"

#include <string>

namespace doorloom {

// Writes a paper in the form that the file's name asks for: .pdf, .csv or .txt.
// Needs a QGuiApplication for PDF (paperApplication(), or the window's own).
// Errors: a form that no paper has; what paperPdf refuses, and saveBytes (core/file)
Result<Done> writePaper(const Paper& paper, const Job& job, const PaperSetup& setup, const PageSetup& page,
                        const std::string& file);

} // namespace doorloom
