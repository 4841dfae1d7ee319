#pragma once

#include "base/json.h"
#include "catalogue/kindform.h"

#include <string>

// What a form of a kind shows in one line, and what was written there as JSON.
namespace doorloom {

// "24", "yes", "in, out", "K1.JA=wet, K1.JB=wet".
std::string cellOf(const Json& value);

// Back again. A word where a number should be stays a word: the reader of kinds says what should stand there.
// In:  type: one that isLine; cell: no blanks around it
std::string cellAsJson(const FormType& type, const std::string& cell);

} // namespace doorloom
