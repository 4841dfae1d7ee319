#pragma once

#include "print/printedpage.h"

#include <string>

namespace doorloom {

// A square code that a telephone reads without a network.
struct Qr {
    int modules = 0;         // on a side, its quiet border of four left out
    std::vector<bool> black; // row by row
};
// In:  UTF-8, at most some 1,000 bytes
// Out: one without modules when it is longer than a code can hold
Qr qrOf(const std::string& text);

inline constexpr int quietModules = 4;
inline constexpr double leastModule = 0.33 * 72 / 25.4; // points: what a telephone reads at arm's length. Common practice, no source.

// How large a side is with its border, at this size of a module.
double sideOf(const Qr& code, double module);
// Draws it, its border's corner at x, y.
void putQr(PrintedPage& page, const Qr& code, double module, double x, double y);

} // namespace doorloom
