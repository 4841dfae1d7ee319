#pragma once

#include <string>
#include <string_view>
#include <vector>

// Comma-separated values as in RFC 4180 (read): cells with a comma, quote or line end stand in quotes, quotes
// in them are doubled, rows end with CR LF, the first row names the columns. UTF-8.
//
// Formula guard. A spreadsheet runs a cell that starts with = + - @ (or a tab or line end) as a formula, and
// turns the terminal '+24' into a number. Such a cell gets one apostrophe in front, unless the sign is all
// there is: the terminals '+' and '−' stay as they are. To undo it, take one apostrophe off a cell that
// starts with an apostrophe and has, after all its apostrophes, one of these signs and something more.
namespace doorloom {

std::string guardedCell(std::string_view cell);
std::string csvRow(const std::vector<std::string>& cells);

} // namespace doorloom
