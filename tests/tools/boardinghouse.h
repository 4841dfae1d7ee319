#pragma once

#include "catalogue/catalogue.h"
#include "model/job.h"

namespace doorloom {

// Forty rooms of a boarding house: one is drawn, and stamped thirty-nine times.
Job boardingHouse(const Catalogue& catalogue);

} // namespace doorloom
