#include "papers/devicehead.h"

#include <fmt/format.h>

#include <algorithm>
#include <map>

namespace doorloom {
namespace {

constexpr Text plain = {.en = "{title}{dagger}", .es = "{title}{dagger}"};

constexpr Text leaveAlone = {.en = "EXISTING: LEAVE. Do not open, move or re-land anything here.",
                             .es = "EXISTENTE: NO TOCAR. No abra, mueva ni reconecte nada aquí."};
constexpr Text byOthers = {.en = "BY OTHERS. Land here only what this sheet lists, together with them.",
                           .es = "DE OTROS. Conecte aquí solo lo que dice esta hoja, junto con ellos."};
constexpr Text existing = {
    .en = "Existing device: compare what you find with this sheet before changing anything.",
    .es = "Equipo existente: compare lo que encuentre con esta hoja antes de cambiar nada."};
constexpr Text moved = {.en = "Moved here from another place.", .es = "Trasladado aquí desde otro lugar."};

constexpr Text offFirst = {.en = "OFF FIRST, then prove dead: {supplies}.",
                           .es = "PRIMERO CORTE, luego compruebe que no hay tensión: {supplies}."};
constexpr Text noSupply = {.en = "No supply reaches it on these sheets: prove dead all the same.",
                           .es =
                               "Ninguna fuente le llega en estas hojas: compruebe igual que no hay tensión."};
constexpr Text supplyWords = {.en = "{tag}", .es = "{tag}"};
constexpr Text withBreaker = {.en = "{what} (breaker {breaker})", .es = "{what} (interruptor {breaker})"};
constexpr Text mainsOf = {.en = "mains of {tag}", .es = "red de {tag}"};
constexpr Text batteryOf = {.en = "{what}, its battery unplugged", .es = "{what}, su batería desconectada"};
constexpr Text andAlso = {.en = "{first}; {then}", .es = "{first}; {then}"};

constexpr Text setFirst = {.en = "SET FIRST, power off: {option}: {jumpers}{dagger}{warning}",
                           .es = "AJUSTE PRIMERO, alimentación cortada: {option}: {jumpers}{dagger}{warning}"};
constexpr Text jumperAt = {.en = "{jumper} {value}", .es = "{jumper} {value}"};
constexpr Text notChosen = {.en = "{jumper} NOT CHOSEN", .es = "{jumper} SIN ELEGIR"};
constexpr Text askFirst = {.en = ". Ask before power.", .es = ". Pregunte antes de dar tensión."};
constexpr Text disagree = {.en = ". THE JUMPERS DISAGREE: ask before power.",
                           .es = ". LOS PUENTES NO COINCIDEN: pregunte antes de dar tensión."};
constexpr Text noWarning = {.en = "", .es = ""};

constexpr Text setting = {.en = "Set: {setting}: {value}{dagger}{when}",
                          .es = "Ajuste: {setting}: {value}{dagger}{when}"};
constexpr Text asFromFactory = {.en = "{value}, as from the factory", .es = "{value}, como sale de fábrica"};
constexpr Text notSet = {.en = "NOT SET", .es = "SIN AJUSTAR"};
constexpr Text beforePower = {.en = ", before power {value}", .es = ", antes de dar tensión {value}"};

constexpr Text clamps = {.en = "Clamps{which}: {values}{dagger}", .es = "Bornes{which}: {values}{dagger}"};
constexpr Text wireFrom = {.en = "{thinnest} to {thickest}", .es = "{thinnest} a {thickest}"};
constexpr Text strip = {.en = "strip {length} mm", .es = "pele {length} mm"};
constexpr Text torque = {.en = "{torque} N·m", .es = "{torque} N·m"};
constexpr Text mostWires = {.en = "at most {count} in one", .es = "máximo {count} en uno"};

std::string daggerFor(ValueStanding standing)
{
    return standing == ValueStanding::Sheet ? "" : " †";
}

// ---- Standing and supplies.

std::vector<Message> standingLines(Standing standing)
{
    switch (standing) {
    case Standing::LeaveAlone:
        return {leaveAlone};
    case Standing::ByOthers:
        return {byOthers};
    case Standing::Existing:
        return {existing};
    case Standing::Moved:
        return {moved};
    case Standing::New:
        break;
    }
    return {};
}

bool hasNature(const Kind& kind, OperatorNature nature)
{
    return std::any_of(kind.roles.begin(), kind.roles.end(),
                       [&](const Role& role) { return role.nature == nature; });
}

bool hasBattery(const Kind& kind)
{
    return hasNature(kind, OperatorNature::Battery);
}

Message supplyInWords(const Job& job, DeviceId id)
{
    const Device* device = job.devices.find(id);
    const Kind* kind = kindOf(job, id);
    const bool givesPower = std::any_of(kind->parts.begin(), kind->parts.end(), [](const Part& part) {
        return std::holds_alternative<SourcePart>(part.body) ||
               std::holds_alternative<BatteryPart>(part.body);
    });
    Message words{givesPower ? supplyWords : mainsOf, {{"tag", device->tag}}};
    const Place* place = job.places.find(device->place);
    if (place && !place->breaker.empty() && hasNature(*kind, OperatorNature::Mains))
        words = {withBreaker, {{"what", std::vector{words}}, {"breaker", place->breaker}}};
    if (hasBattery(*kind))
        words = {batteryOf, {{"what", std::vector{words}}}};
    return words;
}

Message supplyLine(const Job& job, const Device& device, const Carries& carries)
{
    std::optional<Message> supplies;
    for (DeviceId supply : carries.supplies(device.id)) {
        const Message words = supplyInWords(job, supply);
        supplies = supplies
                       ? Message(andAlso, {{"first", std::vector{*supplies}}, {"then", std::vector{words}}})
                       : words;
    }
    return supplies ? Message(offFirst, {{"supplies", std::vector{*supplies}}}) : Message(noSupply);
}

// ---- Options and settings.

Words valueWords(const std::vector<Throw>& values, const Key& key)
{
    const auto found = findThrow(values, key);
    return found ? values[*found].words : Words{key, key};
}

Message optionLine(const Option& option, const Device& device)
{
    std::vector<Message> jumpers;
    std::vector<Key> positions;
    for (const Jumper& jumper : option.jumpers) {
        const auto value = chosen(device, option.key, jumper.key);
        jumpers.push_back({value ? jumperAt : notChosen, {{"jumper", jumper.key}}});
        if (value)
            jumpers.back().arguments.emplace_back("value", valueWords(option.values, *value));
        positions.push_back(value.value_or(""));
    }
    const bool all = std::find(positions.begin(), positions.end(), "") == positions.end();
    const bool alike =
        std::adjacent_find(positions.begin(), positions.end(), std::not_equal_to<>()) == positions.end();
    const Message warning = !all ? askFirst : alike ? noWarning : disagree;
    return {setFirst,
            {{"option", option.words},
             {"jumpers", jumpers},
             {"dagger", daggerFor(option.standing)},
             {"warning", std::vector{warning}}}};
}

Message valueInWords(const Setting& about, const SettingValue& value)
{
    if (const auto* number = std::get_if<double>(&value))
        return verbatim(fmt::format("{:g}{}{}", *number, about.unit.empty() ? "" : " ", about.unit));
    return verbatim(valueWords(about.values, std::get<std::string>(value)));
}

Message settingLine(const Setting& about, const Device& device)
{
    const auto chosenValue = settingOf(device, about.key);
    Message value = notSet;
    if (chosenValue)
        value = valueInWords(about, *chosenValue);
    else if (about.factory)
        value = {asFromFactory, {{"value", std::vector{valueInWords(about, *about.factory)}}}};
    std::vector<Message> when;
    if (about.beforePower)
        when.push_back({beforePower, {{"value", std::vector{valueInWords(about, *about.beforePower)}}}});
    return {setting,
            {{"setting", about.words},
             {"value", std::vector{value}},
             {"dagger", daggerFor(about.standing)},
             {"when", when}}};
}

// ---- Clamps: terminals with the same wire range, strip length, torque and capacity on one line.

struct Clamp {
    std::string thinnest, thickest;
    std::optional<Millimetres> stripLength;
    std::optional<NewtonMetres> screw;
    int capacity = 1;
    ValueStanding standing = ValueStanding::Memory;

    friend bool operator==(const Clamp&, const Clamp&) = default;
};

Clamp clampOf(const Terminal& terminal)
{
    return {terminal.wire.thinnest, terminal.wire.thickest, terminal.stripLength,
            terminal.torque,        terminal.clampCapacity, terminal.standing};
}

Message clampLine(const Clamp& clamp, const std::string& which)
{
    std::vector<Message> values;
    if (!clamp.thinnest.empty())
        values.push_back({wireFrom, {{"thinnest", clamp.thinnest}, {"thickest", clamp.thickest}}});
    if (clamp.stripLength)
        values.push_back({strip, {{"length", fmt::format("{:g}", clamp.stripLength->value)}}});
    if (clamp.screw)
        values.push_back({torque, {{"torque", fmt::format("{:g}", clamp.screw->value)}}});
    values.push_back({mostWires, {{"count", std::to_string(clamp.capacity)}}});
    return {clamps,
            {{"which", which.empty() ? "" : " " + which},
             {"values", values},
             {"dagger", daggerFor(clamp.standing)}}};
}

std::vector<Message> clampLines(const Kind& kind)
{
    std::vector<std::pair<Clamp, std::string>> sorts; // and the terminals that have it
    for (const Terminal* terminal : terminalsOf(kind)) {
        if (terminal->lead)
            continue;
        const Clamp clamp = clampOf(*terminal);
        auto sort =
            std::find_if(sorts.begin(), sorts.end(), [&](const auto& each) { return each.first == clamp; });
        if (sort == sorts.end())
            sort = sorts.emplace(sort, clamp, "");
        sort->second += (sort->second.empty() ? "" : ", ") + terminal->printed;
    }
    std::vector<Message> lines;
    for (const auto& [clamp, terminals] : sorts)
        lines.push_back(clampLine(clamp, sorts.size() == 1 ? "" : terminals));
    return lines;
}

std::string settingText(const SettingValue& value)
{
    const auto* number = std::get_if<double>(&value);
    return number ? fmt::format("{:g}", *number) : std::get<std::string>(value);
}

} // namespace

Message titleOf(const Kind& kind)
{
    return {plain, {{"title", kind.title}, {"dagger", daggerFor(kind.standing)}}};
}

std::vector<Message> beforeWork(const Job& job, const Device& device, const Carries& carries)
{
    std::vector<Message> lines = standingLines(device.standing);
    const Kind* kind = kindOf(job, device);
    if (!kind)
        return lines;
    lines.push_back(supplyLine(job, device, carries));
    for (const Option& option : kind->options)
        lines.push_back(optionLine(option, device));
    return lines;
}

std::vector<Message> factsOf(const Kind& kind, const Device& device)
{
    std::vector<Message> lines;
    for (const Setting& about : kind.settings)
        lines.push_back(settingLine(about, device));
    if (kind.family == "part") // it has leads of its own
        return lines;
    for (Message& line : clampLines(kind))
        lines.push_back(std::move(line));
    return lines;
}

std::string optionsText(const Kind& kind, const Device& device)
{
    std::string text;
    for (const Option& option : kind.options)
        for (const Jumper& jumper : option.jumpers)
            text += (text.empty() ? "" : "; ") + option.key + "." + jumper.key + "=" +
                    chosen(device, option.key, jumper.key).value_or("");
    return text;
}

std::string settingsText(const Kind& kind, const Device& device)
{
    std::string text;
    for (const Setting& about : kind.settings)
        if (const auto value = settingOf(device, about.key))
            text += (text.empty() ? "" : "; ") + about.key + "=" + settingText(*value);
    return text;
}

} // namespace doorloom
