#include "verbs/verb.h"

#include <algorithm>
#include <optional>

namespace doorloom {
namespace {

constexpr Text noVerb = {.en = "No verb is given.", .es = "Falta el verbo."};
constexpr Text unknownVerb = {.en = "There is no verb '{verb}'.", .es = "No existe el verbo '{verb}'."};
constexpr Text verbsThere = {.en = "Use one of: {verbs}.", .es = "Use uno de: {verbs}."};
constexpr Text unknownOption = {.en = "'{verb}' has no option '{option}'.",
                                .es = "'{verb}' no tiene la opción '{option}'."};
constexpr Text optionTwice = {.en = "Option '{option}' is given twice.",
                              .es = "La opción '{option}' se repite."};
constexpr Text noValue = {.en = "Option '{option}' has no value.",
                          .es = "Falta el valor de la opción '{option}'."};
constexpr Text optionMissing = {.en = "'{verb}' needs the option '{option}'.",
                                .es = "'{verb}' necesita la opción '{option}'."};
constexpr Text wordMissing = {.en = "'{verb}' needs {words}.", .es = "'{verb}' necesita {words}."};
constexpr Text wordTooMany = {.en = "'{word}' is one word too many for '{verb}'.",
                              .es = "'{word}' sobra para '{verb}'."};
constexpr Text unknownLanguage = {.en = "There is no language '{language}'.",
                                  .es = "No existe el idioma '{language}'."};
constexpr Text languagesThere = {.en = "Use 'en' or 'es'.", .es = "Use 'en' o 'es'."};
constexpr Text asShown = {.en = "Write it as shown here:", .es = "Escríbalo como se muestra aquí:"};

constexpr Text fileWritten = {.en = "Written: {file}", .es = "Escrito: {file}"};

constexpr Text whatItIs = {
    .en = "Doorloom checks and prints the low-voltage wiring of door hardware.",
    .es = "Doorloom revisa e imprime el cableado de baja tensión de herrajes eléctricos de puertas."};
constexpr Text usageHead = {.en = "usage:", .es = "uso:"};
constexpr Text commonOptions = {.en = "every verb: --lang en|es (the language of what is said), --help",
                                .es = "todos los verbos: --lang en|es (el idioma de los mensajes), --help"};
constexpr Text exitCodes = {.en = "ends with: 0 done (check: nothing above a doubt, every question "
                                  "answered), 1 check found a danger or "
                                  "fault,\n  2 bad usage, input that can't be read or output that can't be "
                                  "written, 3 check left questions "
                                  "unanswered,\n  70 the program's own error",
                            .es = "termina con: 0 hecho (check: nada peor que una duda y todo respondido), 1 "
                                  "check halló un peligro o una "
                                  "falla,\n  2 uso incorrecto, entrada ilegible o salida que no se puede "
                                  "escribir, 3 check dejó preguntas "
                                  "sin respuesta,\n  70 error propio del programa"};

std::string usageLine(const Verb& verb)
{
    std::string line = "doorloom " + std::string(verb.name);
    if (!verb.words.empty())
        line += " " + std::string(verb.words);
    for (const VerbOption& option : verb.options) {
        std::string written(option.name);
        if (!option.value.empty())
            written += " " + std::string(option.value);
        line += option.required ? " " + written : " [" + written + "]";
    }
    return line;
}

std::string usageOf(const Verb& verb, Language language)
{
    return std::string(inWords(usageHead, language)) + " " + usageLine(verb) + "\n  " +
           std::string(inWords(verb.purpose, language)) + "\n" +
           std::string(inWords(commonOptions, language)) + "\n";
}

std::string usageOfAll(Language language)
{
    std::string usage =
        std::string(inWords(whatItIs, language)) + "\n" + std::string(inWords(usageHead, language));
    for (const Verb* verb : allVerbs())
        usage += "\n  " + usageLine(*verb) + "\n      " + std::string(inWords(verb->purpose, language));
    return usage + "\n" + std::string(inWords(commonOptions, language)) + "\n" +
           std::string(inWords(exitCodes, language)) + "\n";
}

Problem badUsage(Message what, Message remedy = asShown)
{
    return {.what = std::move(what), .where = "doorloom", .remedy = std::move(remedy)};
}

Reply badUsageReply(const Problem& problem, const std::string& usage, Language language)
{
    Reply reply = refusal(problem, language);
    reply.err += usage;
    return reply;
}

// Takes '--lang xx' out wherever it stands, so that every later message is in that language.
Result<std::optional<Language>> takeLanguage(std::vector<std::string>& arguments)
{
    const auto found = std::find(arguments.begin(), arguments.end(), "--lang");
    if (found == arguments.end())
        return std::optional<Language>();
    if (found + 1 == arguments.end())
        return badUsage({noValue, {{"option", "--lang"}}}, languagesThere);
    const std::string named = *(found + 1);
    if (named != "en" && named != "es")
        return badUsage({unknownLanguage, {{"language", named}}}, languagesThere);
    arguments.erase(found, found + 2);
    return std::optional(named == "es" ? Language::Spanish : Language::English);
}

std::optional<Problem> takeOption(const Verb& verb, Request& request, std::span<const std::string> arguments,
                                  std::size_t& next)
{
    const std::string& name = arguments[next++];
    const auto option = std::find_if(verb.options.begin(), verb.options.end(),
                                     [&](const VerbOption& known) { return known.name == name; });
    if (option == verb.options.end())
        return badUsage({unknownOption, {{"verb", std::string(verb.name)}, {"option", name}}});
    if (request.find(name))
        return badUsage({optionTwice, {{"option", name}}});
    if (option->value.empty()) {
        request.options.emplace_back(name, "");
        return {};
    }
    const auto words = static_cast<std::size_t>(std::count(option->value.begin(), option->value.end(), ' ')) + 1;
    std::string value;
    for (std::size_t word = 0; word < words; ++word) {
        if (next == arguments.size())
            return badUsage({noValue, {{"option", name}}});
        value += (word == 0 ? "" : "\n") + arguments[next++];
    }
    request.options.emplace_back(name, value);
    return {};
}

std::optional<Problem> whatIsAmiss(const Verb& verb, const Request& request)
{
    const std::string name(verb.name);
    if (request.words.size() < verb.fewestWords)
        return badUsage({wordMissing, {{"verb", name}, {"words", std::string(verb.words)}}});
    if (request.words.size() > verb.mostWords)
        return badUsage({wordTooMany, {{"verb", name}, {"word", request.words[verb.mostWords]}}});
    for (const VerbOption& option : verb.options)
        if (option.required && !request.find(option.name))
            return badUsage({optionMissing, {{"verb", name}, {"option", std::string(option.name)}}});
    return {};
}

Result<Request> readRequest(const Verb& verb, std::span<const std::string> arguments,
                            std::optional<Language> asked)
{
    Request request{.language = asked.value_or(Language::English),
                    .languageIsAsked = asked.has_value(),
                    .words = {},
                    .options = {}};
    bool onlyWords = false; // after "--"
    for (std::size_t next = 0; next < arguments.size();) {
        if (!onlyWords && arguments[next] == "--") {
            onlyWords = true;
            ++next;
        } else if (!onlyWords && arguments[next].starts_with("-") && arguments[next] != "-") {
            if (const auto problem = takeOption(verb, request, arguments, next))
                return *problem;
        } else {
            request.words.push_back(arguments[next++]);
        }
    }
    if (const auto problem = whatIsAmiss(verb, request))
        return *problem;
    return request;
}

std::string namesOfVerbs()
{
    std::string names;
    for (const Verb* verb : allVerbs())
        names += (names.empty() ? "" : ", ") + std::string(verb->name);
    return names;
}

bool asksForHelp(std::span<const std::string> arguments)
{
    return std::find(arguments.begin(), arguments.end(), "--help") != arguments.end();
}

} // namespace

const std::string* Request::find(std::string_view option) const
{
    for (const auto& [name, value] : options)
        if (name == option)
            return &value;
    return nullptr;
}

Reply refusal(const Problem& problem, Language language)
{
    return {.exit = Exit::Refused, .out = {}, .err = inWords(problem, language) + "\n"};
}

Reply wrote(const std::string& file, Language language)
{
    return {.exit = Exit::Fine, .out = inWords({fileWritten, {{"file", file}}}, language) + "\n", .err = {}};
}

Reply reply(std::vector<std::string> arguments)
{
    const Result<std::optional<Language>> asked = takeLanguage(arguments);
    if (!asked.ok())
        return badUsageReply(asked.problem(), usageOfAll(Language::English), Language::English);
    const Language language = asked.value().value_or(Language::English);
    if (arguments.empty())
        return badUsageReply(badUsage(noVerb, {verbsThere, {{"verbs", namesOfVerbs()}}}),
                             usageOfAll(language), language);
    if (arguments.front() == "--help")
        return {.exit = Exit::Fine, .out = usageOfAll(language), .err = {}};

    const auto verb = std::find_if(allVerbs().begin(), allVerbs().end(),
                                   [&](const Verb* known) { return known->name == arguments.front(); });
    if (verb == allVerbs().end())
        return badUsageReply(
            badUsage({unknownVerb, {{"verb", arguments.front()}}}, {verbsThere, {{"verbs", namesOfVerbs()}}}),
            usageOfAll(language), language);
    const std::span<const std::string> rest = std::span(arguments).subspan(1);
    if (asksForHelp(rest))
        return {.exit = Exit::Fine, .out = usageOf(**verb, language), .err = {}};
    const Result<Request> request = readRequest(**verb, rest, asked.value());
    if (!request.ok())
        return badUsageReply(request.problem(), usageOf(**verb, language), language);
    return (*verb)->run(request.value());
}

} // namespace doorloom
