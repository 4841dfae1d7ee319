#pragma once

#include <cstddef>
#include <string_view>

namespace doorloom {

// How many bytes the UTF-8 character at the front has; 0 when it is none.
std::size_t utf8Length(std::string_view text);

} // namespace doorloom
