#include "edit/draft.h"
#include "edit/operations.h"
#include "edit/rownames.h"

namespace doorloom {

namespace {

bool isOn(const Conductor& conductor, const Landing& landing)
{
    const Landing *from = landingOf(conductor.from), *to = landingOf(conductor.to);
    return (from && *from == landing) || (to && *to == landing);
}

} // namespace

Result<Change> exchangeTerminals(const Job& job, DeviceId device, const Key& one, const Key& other)
{
    const Kind* kind = kindOf(job, device);
    if (!kind)
        return notInJob(nounOf<Device>());
    for (const Key& key : {one, other})
        if (!findTerminal(*kind, key))
            return noSuchTerminal(job, {device, key});
    Draft draft(job);
    if (const Device& row = *job.devices.find(device); row.standing == Standing::LeaveAlone)
        return leftAlone(row.tag);
    for (const Conductor* conductor : conductorsOn(job, device)) {
        if (conductor->standing == Standing::LeaveAlone && (isOn(*conductor, {device, one}) || isOn(*conductor, {device, other})))
            return leftAlone(nameOfRow(job, *conductor));
        Conductor* row = draft.edit(conductor->id);
        for (End* end : {&row->from, &row->to})
            if (auto* landing = std::get_if<Landing>(&end->on); landing && landing->device == device) {
                if (landing->terminal == one)
                    landing->terminal = other;
                else if (landing->terminal == other)
                    landing->terminal = one;
            }
    }
    return draft.change();
}

} // namespace doorloom
