#pragma once

#include "graph/netlist.h"
#include "model/job.h"
#include "solve/alternating.h"
#include "solve/gauge.h"
#include "solve/network.h"

#include <array>
#include <optional>
#include <vector>

namespace doorloom {

enum class SupplyLevel { Lowest, Nominal, Highest, OnBattery }; // the last: on battery, at its end

struct Conditions {
    double celsius = ordinaryCelsius; // of the conductors
    bool ac = false;                  // of AC sources alone, in magnitude; else of DC sources alone
};

// What of a job the readings of all its positions share: ohms of its conductors, its loads, volts of its supplies.
// Owns: nothing of the job and netlist, which must outlive it.   Cost: linear
struct Meter {
    Meter(const Job& job, const Netlist& netlist, const Conditions& with = {});

    const Netlist& net;
    Conditions conditions;
    std::vector<double> ohmsOfJoint;          // 0: a joint; a conductor without a length or a known gauge is one too
    std::array<std::vector<double>, 4> voltsOfFeed; // by level
    double highestNominal = 0; // volts of all sources that are looked at
    double volts(std::uint32_t feed, SupplyLevel level) const { return voltsOfFeed[static_cast<std::size_t>(level)][feed]; }
    std::vector<const LoadPart*> loads;       // by element; null: it is none
    std::vector<const DryInputPart*> inputs;  // by element
};

// What is asked of a position.
struct Asked {
    SupplyLevel supplies = SupplyLevel::Nominal;
    Want want = Want::AmperesToo;
    enum class Loads { AsRated, LeftOut } loads = Loads::AsRated;
    std::vector<std::uint32_t> pullingIn{}; // elements that take their inrush amperes at this moment, sorted
};

// What a meter reads in one position. Batteries count with the source that they stand behind.
// Owns: nothing of the meter, which must outlive it.   Cost: as solved()'s
class Readings {
public:
    Readings(const Meter& meter, const Position& position, Asked asked = {});

    std::optional<Volts> between(Vertex x, Vertex y) const; // nothing: floating
    // Amperes from a to b, through a joint that is closed, an element or a diode; out of a feed's plus.
    Amperes throughJoint(std::uint32_t joint) const { return amperes(solution_.resistors, resistorOfJoint_[joint]); }
    Amperes throughElement(std::uint32_t element) const;
    Amperes throughDiode(std::uint32_t diode) const { return {solution_.diodes[diode]}; }
    Amperes outOf(std::uint32_t feed) const { return amperes(solution_.sources, sourceOfFeed_[feed]); } // where wanted, as throughJoint
    std::optional<Volts> acrossElement(std::uint32_t element) const;

    // Sources whose poles are joined, or that others hold at other volts: nothing is read where they are.
    std::vector<std::uint32_t> fightingFeeds() const;
    // Loads whose current or power the line can't carry.
    std::vector<std::uint32_t> notCarried() const;
    bool settled() const { return solution_.settled; }
    // Diodes have settled, no sources fight, something limits every current: the figures mean what they say.
    bool hold() const { return settled() && solution_.fighting.empty() && solution_.unlimited.empty(); }

    const Network& network() const { return network_; }
    const Solution& solution() const { return solution_; }

private:
    static constexpr std::uint32_t none = ~0u;
    static Amperes amperes(const std::vector<double>& list, std::uint32_t index) { return {index == none ? 0 : list[index]}; }

    void letLag();
    void addResistor(Vertex a, Vertex b, double ohms, double powerFactor = 1);
    void addJoints(const Position& position);
    void addFeeds(const Position& position);
    void addElements();
    void addLoad(std::uint32_t element);
    void addWetting(std::uint32_t element, const DryInputPart& input);
    const LoadAt* ratedOf(std::uint32_t element) const;
    const Circuit& circuit() const { return meter_->net.circuit(); }

    const Meter* meter_;
    Asked asked_;
    Network network_;
    Solution solution_;
    std::vector<double> powerFactor_;        // by resistor of the network
    std::optional<Alternating> alternating_; // on AC, where a load lags
    std::vector<std::uint32_t> resistorOfJoint_, sourceOfFeed_, resistorOfElement_, drawOfElement_; // none: not there
    std::vector<std::uint32_t> elementOfDraw_;
};

} // namespace doorloom
