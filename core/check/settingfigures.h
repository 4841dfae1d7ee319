#pragma once

#include "model/kind.h"

// What settings are held to, for the rules and for the settings sheet.
namespace doorloom {

// Millimetres from the centre of one touchless actuator to that of the next on its wall, a setting called
// "spacing". Source: trade page, actuators side by side, 12 in, from memory
inline constexpr double leastActuatorSpacing = 305;

// A value of this name, of whatever setting, is one with which the device does nothing.
inline bool isNothing(const SettingValue& value)
{
    return value == SettingValue("none");
}

} // namespace doorloom
