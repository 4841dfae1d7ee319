#pragma once

#include <string>

namespace doorloom {

// JSON schemas (draft 2020-12) of the two files, made from the very shapes that the readers read by. What a schema
// can't say stays with the readers: references that lead nowhere, ids used twice or past nextNumber, a kind that
// contradicts itself, a hash that doesn't match.
std::string jobFileSchema();
std::string kindSchema();

} // namespace doorloom
