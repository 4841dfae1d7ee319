#pragma once

#include "model/kind.h"

namespace doorloom {

// A kind with a part of every type, and every member of every struct away from its default.
Kind fullKind();

} // namespace doorloom
