#pragma once

#include "base/result.h"
#include "print/paperfont.h"

#include <QString>

#include <string>
#include <vector>

class QPagedPaintDevice;

// What every paper is drawn from: text and rules at fixed spots. All lengths are points, y down from the top.
namespace doorloom {

struct PlacedText {
    double x = 0, baseline = 0;
    double points = 9;
    Weight weight = Weight::Plain;
    QString text;
};

struct Rule {
    double x1 = 0, y1 = 0, x2 = 0, y2 = 0, width = 0.5;
};

struct PrintedPage {
    std::vector<PlacedText> texts; // in reading order
    std::vector<Rule> rules;
};

enum class SheetSize { A4, Letter };

struct PageSetup {
    SheetSize size = SheetSize::A4;
    Language language = Language::English;
    std::string fontFolder; // resources/font
};

struct PageSize {
    double width = 0, height = 0;
};
PageSize landscapeOf(SheetSize size);

// Draws the pages onto a printer or a writer of PDF, each on a sheet of its own, at their true size.
// In:  a device whose page is landscapeOf(size) with no margins (setPageOf)
// Out: false when the device could not be begun
bool drawPages(const std::vector<PrintedPage>& pages, const PaperFont& font, QPagedPaintDevice& device);
void setPageOf(QPagedPaintDevice& device, SheetSize size);

// The pages as PDF, for saveBytes (core/file).   Needs a QGuiApplication (paperApplication()).
// Cost: mostly Qt's own, for each text
std::string pdfOf(const std::vector<PrintedPage>& pages, const PaperFont& font, SheetSize size,
                  const QString& title);

} // namespace doorloom
