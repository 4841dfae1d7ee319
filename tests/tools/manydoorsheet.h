#pragma once

#include "model/job.h"

#include <string>
#include <vector>

namespace doorloom {

// Samples one after another in one job, each with places of its own but for those named as shared; tidied
// onto the first one's sheet.
Job sheetOfSamples(const std::vector<std::string>& samples, const std::vector<std::string>& sharedPlaces);

} // namespace doorloom
