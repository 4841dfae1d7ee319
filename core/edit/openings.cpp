#include "edit/openings.h"

#include "edit/draft.h"
#include "edit/nexttag.h"
#include "edit/removal.h"
#include "edit/tagrules.h"

#include <algorithm>
#include <utility>

namespace doorloom {

namespace {

Operator ofTwoThrows(std::string tag, OperatorNature nature, Throw idle, Throw other)
{
    Operator row;
    row.tag = std::move(tag);
    row.nature = nature;
    row.unpowered = row.idle = idle.key;
    row.throws = {std::move(idle), std::move(other)};
    return row;
}

// The change, or what applyChange would say to it.
Result<Change> tried(const Job& job, Change change)
{
    Job later = job;
    const Result<Change> undo = applyChange(later, change);
    return undo.ok() ? Result<Change>(std::move(change)) : undo.problem();
}

bool isTakenByOperator(const Job& job, const std::string& name)
{
    return std::any_of(job.operators.begin(), job.operators.end(),
                       [&](const Operator& row) { return nameOf(job, row) == name; });
}

bool isPromised(const Opening& opening, const Promise& promise)
{
    return std::any_of(opening.promises.begin(), opening.promises.end(), [&](const Promise& each) {
        return each.situation == promise.situation && each.device == promise.device;
    });
}

// The usual promises that became possible, where nothing is promised yet.
void addUsual(const Job& job, const Opening& before, Opening& after)
{
    const std::vector<Promise> known = usualPromises(job, before);
    for (const Promise& promise : usualPromises(job, after))
        if (std::find(known.begin(), known.end(), promise) == known.end() && !isPromised(after, promise))
            after.promises.push_back(promise);
}

template <class Alter> Result<Change> altered(const Job& job, OpeningId opening, Alter alter)
{
    const Opening* row = job.openings.find(opening);
    if (!row)
        return notInJob(nounOf<Opening>());
    Opening after = *row;
    alter(after);
    Draft draft(job);
    draft.put(std::move(after));
    return tried(job, draft.change());
}

std::vector<Act>& actsOf(Opening& opening, ActList list)
{
    return list == ActList::Requests ? opening.requests : opening.releases;
}

bool speaksOf(const Situation& situation, ActList list, const std::string& name)
{
    const bool fits = list == ActList::Requests ? situation.kind == SituationKind::Request ||
                                                      situation.kind == SituationKind::RequestWhileOccupied
                                                : situation.kind == SituationKind::Release;
    return fits && situation.act == name;
}

Problem noSuchAct(const Job& job, OpeningId opening, ActList list, const std::string& name)
{
    Opening row = *job.openings.find(opening);
    std::string names;
    for (const Act& act : actsOf(row, list))
        names += (names.empty() ? "" : ", ") + act.name;
    return problemAt(row.tag,
                     {.en = "{opening} has no act '{act}'.", .es = "{opening} no tiene el acto '{act}'."},
                     {.en = "Use one of: {acts}.", .es = "Use uno de: {acts}."},
                     {{"opening", row.tag}, {"act", name}, {"acts", names.empty() ? "–" : names}});
}

bool hasAct(const Job& job, OpeningId opening, ActList list, const std::string& name)
{
    const Opening* row = job.openings.find(opening);
    if (!row)
        return false;
    const std::vector<Act>& acts = list == ActList::Requests ? row->requests : row->releases;
    return std::any_of(acts.begin(), acts.end(), [&](const Act& act) { return act.name == name; });
}

} // namespace

Operator doorLeaf(std::string tag)
{
    return ofTwoThrows(std::move(tag), OperatorNature::Door, {"shut", {"door shut", "puerta cerrada"}},
                       {"open", {"door open", "puerta abierta"}});
}

Operator fireAlarm(std::string tag)
{
    return ofTwoThrows(std::move(tag), OperatorNature::Fire,
                       {"normal", {"no fire alarm", "sin alarma de incendio"}},
                       {"alarm", {"fire alarm", "alarma de incendio"}});
}

Result<std::pair<OperatorId, Change>> addOperator(const Job& job, Numbers& numbers, Operator wanted)
{
    if (auto problem = newTagProblem(job.operators, {}, wanted.tag))
        return *std::move(problem);
    if (isTakenByOperator(job, wanted.tag))
        return problemAt(wanted.tag,
                         {.en = "'{tag}' is the name of another operator.",
                          .es = "'{tag}' es el nombre de otro operador."},
                         {.en = "Choose one that is free.", .es = "Elija uno que esté libre."},
                         {{"tag", wanted.tag}});
    wanted.id = {numbers.take()};
    Result<Change> change = tried(job, {{Put<Operator>{wanted.id, wanted}}});
    if (!change.ok())
        return change.problem();
    return std::pair(wanted.id, std::move(change.value()));
}

Result<std::pair<OpeningId, Change>> addOpening(const Job& job, Numbers& numbers, Opening wanted)
{
    if (auto problem = newTagProblem(job.openings, {}, wanted.tag))
        return *std::move(problem);
    Draft draft(job);
    if (!wanted.door) {
        Operator leaf = doorLeaf(
            countedOn("D" + wanted.tag, [&](const std::string& tag) { return isTakenByOperator(job, tag); }));
        wanted.door = leaf.id = {numbers.take()};
        draft.put(std::move(leaf));
    }
    if (wanted.promises.empty())
        wanted.promises = usualPromises(job, wanted);
    const OpeningId id = wanted.id = {numbers.take()};
    draft.put(std::move(wanted));
    Result<Change> change = tried(job, draft.change());
    if (!change.ok())
        return change.problem();
    return std::pair(id, std::move(change.value()));
}

Result<Change> alterOpening(const Job& job, Opening wanted)
{
    if (auto problem = newTagProblem(job.openings, wanted.id, wanted.tag))
        return *std::move(problem);
    return altered(job, wanted.id, [&](Opening& row) { row = std::move(wanted); });
}

Result<Change> removeOpening(const Job& job, OpeningId opening)
{
    if (!job.openings.find(opening))
        return notInJob(nounOf<Opening>());
    Draft draft(job);
    removeRows(draft, {opening.number});
    return draft.change();
}

Result<Change> addToOpening(const Job& job, OpeningId opening, OpeningPart part, DeviceId device)
{
    return altered(job, opening, [&](Opening& row) {
        const Opening before = row;
        (part == OpeningPart::Lock ? row.locks : row.doorOperators).push_back(device);
        addUsual(job, before, row);
    });
}

Result<Change> takeFromOpening(const Job& job, OpeningId opening, DeviceId device)
{
    return altered(job, opening, [&](Opening& row) {
        std::erase(row.locks, device);
        std::erase(row.doorOperators, device);
        std::erase_if(row.promises, [&](const Promise& promise) { return promise.device == device; });
    });
}

Result<Change> addAct(const Job& job, OpeningId opening, ActList list, Act act)
{
    return altered(job, opening, [&](Opening& row) {
        const Opening before = row;
        actsOf(row, list).push_back(std::move(act));
        addUsual(job, before, row);
    });
}

Result<Change> alterAct(const Job& job, OpeningId opening, ActList list, const std::string& name, Act act)
{
    if (job.openings.find(opening) && !hasAct(job, opening, list, name))
        return noSuchAct(job, opening, list, name);
    return altered(job, opening, [&](Opening& row) {
        for (Promise& promise : row.promises)
            if (speaksOf(promise.situation, list, name))
                promise.situation.act = act.name;
        for (Act& each : actsOf(row, list))
            if (each.name == name) {
                each = std::move(act);
                break;
            }
    });
}

Result<Change> removeAct(const Job& job, OpeningId opening, ActList list, const std::string& name)
{
    if (job.openings.find(opening) && !hasAct(job, opening, list, name))
        return noSuchAct(job, opening, list, name);
    return altered(job, opening, [&](Opening& row) {
        std::erase_if(actsOf(row, list), [&](const Act& act) { return act.name == name; });
        std::erase_if(row.promises,
                      [&](const Promise& promise) { return speaksOf(promise.situation, list, name); });
    });
}

Result<Change> setOccupied(const Job& job, OpeningId opening, std::vector<Thrown> throws)
{
    return altered(job, opening, [&](Opening& row) {
        const Opening before = row;
        row.occupied = std::move(throws);
        if (row.occupied.empty())
            std::erase_if(row.promises, [](const Promise& promise) {
                return promise.situation.kind == SituationKind::Occupied ||
                       promise.situation.kind == SituationKind::RequestWhileOccupied;
            });
        addUsual(job, before, row);
    });
}

Result<Change> setPromise(const Job& job, OpeningId opening, const Situation& situation, DeviceId device,
                          Promised promised)
{
    return altered(job, opening, [&](Opening& row) {
        const auto there = std::find_if(row.promises.begin(), row.promises.end(), [&](const Promise& each) {
            return each.situation == situation && each.device == device;
        });
        if (promised == Promised::Nothing) {
            if (there != row.promises.end())
                row.promises.erase(there);
        } else if (there != row.promises.end()) {
            there->promised = promised;
        } else {
            row.promises.push_back({situation, device, promised});
        }
    });
}

} // namespace doorloom
