#pragma once

#include "check/facts.h"

#include <vector>

namespace doorloom {

// An output of a device that jumpers make wet or dry, as it stands in the job.
struct OutputInJob {
    DeviceId device;
    const SwitchedOutput* output; // lives as long as the job
    std::vector<Vertex> terminals;
    std::vector<std::uint32_t> joints; // its own: contacts and what its jumpers put there
    std::vector<std::uint32_t> ownFeeds; // that feed the device

    enum class Stands { Dry, Wet, WetIfLeftSo, Apart }; // not chosen yet; jumpers that disagree
    Stands stands(const Job& job) const;
};

std::vector<OutputInJob> outputsOf(const Facts& facts);

} // namespace doorloom
