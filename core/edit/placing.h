#pragma once

#include "edit/operations.h"

#include <vector>

// How a device comes out of the box.
namespace doorloom {

std::vector<Choice> unchosenJumpers(const Kind& kind);
std::vector<SettingChoice> factorySettings(const Kind& kind);
Operator ownOperator(OperatorId id, DeviceId owner, const Role& role);

} // namespace doorloom
