#pragma once

#include "base/result.h"

#include <string>

namespace doorloom {

// The bytes of a file.
// Errors: not there, not readable, a folder, more than `mostBytes` (nothing of a larger file is kept)
Result<std::string> wholeFile(const std::string& path, std::size_t mostBytes);

} // namespace doorloom
