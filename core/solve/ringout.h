#pragma once

#include "solve/readings.h"

#include <optional>
#include <utility>
#include <vector>

// Ringing out: what an ohmmeter reads between two terminals with all power off and the batteries out.
namespace doorloom {

enum class Reads {
    Resistance,
    DiodeDrop,    // open in ohms; on the diode range the drop of a diode
    Open,
    NoUsefulOhms, // electronics, or a source's output: whatever the meter shows proves nothing
    NotReadable   // another way round, or electronics beside it, would be read as well
};

struct OhmsRead {
    Reads what = Reads::Open;
    std::optional<Ohms> ohms; // where it reads ohms; of NotReadable: all ways together, where no electronics are among them
};

// Where the probes are, and which terminals have their conductors taken off, each end by itself.
// A probe on a lifted terminal stays on the device where it has a part to measure between the two (a coil, a contact, a
// resistor, a diode); else it goes with the conductors, held together as the clamp held them.
struct Probes {
    Landing first, second;
    std::vector<Landing> lifted;
};

struct RingOut {
    OhmsRead redOnFirst, redOnSecond; // the two ways round
    std::size_t withoutOhms = 0;      // conductors on the way measured that have no length or no gauge, and count as none
    // Where it is not readable: the fewest terminals, at most two, whose conductors to lift besides, so that it is. None: no two are enough.
    std::vector<Landing> lift;
};

// All power off, batteries out: coils and what supplies and logic move are unpowered, the others at rest but for these throws.
Position positionOff(const Job& job, const Netlist& net, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws = {});

// Ohms of coils are their rated volts over their amperes, where nothing but a coil is inside (no polarity, no AC, no
// electronics); conductors by length and gauge at 20 °C; contacts and links none; suppressors open; electronics and sources unknown.
// Errors: none; a terminal that is not there reads open
// Cost:   some solutions of the circuit; where it is not readable, some for each terminal tried, and for each two of them
RingOut ringOut(const Job& job, const Meter& meter, const Position& position, const Probes& probes);

} // namespace doorloom
