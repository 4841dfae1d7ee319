#pragma once

#include <string>
#include <string_view>

namespace doorloom {

// As 64 hexadecimal digits.
std::string sha256(std::string_view bytes);

} // namespace doorloom
