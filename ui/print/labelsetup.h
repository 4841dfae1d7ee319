#pragma once

#include "papers/labelsheet.h"
#include "papers/tags.h"

#include <optional>

namespace doorloom {

// How tags are laid out.
struct LabelSetup {
    LabelSheet sheet;
    int start = 1; // the first label that is still there, counted from 1 in the same order
    LabelOrder order = LabelOrder::ByRows;
    std::optional<TagKind> only; // nothing: all of them
    bool withQr = false;         // on the tags of cables and devices
    Pitch shift;                 // of the printer: added to where everything is drawn
    bool offsetPage = false;     // in place of the tags

    friend bool operator==(const LabelSetup&, const LabelSetup&) = default;
};

// Where the lines of the offset page stand if the printer is true, from the left and the upper edge of the paper.
inline constexpr Millimetres offsetLines{30};
// What makes good for a printer whose lines stand there.
// Out: nothing when it is off by more than a printer can be: something else is wrong
std::optional<Pitch> shiftFor(Millimetres measuredFromLeft, Millimetres measuredFromTop);
inline constexpr Millimetres mostShift{10};

} // namespace doorloom
