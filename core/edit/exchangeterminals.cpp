#include "edit/draft.h"
#include "edit/operations.h"
#include "edit/rownames.h"

namespace doorloom {

Result<Change> exchangeTerminals(const Job& job, DeviceId device, const Key& one, const Key& other)
{
    const Kind* kind = kindOf(job, device);
    if (!kind)
        return notInJob(nounOf<Device>());
    for (const Key& key : {one, other})
        if (!findTerminal(*kind, key))
            return noSuchTerminal(job, {device, key});
    Draft draft(job);
    for (const Conductor* conductor : conductorsOn(job, device)) {
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
