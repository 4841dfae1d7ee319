#pragma once

#include "base/json.h"

#include <filesystem>
#include <string>
#include <vector>

namespace doorloom {

// The *.json of a folder, in the order of their names.
// In:     what to say when it cannot be read (with a gap {reason}), and what to do then
Result<std::vector<std::filesystem::path>> jsonFilesIn(const std::string& folder, Text notRead, Text remedy);

// Errors: as wholeFile and parseJson
Result<Json> jsonIn(const std::filesystem::path& file);

} // namespace doorloom
