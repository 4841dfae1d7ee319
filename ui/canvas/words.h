#pragma once

#include "base/text.h"
#include "canvas/hit.h"
#include "model/job.h"

namespace doorloom {

// What things on the sheet are, in words: for the pointer that rests on them, and for screen readers.

Message deviceWords(const Job& job, const Device& device);     // "EL1: Electric strike …, FRAME"
Message terminalName(const Job& job, const Landing& terminal); // "EL1:+, plus of the coil"
Message landedOn(const Job& job, const LandingPoint& point);   // "RD core of C3 to PS1:+", or that nothing is
Message conductorWords(const Job& job, const Conductor& conductor); // "RD core of C3 from EL1:+ to PS1:+"
Message cableWords(const Job& job, const Cable& cable); // "C3, 18/2, from CAB1 to FRAME: 2 ends wait"

// Of whatever is there; empty where there is nothing.
Message wordsOf(const Job& job, const Drawing& drawing, const Hit& hit);

} // namespace doorloom
