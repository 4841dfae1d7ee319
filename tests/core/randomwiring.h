#pragma once

#include "core/jobs.h"
#include "core/random.h"
#include "edit/operations.h"

#include <gtest/gtest.h>

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
    RandomWiring(Job job, Random& random) : job_(std::move(job)), random_(random) {}

    const Job& job() const { return job_; }

    // One edit, or the last one undone. Out: its name.
    std::string edit()
    {
        using Make = std::pair<const char*, Result<Change> (RandomWiring::*)()>;
        static const std::vector<Make> all = {{"land", &RandomWiring::land},         {"unland", &RandomWiring::unland},
                                              {"move an end", &RandomWiring::move},  {"set a jumper", &RandomWiring::jumper},
                                              {"exchange", &RandomWiring::exchange}, {"rename", &RandomWiring::rename},
                                              {"set idle", &RandomWiring::idle},     {"tag a wire", &RandomWiring::tag},
                                              {"place", &RandomWiring::place},       {"remove", &RandomWiring::remove},
                                              {"move a device", &RandomWiring::draw}};
        if (!undo_.empty() && random_.oneIn(4)) {
            const Change change = undo_.back();
            undo_.pop_back();
            EXPECT_TRUE(applyChange(job_, change).ok());
            return "undo";
        }
        const Make& make = all[random_.oneIn(3) ? random_.below(all.size()) : random_.below(4)];
        Result<Change> change = (this->*make.second)();
        if (Result<Change> back = change.ok() ? applyChange(job_, change.value()) : change.problem(); back.ok())
            undo_.push_back(std::move(back.value()));
        return make.first;
    }

private:
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

    Job job_;
    Random& random_;
    std::vector<Change> undo_;
};

} // namespace doorloom
