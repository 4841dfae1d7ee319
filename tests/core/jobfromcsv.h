#pragma once

#include "model/job.h"

#include <functional>
#include <string>

namespace doorloom {

// The schedule's CSV read as somebody without the job would: devices by the kind's name in their head, jumpers as
// printed there, operators as the kinds' own, a conductor from the two rows that each tell one of its ends.
// A row that contradicts itself or another throws std::runtime_error.
Job jobFromCsv(const std::string& csv, const std::function<Kind(const std::string& name)>& kinds);

} // namespace doorloom
