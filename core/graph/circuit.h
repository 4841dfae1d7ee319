#pragma once

#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

// A job's circuit without names: what is joined to what, and when. Numbers index the vectors below.
namespace doorloom {

using Vertex = std::uint32_t;
using MovedIndex = std::uint32_t; // of Circuit::operators
using ThrowIndex = std::uint8_t;
using Millivolts = std::int32_t;

// An operator in one of the throws of a mask (bit t: throw t).
struct Atom {
    MovedIndex moved = 0;
    std::uint32_t mask = 0;
    friend bool operator==(const Atom&, const Atom&) = default;
};
using Term = std::vector<Atom>; // all of them

// An or of ands. One empty term: always. No term: never.
struct Guard {
    std::vector<Term> anyOf{Term{}};

    bool always() const;
    friend bool operator==(const Guard&, const Guard&) = default;
};

// One throw of every operator.
using Position = std::vector<ThrowIndex>;
bool holds(const Guard& guard, const Position& position);

struct MovedOperator {
    ThrowIndex throws = 2, unpowered = 0, idle = 0;
};

struct Joint { // conductor, link, fuse, contact
    Vertex a = 0, b = 0;
    Guard guard;
    std::uint32_t origin = 0; // of Netlist::origins
    bool byJumper = false;    // put there by a jumper: questions may be asked with it taken out
};

struct Diode { // current runs from anode to cathode
    Vertex anode = 0, cathode = 0;
    Millivolts drop = 700;
    std::uint32_t origin = 0;
};

enum class ElementKind { Load, Resistor, Suppressor, Wetting };

struct Element { // load, coil, voltage input, resistor, suppressor, a dry input's wetting
    Vertex a = 0, b = 0; // a is the plus where it is polarised
    ElementKind kind = ElementKind::Load;
    bool polarised = false;
    double ohms = 0; // of a resistor
    std::uint32_t origin = 0;
};

struct Feed { // one output of a supply
    Vertex plus = 0, minus = 0;
    Millivolts lowest = 24000, nominal = 24000, highest = 27600;
    bool ac = false, mayParallel = false;
    Guard live;
    std::uint32_t origin = 0;
};

struct DryInput {
    Vertex terminal = 0, reference = 0;
    double closedBelowOhms = 0; // resistors up to this sum still close it
    bool isolated = false, mayShare = false, mustBeClosed = false;
    std::uint32_t origin = 0;
};

// What can take an operator out of its unpowered throw.
struct Drive {
    MovedIndex moved = 0;
    enum class Manner { Plain, Follows, Programmed } manner = Manner::Plain;
    std::optional<std::uint32_t> load; // element that must be fed; plain: the coil
    Guard powered;                     // the device's own mains and the like, and what it senses
    bool isSensing = false;            // follows: away from its unpowered throw whenever it is powered so
    std::optional<std::uint32_t> closedInput; // follows: dry input that must be closed in the very position
    std::vector<std::uint32_t> dryInputs, voltageInputs; // one of which must be able to operate
    bool needsInput = false;
};

struct Circuit {
    Vertex vertices = 0;
    std::vector<MovedOperator> operators;
    std::vector<Joint> joints;
    std::vector<Diode> diodes;
    std::vector<Element> elements;
    std::vector<Feed> feeds;
    std::vector<DryInput> inputs;
    std::vector<Drive> drives;
};

// Every operator where it is idle.
Position atRest(const Circuit& circuit);

// The circuit while these operators stand so, whatever the others do: no guard names them any more.
Circuit held(Circuit circuit, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws);

} // namespace doorloom
