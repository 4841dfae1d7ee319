#pragma once

#include "model/job.h"

#include <functional>
#include <string>
#include <string_view>

namespace doorloom {

// The next device's tag: counting on from the letters of the job's last one of the same kind, else of a kind
// of the same sort ("ES1" for a strike, "PS1" for a supply).
std::string nextDeviceTag(const Job& job, const Kind& kind);
std::string nextCableTag(const Job& job);   // "C3"
std::string nextSpliceTag(const Job& job);  // "S2"
std::string nextWireTag(const Job& job);    // "W7"
std::string nextSheetTitle(const Job& job); // "2"

// Counts a tag on until it is free: "EL1" → "EL2", "DOOR" → "DOOR2".
std::string countedOn(std::string_view tag, const std::function<bool(const std::string&)>& isTaken);

} // namespace doorloom
