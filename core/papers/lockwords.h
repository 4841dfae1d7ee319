#pragma once

#include "judge/lockstates.h"

namespace doorloom {

// 'locked', 'free', 'as it was left' …
const Text& wordsOf(LockDoes does);

} // namespace doorloom
