#pragma once

#include "check/facts.h"

#include <optional>

namespace doorloom {

// The input that starts a door operator: the first dry one in its kind that need not be closed all the time (as a safety
// loop is).
std::optional<std::uint32_t> activationOf(const Facts& facts, DeviceId device);

} // namespace doorloom
