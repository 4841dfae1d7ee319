#pragma once

#include "core/circuits/circuit.h"

#include <optional>
#include <string>
#include <vector>

// Every kind of the catalogue in the simplest job that it is bought for, wired right.
namespace doorloom {

// What one slip in the simplest job must make the checks say, among whatever else they say.
struct Slip {
    Edit edit;
    std::string rule, at;
};

struct SimplestWiring {
    std::string kind;
    std::string devices; // "PS1 dc-supply-24; OL1 lamp"
    std::string wires;   // "PS1:+ → OL1:+; OL1:− → PS1:−"
    std::string options{}; // "LM1.K1=wet MS1.relay=held-in"
    std::optional<OpeningSketch> opening{};
    std::optional<Slip> slip{};
};

std::vector<SimplestWiring> simplestSupplies(); // and logic
std::vector<SimplestWiring> simplestLocks();
std::vector<SimplestWiring> simplestSwitches(); // switches, actuators, lamps, door operators
std::vector<SimplestWiring> simplestParts();    // relays, parts, joints
std::vector<SimplestWiring> allSimplestWirings();

Job jobOf(const SimplestWiring& wiring);

// ---- Openings that many of them have. Each promises locked at rest.

// People get out by hand; each request frees; `withoutPower` is the lock's state when all power is lost.
OpeningSketch openedFrom(const std::string& lock, std::vector<ActSketch> requests, Promised withoutPower);
// People get out only by electricity: each release frees, and so does the loss of all power.
OpeningSketch releasedFrom(const std::string& lock, std::vector<ActSketch> releases);
// The same, and in a fire alarm of this operator it is free.
OpeningSketch freeInFire(OpeningSketch sketch, const std::string& fire);

} // namespace doorloom
