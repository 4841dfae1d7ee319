#include "judge/dividedjob.h"

#include "judge/checker.h"
#include "judge/divider.h"

#include <algorithm>

namespace doorloom {
namespace {

template <class Holds> const Division* firstThat(const std::vector<Division>& divisions, Holds holds)
{
    const auto found = std::find_if(divisions.begin(), divisions.end(), holds);
    return found == divisions.end() ? nullptr : &*found;
}

} // namespace

DividedJob::DividedJob(const Job& job) : wiring(job), divisions(divisionsOf(wiring, Checker::mostWhole)) {}

const Division* DividedJob::of(DeviceId device) const
{
    return firstThat(divisions, [&](const Division& rows) {
        return !rows.shares(device.number) && std::any_of(rows.devices.begin(), rows.devices.end(), [&](const Device* row) { return row->id == device; });
    });
}

const Division* DividedJob::of(OpeningId opening) const
{
    return firstThat(divisions, [&](const Division& rows) {
        return std::any_of(rows.openings.begin(), rows.openings.end(), [&](const Opening* row) { return row->id == opening; });
    });
}

} // namespace doorloom
