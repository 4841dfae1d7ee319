#pragma once

#include "papers/tags.h"
#include "print/printedpage.h"

#include <optional>

namespace doorloom {

// What is written on a label.
struct LabelWords {
    QString large;
    std::vector<QString> small; // lines under it
    double largePrint = 9, smallPrint = 6.5; // points, where there is room
};
LabelWords labelWords(const Tag& tag, Language language);

inline constexpr double leastLargeLabelPrint = 6, leastSmallLabelPrint = 5; // points: below them nobody reads them on a ladder

// Lines under each other, centred on x = 0; the first capital's top at 0.
struct LabelText {
    std::vector<PlacedText> lines;
    double width = 0, height = 0; // to the last baseline
};

// The words as large as they fit into the room, at the most half as large again as wished: on one line each, or broken where
// a line may end.
// In:  points; a room without an end is infinite (of a tape)
// Out: nothing where they do not fit: text is never clipped and never too small to read
std::optional<LabelText> fittedLabel(const LabelWords& words, const PaperFont& font, double width, double height, double largest = 1.5);

// As one block of lines whose capitals stand in the middle of the room.
void putLabelText(PrintedPage& page, const LabelText& text, double centre, double middle);

} // namespace doorloom
