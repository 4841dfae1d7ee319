#pragma once

#include "base/text.h"

#include <string_view>

namespace doorloom {

// What a member of a kind's file is for people: 'clampCapacity' is "conductors that a clamp takes".
// Out: its own name where nobody has put it into words
Words wordsOfMember(std::string_view name);

} // namespace doorloom
