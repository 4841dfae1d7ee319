#pragma once

#include "model/job.h"

#include <string_view>

namespace doorloom {

// The bucket of Job::deviceTags where a tag is kept. The same on every machine.
Id<TagBucket> bucketOfTag(std::string_view tag);

} // namespace doorloom
