#include "catalogue/catalogue.h"
#include "model/modelwords.h"
#include "verbs/verb.h"

#include <fmt/format.h>

#include <algorithm>

namespace doorloom {
namespace {

constexpr Text noKind = {.en = "There is no kind '{kind}'.", .es = "No existe el tipo '{kind}'."};
constexpr Text listThem = {.en = "'doorloom kinds' lists them.", .es = "'doorloom kinds' los muestra."};
constexpr Text notFromSheet = {
    .en = "† not from a maker's sheet: check against the sheet in the box",
    .es = "† no proviene de una hoja del fabricante: compare con la hoja de la caja"};
constexpr Text terminalsHead = {.en = "Terminals, row by row as mounted",
                                .es = "Terminales, fila por fila como están montados"};
constexpr Text lead = {.en = "lead", .es = "hilo"};
constexpr Text optionsHead = {.en = "Options (set before power)",
                              .es = "Opciones (colocar antes de dar tensión)"};
constexpr Text jumpers = {.en = "jumpers:", .es = "puentes:"};
constexpr Text fromFactory = {.en = "from the factory", .es = "de fábrica"};
constexpr Text settingsHead = {.en = "Settings", .es = "Ajustes"};
constexpr Text movedBy = {.en = "What moves it or switches in it", .es = "Lo que lo mueve o conmuta en él"};
constexpr Text asPrinted = {.en = "as printed: no feed, no hand",
                            .es = "como está impreso: sin corriente ni mano"};
constexpr Text lockHead = {.en = "Lock", .es = "Cerradura"};

// A dagger where the value is not from a sheet, as on the papers.
std::string dagger(ValueStanding standing)
{
    return standing == ValueStanding::Sheet ? "" : " †";
}

std::string head(const Text& text, Language language)
{
    return "\n" + std::string(inWords(text, language)) + "\n";
}

std::string marked(const Text& mark, Language language)
{
    return " (" + std::string(inWords(mark, language)) + ")";
}

// "at rest (no feed, no hand) · in": throws as people say them, one of them marked.
std::string throwsInWords(const std::vector<Throw>& throws, const Key& unpowered, Language language)
{
    std::string line;
    for (const Throw& thrown : throws) {
        line += (line.empty() ? "" : " · ") + inWords(thrown.words, language);
        if (thrown.key == unpowered)
            line += marked(asPrinted, language);
    }
    return line;
}

std::string terminalsInWords(const Kind& kind, Language language)
{
    std::string lines = head(terminalsHead, language);
    for (const Strip& strip : kind.strips) {
        lines += "  " + inWords(strip.words, language) + "\n";
        for (const Terminal& terminal : strip.terminals) {
            const std::string colour =
                terminal.lead ? fmt::format(" [{} {}]", inWords(lead, language), *terminal.lead) : "";
            lines += fmt::format("    {:<10} {}{}{}\n", terminal.printed, inWords(terminal.words, language),
                                 colour, dagger(terminal.standing));
        }
    }
    return lines;
}

std::string optionsInWords(const Kind& kind, Language language)
{
    if (kind.options.empty())
        return "";
    std::string lines = head(optionsHead, language);
    for (const Option& option : kind.options) {
        lines += fmt::format("  {}{}\n", inWords(option.words, language), dagger(option.standing));
        for (const Throw& value : option.values)
            lines += fmt::format("    {}{}\n", inWords(value.words, language),
                                 value.key == option.factory ? marked(fromFactory, language) : "");
        lines += fmt::format("    {}\n", inWords(jumpers, language));
        for (const Jumper& jumper : option.jumpers)
            lines += fmt::format("      {}\n", inWords(jumper.words, language));
    }
    return lines;
}

std::string limitsInWords(const Setting& setting, Language language)
{
    if (!setting.values.empty())
        return throwsInWords(setting.values, "", language);
    return fmt::format("{}–{} {}", setting.least, setting.most, setting.unit);
}

std::string settingsInWords(const Kind& kind, Language language)
{
    if (kind.settings.empty())
        return "";
    std::string lines = head(settingsHead, language);
    for (const Setting& setting : kind.settings)
        lines += fmt::format("  {}: {}{}\n", inWords(setting.words, language),
                             limitsInWords(setting, language), dagger(setting.standing));
    return lines;
}

std::string rolesInWords(const Kind& kind, Language language)
{
    if (kind.roles.empty())
        return "";
    std::string lines = head(movedBy, language);
    for (const Role& role : kind.roles)
        lines += fmt::format("  {}: {}\n", inWords(role.words, language),
                             throwsInWords(role.throws, role.unpowered, language));
    return lines;
}

std::string lockInWords(const Kind& kind, Language language)
{
    if (!kind.lock)
        return "";
    return head(lockHead, language) + "  " +
           std::string(inWords(wordsOf(kind.lock->failMode), language)) + "\n";
}

std::string kindInWords(const Kind& kind, Language language)
{
    return fmt::format("{}: {}{}\n{}\n", kind.name, inWords(kind.title, language), dagger(kind.standing),
                       inWords(kind.words, language)) +
           lockInWords(kind, language) + terminalsInWords(kind, language) + optionsInWords(kind, language) +
           settingsInWords(kind, language) + rolesInWords(kind, language) + head(notFromSheet, language);
}

std::string listInWords(const Catalogue& catalogue, Language language)
{
    std::size_t widest = 0;
    for (const Kind& kind : catalogue.kinds)
        widest = std::max(widest, kind.name.size());
    std::string lines;
    for (const Kind& kind : catalogue.kinds)
        lines += fmt::format("{:<{}}  {}{}\n", kind.name, widest, inWords(kind.title, language),
                             dagger(kind.standing));
    return lines + head(notFromSheet, language);
}

Reply runKinds(const Request& request)
{
    const Result<Catalogue> catalogue = readCatalogue(DOORLOOM_RESOURCES "/catalogue");
    if (!catalogue.ok())
        return refusal(catalogue.problem(), request.language);
    if (request.words.empty())
        return {.exit = Exit::Fine, .out = listInWords(catalogue.value(), request.language), .err = {}};
    const std::string& name = request.words.front();
    const Kind* kind = catalogue.value().find(name);
    if (!kind)
        return refusal({.what = {noKind, {{"kind", name}}}, .where = "doorloom kinds", .remedy = listThem},
                       request.language);
    return {.exit = Exit::Fine, .out = kindInWords(*kind, request.language), .err = {}};
}

} // namespace

extern const Verb kindsVerb;
const Verb kindsVerb = {
    .name = "kinds",
    .words = "[NAME]",
    .fewestWords = 0,
    .mostWords = 1,
    .options = {},
    .purpose = {.en = "Lists the kinds of device, or tells everything about one.",
                .es = "Muestra los tipos de dispositivo, o todo sobre uno."},
    .run = runKinds,
};

} // namespace doorloom
