#pragma once

#include "solve/readings.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

// The readings of one position, as rows, for people and for programs.
namespace doorloom {

// One source or load: a plus and a minus (or two sides), the volts that a meter reads between them, and what flows.
struct ReadingRow {
    Landing from, to;
    std::optional<Volts> volts; // nothing: floating
    Amperes amperes;
    std::optional<Amperes> most; // of a source: its limit
};

struct VoltsReport {
    std::vector<ReadingRow> sources, loads, asked; // asked: volts alone
    std::vector<std::pair<std::string, std::string>> position; // operators and throws that are not as at rest
    Conditions conditions;
    SupplyLevel supplies = SupplyLevel::Nominal;
    std::size_t conductors = 0, withoutOhms = 0;     // landed at both ends; of those, without a length or a known gauge
    std::vector<Landing> fighting, notCarried;       // sources whose poles are joined or held by others; loads
    bool settled = true;
};

// The two sides of a part that stand on terminals; nothing for one between points inside a device.
std::optional<std::pair<Landing, Landing>> sidesOf(const Job& job, const Origin& origin, const Key& a, const Key& b);
// Of the conductors landed at both ends, how many have no length or no known gauge, and so count as no ohms.
struct OhmsKnown {
    std::size_t conductors = 0, withoutOhms = 0;
};
OhmsKnown ohmsKnownOf(const Job& job);
bool hasOhms(const Job& job, const Conductor& conductor);

VoltsReport voltsReport(const Job& job, const Netlist& net, const Position& position, const Conditions& conditions,
                        SupplyLevel supplies, const std::optional<std::pair<Landing, Landing>>& between);

std::string voltsText(const Job& job, const VoltsReport& report, const std::string& file, Language language);
std::string voltsJson(const Job& job, const VoltsReport& report); // DEVELOPERS.md describes it

// What every report of readings says in JSON.
std::string namesJson(const Job& job, const std::vector<Landing>& landings);                     // ["PS1:+", …]
std::string throwsJson(const std::vector<std::pair<std::string, std::string>>& throws);         // {"KS1": "on", …}

} // namespace doorloom
