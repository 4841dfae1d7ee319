#include "check/shortrequest.h"

#include "check/activation.h"
#include "check/check.h"
#include "check/remedies.h"
#include "check/starters.h"
#include "check/tell.h"
#include "edit/operations.h"

#include <algorithm>

// Contacts that ask a door operator for a moment only, and operators asked with no time for the lock.
namespace doorloom {

namespace {

constexpr Text holdWhy = {.en = "{device} asks {operator} for {seconds} s. Common practice is more than "
                                "{least} s: many operators miss a shorter request.",
                          .es = "{device} pide a {operator} durante {seconds} s. Lo habitual es más de "
                                "{least} s: muchos operadores no captan una petición más corta."};
constexpr Text delayWhy = {.en = "{device} asks {operator} {seconds} s after the lock. Common practice is "
                                 "more than {least} s, for the lock to let go first.",
                           .es = "{device} pide a {operator} {seconds} s después de la cerradura. Lo "
                                 "habitual es más de {least} s, para que la cerradura suelte antes."};
constexpr Text setLonger = {
    .en = "Set '{setting}' of {device} to more than {least} s, as the operator's sheet says.",
    .es = "Ponga '{setting}' de {device} en más de {least} s, según la hoja del operador."};
constexpr Text setTo = {.en = "Set '{setting}' of {device} to {seconds} s.",
                        .es = "Ponga '{setting}' de {device} en {seconds} s."};

// Source: trade page, figures of a relay's hold on an operator's request and of a lock before its operator,
// from memory
constexpr double holdMustExceed = 1, delayMustExceed = 0.25;
constexpr double usualHold = 2, usualDelay = 0.5; // what the remedy sets: common practice, no source

bool isTimedByItself(const Kind& kind)
{
    return std::none_of(kind.parts.begin(), kind.parts.end(), [](const Part& part) {
        const auto* move = std::get_if<MovePart>(&part.body);
        return move && move->manner == MoveManner::Programmed;
    });
}

// A time of the one contact that the device has to close; those of programmed logic name their relays.
std::vector<Key> holdKeys(const Kind& kind, const Key& role)
{
    std::vector<Key> keys{"hold." + role};
    if (isTimedByItself(kind))
        keys.insert(keys.end(), {"hold", "pulse"});
    return keys;
}

class Times {
public:
    Times(const Facts& facts, DeviceId doorOperator) : facts_(facts), doorOperator_(doorOperator) {}

    void look(ShortTime::Of of, DeviceId device, const Key& setting, double mustExceed)
    {
        const Device* row = facts_.job.devices.find(device);
        const auto value = row ? settingOf(*row, setting) : std::nullopt;
        const double* seconds = value ? std::get_if<double>(&*value) : nullptr;
        const Setting* about = seconds ? findSetting(*kindOf(facts_.job, *row), setting) : nullptr;
        const auto isThere = [&](const ShortTime& each) {
            return each.device == device && each.setting == setting;
        };
        if (about && about->unit == "s" && *seconds <= mustExceed &&
            std::none_of(found_.begin(), found_.end(), isThere))
            found_.push_back({of, device, setting, doorOperator_, *seconds, mustExceed});
    }
    std::vector<ShortTime> found() { return std::move(found_); }

private:
    const Facts& facts_;
    DeviceId doorOperator_;
    std::vector<ShortTime> found_;
};

std::vector<ShortTime> timesOf(const Facts& facts, const Opening& opening, DeviceId doorOperator)
{
    Times times(facts, doorOperator);
    const auto input = activationOf(facts, doorOperator);
    if (!input)
        return {};
    const std::vector<Starter> starters = startersOf(facts, *input);
    for (const Starter& starter : starters) {
        const Operator* row = facts.job.operators.find(facts.net.moved(starter.moved).id);
        const Kind* kind = row ? kindOf(facts.job, row->owner) : nullptr;
        if (!kind)
            continue;
        for (const Key& key : holdKeys(*kind, row->ownerRole))
            times.look(ShortTime::Of::Hold, row->owner, key, holdMustExceed);
        if (!opening.locks.empty())
            times.look(ShortTime::Of::Delay, row->owner, "delay." + row->ownerRole, delayMustExceed);
    }
    if (!opening.locks.empty() && !starters.empty())
        times.look(ShortTime::Of::Delay, doorOperator,
                   "delay." + facts.net.origin(facts.circuit().inputs[*input].origin).part, delayMustExceed);
    return times.found();
}

Finding findingFor(const Facts& facts, const ShortTime& time)
{
    const bool isHold = time.of == ShortTime::Of::Hold;
    Finding finding;
    finding.rule = "short-request";
    finding.severity = Severity::Doubt;
    finding.at = {deviceSpot(time.device)};
    const Words setting = findSetting(*kindOf(facts.job, time.device), time.setting)->words;
    const std::string device = tagOf(facts.job, time.device), least = figureText(time.mustExceed);
    finding.why = {isHold ? holdWhy : delayWhy,
                   {{"device", device},
                    {"operator", tagOf(facts.job, time.doorOperator)},
                    {"seconds", figureText(time.seconds)},
                    {"least", least}}};
    finding.remedy = {setLonger, {{"setting", setting}, {"device", device}, {"least", least}}};
    const double usual = isHold ? usualHold : usualDelay;
    Remedies remedies(facts);
    remedies.add({setTo, {{"setting", setting}, {"device", device}, {"seconds", figureText(usual)}}},
                 setSetting(facts.job, time.device, time.setting, usual));
    finding.remedies = remedies.taken();
    return finding;
}

std::vector<Finding> findShort(const Facts& facts)
{
    std::vector<Finding> findings;
    for (const ShortTime& time : shortTimes(facts))
        findings.push_back(findingFor(facts, time));
    return findings;
}

} // namespace

std::vector<ShortTime> shortTimes(const Facts& facts)
{
    std::vector<ShortTime> all;
    for (const Opening& opening : facts.job.openings)
        for (const DeviceId doorOperator : opening.doorOperators)
            for (const ShortTime& time : timesOf(facts, opening, doorOperator))
                if (std::none_of(all.begin(), all.end(), [&](const ShortTime& each) {
                        return each.device == time.device && each.setting == time.setting;
                    }))
                    all.push_back(time);
    return all;
}

extern const Check shortRequest = {
    .code = "short-request",
    .worst = Severity::Doubt,
    .title = {.en = "Request to a door operator too short or too early",
              .es = "Petición a un operador demasiado corta o temprana"},
    .notCovered = {.en = "times that no device's data gives; contacts that change at each request; what the "
                         "operator's own sheet asks",
                   .es = "tiempos que no están en los datos; contactos que cambian con cada petición; lo que "
                         "pide la hoja del operador"},
    .run = findShort,
};

} // namespace doorloom
