#pragma once

#include "base/text.h"
#include "model/rows.h"

// What the model's own words are called by people.
namespace doorloom {

const Text& wordsOf(FailMode mode);
const Text& wordsOf(Standing standing);
const Text& wordsOf(Mounting mounting);
const Text& wordsOf(Egress egress);
const Text& wordsOf(Audience audience);
const Text& wordsOf(Side side);
const Text& wordsOf(Promised promised);

} // namespace doorloom
