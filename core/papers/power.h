#pragma once

#include "model/job.h"
#include "papers/titleblock.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

// The power and voltage-drop sheet: what every load gets at the end of its conductors in the worst position looked at, and
// what every source gives. For whoever chooses gauges before the cables are pulled, and who measures afterwards.
namespace doorloom {

enum class PowerVerdict {
    Enough,
    TooFew,         // volts while holding
    TooFewToPullIn, // volts at inrush, with what starts together with it
    NotCarried,     // at inrush the line can't carry what it asks for
    LengthMissing,  // on its way: what is missing counts as none
    LeastNotSaid,   // of its kind
    NeverFed,       // in no position looked at
    NotFedOnAc      // or behind a rectifier
};

struct LoadLine {
    std::string load;  // 'ES1:1, 2'
    std::string what;  // the words of its device
    Message title;     // of the device's kind
    bool fromSheet = false; // its amperes and limits; else they carry †
    // In the position in which it gets least of all looked at, supplies at their lowest. Nothing: never fed, or no way
    // through conductors and contacts alone.
    std::string source;              // 'PS1:+'
    std::optional<Metres> way;       // out and back, of what has a length
    bool wayIsWhole = true;          // false: some of it has no length or no gauge, and counts as none
    std::vector<std::string> gauges; // along it, each once
    std::optional<Ohms> loop;
    std::optional<Volts> nominal; // of its source
    std::optional<Amperes> amperes;
    std::optional<Volts> holding;
    std::optional<Amperes> inrush;
    std::optional<Volts> atInrush; // nothing: no inrush is said, or it is not carried
    std::optional<Volts> least, pullIn;
    PowerVerdict verdict = PowerVerdict::NeverFed;
    std::optional<std::string> leastGauge; // that all of its way would do with
    bool noGaugeWouldDo = false;           // of those that conductors for doors come in
    std::vector<Message> position;         // operators not as at rest; none: at rest

    std::optional<double> dropPercent() const; // while holding, against the nominal volts
};

enum class SourceVerdict { Under80, Over80, OverLimit, LimitNotSaid, NotLookedAt };

// In the position in which it gives most, supplies at their nominal volts.
struct SourceLine {
    std::string source; // 'PS1:+, −'
    std::string what;
    Message title;
    bool fromSheet = false; // its limit
    SourceVerdict verdict = SourceVerdict::NotLookedAt;
    std::vector<std::pair<std::string, Amperes>> loads; // those that draw
    Amperes others;                                     // what is no load on terminals: inputs, parts inside devices
    Amperes sum;
    std::optional<Amperes> limit;
    std::vector<Message> position;
};

inline constexpr double mostOfLimit = 0.8; // of a source: common practice

struct PowerSheet {
    TitleBlock title;
    std::vector<LoadLine> loads;     // by tag
    std::vector<SourceLine> sources; // by tag
    std::size_t conductors = 0, withoutOhms = 0;
    bool allPositions = true; // else: rest, what draws most, and on top of that each load's own operators
};

// In:   digestOf(job) (core/file)
// Cost: a solution for each position looked at, and some for each load
PowerSheet powerOf(const Job& job, std::string digest);

} // namespace doorloom
