#pragma once

#include "model/job.h"

namespace doorloom::bench {

// 2,500 devices and 10,000 conductors: 312 doors of eight devices and a spare four, each door on its own
// supply, with cables, openings and a drawing.
Job largeJob();

} // namespace doorloom::bench
