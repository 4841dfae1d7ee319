#pragma once

#include "print/printedpage.h"
#include "verbs/verb.h"

namespace doorloom {

// The options of 'print' that are about labels.
inline constexpr VerbOption labelOptions[] = {{.name = "--labels", .value = "NAME"},
                                              {.name = "--start", .value = "N"},
                                              {.name = "--by", .value = "rows|columns"},
                                              {.name = "--only", .value = "conductors|cables|devices"},
                                              {.name = "--qr", .value = ""},
                                              {.name = "--measured", .value = "LEFT TOP"},
                                              {.name = "--offset-page", .value = ""}};

const VerbOption* labelOptionIn(const Request& request); // the first that was given; null: none

// How the labels are asked for; where nobody says, sheets of 24 (A4) or 30 (letter) from their first label on.
// Errors: no such sheet, order or kind of tag; what is no number
Result<LabelSetup> labelSetupOf(const Request& request, SheetSize page);

} // namespace doorloom
