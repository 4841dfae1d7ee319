#include "file/jobfile.h"
#include "papers/voltsreport.h"
#include "papers/worstreport.h"
#include "solve/namedposition.h"
#include "solve/spicedeck.h"
#include "verbs/verb.h"

#include <charconv>

namespace doorloom {
namespace {

constexpr Text noLevel = {.en = "There is no level '{name}' of the supplies.", .es = "No hay ningún nivel '{name}' de las fuentes."};
constexpr Text levelsThere = {.en = "Use one of: lowest, nominal, highest, battery.", .es = "Use uno de: lowest, nominal, highest, battery."};
constexpr Text noCelsius = {.en = "'{name}' is no temperature of copper.", .es = "'{name}' no es una temperatura del cobre."};
constexpr Text celsiusThere = {.en = "Give degrees Celsius from -60 to 200.", .es = "Dé grados Celsius de -60 a 200."};

Problem problemAt(std::string_view option, Text what, const std::string& name, Text remedy)
{
    return {{what, {{"name", name}}}, std::string(option), remedy};
}

struct With {
    Conditions conditions;
    SupplyLevel supplies = SupplyLevel::Nominal;
};

Result<With> conditionsOf(const Request& request)
{
    static constexpr std::pair<std::string_view, SupplyLevel> levels[] = {{"lowest", SupplyLevel::Lowest},
                                                                          {"nominal", SupplyLevel::Nominal},
                                                                          {"highest", SupplyLevel::Highest},
                                                                          {"battery", SupplyLevel::OnBattery}};
    With with;
    with.conditions.ac = request.find("--ac") != nullptr;
    if (const std::string* name = request.find("--supplies")) {
        const auto* level = std::find_if(std::begin(levels), std::end(levels), [&](const auto& each) { return each.first == *name; });
        if (level == std::end(levels))
            return problemAt("--supplies", noLevel, *name, levelsThere);
        with.supplies = level->second;
    }
    if (const std::string* text = request.find("--celsius")) {
        const auto [end, error] = std::from_chars(text->data(), text->data() + text->size(), with.conditions.celsius);
        if (error != std::errc{} || end != text->data() + text->size() || !(with.conditions.celsius >= -60 && with.conditions.celsius <= 200))
            return problemAt("--celsius", noCelsius, *text, celsiusThere);
    }
    return with;
}

// What both verbs begin with.
struct Asked {
    Job job;
    Netlist net;
    Position position;
    With with;
};

Result<Asked> askedBy(const Request& request)
{
    Result<Job> job = readJobFile(request.words.front());
    if (!job.ok())
        return job.problem();
    const Result<With> with = conditionsOf(request);
    if (!with.ok())
        return with.problem();
    Netlist net(job.value());
    const Questions ask(net.circuit());
    const std::string* text = request.find("--position");
    Result<Position> position = positionNamed(job.value(), net, ask, text ? *text : std::string());
    if (!position.ok())
        return position.problem();
    return Asked{std::move(job.value()), std::move(net), std::move(position.value()), with.value()};
}

constexpr Text overAll = {.en = "'--worst' looks at every position and level by itself.",
                          .es = "'--worst' mira por sí mismo toda posición y nivel."};
constexpr Text leaveOut = {.en = "Leave out {option}.", .es = "Omita {option}."};

Reply worstReply(const Request& request, const Asked& asked, const std::optional<std::pair<Landing, Landing>>& between)
{
    for (const char* option : {"--position", "--supplies", "--celsius", "--ac"})
        if (request.find(option))
            return refusal({overAll, option, {leaveOut, {{"option", std::string(option)}}}}, request.language);
    const WorstReport report = worstReport(asked.job, asked.net, commandBudget, between);
    return {.exit = Exit::Fine,
            .out = request.find("--json") ? worstJson(asked.job, report) : worstText(asked.job, report, request.words.front(), request.language),
            .err = {}};
}

Reply runVolts(const Request& request)
{
    const Result<Asked> asked = askedBy(request);
    if (!asked.ok())
        return refusal(asked.problem(), request.language);
    const auto& [job, net, position, with] = asked.value();
    std::optional<std::pair<Landing, Landing>> between;
    if (const std::string* text = request.find("--between")) {
        const auto end = text->find('\n'); // of the first of its two words
        const Result<Landing> one = landingNamed(job, text->substr(0, end)), other = landingNamed(job, text->substr(end + 1));
        for (const auto* each : {&one, &other})
            if (!each->ok())
                return refusal(each->problem(), request.language);
        between.emplace(one.value(), other.value());
    }
    if (request.find("--worst"))
        return worstReply(request, asked.value(), between);
    const VoltsReport report = voltsReport(job, net, position, with.conditions, with.supplies, between);
    return {.exit = Exit::Fine,
            .out = request.find("--json") ? voltsJson(job, report) : voltsText(job, report, request.words.front(), request.language),
            .err = {}};
}

Reply runSpice(const Request& request)
{
    const Result<Asked> asked = askedBy(request);
    if (!asked.ok())
        return refusal(asked.problem(), request.language);
    const auto& [job, net, position, with] = asked.value();
    const std::string* text = request.find("--position");
    const Meter meter(job, net, with.conditions);
    return {.exit = Exit::Fine,
            .out = spiceDeck(job, net, Readings(meter, position, {.supplies = with.supplies}), request.words.front() + (text ? ", " + *text : "")),
            .err = {}};
}

constexpr VerbOption voltsOptions[] = {{.name = "--position", .value = "KS1=on,…"},
                                       {.name = "--between", .value = "A B"},
                                       {.name = "--worst", .value = {}},
                                       {.name = "--supplies", .value = "LEVEL"},
                                       {.name = "--celsius", .value = "T"},
                                       {.name = "--ac", .value = {}},
                                       {.name = "--json", .value = {}}};
constexpr VerbOption spiceOptions[] = {{.name = "--position", .value = "KS1=on,…"},
                                       {.name = "--supplies", .value = "LEVEL"},
                                       {.name = "--celsius", .value = "T"},
                                       {.name = "--ac", .value = {}}};

} // namespace

extern const Verb voltsVerb, spiceVerb;
const Verb voltsVerb = {
    .name = "volts",
    .words = "FILE",
    .fewestWords = 1,
    .mostWords = 1,
    .options = voltsOptions,
    .purpose = {.en = "Says what a meter reads in one position, and what flows, or the worst of all positions.",
                .es = "Dice qué marca un medidor en una posición, y qué corriente fluye, o lo peor de todas las posiciones."},
    .run = runVolts,
};
const Verb spiceVerb = {
    .name = "spice",
    .words = "FILE",
    .fewestWords = 1,
    .mostWords = 1,
    .options = spiceOptions,
    .purpose = {.en = "Writes the circuit of one position as a deck for a circuit simulator.",
                .es = "Escribe el circuito de una posición como entrada para un simulador de circuitos."},
    .run = runSpice,
};

} // namespace doorloom
