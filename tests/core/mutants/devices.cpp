#include "mutation.h"

#include <algorithm>
#include <set>

namespace doorloom {

namespace {

Mutant exchanged(const Job& job, const Device& device, const Key& one, const Key& other)
{
    return mutant(job, nameOf(job, device, one) + " with " + nameOf(job, device, other), [id = device.id, one, other](JobBuilder& builder) {
        change(builder, exchangeTerminals(builder.job(), id, one, other));
    });
}

std::vector<Mutant> neighboursExchanged(const Job& job)
{
    std::vector<Mutant> all;
    for (const Device& device : job.devices)
        for (const Strip& strip : kindOf(job, device)->strips)
            for (std::size_t i = 1; i < strip.terminals.size(); ++i)
                if (isLanded(job, device, strip.terminals[i - 1].key) && isLanded(job, device, strip.terminals[i].key))
                    all.push_back(exchanged(job, device, strip.terminals[i - 1].key, strip.terminals[i].key));
    return all;
}

std::vector<Mutant> turnedRound(const Job& job)
{
    std::vector<Mutant> all;
    const auto add = [&](const Device& device, const Key& one, const Key& other) {
        if (findTerminal(*kindOf(job, device), one) && findTerminal(*kindOf(job, device), other) && isLanded(job, device, one) && isLanded(job, device, other))
            all.push_back(exchanged(job, device, one, other));
    };
    forEachPart<LoadPart>(job, [&](const Device& device, const Part&, const LoadPart& load) {
        if (load.polarised)
            add(device, load.a, load.b);
    });
    forEachPart<DiodePart>(job, [&](const Device& device, const Part&, const DiodePart& diode) {
        if (kindOf(job, device)->parts.size() == 1 || findPart(*kindOf(job, device), "coil"))
            add(device, diode.anode, diode.cathode);
    });
    forEachPart<BatteryPart>(job, [&](const Device& device, const Part&, const BatteryPart& battery) { add(device, battery.plus, battery.minus); });
    return all;
}

// The leg of a changeover that is landed, exchanged with the one that closes in the other throw.
std::vector<Mutant> noForNc(const Job& job)
{
    std::vector<Mutant> all;
    forEachPart<ContactPart>(job, [&](const Device& device, const Part& one, const ContactPart& contact) {
        forEachPart<ContactPart>(job, [&](const Device& same, const Part& other, const ContactPart& against) {
            const bool isPair = same.id == device.id && one.key < other.key && contact.role == against.role && contact.a == against.a &&
                                contact.b != against.b && contact.closedIn != against.closedIn;
            if (isPair && (isLanded(job, device, contact.b) || isLanded(job, device, against.b)) && findTerminal(*kindOf(job, device), contact.b) &&
                findTerminal(*kindOf(job, device), against.b))
                all.push_back(exchanged(job, device, contact.b, against.b));
        });
    });
    return all;
}

std::vector<Mutant> jumpersSet(const Job& job)
{
    std::vector<Mutant> all;
    for (const Device& device : job.devices)
        for (const Option& option : kindOf(job, device)->options)
            for (const Jumper& jumper : option.jumpers)
                for (const Throw& value : option.values)
                    if (option.jumpers.size() > 1 && chosen(device, option.key, jumper.key).value_or("") != value.key)
                        all.push_back(mutant(job, device.tag + " " + option.key + " " + jumper.key + " " + value.key,
                                             [id = device.id, option = option.key, jumper = jumper.key, value = value.key](JobBuilder& builder) {
                                                 change(builder, setJumper(builder.job(), id, option, jumper, value));
                                             }));
    return all;
}

std::vector<Mutant> optionsSet(const Job& job)
{
    std::vector<Mutant> all;
    for (const Device& device : job.devices)
        for (const Option& option : kindOf(job, device)->options)
            for (const Throw& value : option.values)
                if (!option.jumpers.empty() && chosen(device, option.key, option.jumpers.front().key).value_or("") != value.key)
                    all.push_back(mutant(job, device.tag + " " + option.key + " " + value.key,
                                         [id = device.id, option = option.key, value = value.key](JobBuilder& builder) {
                                             change(builder, setOption(builder.job(), id, option, value));
                                         }));
    return all;
}

// The same kind but for this, for each device of it.
std::vector<Mutant> otherKinds(const Job& job, const std::string& what, const std::function<bool(Kind&)>& altered)
{
    std::vector<Mutant> all;
    for (const Device& device : job.devices) {
        Kind kind = *kindOf(job, device);
        if (!altered(kind))
            continue;
        kind.name += "-altered";
        all.push_back(mutant(job, device.tag + " " + what, [tag = device.tag, kind](JobBuilder& builder) { builder.kind(tag, kind); }));
    }
    return all;
}

bool turnFailMode(Kind& kind)
{
    if (!kind.lock || kind.lock->failMode == FailMode::StaysPut)
        return false;
    kind.lock->failMode = kind.lock->failMode == FailMode::Safe ? FailMode::Secure : FailMode::Safe;
    return true;
}

template <class Alter> bool alterSources(Kind& kind, Alter alter)
{
    bool any = false;
    for (Part& part : kind.parts)
        if (auto* source = std::get_if<SourcePart>(&part.body)) {
            alter(*source);
            any = true;
        }
    return any;
}

std::vector<Mutant> otherVolts(const Job& job)
{
    std::vector<Mutant> all;
    for (const double times : {2.0, 0.5}) {
        const auto more = otherKinds(job, times > 1 ? "of twice the volts" : "of half the volts", [&](Kind& kind) {
            return alterSources(kind, [&](SourcePart& source) {
                for (Volts* volts : {&source.lowest, &source.nominal, &source.highest})
                    volts->value *= times;
                if (source.lowestOnBattery)
                    source.lowestOnBattery->value *= times;
            });
        });
        all.insert(all.end(), more.begin(), more.end());
    }
    return all;
}

} // namespace

std::vector<KindOfMutation> deviceMutations()
{
    return {{"two neighbours exchanged", neighboursExchanged},
            {"turned round", turnedRound},
            {"NO for NC", noForNc},
            {"one jumper set", jumpersSet},
            {"option set", optionsSet},
            {"other fail mode", [](const Job& job) { return otherKinds(job, "of the other fail mode", turnFailMode); }},
            {"AC for DC", [](const Job& job) {
                 return otherKinds(job, "AC for DC or DC for AC", [](Kind& kind) { return alterSources(kind, [](SourcePart& source) { source.ac = !source.ac; }); });
             }},
            {"other volts", otherVolts}};
}

} // namespace doorloom
