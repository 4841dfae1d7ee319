#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <algorithm>
#include <set>

namespace doorloom {

namespace {

template <class Thing> bool contains(const std::vector<Thing>& list, const Thing& thing)
{
    return std::find(list.begin(), list.end(), thing) != list.end();
}

void verifyThrown(const Job& job, const Opening& row, const std::vector<Thrown>& throws, Problems& problems)
{
    std::set<OperatorId> seen;
    for (const Thrown& thrown : throws) {
        const Operator* moved = job.operators.find(thrown.moved);
        if (thrown.moved && !moved)
            continue; // said already, as a reference that leads nowhere
        const Gaps gaps = {{"opening", row.tag},
                           {"operator", moved ? nameOf(job, *moved) : std::string()},
                           {"throw", thrown.thrown},
                           {"throws", moved ? keysOf(moved->throws) : std::string()}};
        if (!moved)
            problems.push_back(problemAt(row.tag,
                                         {.en = "{opening} wants the throw '{throw}' of no operator.",
                                          .es = "{opening} pide la posición '{throw}' de ningún operador."},
                                         {.en = "Choose the operator.", .es = "Elija el operador."}, gaps));
        else if (!findThrow(moved->throws, thrown.thrown))
            problems.push_back(problemAt(
                row.tag,
                {.en = "{opening} wants {operator} at '{throw}', where it can't be.",
                 .es = "{opening} pide {operator} en '{throw}', donde no puede estar."},
                {.en = "Use one of its throws: {throws}.", .es = "Use una de sus posiciones: {throws}."},
                gaps));
        else if (!seen.insert(thrown.moved).second)
            problems.push_back(
                problemAt(row.tag,
                          {.en = "{opening} names {operator} twice in one act, once at '{throw}'.",
                           .es = "{opening} nombra {operator} dos veces en un acto, una en '{throw}'."},
                          {.en = "Name it once.", .es = "Nómbrelo una vez."}, gaps));
    }
}

void verifyActs(const Job& job, const Opening& row, const std::vector<Act>& acts, Problems& problems)
{
    std::set<std::string> names;
    for (const Act& act : acts) {
        if (act.name.empty() || !names.insert(act.name).second)
            problems.push_back(
                problemAt(row.tag,
                          {.en = "{opening} has an act named '{act}' twice, or without a name.",
                           .es = "{opening} tiene un acto llamado '{act}' dos veces o sin nombre."},
                          {.en = "Give each a name of its own.", .es = "Dé a cada uno su propio nombre."},
                          {{"opening", row.tag}, {"act", act.name}}));
        verifyThrown(job, row, act.throws, problems);
    }
}

void verifyDevices(const Job& job, const Opening& row, Problems& problems)
{
    for (const auto* list : {&row.locks, &row.doorOperators}) {
        std::set<DeviceId> seen;
        for (DeviceId device : *list)
            if (!device || !seen.insert(device).second)
                problems.push_back(
                    problemAt(row.tag,
                              {.en = "{opening} lists '{device}' twice, or a device that is none.",
                               .es = "{opening} enumera '{device}' dos veces o sin dispositivo."},
                              {.en = "List each lock and door operator once.",
                               .es = "Enumere cada cerradura y cada operador de puerta una vez."},
                              {{"opening", row.tag}, {"device", tagOf(job, device)}}));
    }
    for (DeviceId lock : row.locks)
        if (const Kind* kind = kindOf(job, lock); kind && !kind->lock)
            problems.push_back(problemAt(
                row.tag,
                {.en = "'{device}' can't be a lock of {opening}: its kind ({kind}) does not lock.",
                 .es = "'{device}' no puede ser cerradura de {opening}: su tipo ({kind}) no cierra."},
                {.en = "Take it off the list of locks, or give it a kind that locks.",
                 .es = "Quítelo de las cerraduras o déle un tipo que cierre."},
                {{"opening", row.tag}, {"device", tagOf(job, lock)}, {"kind", kind->title}}));
}

bool hasAct(const std::vector<Act>& acts, const std::string& name)
{
    return std::any_of(acts.begin(), acts.end(), [&](const Act& act) { return act.name == name; });
}

bool fits(const Opening& row, const Situation& situation)
{
    switch (situation.kind) {
    case SituationKind::Request:
    case SituationKind::RequestWhileOccupied:
        return hasAct(row.requests, situation.act) && !situation.lost;
    case SituationKind::Release:
        return hasAct(row.releases, situation.act) && !situation.lost;
    case SituationKind::LostAlone:
        return situation.act.empty() && situation.lost;
    default:
        return situation.act.empty() && !situation.lost;
    }
}

bool fits(const Opening& row, const Promise& promise)
{
    const bool isLock = contains(row.locks, promise.device);
    const bool isDoorOperator = contains(row.doorOperators, promise.device);
    switch (promise.promised) {
    case Promised::Nothing:
        return isLock || isDoorOperator;
    case Promised::MayStart:
    case Promised::MustNotStart:
        return isDoorOperator;
    default:
        return isLock;
    }
}

void verifyPromise(const Job& job, const Opening& row, const Promise& promise, Problems& problems)
{
    const auto alike = std::count_if(row.promises.begin(), row.promises.end(), [&](const Promise& each) {
        return each.situation == promise.situation && each.device == promise.device;
    });
    const Gaps gaps = {
        {"opening", row.tag}, {"act", promise.situation.act}, {"device", tagOf(job, promise.device)}};
    if (!fits(row, promise.situation))
        problems.push_back(
            problemAt(row.tag,
                      {.en = "{opening} makes a promise for a situation that it does not have (act '{act}').",
                       .es = "{opening} promete algo para una situación que no tiene (acto '{act}')."},
                      {.en = "Name one of its requests or releases, or what is lost alone.",
                       .es = "Nombre una de sus peticiones o liberaciones, o lo que se pierde solo."},
                      gaps));
    if (!fits(row, promise))
        problems.push_back(problemAt(
            row.tag,
            {.en = "{opening} makes a promise for '{device}' that is not its lock or door operator.",
             .es = "{opening} promete algo para '{device}', que no es su cerradura ni operador de puerta."},
            {.en = "Add it to the opening, or drop the promise.",
             .es = "Añádalo a la puerta o retire la promesa."},
            gaps));
    if (alike > 1)
        problems.push_back(
            problemAt(row.tag,
                      {.en = "{opening} promises twice how '{device}' stands in one situation.",
                       .es = "{opening} promete dos veces cómo está '{device}' en una situación."},
                      {.en = "Keep one of the two promises.", .es = "Deje una de las dos promesas."}, gaps));
}

} // namespace

void verifyPromises(const Job& job, const Opening& row, Problems& problems)
{
    verifyDevices(job, row, problems);
    verifyActs(job, row, row.requests, problems);
    verifyActs(job, row, row.releases, problems);
    verifyThrown(job, row, row.occupied, problems);
    for (const Promise& promise : row.promises)
        verifyPromise(job, row, promise, problems);
}

} // namespace doorloom
