#pragma once

#include "openjob/openjob.h"

namespace doorloom {

Touched touchedBy(const Change& change);
void add(Touched& all, const Touched& more);

} // namespace doorloom
