#pragma once

#include "canvas/drawing.h"
#include "edit/landcores.h"

#include <cstdint>
#include <optional>

namespace doorloom {

// What is under a point of the sheet, or under the keyboard's focus.
struct Hit {
    enum class What { Nothing, Terminal, Device, Splice, Note, Ring, ConductorEnd, Conductor, Cable, Frame };
    What what = What::Nothing;
    std::uint32_t row = 0;         // of the device, splice, note, conductor, cable or place
    std::size_t cell = 0;          // of a terminal
    std::size_t piece = 0;         // of a conductor's line: between this point and the next
    WhichEnd end = WhichEnd::From; // of a conductor or a cable

    explicit operator bool() const { return what != What::Nothing; }
    friend bool operator==(const Hit&, const Hit&) = default;
};

// In:   reach: how far beside a line still counts, in tenths of a millimetre; withTerminals: they are large
// enough
//       to be pointed at
// Cost: a look-up in the index, and a walk over what lies there
enum class Pointed { Devices, Terminals };
Hit hitAt(const Drawing& drawing, Point at, int reach, Pointed finest);

// What a conductor may be landed on there; nothing when it is neither a terminal nor a splice.
std::optional<LandingPoint> landingPointOf(const Drawing& drawing, const Hit& hit);
// Where that is on the sheet.
std::optional<Port> portOf(const Drawing& drawing, const LandingPoint& point, Point seenFrom);
// The place of what is there; nothing when it has none.
PlaceId placeOf(const Drawing& drawing, const Hit& hit);

} // namespace doorloom
