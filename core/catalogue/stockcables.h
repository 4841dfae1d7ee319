#pragma once

#include "model/rows.h"

#include <string_view>
#include <vector>

namespace doorloom {

// Cable types that a van carries; a job takes those that it uses. Without ids.
// Cost:   made once
// Source: core orders of tests/external/core_orders.csv (common practice, no source, but the pairs')
const std::vector<CableType>& stockCables();
const CableType* stockCableNamed(std::string_view name); // null when there is none

} // namespace doorloom
