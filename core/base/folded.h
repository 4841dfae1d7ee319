#pragma once

#include <string>
#include <string_view>

namespace doorloom {

// A text as people compare it: small letters without accents, every dash a '-', every prime a "'".
// Knows the Latin letters of western Europe; what else there is stays as it is.
std::string folded(std::string_view text);

} // namespace doorloom
