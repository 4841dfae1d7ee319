#pragma once

namespace doorloom {

// From now on screen readers find devices, splices and notes as children of a SheetView, in the order in
// which one reads, and terminals as children of devices: with names, places on the screen, focus, and press
// as their action.
void makeSheetAccessible();

} // namespace doorloom
