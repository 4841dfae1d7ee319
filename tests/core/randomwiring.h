#pragma once

#include "core/jobs.h"
#include "core/random.h"
#include "edit/operations.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <string>
#include <utility>
#include <vector>

namespace doorloom {

// A plate, a module and a strike, and an opening promised by the plate; the module is yet to be fed.
inline void addPlateDoor(JobBuilder& job, const std::string& n, const std::string& strike, const std::string& k1)
{
    job.device("LM" + n, "relay-module-negative").device("PB" + n, "push-plate").device("ES" + n, strike);
    job.option("LM" + n, "K1", k1);
    job.wires("PB" + n + ":C → LM" + n + ":COM; PB" + n + ":NO → LM" + n + ":IN1; ES" + n + ":1 → LM" + n + ":K1.C; ES" + n +
              ":2 → LM" + n + ":K1.NO");
    job.opening({.tag = "DOOR" + n,
                 .locks = {"ES" + n},
                 .requests = {{"plate", "PB" + n + "=pressed LM" + n + ":K1=in"}},
                 .promises = {{"rest", Promised::Locked}, {"request plate", Promised::Free}}});
}

// Doors on one supply, with a second supply of another voltage tied to it, a key switch that two doors share and a relay
// in the feed of a third.
inline Job doorsOnOneSupply()
{
    JobBuilder job(Clamps::Roomy);
    job.device("PS1", "dc-supply-24").device("PS2", "dc-supply-12").device("TP", "terminal-strip-8").device("TN", "terminal-strip-8");
    job.wires("PS1:+ → TP:1; PS1:− → TN:1; PS2:− → TN:8");
    for (const std::string n : {"1", "2", "3"}) {
        const std::string plus = "TP:" + std::to_string(std::stoi(n) + 1), minus = "TN:" + std::to_string(std::stoi(n) + 1);
        addPlateDoor(job, n, n == "2" ? "strike-fail-safe" : "strike-fail-secure", n == "3" ? "dry" : "wet");
        job.device("OL" + n, "lamp").wire(plus, "OL" + n + ":+").wire("OL" + n + ":−", minus);
        job.wire(plus, "LM" + n + ":+").wire(minus, "LM" + n + ":−");
    }
    job.device("OL4", "lamp-12").wires("PS2:+ → OL4:+; OL4:− → PS2:−");
    return job.job();
}

template <class Row> Id<Row> someRow(const Table<Row>& rows, Random& random)
{
    auto row = rows.begin();
    for (std::size_t steps = random.below(rows.size()); steps > 0; --steps)
        ++row;
    return row->id;
}

// A job that is edited at random, as a person with a heavy hand would: it may make no sense, but it can be drawn.
class RandomWiring {
public:
    enum class Edited { Wiring, NumbersToo }; // lengths, gauges, cables and kinds besides

    RandomWiring(Job job, Random& random, Edited edited = Edited::Wiring) : job_(std::move(job)), random_(random), edited_(edited) {}

    const Job& job() const { return job_; }

    // One edit, or the last one undone. Out: its name.
    std::string edit()
    {
        static const std::vector<Make> all = {{"land", &RandomWiring::land},         {"unland", &RandomWiring::unland},
                                              {"move an end", &RandomWiring::move},  {"set a jumper", &RandomWiring::jumper},
                                              {"exchange", &RandomWiring::exchange}, {"rename", &RandomWiring::rename},
                                              {"set idle", &RandomWiring::idle},     {"tag a wire", &RandomWiring::tag},
                                              {"place", &RandomWiring::place},       {"remove", &RandomWiring::remove},
                                              {"move a device", &RandomWiring::draw}},
                                       numbers = {{"set a wire's copper", &RandomWiring::copper},
                                                  {"pull a cable", &RandomWiring::pull},
                                                  {"set a cable's length", &RandomWiring::cableLength},
                                                  {"set a cable type's gauge", &RandomWiring::typeGauge},
                                                  {"set a kind", &RandomWiring::kind},
                                                  {"put somewhere", &RandomWiring::putSomewhere},
                                                  {"rename a place", &RandomWiring::renamePlace}};
        if (!undo_.empty() && random_.oneIn(4)) {
            const Change change = undo_.back();
            undo_.pop_back();
            EXPECT_TRUE(applyChange(job_, change).ok());
            return "undo";
        }
        const Make& make = edited_ == Edited::NumbersToo && random_.oneIn(2) ? random_.oneOf(numbers)
                                                                             : all[random_.oneIn(3) ? random_.below(all.size()) : random_.below(4)];
        Result<Change> change = (this->*make.second)();
        if (Result<Change> back = change.ok() ? applyChange(job_, change.value()) : change.problem(); back.ok())
            undo_.push_back(std::move(back.value()));
        return make.first;
    }

private:
    using Make = std::pair<const char*, Result<Change> (RandomWiring::*)()>;

    Landing someLanding()
    {
        const DeviceId device = someRow(job_.devices, random_);
        const auto terminals = terminalsOf(*kindOf(job_, device));
        return {device, terminals[random_.below(terminals.size())]->key};
    }
    End someEnd()
    {
        if (random_.oneIn(6))
            return {random_.oneIn(2) ? EndState::Waiting : EndState::Spare, {}};
        return {EndState::Landed, someLanding()};
    }
    WhichEnd someSide() { return random_.oneIn(2) ? WhichEnd::From : WhichEnd::To; }

    Result<Change> land()
    {
        Numbers numbers(job_);
        return addWire(job_, numbers, someEnd(), someEnd()).second;
    }
    Result<Change> unland() { return takeOff(job_, someRow(job_.conductors, random_)); }
    Result<Change> move() { return setEnd(job_, someRow(job_.conductors, random_), someSide(), someEnd()); }
    Result<Change> jumper()
    {
        const Device* device = deviceTagged(job_, "LM" + std::to_string(random_.between(1, 3)));
        if (!device)
            return land();
        const std::vector<Key> values{"wet", "dry", ""}, options{"K1", "K3"}, jumpers{"JA", "JB"};
        return setJumper(job_, device->id, random_.oneOf(options), random_.oneOf(jumpers), random_.oneOf(values));
    }
    Result<Change> exchange()
    {
        const Landing one = someLanding();
        const auto terminals = terminalsOf(*kindOf(job_, one.device));
        return exchangeTerminals(job_, one.device, one.terminal, terminals[random_.below(terminals.size())]->key);
    }
    Result<Change> rename()
    {
        return renameDevice(job_, someRow(job_.devices, random_), "N" + std::to_string(random_.below(99)));
    }
    Result<Change> idle()
    {
        const Operator& moved = *job_.operators.find(someRow(job_.operators, random_));
        return setIdle(job_, moved.id, random_.oneOf(moved.throws).key);
    }
    Result<Change> tag()
    {
        Conductor row = *job_.conductors.find(someRow(job_.conductors, random_));
        row.tag = "W" + std::to_string(random_.below(8));
        return Change{{Put<Conductor>{row.id, row}}};
    }
    Result<Change> place()
    {
        static const std::vector<std::string> kinds{"lamp", "relay", "key-switch", "dc-supply-12", "resistor", "diode"};
        Numbers numbers(job_);
        return placeDevice(job_, numbers, catalogueKind(random_.oneOf(kinds)), "X" + std::to_string(numbers.next)).second;
    }
    Result<Change> remove() { return removeDevice(job_, someRow(job_.devices, random_)); }
    Result<Change> draw()
    {
        Numbers numbers(job_);
        Change change;
        SheetId sheet = job_.sheets.empty() ? SheetId{numbers.take()} : job_.sheets.begin()->id;
        if (job_.sheets.empty())
            change.steps.emplace_back(Put<Sheet>{sheet, Sheet{sheet, "1", 1}});
        const PlacementId at{numbers.take()};
        change.steps.emplace_back(Put<Placement>{at, Placement{at, sheet, someRow(job_.devices, random_), {1, 2}, 0}});
        return change;
    }

    // ---- Numbers

    std::string gauge()
    {
        static const std::vector<std::string> all{"", "24 AWG", "18 AWG", "0.5 mm2", "1.5 mm2"};
        return random_.oneOf(all);
    }
    Metres length() { return {random_.oneIn(6) ? 0.0 : random_.between(1, 40) * 5.0}; }
    template <class Row> Result<Change> altered(const Table<Row>& rows, const std::function<void(Row&)>& alter)
    {
        if (rows.empty())
            return land();
        Row row = *rows.find(someRow(rows, random_));
        alter(row);
        return Change{{Put<Row>{row.id, std::move(row)}}};
    }
    Result<Change> copper()
    {
        return altered<Conductor>(job_.conductors, [&](Conductor& row) {
            if (row.make != ConductorMake::Core) {
                row.gauge = gauge();
                row.length = length();
            }
        });
    }
    Result<Change> cableLength()
    {
        return altered<Cable>(job_.cables, [&](Cable& row) { row.length = length(); });
    }
    Result<Change> typeGauge()
    {
        return altered<CableType>(job_.cableTypes, [&](CableType& row) { row.cores[random_.below(row.cores.size())].gauge = gauge(); });
    }
    Result<Change> putSomewhere()
    {
        return altered<Device>(job_.devices, [&](Device& row) { row.place = someRow(job_.places, random_); });
    }
    Result<Change> renamePlace()
    {
        return altered<Place>(job_.places, [&](Place& row) { row.tag = "P" + std::to_string(random_.below(99)); });
    }
    // All its cores landed at once.
    Result<Change> pull()
    {
        Numbers numbers(job_);
        Cable cable;
        cable.tag = "C" + std::to_string(numbers.next);
        cable.type = someRow(job_.cableTypes, random_);
        cable.length = length();
        Change change = pullCable(job_, numbers, cable).second;
        for (Step& step : change.steps)
            if (auto* put = std::get_if<Put<Conductor>>(&step)) {
                put->after->from = someEnd();
                put->after->to = someEnd();
            }
        return change;
    }
    static std::string plainName(const Kind& kind) { return kind.name.substr(0, kind.name.rfind("-small")); }
    Result<Change> kind()
    {
        static const std::vector<std::vector<std::string>> alike{{"dc-supply-24", "dc-supply-24-4a", "dc-supply-12"},
                                                                 {"strike-fail-secure", "strike-fail-safe", "strike-fail-secure-12"},
                                                                 {"lamp", "lamp-12"}};
        const std::vector<std::string>& kinds = random_.oneOf(alike);
        std::vector<DeviceId> devices;
        for (const Device& device : job_.devices)
            if (std::find(kinds.begin(), kinds.end(), plainName(*kindOf(job_, device))) != kinds.end())
                devices.push_back(device.id);
        if (devices.empty())
            return copper();
        Kind other = catalogueKind(random_.oneOf(kinds));
        for (Part& part : other.parts)
            if (auto* source = std::get_if<SourcePart>(&part.body); source && random_.oneIn(2)) {
                other.name += "-small";
                source->most = {0.1};
            }
        Numbers numbers(job_);
        Result<KindSwap> swap = setKind(job_, numbers, random_.oneOf(devices), other);
        return swap.ok() ? Result<Change>(std::move(swap.value().change)) : Result<Change>(swap.problem());
    }

    Job job_;
    Random& random_;
    Edited edited_;
    std::vector<Change> undo_;
};

} // namespace doorloom
