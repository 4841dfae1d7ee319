#include "edit/draft.h"
#include "edit/operations.h"
#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <algorithm>
#include <utility>

namespace doorloom {

Result<Change> setSetting(const Job& job, DeviceId device, const Key& setting, SettingValue value)
{
    Draft draft(job);
    Device* row = draft.edit(device);
    if (!row)
        return notInJob(nounOf<Device>());
    const Kind& kind = *kindOf(job, *row);
    const Setting* known = findSetting(kind, setting);
    if (!known)
        return noSuchSetting(*row, kind, setting);
    if (auto problem = settingProblem(*row, *known, value))
        return *std::move(problem);
    const auto at = std::find_if(row->settings.begin(), row->settings.end(),
                                 [&](const SettingChoice& each) { return each.setting == setting; });
    if (at == row->settings.end())
        row->settings.push_back({setting, std::move(value)});
    else
        at->value = std::move(value);
    return draft.change();
}

} // namespace doorloom
