#pragma once

#include "canvas/hit.h"

namespace doorloom {

// The keyboard's way over the sheet: from device to device as one reads, and from terminal to terminal.

Area focusArea(const Drawing& drawing, const Hit& focus); // empty when there is none

// Devices, splices and notes as one reads them: in rows from the top, each from the left.
std::vector<Hit> readingOrder(const Drawing& drawing);
// The next (or the one before) in that order; nothing past the ends. From nothing: the first (or last).
enum class Way { Forth, Back };
Hit nextDevice(const Drawing& drawing, const Hit& from, Way way);
// The next terminal; past the last one, the next device's first.
Hit nextTerminal(const Drawing& drawing, const Hit& from, Way way);
// The nearest device on that side; the same when there is none.
Hit beside(const Drawing& drawing, const Hit& from, Facing side);

} // namespace doorloom
