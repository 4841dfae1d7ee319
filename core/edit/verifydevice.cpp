#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

namespace doorloom {

namespace {

bool isBlank(unsigned char letter)
{
    return letter <= ' ' || letter == 0x7f;
}

bool standsOnce(const Device& row, const Key& option, const Key& jumper)
{
    return std::count_if(row.choices.begin(), row.choices.end(), [&](const Choice& each) {
               return each.option == option && each.jumper == jumper;
           }) == 1;
}

void verifyChoices(const Device& row, const Kind& kind, Problems& problems)
{
    for (const Choice& choice : row.choices)
        if (auto problem = choiceProblem(row, kind, choice))
            problems.push_back(*std::move(problem));
    for (const Option& option : kind.options)
        for (const Jumper& jumper : option.jumpers)
            if (!standsOnce(row, option.key, jumper.key))
                problems.push_back(
                    problemAt(row.tag,
                              {.en = "Jumper '{jumper}' of {tag} is not recorded once.",
                               .es = "El puente '{jumper}' de {tag} no está anotado una vez."},
                              {.en = "Record it once; with no value while it is not chosen.",
                               .es = "Anótelo una vez; sin valor mientras no se haya elegido."},
                              {{"jumper", jumper.key}, {"tag", row.tag}}));
}

void verifySettings(const Device& row, const Kind& kind, Problems& problems)
{
    for (const SettingChoice& choice : row.settings) {
        const auto times =
            std::count_if(row.settings.begin(), row.settings.end(),
                          [&](const SettingChoice& each) { return each.setting == choice.setting; });
        const Setting* setting = findSetting(kind, choice.setting);
        if (!setting)
            problems.push_back(noSuchSetting(row, kind, choice.setting));
        else if (times > 1)
            problems.push_back(problemAt(row.tag,
                                         {.en = "Setting '{setting}' of {tag} is recorded twice.",
                                          .es = "El ajuste '{setting}' de {tag} está anotado dos veces."},
                                         {.en = "Record it once.", .es = "Anótelo una vez."},
                                         {{"tag", row.tag}, {"setting", choice.setting}}));
        else if (auto problem = settingProblem(row, *setting, choice.value))
            problems.push_back(*std::move(problem));
    }
}

bool isBoundOnce(const Device& row, const Key& role)
{
    return std::count_if(row.bindings.begin(), row.bindings.end(),
                         [&](const Binding& each) { return each.role == role && each.moved; }) == 1;
}

void verifyBindings(const Job& job, const Device& row, const Kind& kind, Problems& problems)
{
    for (const Binding& binding : row.bindings) {
        const Role* role = findRole(kind, binding.role);
        const Operator* moved = job.operators.find(binding.moved);
        if (!role)
            problems.push_back(noSuchRole(row, kind, binding.role));
        else if (moved && !sameThrows(role->throws, moved->throws))
            problems.push_back(throwsDoNotMatch(job, row, *role, *moved));
    }
    for (const Role& role : kind.roles)
        if (!isBoundOnce(row, role.key))
            problems.push_back(problemAt(row.tag,
                                         {.en = "Role '{role}' of {tag} is not bound to one operator.",
                                          .es = "El papel '{role}' de {tag} no está unido a un operador."},
                                         {.en = "Bind it to one: its own, or the one that it shares.",
                                          .es = "Únalo a uno: el propio o el que comparte."},
                                         {{"role", role.key}, {"tag", row.tag}}));
}

bool takesNumbers(const Setting& setting)
{
    return setting.values.empty();
}

std::string jumpersOf(const Kind& kind)
{
    std::string joined;
    for (const Option& option : kind.options)
        for (const Jumper& jumper : option.jumpers)
            joined += (joined.empty() ? "" : ", ") + option.key + "." + jumper.key;
    return joined;
}

// A kind that gives neither end of a range does not know it.
bool withinLimits(const Setting& setting, double number)
{
    const bool unlimited = setting.least == 0 && setting.most == 0;
    return std::isfinite(number) && (unlimited || (number >= setting.least && number <= setting.most));
}

} // namespace

void verifyPromises(const Job& job, const Device& row, Problems& problems)
{
    if (auto problem = tagProblem(row))
        problems.push_back(*std::move(problem));
    const Kind* kind = kindOf(job, row);
    if (!kind)
        return;
    verifyChoices(row, *kind, problems);
    verifySettings(row, *kind, problems);
    verifyBindings(job, row, *kind, problems);
}

std::optional<Problem> tagProblem(const Device& device)
{
    constexpr Text remedy = {.en = "Give it a tag such as 'PS1', without blanks or ':'.",
                             .es = "Déle una etiqueta como 'PS1', sin espacios ni ':'."};
    const bool broken = std::any_of(device.tag.begin(), device.tag.end(), [](char letter) {
        return letter == ':' || isBlank(static_cast<unsigned char>(letter));
    });
    if (device.tag.empty())
        return problemAt({}, {.en = "A device has the tag ''.", .es = "Un dispositivo tiene la etiqueta ''."},
                         remedy, {});
    if (broken || device.tag.find("\u00a0") != std::string::npos)
        return problemAt(device.tag,
                         {.en = "The tag '{tag}' has a blank or ':' in it.",
                          .es = "La etiqueta '{tag}' contiene un espacio o ':'."},
                         remedy, {{"tag", device.tag}});
    return std::nullopt;
}

std::optional<Problem> choiceProblem(const Device& device, const Kind& kind, const Choice& choice)
{
    const Option* option = findOption(kind, choice.option);
    if (!option || std::none_of(option->jumpers.begin(), option->jumpers.end(),
                                [&](const Jumper& each) { return each.key == choice.jumper; }))
        return problemAt(device.tag,
                         {.en = "{tag} has no jumper '{jumper}' for the option '{option}'.",
                          .es = "{tag} no tiene el puente '{jumper}' de la opción '{option}'."},
                         {.en = "Use one of the jumpers of its kind: {jumpers}.",
                          .es = "Use uno de los puentes de su tipo: {jumpers}."},
                         {{"tag", device.tag},
                          {"jumper", choice.jumper},
                          {"option", choice.option},
                          {"jumpers", jumpersOf(kind)}});
    if (!choice.value.empty() && !findThrow(option->values, choice.value))
        return problemAt(device.tag,
                         {.en = "Jumper {jumper} of {tag} can't stand at '{value}'.",
                          .es = "El puente {jumper} de {tag} no admite la posición '{value}'."},
                         {.en = "Use one of: {values}; or leave it not chosen.",
                          .es = "Use una de: {values}; o déjelo sin elegir."},
                         {{"tag", device.tag},
                          {"jumper", choice.jumper},
                          {"value", choice.value},
                          {"values", keysOf(option->values)}});
    return std::nullopt;
}

Problem noSuchSetting(const Device& device, const Kind& kind, const Key& setting)
{
    return problemAt(
        device.tag,
        {.en = "{tag} has no setting '{setting}'.", .es = "{tag} no tiene el ajuste '{setting}'."},
        {.en = "Use the settings of its kind: {settings}.", .es = "Use los ajustes de su tipo: {settings}."},
        {{"tag", device.tag}, {"setting", setting}, {"settings", keysOf(kind.settings)}});
}

Problem noSuchRole(const Device& device, const Kind& kind, const Key& role)
{
    return problemAt(
        device.tag, {.en = "{tag} has no role '{role}'.", .es = "{tag} no tiene el papel '{role}'."},
        {.en = "Use the roles of its kind: {roles}.", .es = "Use los papeles de su tipo: {roles}."},
        {{"tag", device.tag}, {"role", role}, {"roles", keysOf(kind.roles)}});
}

std::optional<Problem> settingProblem(const Device& device, const Setting& setting, const SettingValue& value)
{
    const auto* number = std::get_if<double>(&value);
    const auto* word = std::get_if<std::string>(&value);
    if (takesNumbers(setting) ? number && withinLimits(setting, *number)
                              : word && findThrow(setting.values, *word).has_value())
        return std::nullopt;
    constexpr Text what = {.en = "{setting} of {tag} can't be '{value}'.",
                           .es = "{setting} de {tag} no puede ser '{value}'."};
    const Gaps gaps = {
        {"tag", device.tag},
        {"setting", setting.words.en.empty() ? Words{setting.key, setting.key} : setting.words},
        {"value", settingText(value)},
        {"unit", setting.unit},
        {"least", fmt::format("{}", setting.least)},
        {"most", fmt::format("{}", setting.most)},
        {"values", keysOf(setting.values)}};
    if (!takesNumbers(setting))
        return problemAt(device.tag, what, {.en = "Use one of: {values}.", .es = "Use uno de: {values}."},
                         gaps);
    return problemAt(device.tag, what,
                     {.en = "Use a number from {least} to {most} {unit}.",
                      .es = "Use un número de {least} a {most} {unit}."},
                     gaps);
}

Problem throwsDoNotMatch(const Job& job, const Device& device, const Role& role, const Operator& moved)
{
    return problemAt(
        device.tag,
        {.en = "{operator} can't move '{role}' of {tag}: it has the throws {has}, not {wants}.",
         .es = "{operator} no puede mover '{role}' de {tag}: tiene las posiciones {has}, no {wants}."},
        {.en = "Choose an operator with the throws {wants}.",
         .es = "Elija un operador con las posiciones {wants}."},
        {{"operator", nameOf(job, moved)},
         {"role", role.key},
         {"tag", device.tag},
         {"has", keysOf(moved.throws)},
         {"wants", keysOf(role.throws)}});
}

} // namespace doorloom
