#pragma once

#include "core/papersite.h"

#include <string>

// Loads at the end of lines of some gauge and length, in feet as the trade's tables are.
namespace doorloom::lines {

inline constexpr double feet = 0.3048;

inline Kind dcSupply(double volts, double lowest, double most = 20)
{
    Kind kind = papersite::kindOf("test-dc", "DC supply", "Fuente de CC", "supply");
    kind.strips = {papersite::stripOf("output", "salida", {"+", "−"})};
    SourcePart source;
    source.plus = "+";
    source.minus = "−";
    source.lowest = Volts{lowest};
    source.nominal = Volts{volts};
    source.highest = Volts{volts};
    source.most = Amperes{most};
    papersite::addPart(kind, source);
    return kind;
}

inline Kind lockOf(double volts, double amperes, double least, LoadLaw law = LoadLaw::Resistive)
{
    Kind kind = papersite::kindOf("test-lock", "Lock", "Cerradura", "lock");
    kind.strips = {papersite::stripOf("coil", "bobina", {"1", "2"})};
    LoadPart coil = papersite::loadOf("1", "2");
    coil.use = LoadUse::Lock;
    coil.rated = {{Volts{volts}, Amperes{amperes}}};
    coil.law = law;
    coil.leastVolts = Volts{least};
    papersite::addPart(kind, coil);
    return kind;
}

inline LoadPart& coilOf(Kind& kind) { return std::get<LoadPart>(kind.parts.back().body); }

// A supply, and loads on two conductors each.
class Lines {
public:
    explicit Lines(const Kind& supply) : supply_(site.device("PS1", supply, {})) {}

    DeviceId load(const std::string& tag, const Kind& kind, const std::string& gauge, double oneWayFeet)
    {
        const DeviceId device = site.device(tag, kind, {});
        pair(supply_, "+", "−", device, gauge, oneWayFeet);
        return device;
    }
    void pair(DeviceId from, const Key& plus, const Key& minus, DeviceId to, const std::string& gauge, double oneWayFeet)
    {
        wire(papersite::Site::at(from, plus), papersite::Site::at(to, "1"), gauge, oneWayFeet);
        wire(papersite::Site::at(from, minus), papersite::Site::at(to, "2"), gauge, oneWayFeet);
    }
    void wire(End from, End to, const std::string& gauge, double lengthFeet)
    {
        Conductor row;
        row.tag = "N" + std::to_string(site.job.conductors.size());
        row.gauge = gauge;
        row.from = from;
        row.to = to;
        row.length = Metres{lengthFeet * feet};
        site.put(row);
    }
    DeviceId supply() const { return supply_; }

    papersite::Site site;

private:
    DeviceId supply_;
};

} // namespace doorloom::lines
