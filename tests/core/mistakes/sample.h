#pragma once

#include "samples.h"

#include "core/circuits/circuit.h"

#include <string_view>

namespace doorloom {

inline MistakeSample mistake(std::string name, Job right, const Edit& edit)
{
    JobBuilder broken(right, Clamps::Roomy);
    edit(broken);
    return {std::move(name), broken.job(), std::move(right)};
}

// A right job of tests/core/rightjobs.
Job rightJobCalled(std::string_view name);

} // namespace doorloom
