#pragma once

#include "model/job.h"

namespace doorloom {

// A job with a row of every table and hardly a member at its default: for readers and writers.
Job fullJob();

} // namespace doorloom
