#include "edit/details.h"

#include "edit/draft.h"
#include "edit/tagrules.h"

#include <utility>

namespace doorloom {

Result<std::pair<PlaceId, Change>> addPlace(const Job& job, Numbers& numbers, Place wanted)
{
    if (auto problem = newTagProblem(job.places, {}, wanted.tag))
        return *std::move(problem);
    wanted.id = {numbers.take()};
    return std::pair(wanted.id, Change{{Put<Place>{wanted.id, wanted}}});
}

Result<Change> alterPlace(const Job& job, Place wanted)
{
    if (!job.places.find(wanted.id))
        return notInJob(nounOf<Place>());
    if (auto problem = newTagProblem(job.places, wanted.id, wanted.tag))
        return *std::move(problem);
    Draft draft(job);
    draft.put(std::move(wanted));
    return draft.change();
}

Result<Change> renamePlace(const Job& job, PlaceId place, std::string tag)
{
    const Place* row = job.places.find(place);
    if (!row)
        return notInJob(nounOf<Place>());
    Place wanted = *row;
    wanted.tag = std::move(tag);
    return alterPlace(job, std::move(wanted));
}

Result<Change> setPlace(const Job& job, const std::vector<std::uint32_t>& rows, PlaceId place)
{
    if (place && !job.places.find(place))
        return notInJob(nounOf<Place>());
    Draft draft(job);
    for (std::uint32_t row : rows) {
        if (Device* device = draft.edit(DeviceId{row}))
            device->place = place;
        if (Splice* splice = draft.edit(SpliceId{row}))
            splice->place = place;
    }
    return draft.change();
}

} // namespace doorloom
