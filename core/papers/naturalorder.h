#pragma once

#include <string_view>

namespace doorloom {

// Tags as people sort them: 'K2' before 'K10'. A strict order: strings that differ are never equal.
bool naturallyLess(std::string_view a, std::string_view b);

} // namespace doorloom
