#include "edit/takekindfor.h"

namespace doorloom {

Result<KindSwap> takeKindFor(const Job& job, const Kind& kind, const std::vector<DeviceId>& devices)
{
    Job with = job;
    Numbers numbers(with);
    if (const auto back = applyChange(with, takeKind(with, numbers, kind).second); !back.ok())
        return back.problem();
    std::vector<Message> leftBehind;
    for (const DeviceId device : devices) {
        Numbers more(with);
        Result<KindSwap> swap = setKind(with, more, device, kind);
        if (!swap.ok())
            return swap.problem();
        if (const auto back = applyChange(with, swap.value().change); !back.ok())
            return back.problem();
        for (Message& line : swap.value().leftBehind)
            leftBehind.push_back(std::move(line));
    }
    return KindSwap{difference(job, with), std::move(leftBehind)};
}

} // namespace doorloom
