#pragma once

#include "check/facts.h"
#include "check/finding.h"

#include <vector>

// What several rules say in the same way.
namespace doorloom {

Spot deviceSpot(DeviceId device);
Spot terminalSpot(const Landing& landing);
Spot optionSpot(DeviceId device, const Key& option);
Spot spotOf(const Facts& facts, Vertex vertex); // its terminal, or its device

// A load's place: its device; where the device has several loads, the terminal that is this one's alone.
Spot loadSpot(const Facts& facts, std::uint32_t element);

// A source's place: its device; where its plus is not simply called +, that terminal.
Spot feedSpot(const Facts& facts, std::uint32_t feed);

std::vector<Witness> witnessesOf(const Facts& facts, const std::vector<Cube>& cubes);
// The verdict's cubes as the finding's throws.
void happensIn(Finding& finding, const Facts& facts, const Verdict& verdict);

// "PS1:+", as people say it; a place inside a device is called by the device's tag.
std::string nameOf(const Facts& facts, Vertex vertex);
std::string tagOfOrigin(const Facts& facts, std::uint32_t origin);

// Throws of these operators that are not as at rest.
Witness witnessAt(const Facts& facts, const Position& at, const std::vector<MovedIndex>& mattering);
Witness witnessAt(const Facts& facts, const Position& at); // of all
std::string figureText(double value); // '0.25'

// A question whose budget ran out: said, so that nobody takes silence for an answer.
Finding notProved(std::string_view rule, Spot at);

// Both poles of the sources in one island.
struct Pole {
    Vertex vertex;
    std::uint32_t feed;
    bool isPlus;
};
std::vector<Pole> polesNear(const Facts& facts, Vertex vertex);

bool occurs(const Verdict& verdict); // in some position, proved

} // namespace doorloom
