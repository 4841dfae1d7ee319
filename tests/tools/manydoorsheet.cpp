#include "tools/manydoorsheet.h"

#include "file/fragment.h"
#include "file/jobfile.h"
#include "sheet/tidy.h"

#include <algorithm>
#include <stdexcept>

namespace doorloom {
namespace {

template <class Value> Value valueOf(Result<Value> result)
{
    if (!result.ok())
        throw std::runtime_error(inWords(result.problem()));
    return std::move(result.value());
}

Job sample(const std::string& name)
{
    return valueOf(readJobFile(SOURCE_FOLDER "/samples/" + name + ".doorjob"));
}

// "OUT" of the second one is "OUT2".
void renamePlaces(Job& job, const std::vector<std::string>& shared, std::size_t copy)
{
    Change change;
    for (Place place : job.places)
        if (std::find(shared.begin(), shared.end(), place.tag) == shared.end()) {
            place.tag += std::to_string(copy);
            change.steps.emplace_back(Put<Place>{place.id, place});
        }
    valueOf(applyChange(job, change));
}

std::string everythingOf(const Job& job)
{
    std::vector<std::uint32_t> rows;
    for (const Device& device : job.devices)
        rows.push_back(device.id.number);
    for (const Cable& cable : job.cables)
        rows.push_back(cable.id.number);
    for (const Conductor& conductor : job.conductors)
        rows.push_back(conductor.id.number);
    return copiedText(job, rows);
}

} // namespace

Job sheetOfSamples(const std::vector<std::string>& samples, const std::vector<std::string>& sharedPlaces)
{
    Job job = sample(samples.front());
    for (std::size_t i = 1; i < samples.size(); ++i) {
        Job next = sample(samples[i]);
        renamePlaces(next, sharedPlaces, i + 1);
        Numbers numbers(job);
        const PasteOptions options{job.sheets.begin()->id, {}};
        valueOf(applyChange(job, valueOf(pasted(job, numbers, everythingOf(next), options)).change));
    }
    valueOf(applyChange(job, valueOf(tidySheets(job))));
    return job;
}

} // namespace doorloom
