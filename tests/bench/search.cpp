#include "bench/largejob.h"
#include "bench/measure.h"
#include "catalogue/stockcables.h"
#include "edit/found.h"
#include "edit/jointerminals.h"
#include "edit/typedline.h"

#include <cstdio>

namespace doorloom::bench {

namespace {

bool finds(Gate gate)
{
    const Job job = largeJob();
    std::size_t hits = 0;
    return isWithin("find", 5, gate,
                    [&] { hits += found(job, "es12").size() + found(job, "strike").size(); });
}

bool completes(Gate gate)
{
    const Job job = largeJob();
    const Stock stock{{}, stockCables()};
    const std::string line = tagOf(job, job.devices.begin()->id) + " ";
    std::size_t offered = 0;
    return isWithin("complete", 8, gate, [&] {
        for (const std::string& begun : {std::string(), std::string("cap w"), line})
            offered += completionsFor(job, stock, begun, begun.size()).size();
    });
}

// A landing as it is typed: read, its core chosen, its change made.
bool lands(Gate gate)
{
    const Job job = largeJob();
    const Stock stock{{}, stockCables()};
    std::string line;
    for (const Device& device : job.devices)
        if (const Kind* kind = kindOf(job, device); kind && line.empty() && terminalsOf(*kind).size() > 1)
            line = device.tag + " " + terminalsOf(*kind)[0]->printed + " " + device.tag + " " +
                   terminalsOf(*kind)[1]->printed + " wire";
    bool read = true;
    const bool within = isWithin("land", 16, gate, [&] {
        const Result<Typed> typed = readLine(job, stock, line);
        Job later = job;
        read = read && typed.ok() && applyChange(later, typed.value().change).ok();
    });
    if (!read)
        std::printf("land: '%s' is refused\n", line.c_str());
    return within && read;
}

} // namespace

extern const Row findRows, completeLine, landTyped;
const Row findRows = {"find", finds};
const Row completeLine = {"complete", completes};
const Row landTyped = {"land", lands};

} // namespace doorloom::bench
