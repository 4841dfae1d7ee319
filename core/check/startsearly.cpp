#include "check/activation.h"
#include "check/check.h"
#include "check/remedies.h"
#include "check/situations.h"
#include "check/tell.h"

#include "edit/operations.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

// A door operator that drives before the lock of its door has let go.
namespace doorloom {

namespace {

constexpr Text why = {.en = "On {request} of {opening}, {input} starts {operator} after {start} s, and {lock} has let go after {free} s: the door is driven against its lock.",
                      .es = "Con la petición {request} de {opening}, {input} arranca {operator} a los {start} s, y {lock} suelta a los {free} s: la puerta se empuja contra su cerradura."};
constexpr Text sequence = {.en = "Start {operator} by a relay that follows the lock's one, {free} s after it or more.",
                           .es = "Arranque {operator} con un relé que siga al de la cerradura, {free} s después o más."};
constexpr Text setIt = {.en = "Set '{setting}' of {device} to {seconds} s.", .es = "Ponga '{setting}' de {device} en {seconds} s."};

constexpr double leastLead = 0.5; // seconds from lock to operator, where there is a choice: more than 0.25, from memory

std::string seconds(double value) { return fmt::format("{:.2f}", value); }

std::optional<double> secondsOf(const Device& device, const Key& setting)
{
    const auto value = settingOf(device, setting);
    const double* number = value ? std::get_if<double>(&*value) : nullptr;
    return number ? std::optional(*number) : std::nullopt;
}

// A setting of this name says how long a role's move, or what an input starts, waits by itself.
Key delayKey(const Key& roleOrInput) { return "delay." + roleOrInput; }

// What one setting, or nothing that can be turned, makes of a delay.
struct Delay {
    double seconds = 0;
    DeviceId device;
    Key setting{};
};

// From the request on, until the operator's own move; nothing: its kind does not say.
std::optional<Delay> delayOf(const Facts& facts, MovedIndex moved)
{
    const Operator* row = facts.job.operators.find(facts.net.moved(moved).id);
    const Device* device = row ? facts.job.devices.find(row->owner) : nullptr;
    const Kind* kind = device ? kindOf(facts.job, *device) : nullptr;
    for (const Part& part : kind ? kind->parts : std::vector<Part>{})
        if (const auto* move = std::get_if<MovePart>(&part.body); move && move->role == row->ownerRole) {
            if (const auto set = secondsOf(*device, delayKey(row->ownerRole)))
                return Delay{*set, device->id, delayKey(row->ownerRole)};
            return move->delay ? std::optional(Delay{move->delay->value / 1000, device->id}) : std::nullopt;
        }
    return Delay{0, {}}; // a hand
}

struct Request {
    const Facts& facts;
    const Opening& opening;
    const Act& act;
    Position rest, asked;
};

// Those of the request without which, all else as asked, it would not be so.
template <class IsSo> std::vector<MovedIndex> neededFor(const Request& request, IsSo isSo)
{
    std::vector<MovedIndex> needed;
    for (const Thrown& each : request.act.throws)
        if (const auto moved = request.facts.net.indexOf(each.moved)) {
            Position without = request.asked;
            without[*moved] = request.facts.circuit().operators[*moved].idle;
            if (const auto settled = request.facts.ask.settled(without); settled && !isSo(*settled))
                needed.push_back(*moved);
        }
    return needed;
}

// How long until the lock lets go, a delay that is not known counting as none; nothing: the request does not free it.
struct Letting {
    double seconds;
    std::vector<MovedIndex> by;
};
std::optional<Letting> lettingGo(const Request& request, const Lock& lock, std::uint32_t element)
{
    const auto isFree = [&](const Position& position) { return lockStateAt(request.facts, position, lock, element) == LockState::Free; };
    if (!lock.actsIn || isFree(request.rest) || !isFree(request.asked))
        return std::nullopt;
    Letting letting{0, neededFor(request, isFree)};
    for (MovedIndex moved : letting.by)
        letting.seconds = std::max(letting.seconds, delayOf(request.facts, moved).value_or(Delay{}).seconds);
    letting.seconds += lock.actsIn->value / 1000;
    return letting.by.empty() ? std::nullopt : std::optional(letting);
}

// Does it wait for a contact that tells what the lock's bolt does?
bool waitsForTheBolt(const Facts& facts, std::uint32_t input)
{
    const std::vector<MovedIndex> mattering = facts.ask.operatorsThatMatterToInput(input);
    return std::any_of(mattering.begin(), mattering.end(), [&](MovedIndex moved) {
        const Operator* row = facts.job.operators.find(facts.net.moved(moved).id);
        return row && row->nature == OperatorNature::Bolt;
    });
}

// When the operator drives; nothing: the request does not start it, or a delay that is not known is among them.
struct Starting {
    double seconds = 0;
    std::vector<MovedIndex> by{};
    std::vector<Delay> turnable{};
};
std::optional<Starting> starting(const Request& request, DeviceId operator_, std::uint32_t input, const std::vector<MovedIndex>& lockBy)
{
    const auto isStarted = [&](const Position& position) { return request.facts.ask.operatedIn(position, input); };
    if (isStarted(request.rest) || !isStarted(request.asked) || waitsForTheBolt(request.facts, input))
        return std::nullopt;
    Starting start{0, neededFor(request, isStarted)};
    for (MovedIndex moved : start.by) {
        const bool isLocksOwn = std::find(lockBy.begin(), lockBy.end(), moved) != lockBy.end();
        const auto delay = delayOf(request.facts, moved);
        if (!delay && !isLocksOwn)
            return std::nullopt;
        start.seconds = std::max(start.seconds, delay.value_or(Delay{}).seconds);
        if (delay && !delay->setting.empty() && !isLocksOwn)
            start.turnable.push_back(*delay);
    }
    const Key setting = delayKey(request.facts.net.origin(request.facts.circuit().inputs[input].origin).part);
    if (const auto own = secondsOf(*request.facts.job.devices.find(operator_), setting)) {
        start.seconds += *own;
        start.turnable.push_back({*own, operator_, setting});
    }
    return start.by.empty() ? std::nullopt : std::optional(start);
}

Finding findingFor(const Request& request, DeviceId operator_, std::uint32_t input, DeviceId lock, const Letting& letting, const Starting& start)
{
    const Facts& facts = request.facts;
    const Vertex terminal = facts.circuit().inputs[input].terminal;
    Finding finding;
    finding.rule = "starts-early";
    finding.at = {spotOf(facts, terminal)};
    Cube cube;
    for (const auto* all : {&letting.by, &start.by})
        for (MovedIndex moved : *all)
            cube.push_back({moved, request.asked[moved]});
    std::sort(cube.begin(), cube.end());
    cube.erase(std::unique(cube.begin(), cube.end()), cube.end());
    finding.throws = witnessesOf(facts, {cube});
    finding.why = {why,
                   {{"request", request.act.name},
                    {"opening", request.opening.tag},
                    {"input", nameOf(facts, terminal)},
                    {"operator", tagOf(facts.job, operator_)},
                    {"start", seconds(start.seconds)},
                    {"lock", tagOf(facts.job, lock)},
                    {"free", seconds(letting.seconds)}}};
    finding.remedy = {sequence, {{"operator", tagOf(facts.job, operator_)}, {"free", seconds(std::max(letting.seconds, leastLead))}}};
    Remedies remedies(facts);
    for (const Delay& delay : start.turnable) {
        const Setting* setting = findSetting(*kindOf(facts.job, delay.device), delay.setting);
        const double longer = std::max(delay.seconds + letting.seconds - start.seconds, leastLead);
        remedies.add({setIt, {{"setting", setting->words}, {"device", tagOf(facts.job, delay.device)}, {"seconds", seconds(longer)}}},
                     setSetting(facts.job, delay.device, delay.setting, longer));
    }
    finding.remedies = remedies.taken();
    return finding;
}

// The first lock that has not let go speaks.
void judgeRequest(const Request& request, std::vector<Finding>& findings)
{
    const Facts& facts = request.facts;
    for (DeviceId operator_ : request.opening.doorOperators) {
        const auto input = activationOf(facts, operator_);
        for (DeviceId device : request.opening.locks) {
            const Kind* kind = kindOf(facts.job, device);
            const auto element = kind && kind->lock ? facts.net.elementOf(device, kind->lock->load) : std::nullopt;
            const auto letting = input && element ? lettingGo(request, *kind->lock, *element) : std::nullopt;
            const auto start = letting ? starting(request, operator_, *input, letting->by) : std::nullopt;
            if (!start || start->seconds >= letting->seconds - 1e-9)
                continue;
            findings.push_back(findingFor(request, operator_, *input, device, *letting, *start));
            break;
        }
    }
}

std::vector<Finding> findEarly(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const Opening& opening : facts.job.openings) {
        if (opening.doorOperators.empty() || opening.locks.empty())
            continue;
        const auto rest = positionsIn(facts, opening, Situation{}, {});
        for (const Act& act : opening.requests) {
            const auto asked = positionsIn(facts, opening, Situation{SituationKind::Request, act.name, {}}, {});
            if (rest.empty() || asked.empty())
                continue;
            std::vector<Finding> found;
            judgeRequest({facts, opening, act, rest.front(), asked.front()}, found);
            for (Finding& finding : found) // two requests by the same relays are one
                if (std::none_of(findings.begin(), findings.end(),
                                 [&](const Finding& each) { return each.at == finding.at && each.throws == finding.throws; }))
                    findings.push_back(std::move(finding));
        }
    }
    return findings;
}

} // namespace

extern const Check startsEarly = {
    .code = "starts-early",
    .worst = Severity::Fault,
    .title = {.en = "Operator starts before the lock has let go", .es = "El operador arranca antes de que suelte la cerradura"},
    .notCovered = {.en = "delays that a kind does not say; how long the lock stays free; the time that coils take",
                   .es = "retardos que el tipo no dice; cuánto queda libre la cerradura; el tiempo que tardan las bobinas"},
    .run = findEarly,
};

} // namespace doorloom
