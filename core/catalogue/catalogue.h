#pragma once

#include "base/result.h"
#include "model/kind.h"

#include <string>
#include <vector>

namespace doorloom {

// The kinds that come with the program, in the order of their names.
struct Catalogue {
    std::vector<Kind> kinds;

    const Kind* find(const std::string& name) const;
};

// Reads every *.json of a folder, one kind a file, and checks each.
// Errors: the first file that cannot be read or whose kind contradicts itself
Result<Catalogue> readCatalogue(const std::string& folder);

} // namespace doorloom
