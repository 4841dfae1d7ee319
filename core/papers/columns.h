#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace doorloom {

// How many letters a UTF-8 text shows.
std::size_t lettersIn(std::string_view text);

// Rows under each other, every column as wide as its widest cell, two blanks between; no blanks at the end.
// A row of a single cell runs across and widens nothing.
std::string alignedColumns(const std::vector<std::vector<std::string>>& rows);

} // namespace doorloom
