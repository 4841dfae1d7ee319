#pragma once

#include "edit/operations.h"
#include "jobs.h"

#include <gtest/gtest.h>

#include <stdexcept>
#include <string>
#include <utility>

namespace doorloom {

template <class T> std::string refusal(const Result<T>& result)
{
    return result.ok() ? "made" : inWords(result.problem());
}

// A job that is edited operation by operation. Each change must be accepted, keep every promise of the model,
// and be undone to an equal job; a slip throws std::runtime_error.
class Desk {
public:
    Desk() = default;
    explicit Desk(Job start) : job_(std::move(start)) {}

    const Job& job() const { return job_; }
    Numbers& numbers()
    {
        numbers_ = Numbers(job_);
        return numbers_;
    }

    void make(const Change& change)
    {
        const Job before = job_;
        const Result<Change> undo = applyChange(job_, change);
        if (!undo.ok())
            throw std::runtime_error(inWords(undo.problem()));
        for (const Problem& problem : verifyJob(job_))
            ADD_FAILURE() << inWords(problem);
        Job undone = job_;
        EXPECT_TRUE(applyChange(undone, undo.value()).ok());
        EXPECT_EQ(undone, before) << "undoing must give back an equal job";
    }
    void make(const Result<Change>& change)
    {
        if (!change.ok())
            throw std::runtime_error(inWords(change.problem()));
        make(change.value());
    }
    template <class Made> Made make(const Result<Made>& made)
    {
        if (!made.ok())
            throw std::runtime_error(inWords(made.problem()));
        if constexpr (requires { made.value().change; })
            make(made.value().change);
        else
            make(made.value().second);
        return made.value();
    }

    PlaceId place(const std::string& tag)
    {
        Place row;
        row.id = {numbers().take()};
        row.tag = tag;
        make(Change{{Put<Place>{row.id, row}}});
        return row.id;
    }
    DeviceId device(const std::string& tag, const Kind& kind, PlaceId place = {})
    {
        const auto [id, change] = placeDevice(job_, numbers(), kind, tag, place);
        make(change);
        return id;
    }
    CableTypeId cableType(const std::string& name, const std::vector<std::string>& colours)
    {
        CableType row{.id = {numbers().take()}, .name = name, .words = {}, .cores = {}};
        for (const std::string& colour : colours)
            row.cores.push_back(
                {.number = static_cast<int>(row.cores.size()) + 1, .colour = colour, .gauge = "18 AWG"});
        make(Change{{Put<CableType>{row.id, row}}});
        return row.id;
    }
    CableId cable(const std::string& tag, CableTypeId type, PlaceId from, PlaceId to)
    {
        Cable row;
        row.tag = tag;
        row.type = type;
        row.from = from;
        row.to = to;
        const auto [id, change] = pullCable(job_, numbers(), row);
        make(change);
        return id;
    }
    Landing at(std::string_view name) const { return landingNamed(job_, name); }

    // "W1.2" or "W1.2: PS1:+ – EL1:1" of a conductor.
    std::string drawn(ConductorId id) const
    {
        const Conductor& row = *job_.conductors.find(id);
        return row.tag + ": " + drawn(row.from) + " – " + drawn(row.to);
    }

private:
    std::string drawn(const End& end) const
    {
        if (const Landing* landing = landingOf(end))
            return nameOf(job_, *landing);
        if (const SpliceId* splice = spliceOf(end))
            return job_.splices.find(*splice)->tag;
        return end.state == EndState::Spare       ? "spare"
               : end.state == EndState::Insulated ? "insulated"
                                                  : "waiting";
    }

    Job job_;
    Numbers numbers_{job_};
};

// A cabinet and a frame with an 18/4 between them: PS1 and LM1 in the one, ES1 and DPS1 in the other.
struct SmallSite : Desk {
    PlaceId cabinet = place("CAB1"), frame = place("FRAME");
    DeviceId supply = device("PS1", catalogueKind("dc-supply-24"), cabinet);
    DeviceId module = device("LM1", catalogueKind("relay-module-negative"), cabinet);
    DeviceId strike = device("ES1", catalogueKind("strike-fail-secure"), frame);
    DeviceId contact = device("DPS1", catalogueKind("door-switch"), frame);
    CableTypeId four = cableType("18/4", {"RD", "BK", "GN", "WH"});
    CableId cable1 = cable("C1", four, cabinet, frame);
};

} // namespace doorloom
