#pragma once

#include "edit/references.h"
#include "model/job.h"

#include <cstdint>
#include <string>
#include <vector>

// Keeps what a Job derives from its tables (referrers and deviceTags) in step with them.
namespace doorloom {

// The row of this number referred to the ones before, and refers to the ones after. Both sorted, each once.
void relate(Job& job, std::uint32_t referrer, const std::vector<std::uint32_t>& before,
            const std::vector<std::uint32_t>& after);

void addTag(Job& job, const std::string& tag, DeviceId device);
void removeTag(Job& job, const std::string& tag, DeviceId device);

// The row before is about to become the row after. Null: not there.
template <class Row> void followLookups(Job& job, const Row* before, const Row* after)
{
    const std::vector<std::uint32_t> none;
    if (before || after)
        relate(job, before ? before->id.number : after->id.number, before ? referencesOf(*before) : none,
               after ? referencesOf(*after) : none);
    if constexpr (std::is_same_v<Row, Device>) {
        if (before)
            removeTag(job, before->tag, before->id);
        if (after)
            addTag(job, after->tag, after->id);
    }
}

// A job of the same tables whose look-ups are made from nothing.
Job withLookupsRebuilt(Job job);

} // namespace doorloom
