#include "edit/operations.h"
#include "edit/placing.h"
#include "edit/removal.h"
#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <algorithm>
#include <utility>

namespace doorloom {

namespace {

struct Swap {
    const Job& job;
    Numbers& numbers;
    const Device& device; // as it is
    const Kind& before;
    const Kind& after;
    Draft draft;
    std::vector<Message> leftBehind;

    void leave(Text text, Gaps gaps)
    {
        gaps.push_back({"tag", device.tag});
        leftBehind.push_back(Message(text, std::move(gaps)));
    }
};

// Conductors on terminals that the new kind does not have.
std::optional<Problem> strandedLandings(const Swap& swap)
{
    std::vector<Message> stranded;
    for (const Conductor* conductor : conductorsOn(swap.job, swap.device.id))
        for (const End* end : {&conductor->from, &conductor->to}) {
            const Landing* landing = landingOf(*end);
            if (landing && landing->device == swap.device.id && !findTerminal(swap.after, landing->terminal))
                stranded.push_back(
                    Message({.en = "'{terminal}' ({conductor})", .es = "'{terminal}' ({conductor})"},
                            {{"terminal", nameOf(swap.job, *landing)},
                             {"conductor", nameOfRow(swap.job, *conductor)}}));
        }
    if (stranded.empty())
        return std::nullopt;
    return problemAt(
        swap.device.tag,
        {.en = "{kind} does not have terminals that are in use: {stranded}.",
         .es = "{kind} no tiene bornes que están en uso: {stranded}."},
        {.en = "Move these conductors to one of {terminals} of {tag} first, or choose another kind.",
         .es = "Pase antes esos hilos a uno de {terminals} de {tag} o elija otro tipo."},
        {{"kind", swap.after.title},
         {"stranded", std::move(stranded)},
         {"terminals", printedTerminals(swap.after)},
         {"tag", swap.device.tag}});
}

std::vector<Choice> carriedChoices(Swap& swap)
{
    std::vector<Choice> choices = unchosenJumpers(swap.after);
    for (const Choice& old : swap.device.choices) {
        const auto slot = std::find_if(choices.begin(), choices.end(), [&](const Choice& each) {
            return each.option == old.option && each.jumper == old.jumper;
        });
        if (slot != choices.end() && !choiceProblem(swap.device, swap.after, old))
            slot->value = old.value;
        else if (!old.value.empty())
            swap.leave({.en = "{tag}: jumper {jumper} at '{value}' ({option}) was not carried over.",
                        .es = "{tag}: el puente {jumper} en '{value}' ({option}) no se ha conservado."},
                       {{"jumper", old.jumper}, {"value", old.value}, {"option", old.option}});
    }
    return choices;
}

std::vector<SettingChoice> carriedSettings(Swap& swap)
{
    std::vector<SettingChoice> settings = factorySettings(swap.after);
    for (const SettingChoice& old : swap.device.settings) {
        const Setting* setting = findSetting(swap.after, old.setting);
        const auto slot = std::find_if(settings.begin(), settings.end(), [&](const SettingChoice& each) {
            return each.setting == old.setting;
        });
        if (!setting || settingProblem(swap.device, *setting, old.value))
            swap.leave({.en = "{tag}: the setting '{setting}' at '{value}' was not carried over.",
                        .es = "{tag}: el ajuste '{setting}' en '{value}' no se ha conservado."},
                       {{"setting", old.setting}, {"value", settingText(old.value)}});
        else if (slot != settings.end())
            slot->value = old.value;
        else
            settings.push_back(old);
    }
    return settings;
}

bool isOwn(const Swap& swap, const Operator& moved, const Key& role)
{
    return moved.owner == swap.device.id && moved.ownerRole == role;
}

// The device's own operator for a role learns the new kind's words; where it idles stays as the job says.
void teach(Swap& swap, const Operator& own, const Role& role)
{
    Operator taught = ownOperator(own.id, swap.device.id, role);
    taught.tag = own.tag;
    taught.idle = own.idle;
    swap.draft.put(std::move(taught));
}

std::vector<Binding> carriedBindings(Swap& swap)
{
    std::vector<Binding> bindings;
    for (const Role& role : swap.after.roles) {
        const Operator* bound = swap.job.operators.find(boundTo(swap.device, role.key));
        if (bound && sameThrows(role.throws, bound->throws)) {
            bindings.push_back({role.key, bound->id});
            if (isOwn(swap, *bound, role.key))
                teach(swap, *bound, role);
            continue;
        }
        const OperatorId own{swap.numbers.take()};
        bindings.push_back({role.key, own});
        swap.draft.put(ownOperator(own, swap.device.id, role));
    }
    return bindings;
}

// Openings forget an operator that goes, and say so.
void retire(Swap& swap, const Operator& lost)
{
    for (std::uint32_t user : referrersOf(swap.job, lost.id.number))
        if (const Opening* opening = swap.job.openings.find({user}))
            swap.leave({.en = "{tag}: {opening} does not name {operator} any more.",
                        .es = "{tag}: {opening} ya no nombra {operator}."},
                       {{"opening", opening->tag}, {"operator", nameOf(swap.job, lost)}});
    removeRows(swap.draft, {lost.id.number});
}

// An operator that others still move with keeps its name and loses its owner; one that nobody does goes.
void releaseOperator(Swap& swap, const Operator& lost)
{
    if (!isBoundElsewhere(swap.job, lost.id, swap.device.id)) {
        retire(swap, lost);
        return;
    }
    Operator* kept = swap.draft.edit(lost.id);
    kept->tag = nameOf(swap.job, lost);
    kept->owner = {};
    kept->ownerRole.clear();
}

void dropBindings(Swap& swap, const std::vector<Binding>& kept)
{
    for (const Binding& old : swap.device.bindings) {
        const bool stays = std::any_of(kept.begin(), kept.end(),
                                       [&](const Binding& each) { return each.moved == old.moved; });
        if (stays)
            continue;
        const Operator& lost = *swap.job.operators.find(old.moved);
        swap.leave({.en = "{tag}: '{role}' is not moved by {operator} any more.",
                    .es = "{tag}: {operator} ya no mueve '{role}'."},
                   {{"role", old.role}, {"operator", nameOf(swap.job, lost)}});
        if (lost.owner == swap.device.id)
            releaseOperator(swap, lost);
    }
}

// Own operators whose role is gone, though no role of the device was bound to them.
void dropOwned(Swap& swap)
{
    for (std::uint32_t user : referrersOf(swap.job, swap.device.id.number)) {
        const Operator* owned = swap.job.operators.find({user});
        if (owned && owned->owner == swap.device.id && !findRole(swap.after, owned->ownerRole))
            if (const Operator* drafted = swap.draft.edit(owned->id);
                drafted && drafted->owner == swap.device.id)
                releaseOperator(swap, *owned);
    }
}

void unlockOpenings(Swap& swap)
{
    if (swap.after.lock)
        return;
    for (std::uint32_t user : referrersOf(swap.job, swap.device.id.number)) {
        const Opening* opening = swap.job.openings.find({user});
        if (!opening || std::count(opening->locks.begin(), opening->locks.end(), swap.device.id) == 0)
            continue;
        Opening* row = swap.draft.edit(opening->id);
        std::erase(row->locks, swap.device.id);
        std::erase_if(row->promises, [&](const Promise& each) { return each.device == swap.device.id; });
        swap.leave(
            {.en = "{tag} is not a lock of {opening} any more, and what was promised of it is dropped.",
             .es = "{tag} ya no es cerradura de {opening} y lo prometido sobre ella se retira."},
            {{"opening", opening->tag}});
    }
}

} // namespace

Result<KindSwap> setKind(const Job& job, Numbers& numbers, DeviceId device, const Kind& kind)
{
    const Device* row = job.devices.find(device);
    if (!row)
        return notInJob(nounOf<Device>());
    Swap swap{job, numbers, *row, *kindOf(job, *row), kind, Draft(job), {}};
    if (auto problem = strandedLandings(swap))
        return *std::move(problem);
    auto [kindId, taken] = takeKind(job, numbers, kind);
    Device changed = *row;
    changed.kind = kindId;
    changed.choices = carriedChoices(swap);
    changed.settings = carriedSettings(swap);
    changed.bindings = carriedBindings(swap);
    swap.draft.put(changed);
    dropBindings(swap, changed.bindings);
    dropOwned(swap);
    unlockOpenings(swap);
    return KindSwap{joined(std::move(taken), swap.draft.change()), std::move(swap.leftBehind)};
}

} // namespace doorloom
