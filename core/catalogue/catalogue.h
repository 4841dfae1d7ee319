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

// Reads and checks one kind in a file of its own.
// Errors: a file that can't be read, those of readCheckedKind
Result<Kind> readKindFile(const std::string& path);
// Errors: a file that doesn't bear its kind's name too
Result<Kind> readNamedKindFile(const std::string& path);

// Reads every *.json of a folder, one kind a file, and checks each.
// Errors: the first file that cannot be read or whose kind contradicts itself
Result<Catalogue> readCatalogue(const std::string& folder);

} // namespace doorloom
