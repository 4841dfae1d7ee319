#pragma once

#include "graph/netlist.h"
#include "model/job.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

// What every load, input, source, battery and data line of a job does in a position, solved densely from the circuit alone: without
// any of the rules that it judges and without the program's own solver and verdicts.
namespace doorloom {

enum class LoadState { Dead, Weak, Works, Reversed, WrongCurrent, TooManyVolts };
enum class SourceState { Off, Carries, Overloaded, Shorted };

struct InputState {
    int reads = 0;         // 0 open, 1 closed, 2 … the bands of a supervised loop, −1 none of them
    bool foreign = false;  // volts that are not its own
    friend bool operator==(const InputState&, const InputState&) = default;
};

// A part of a device.
using PartAt = std::pair<DeviceId, Key>;

// By part. What is not there has no entry.
struct WhatHappens {
    bool settles = true;
    std::map<PartAt, LoadState> loads;
    std::map<PartAt, InputState> inputs;
    std::map<PartAt, SourceState> sources;
    std::map<PartAt, bool> suppressors; // does it conduct?
    friend bool operator==(const WhatHappens&, const WhatHappens&) = default;
};

// Throws of operators that nothing in the circuit moves by itself, and of programmed ones; the others as at rest.
using Given = std::map<OperatorId, Key>;

class Oracle {
public:
    explicit Oracle(const Job& job);
    Oracle(const Oracle&) = delete;

    // Coils and what senses by itself take what the circuit gives; programmed outputs without power fall back.
    WhatHappens in(const Given& given) const;
    // What is the same in every position: the signed sum of each charger's batteries, where data lines lead, whether coils'
    // kickback is taken up, sources that stand on each other, jumpers that are meant to stand alike and do not.
    std::map<PartAt, std::string> fixed() const;

private:
    struct Branch { // amperes from a to b = siemens × volts + constant
        Vertex a, b;
        double siemens = 0, constant = 0;
    };
    struct Half { // one half wave, or DC: as good as any
        std::vector<double> volts; // by net
        double across(Vertex a, Vertex b) const { return volts[a] - volts[b]; }
    };
    struct Read {
        std::vector<Vertex> net; // by vertex
        std::vector<Half> halves;
    };

    std::vector<Vertex> netsIn(const Position& position) const;
    Read readIn(const Position& position) const;
    Half solved(const std::vector<Vertex>& net, const Position& position, double sign) const;
    std::vector<double> solvedWith(std::vector<Branch> branches, const std::vector<Vertex>& net, const std::vector<bool>& conducts) const;
    Position settledFrom(const Position& fixed, bool together, bool& settles) const;
    Position next(const Position& now, const Position& fixed) const;

    LoadState stateOf(std::uint32_t element, const Read& read) const;
    InputState stateOf(const DryInput& input, const Read& read) const;
    SourceState stateOf(std::uint32_t feed, const Read& read, const Position& position) const;
    bool standsOnAnother(const std::vector<Vertex>& net, const Feed& feed) const;
    bool meetsAnotherSource(const Device& device, const SwitchedOutput& output) const;
    bool liesBetweenSources(const DryInput& input, const Read& read) const;
    double voltsOf(std::uint32_t feed) const;
    bool isFed(std::uint32_t element, const Read& read) const;

    enum class Level { Lowest, Nominal, Highest };
    mutable Level level_ = Level::Nominal; // of all sources

    const Job& job_;
    Netlist net_;
    const Circuit& circuit_;
    std::vector<double> ohms_;              // by element; 0: carries nothing by itself
    std::vector<double> wetting_;           // by element
    std::vector<const LoadPart*> loads_;    // by element; null: another part
};

} // namespace doorloom
