#pragma once

#include <compare>

namespace doorloom {

// A number with its unit in the type: adding volts to amperes does not compile.
template <class Unit>
struct Quantity {
    double value = 0;

    friend auto operator<=>(Quantity, Quantity) = default;
    friend Quantity operator+(Quantity a, Quantity b) { return {a.value + b.value}; }
    friend Quantity operator-(Quantity a, Quantity b) { return {a.value - b.value}; }
    friend Quantity operator-(Quantity a) { return {-a.value}; }
    friend Quantity operator*(double times, Quantity a) { return {times * a.value}; }
};

using Volts = Quantity<struct VoltUnit>;
using Amperes = Quantity<struct AmpereUnit>;
using Ohms = Quantity<struct OhmUnit>;
using Watts = Quantity<struct WattUnit>;
using Metres = Quantity<struct MetreUnit>;
using Millimetres = Quantity<struct MillimetreUnit>;
using Milliseconds = Quantity<struct MillisecondUnit>;
using AmpereHours = Quantity<struct AmpereHourUnit>;
using NewtonMetres = Quantity<struct NewtonMetreUnit>;

inline Volts operator*(Amperes i, Ohms r) { return {i.value * r.value}; }
inline Watts operator*(Volts v, Amperes i) { return {v.value * i.value}; }
inline Ohms operator/(Volts v, Amperes i) { return {v.value / i.value}; }
inline Amperes operator/(Volts v, Ohms r) { return {v.value / r.value}; }

} // namespace doorloom
