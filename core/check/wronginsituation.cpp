#include "check/alwaysfed.h"
#include "check/check.h"
#include "check/situations.h"
#include "check/tell.h"

#include <algorithm>
#include <set>

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
constexpr Text locked = {.en = "locked", .es = "bloqueado"};
constexpr Text unlocked = {.en = "free", .es = "libre"};

bool keeps(Promised promised, LockState state)
{
    if (state == LockState::Unknown)
        return true;
    return promised == Promised::Locked ? state == LockState::Locked : state == LockState::Free;
}

// Danger where somebody is held in or exposed, or a fire-rated door is not latched.
Severity severityOf(const Opening& opening, const Promise& promise, const Lock& lock)
{
    if (promise.promised != Promised::Locked)
        return opening.egress == Egress::ByElectricity ? Severity::Danger : Severity::Fault;
    const bool exposed = promise.situation.kind == SituationKind::Occupied ||
                         promise.situation.kind == SituationKind::RequestWhileOccupied;
    return exposed || (opening.fireRated && lock.latches) ? Severity::Danger : Severity::Fault;
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

// Exchanges the two sides of each changeover that this operator moves, where one is landed.
void addExchanges(const Facts& facts, const Device& device, MovedIndex moved, Remedies& remedies)
{
    const std::vector<Part>& parts = kindOf(facts.job, device)->parts;
    for (std::size_t i = 0; i < parts.size(); ++i)
        for (std::size_t k = i + 1; k < parts.size(); ++k) {
            const auto *one = std::get_if<ContactPart>(&parts[i].body),
                       *other = std::get_if<ContactPart>(&parts[k].body);
            if (!one || !other || one->a != other->a || one->role != other->role ||
                facts.net.indexOf(boundTo(device, one->role)) != moved)
                continue;
            const auto isLanded = [&](const Key& node) {
                const auto vertex = facts.net.vertexOf(device.id, node);
                return vertex && facts.isLanded(*vertex);
            };
            if (isLanded(one->b) || isLanded(other->b))
                remedies.exchange(device.id, one->b, other->b);
        }
}

// NO for NC on each contact in the lock's feed, options of the outputs there, a leg moved onto the switch.
std::vector<Remedy> remediesFor(const Facts& facts, std::uint32_t element)
{
    Remedies remedies(facts);
    if (alwaysFedPastASwitch(facts, element))
        addMovesOntoSwitch(facts, element, remedies);
    std::set<std::pair<DeviceId, Key>> options;
    for (MovedIndex moved : facts.ask.operatorsThatMatter(element))
        for (const Device& device : facts.job.devices) {
            const Kind* kind = kindOf(facts.job, device);
            if (!kind)
                continue;
            addExchanges(facts, device, moved, remedies);
            for (const SwitchedOutput& output : kind->outputs)
                if (facts.net.indexOf(boundTo(device, output.key)) == moved)
                    options.insert({device.id, output.option});
        }
    for (const auto& [device, option] : options)
        remedies.setOtherValues(device, option);
    return remedies.taken();
}

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
        if (promise.device != device || promise.promised == Promised::Nothing ||
            promise.promised == Promised::MayStart || promise.promised == Promised::MustNotStart)
            continue;
        for (const Position& position : positionsIn(facts, opening, promise.situation, element))
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
        for (const std::vector<Remedy> remedies = remediesFor(facts, element); Finding & finding : all)
            finding.remedies = remedies;
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
