#pragma once

#include "base/result.h"
#include "model/kind.h"

#include <string>
#include <vector>

// The user's own kinds: a folder with one file a kind, in the format of the catalogue. A job keeps its own
// copies, so nothing that happens here changes a job.
namespace doorloom {

struct OwnShelf {
    std::vector<Kind> kinds;     // in the order of their names
    std::vector<Problem> unread; // files that are not on the shelf, and why; they stay where they are
};

// Out: nothing where there is no such folder yet
OwnShelf readOwnShelf(const std::string& folder);

// Writes NAME.json, whole or not at all, in place of a kind of this name that is there; makes the folder.
// Errors: a kind that contradicts itself, a file of that name that is not this kind's, a folder that can't be
// written
Result<Done> keepOnOwnShelf(const std::string& folder, const Kind& kind);

// One kind as one file, to hand on. Errors: as keepOnOwnShelf, but any file may be written over
Result<Done> writeKindFile(const Kind& kind, const std::string& path);

} // namespace doorloom
