#pragma once

#include "solve/ringout.h"

#include <string>
#include <vector>

// What an ohmmeter reads between two terminals with the power off, for people and for programs.
namespace doorloom {

struct OhmsReport {
    Probes probes;
    RingOut read;
    std::vector<std::pair<std::string, std::string>> position; // operators and throws given
    std::optional<RingOut> onceLifted;                         // with what is to be lifted besides
};

OhmsReport ohmsReport(const Job& job, const Netlist& net, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws, const Probes& probes);

std::string ohmsText(const Job& job, const OhmsReport& report, const std::string& file, Language language);
std::string ohmsJson(const Job& job, const OhmsReport& report); // DEVELOPERS.md describes it

// What the meter shows: '6.46 Ω', 'open: over limit', 'a diode, forward; …'
std::string ohmsWords(const OhmsRead& read, Language language);
std::string listed(const Job& job, const std::vector<Landing>& landings); // 'LM1:K1.C, LM1:K1.NO'
// '6.46 Ω', '2.2 kΩ'
std::string ohmsFigure(Ohms ohms);

} // namespace doorloom
