#include "check/alwaysfed.h"
#include "check/check.h"
#include "check/contactinplus.h"
#include "check/situations.h"
#include "check/tell.h"

#include <algorithm>

// Every lock compared with its opening's promise, from its fail mode and what the circuit does.
namespace doorloom {

namespace {

constexpr Text whyFree = {.en = "{lock} of {opening} is promised locked and is free: it is {fed}.",
                          .es = "{lock} de {opening} debe estar bloqueado y queda libre: {fed}."};
constexpr Text whyLocked = {.en = "{lock} of {opening} is promised free and stays locked: it is {fed}.",
                            .es = "{lock} de {opening} debe quedar libre y sigue bloqueado: {fed}."};
constexpr Text fedSecure = {.en = "fail-secure (unlocked only while powered) and fed",
                            .es = "es de bloqueo sin tensión (libre solo con tensión) y recibe tensión"};
constexpr Text unfedSecure = {.en = "fail-secure (unlocked only while powered) and not fed",
                              .es = "es de bloqueo sin tensión (libre solo con tensión) y no recibe tensión"};
constexpr Text fedSafe = {.en = "fail-safe (locked only while powered) and fed",
                          .es = "es de apertura sin tensión (bloqueado solo con tensión) y recibe tensión"};
constexpr Text unfedSafe = {
    .en = "fail-safe (locked only while powered) and not fed",
    .es = "es de apertura sin tensión (bloqueado solo con tensión) y no recibe tensión"};

constexpr Text otherMode = {.en = "No wiring mends this: without power {lock} is always {state}. Fit a lock "
                                  "of the other fail mode at {lock}, "
                                  "or change what {opening} promises.",
                            .es = "Ningún cableado lo corrige: sin tensión {lock} queda siempre {state}. "
                                  "Monte en {lock} una cerradura del otro "
                                  "modo sin tensión, o cambie lo que promete {opening}."};
constexpr Text dropTheFeed = {.en = "Let a contact of {fire} open {lock}'s own feed, behind every battery.",
                              .es = "Haga que un contacto de {fire} abra la propia alimentación de {lock}, después de toda batería."};
constexpr Text locked = {.en = "locked", .es = "bloqueado"};
constexpr Text unlocked = {.en = "free", .es = "libre"};

bool keeps(Promised promised, LockState state)
{
    if (state == LockState::Unknown)
        return true;
    return promised == Promised::Locked ? state == LockState::Locked : state == LockState::Free;
}

// Where an opening says so of any situation, the lock works on a lever or trim, and the door stays latched all the same.
bool staysLatched(const Opening& opening, DeviceId device)
{
    return std::any_of(opening.promises.begin(), opening.promises.end(), [&](const Promise& promise) {
        return promise.device == device && promise.promised == Promised::FreeButLatched;
    });
}

// Danger where somebody is held in or exposed, or a fire-rated door is not latched.
Severity severityOf(const Opening& opening, const Promise& promise, const Lock& lock)
{
    if (promise.promised != Promised::Locked)
        return opening.egress == Egress::ByElectricity ? Severity::Danger : Severity::Fault;
    return isOccupied(promise.situation) || (opening.fireRated && lock.latches && !staysLatched(opening, promise.device)) ? Severity::Danger : Severity::Fault;
}

Finding broken(const Facts& facts, const Opening& opening, const Promise& promise, const Lock& lock)
{
    Finding finding;
    finding.rule = "wrong-in-situation";
    finding.severity = severityOf(opening, promise, lock);
    finding.at = {deviceSpot(promise.device)};
    finding.throws = {Witness{{}, {promise.situation}}};
    const bool isFree = promise.promised == Promised::Locked;
    const bool fed = isFree == (lock.failMode == FailMode::Secure);
    const Text& mode =
        lock.failMode == FailMode::Secure ? (fed ? fedSecure : unfedSecure) : (fed ? fedSafe : unfedSafe);
    finding.why = {isFree ? whyFree : whyLocked,
                   {{"lock", tagOf(facts.job, promise.device)},
                    {"opening", opening.tag},
                    {"fed", std::vector<Message>{mode}}}};
    return finding;
}

std::vector<Remedy> remediesFor(const Facts& facts, const Opening& opening, std::uint32_t element, bool inFire)
{
    Remedies remedies(facts);
    if (const auto fire = facts.net.indexOf(opening.fire); fire && inFire)
        for (ThrowIndex thrown = 0; thrown < facts.circuit().operators[*fire].throws; ++thrown)
            if (thrown != facts.circuit().operators[*fire].idle)
                addContactsIntoPlus(facts, element, {{*fire, thrown}}, OldPlace::LeftOpen, remedies);
    if (alwaysFedPastASwitch(facts, element))
        addMovesOntoSwitch(facts, element, remedies);
    remedies.turnContacts(facts.ask.operatorsThatMatter(element));
    return remedies.taken();
}

bool isOfFire(const Finding& finding) { return finding.throws[0].situation[0].kind == SituationKind::FireAlarm; }

// With all power lost a lock does what it is made for, however it is wired.
bool isOfItsFailMode(const Finding& finding)
{
    return finding.throws[0].situation[0].kind == SituationKind::AllPowerLost;
}

// The worst first, then in the order of situations.
std::vector<Finding> brokenPromises(const Facts& facts, const Opening& opening, DeviceId device,
                                    const Lock& lock, std::uint32_t element)
{
    std::vector<Finding> all;
    for (const Promise& promise : opening.promises) {
        if (promise.device != device || promise.promised == Promised::Nothing)
            continue;
        for (const Position& position :
             positionsIn(facts, opening, promise.situation, facts.ask.operatorsThatMatter(element)))
            if (!keeps(promise.promised, lockStateAt(facts, position, lock, element))) {
                all.push_back(broken(facts, opening, promise, lock));
                break;
            }
    }
    std::stable_sort(all.begin(), all.end(), [](const Finding& a, const Finding& b) {
        return a.severity != b.severity ? a.severity > b.severity
                                        : a.throws[0].situation[0] < b.throws[0].situation[0];
    });
    if (std::any_of(all.begin(), all.end(), isOfItsFailMode)) {
        const Message words{
            otherMode,
            {{"lock", tagOf(facts.job, device)},
             {"opening", opening.tag},
             {"state", std::vector<Message>{lock.failMode == FailMode::Secure ? locked : unlocked}}}};
        for (Finding& finding : all)
            finding.remedy = words;
    } else if (!all.empty())
        for (const std::vector<Remedy> remedies = remediesFor(facts, opening, element, std::any_of(all.begin(), all.end(), isOfFire));
             Finding& finding : all) {
            finding.remedies = remedies;
            if (isOfFire(finding))
                finding.remedy = {dropTheFeed, {{"fire", nameOf(facts.job, opening.fire)}, {"lock", tagOf(facts.job, device)}}};
        }
    return all;
}

std::vector<Finding> findWrong(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Opening& opening : facts.job.openings)
        for (DeviceId device : opening.locks) {
            const Kind* kind = kindOf(facts.job, device);
            if (!kind || !kind->lock)
                continue;
            const auto element = facts.net.elementOf(device, kind->lock->load);
            if (!element)
                continue;
            for (Finding& finding : brokenPromises(facts, opening, device, *kind->lock, *element))
                findings.push_back(std::move(finding));
        }
    return findings;
}

} // namespace

extern const Check wrongInSituation = {
    .code = "wrong-in-situation",
    .worst = Severity::Danger,
    .title = {.en = "Lock wrong in a situation", .es = "Cerradura incorrecta en una situación"},
    .notCovered = {.en =
                       "situations that the opening promises nothing about; whether volts are enough; times",
                   .es = "situaciones sin promesa de la abertura; si la tensión basta; tiempos"},
    .run = findWrong,
};

} // namespace doorloom
