#include "edit/draft.h"
#include "edit/operations.h"
#include "edit/rownames.h"
#include "edit/verifyrow.h"

namespace doorloom {

namespace {

// Puts one jumper of a drafted device.
std::optional<Problem> stand(Device& device, const Kind& kind, const Choice& choice)
{
    if (auto problem = choiceProblem(device, kind, choice))
        return problem;
    for (Choice& each : device.choices)
        if (each.option == choice.option && each.jumper == choice.jumper)
            each.value = choice.value;
    return std::nullopt;
}

} // namespace

Result<Change> setJumper(const Job& job, DeviceId device, const Key& option, const Key& jumper,
                         const Key& value)
{
    Draft draft(job);
    Device* row = draft.edit(device);
    if (!row)
        return notInJob(nounOf<Device>());
    if (auto problem = stand(*row, *kindOf(job, *row), {option, jumper, value}))
        return *std::move(problem);
    return draft.change();
}

Result<Change> setOption(const Job& job, DeviceId device, const Key& option, const Key& value)
{
    Draft draft(job);
    Device* row = draft.edit(device);
    if (!row)
        return notInJob(nounOf<Device>());
    const Kind& kind = *kindOf(job, *row);
    const Option* known = findOption(kind, option);
    if (!known)
        return problemAt(
            row->tag, {.en = "{tag} has no option '{option}'.", .es = "{tag} no tiene la opción '{option}'."},
            {.en = "Use one of: {options}.", .es = "Use una de: {options}."},
            {{"tag", row->tag}, {"option", option}, {"options", keysOf(kind.options)}});
    for (const Jumper& jumper : known->jumpers)
        if (auto problem = stand(*row, kind, {option, jumper.key, value}))
            return *std::move(problem);
    return draft.change();
}

} // namespace doorloom
