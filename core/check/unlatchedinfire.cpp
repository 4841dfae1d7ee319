#include "check/check.h"
#include "check/tell.h"

#include <algorithm>

// A lock on the latch of a fire-rated door that lets the latch go when its power does: nothing holds the door in a fire.
namespace doorloom {

namespace {

constexpr Text safeWhy = {.en = "{opening} is fire-rated, and {lock} is fail-safe on its latch: without power the door is not latched.",
                          .es = "{opening} es cortafuegos, y {lock} es de apertura sin tensión en su pestillo: sin tensión la puerta no queda enclavada."};
constexpr Text promiseWhy = {.en = "{opening} is fire-rated, and its promise has {lock} free in a fire alarm: the door is not latched then.",
                             .es = "{opening} es cortafuegos, y su promesa deja {lock} libre en alarma de incendio: la puerta no queda enclavada."};
constexpr Text remedy = {.en = "Fit a fail-secure strike, or a lever lock or trim, which stays latched; of such a one {opening} promises 'free but latched'.",
                         .es = "Monte una contrachapa bloqueada sin tensión, o una cerradura de manija, que sigue enclavada; de ella {opening} promete "
                               "'libre pero enclavado'."};

bool promises(const Opening& opening, DeviceId lock, std::optional<SituationKind> situation, Promised promised)
{
    return std::any_of(opening.promises.begin(), opening.promises.end(), [&](const Promise& each) {
        return each.device == lock && (!situation || each.situation.kind == *situation) && each.promised == promised;
    });
}

// Nothing where 'free but latched' says that it works on a lever, or where the promise of a lost supply speaks by itself.
const Text* whyUnlatched(const Opening& opening, DeviceId device, const Lock& lock)
{
    if (!lock.latches || lock.holdsDoorOpen || promises(opening, device, {}, Promised::FreeButLatched))
        return nullptr;
    if (lock.failMode == FailMode::Safe && !promises(opening, device, SituationKind::AllPowerLost, Promised::Locked))
        return &safeWhy;
    return lock.failMode == FailMode::Secure && promises(opening, device, SituationKind::FireAlarm, Promised::Free) ? &promiseWhy : nullptr;
}

std::vector<Finding> findUnlatched(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Opening& opening : facts.job.openings)
        for (DeviceId device : opening.fireRated ? opening.locks : std::vector<DeviceId>{}) {
            const Kind* kind = kindOf(facts.job, device);
            const Text* why = kind && kind->lock ? whyUnlatched(opening, device, *kind->lock) : nullptr;
            if (!why)
                continue;
            Finding finding;
            finding.rule = "unlatched-in-fire";
            finding.severity = Severity::Danger;
            finding.at = {deviceSpot(device)};
            finding.why = {*why, {{"opening", opening.tag}, {"lock", tagOf(facts.job, device)}}};
            finding.remedy = {remedy, {{"opening", opening.tag}}};
            findings.push_back(std::move(finding));
        }
    return findings;
}

} // namespace

extern const Check unlatchedInFire = {
    .code = "unlatched-in-fire",
    .worst = Severity::Danger,
    .title = {.en = "Fire door that does not stay latched", .es = "Puerta cortafuegos que no queda enclavada"},
    .notCovered = {.en = "magnets and bolts, which hold no latch; whether a lock is listed for the door",
                   .es = "imanes y pasadores, que no llevan pestillo; si la cerradura está homologada para la puerta"},
    .run = findUnlatched,
};

} // namespace doorloom
