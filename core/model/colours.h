#pragma once

#include "base/text.h"

#include <span>
#include <string>
#include <string_view>

namespace doorloom {

struct ColourCode {
    std::string_view letters;
    Text words;
};

// In the order of the standard's table.
// Source: IEC 60757 as adopted in GOST 28763-90 (IEC 757-83), read: tests/external/colours_iec60757.csv
std::span<const ColourCode> colourCodes();

// The words of an insulation's colour: 'RD' red, 'GNYE' green-and-yellow, 'WH+BU' white with a blue stripe,
// lower case alike.   Out: no words when some letters are no code of the table
Message colourInWords(std::string_view colour);

// "RD" of 'red', 'rojo' or 'rd', 'WH+BU' of 'wh+bu'; empty when it is no colour.
std::string colourLetters(std::string_view word);

} // namespace doorloom
