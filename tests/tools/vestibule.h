#pragma once

#include "catalogue/catalogue.h"
#include "model/job.h"

namespace doorloom {

// Two doors one behind the other, each with its door operator; the outer one has a strike besides.
Job vestibule(const Catalogue& catalogue);

} // namespace doorloom
