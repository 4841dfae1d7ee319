#pragma once

#include "core/jobs.h"
#include "edit/landcores.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace doorloom {

template <class Row> Id<Row> add(Job& job, Row row)
{
    row.id = {job.nextNumber};
    EXPECT_TRUE(applyChange(job, Change{{Put<Row>{row.id, row}}}).ok());
    return row.id;
}

inline void addDevice(Job& job, const std::string& tag, const std::string& kind, PlaceId place)
{
    Numbers numbers(job);
    EXPECT_TRUE(applyChange(job, placeDevice(job, numbers, catalogueKind(kind), tag, place).second).ok());
}

// A supply and a module in a cabinet, a strike on the frame.
inline Job cabinetAndFrame()
{
    Job job;
    const PlaceId cabinet = add(job, Place{{}, "CAB1", "cabinet above ceiling", Mounting::Cabinet, true, ""});
    const PlaceId frame = add(job, Place{{}, "STK", "strike side of frame", Mounting::Frame, false, ""});
    add(job, Sheet{{}, "Door", 1});
    addDevice(job, "PS1", "dc-supply-24", cabinet);
    addDevice(job, "LM1", "relay-module-negative", cabinet);
    addDevice(job, "ES1", "strike-fail-secure", frame);
    addDevice(job, "SPARE", "door-switch", {});
    return job;
}

// What a conductor is landed on.
inline std::string endsOf(const Job& job, const Conductor& row)
{
    const auto name = [&](const End& end) {
        const Landing* landing = landingOf(end);
        const SpliceId* splice = spliceOf(end);
        return landing ? nameOfPoint(job, *landing) : splice ? nameOfPoint(job, *splice) : std::string("–");
    };
    return name(row.from) + " " + name(row.to);
}

inline std::vector<std::string> allEnds(const Job& job)
{
    std::vector<std::string> ends;
    for (const Conductor& row : job.conductors)
        ends.push_back(endsOf(job, row));
    return ends;
}

using Strings = std::vector<std::string>;

} // namespace doorloom
