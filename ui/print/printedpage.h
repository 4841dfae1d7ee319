#pragma once

#include "base/result.h"
#include "print/labelsetup.h"
#include "print/paperfont.h"

#include <QString>

#include <string>
#include <vector>

class QPageLayout;
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
    LabelSetup labels{};    // for tags
};

struct PageSize {
    double width = 0, height = 0;
};
PageSize landscapeOf(SheetSize size);

// A page with no margins, at its true size: a printer's own margins do not shift what has margins already.
QPageLayout layoutOf(SheetSize size); // lying
QPageLayout layoutOf(PageSize size);  // as it is

// Draws the pages onto a printer or a writer of PDF, each on a sheet of its own, at their true size.
// In:  a device with the pages' layout
// Out: false when the device could not be begun
bool drawPages(const std::vector<PrintedPage>& pages, const PaperFont& font, QPagedPaintDevice& device);

// The pages as PDF, for saveBytes (core/file).   Needs a QGuiApplication (paperApplication()).
// Cost: mostly Qt's own, for each text
std::string pdfOf(const std::vector<PrintedPage>& pages, const PaperFont& font, const QPageLayout& layout,
                  const QString& title);

} // namespace doorloom
