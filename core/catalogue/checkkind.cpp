#include "base/json.h"
#include "catalogue/kindjson.h"
#include "catalogue/kindproblems.h"

#include <algorithm>
#include <cstdint>

namespace doorloom {

namespace {

constexpr Text badName = {.en = "'{name}' cannot be a kind's name.",
                          .es = "'{name}' no puede ser el nombre de un tipo."};
constexpr Text howNames = {.en = "Use lower-case letters, digits and '-'.",
                           .es = "Use minúsculas, cifras y '-'."};
constexpr Text tooManyCombinations = {.en = "The jumpers can stand in more than {most} ways.",
                                      .es = "Los puentes pueden estar de más de {most} maneras."};
constexpr Text splitKind = {.en = "Make two kinds of it, each with some of the options.",
                            .es = "Haga dos tipos de él, cada uno con algunas opciones."};
constexpr Text wrongValue = {.en = "This value does not fit the setting.",
                             .es = "Este valor no corresponde al ajuste."};
constexpr Text fitNumber = {.en = "Write a number from {least} to {most}.",
                            .es = "Escriba un número de {least} a {most}."};
constexpr Text fitWord = {.en = "Write the key of one of its values.",
                          .es = "Escriba la clave de uno de sus valores."};
constexpr Text valuesOfNumber = {.en = "A setting that is a number lists no values.",
                                 .es = "Un ajuste que es un número no enumera valores."};
constexpr Text limitsInstead = {.en = "Use 'least' and 'most', or the form 'choice'.",
                                .es = "Use 'least' y 'most', o la forma 'choice'."};

constexpr Text nothingPrinted = {.en = "The terminal's printed name is missing.",
                                 .es = "Falta el nombre impreso del borne."};
constexpr Text writePrinted = {.en = "Write it as it stands on the device.",
                               .es = "Escríbalo como está en el aparato."};

constexpr Text tooMany = {.en = "There are {count} of them.", .es = "Hay {count}."};
constexpr Text listFewer = {.en = "List {most} or fewer.", .es = "Ponga {most} o menos."};

constexpr std::uint64_t mostCombinations = 4096;
constexpr std::size_t mostEntries = 1000;

void checkHead(KindProblems& problems)
{
    const std::string& name = problems.kind.name;
    const auto fits = [](char c) { return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-'; };
    if (name.empty() || !std::all_of(name.begin(), name.end(), fits))
        problems.say("name", {badName, {{"name", name}}}, howNames);
    problems.inEnglish("title", problems.kind.title);
}

void checkRoles(KindProblems& problems)
{
    std::set<std::string> seen;
    for (std::size_t i = 0; i < problems.kind.roles.size(); ++i) {
        const Role& role = problems.kind.roles[i];
        const std::string where = inList("roles", i);
        problems.key(where + ".key", role.key);
        problems.unique(where + ".key", role.key, seen);
        problems.inEnglish(where + ".words", role.words);
        problems.throws(where + ".throws", role.throws, 2);
        problems.known(where + ".unpowered", role.unpowered, role.throws);
        problems.known(where + ".idle", role.idle, role.throws);
    }
}

void checkTerminal(KindProblems& problems, const std::string& where, const Terminal& terminal)
{
    problems.key(where + ".key", terminal.key);
    for (std::size_t i = 0; i < terminal.required.size(); ++i)
        problems.condition(inList(where + ".required", i), terminal.required[i]);
    for (std::size_t i = 0; i < terminal.signs.size(); ++i) {
        problems.condition(inList(where + ".signs", i) + ".when", terminal.signs[i].when);
        problems.inEnglish(inList(where + ".signs", i) + ".words", terminal.signs[i].words);
    }
    problems.positive(where + ".clampCapacity", terminal.clampCapacity);
    if (terminal.stripLength)
        problems.positive(where + ".stripMillimetres", terminal.stripLength->value);
    if (terminal.torque)
        problems.positive(where + ".torqueNewtonMetres", terminal.torque->value);
}

void checkTerminals(KindProblems& problems)
{
    std::set<std::string> keys, printed;
    for (std::size_t s = 0; s < problems.kind.strips.size(); ++s) {
        const Strip& strip = problems.kind.strips[s];
        for (std::size_t t = 0; t < strip.terminals.size(); ++t) {
            const std::string where = inList(inList("strips", s) + ".terminals", t);
            checkTerminal(problems, where, strip.terminals[t]);
            problems.unique(where + ".key", strip.terminals[t].key, keys);
            if (strip.terminals[t].printed.empty())
                problems.say(where + ".printed", nothingPrinted, writePrinted);
            problems.unique(where + ".printed", strip.terminals[t].printed, printed);
        }
    }
}

// In how many ways the jumpers of an option can stand, each by itself; never past the limit by much.
std::uint64_t combinationsOf(const Option& option)
{
    std::uint64_t ways = 1;
    for (std::size_t i = 0; i < option.jumpers.size() && ways <= mostCombinations; ++i)
        ways *=
            std::max<std::uint64_t>(1, std::min<std::uint64_t>(option.values.size(), mostCombinations + 1));
    return ways;
}

void checkOption(KindProblems& problems, const std::string& where, const Option& option)
{
    problems.key(where + ".key", option.key, KindProblems::Dots::Refused);
    problems.inEnglish(where + ".words", option.words);
    problems.throws(where + ".values", option.values, 2);
    problems.atLeast(where + ".jumpers", option.jumpers.size(), 1);
    std::set<std::string> seen;
    for (std::size_t i = 0; i < option.jumpers.size(); ++i) {
        const std::string at = inList(where + ".jumpers", i);
        problems.key(at + ".key", option.jumpers[i].key, KindProblems::Dots::Refused);
        problems.unique(at + ".key", option.jumpers[i].key, seen);
    }
    if (!option.factory.empty())
        problems.known(where + ".factory", option.factory, option.values);
}

void checkOptions(KindProblems& problems)
{
    std::set<std::string> seen;
    std::uint64_t ways = 1;
    for (std::size_t i = 0; i < problems.kind.options.size(); ++i) {
        const Option& option = problems.kind.options[i];
        checkOption(problems, inList("options", i), option);
        problems.unique(inList("options", i) + ".key", option.key, seen);
        ways = ways > mostCombinations ? ways : ways * combinationsOf(option);
    }
    if (ways > mostCombinations)
        problems.say("options", {tooManyCombinations, {{"most", std::to_string(mostCombinations)}}},
                     splitKind);
}

bool isNumber(const Setting& setting)
{
    return setting.form == Setting::Form::Number || setting.form == Setting::Form::Potentiometer;
}

void checkValue(KindProblems& problems, const std::string& where, const Setting& setting,
                const std::optional<SettingValue>& value)
{
    if (!value)
        return;
    const double* number = std::get_if<double>(&*value);
    if (isNumber(setting) && !(number && *number >= setting.least && *number <= setting.most))
        problems.say(where, wrongValue,
                     {fitNumber, {{"least", numberText(setting.least)}, {"most", numberText(setting.most)}}});
    if (!isNumber(setting) && number)
        problems.say(where, wrongValue, fitWord);
    if (!isNumber(setting) && !number)
        problems.known(where, std::get<std::string>(*value), setting.values);
}

void checkSettings(KindProblems& problems)
{
    std::set<std::string> seen;
    for (std::size_t i = 0; i < problems.kind.settings.size(); ++i) {
        const Setting& setting = problems.kind.settings[i];
        const std::string where = inList("settings", i);
        problems.key(where + ".key", setting.key);
        problems.unique(where + ".key", setting.key, seen);
        problems.inEnglish(where + ".words", setting.words);
        if (isNumber(setting) && !setting.values.empty())
            problems.say(where + ".values", valuesOfNumber, limitsInstead);
        if (isNumber(setting))
            problems.inOrder(where, "least", setting.least, "most", setting.most);
        else
            problems.throws(where + ".values", setting.values, 2);
        checkValue(problems, where + ".factory", setting, setting.factory);
        checkValue(problems, where + ".beforePower", setting, setting.beforePower);
    }
}

// What comes after walks along one list for each entry of another.
bool isSmallEnough(KindProblems& problems)
{
    const Kind& kind = problems.kind;
    const auto check = [&](const char* list, std::size_t count) {
        if (count > mostEntries)
            problems.say(list, {tooMany, {{"count", std::to_string(count)}}},
                         {listFewer, {{"most", std::to_string(mostEntries)}}});
    };
    check("roles", kind.roles.size());
    check("strips", problems.terminalKeys.size());
    check("options", kind.options.size());
    check("settings", kind.settings.size());
    check("parts", kind.parts.size());
    check("outputs", kind.outputs.size());
    return problems.found.empty();
}

} // namespace

std::vector<Problem> checkKind(const Kind& kind)
{
    KindProblems problems(kind);
    if (!isSmallEnough(problems))
        return std::move(problems.found);
    checkHead(problems);
    checkRoles(problems);
    checkTerminals(problems);
    checkOptions(problems);
    checkSettings(problems);
    checkParts(problems);
    return std::move(problems.found);
}

} // namespace doorloom
