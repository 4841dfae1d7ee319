#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <cmath>
#include <set>

#include <fmt/format.h>

namespace doorloom {

namespace {

bool isLength(Metres length)
{
    return std::isfinite(length.value) && length.value >= 0;
}

Problem noLength(const std::string& name, Metres length)
{
    return problemAt(name,
                     {.en = "'{name}' can't be '{length}' metres long.",
                      .es = "'{name}' no puede medir '{length}' metros."},
                     {.en = "Give the length in metres, 0 while it is not known.",
                      .es = "Dé la longitud en metros, 0 mientras no se conozca."},
                     {{"name", name}, {"length", fmt::format("{}", length.value)}});
}

std::string numbersOf(const std::vector<Core>& cores)
{
    std::string joined;
    for (const Core& core : cores)
        joined += (joined.empty() ? "" : ", ") + std::to_string(core.number);
    return joined;
}

void verifyCable(const Job& job, const Conductor& row, Problems& problems)
{
    const bool isCore = row.make == ConductorMake::Core;
    const Cable* cable = job.cables.find(row.cable);
    const CableType* type = cable ? job.cableTypes.find(cable->type) : nullptr;
    if (!isCore && !row.cable && row.core == 0)
        return;
    if (isCore && row.cable && (!type || coreOf(job, row)))
        return;
    const std::string name = nameOfRow(job, row);
    const Gaps gaps = {{"name", name},
                       {"core", std::to_string(row.core)},
                       {"cable", cable ? cable->tag : std::string()},
                       {"type", type ? type->name : std::string()},
                       {"cores", type ? numbersOf(type->cores) : std::string()}};
    if (!isCore)
        problems.push_back(
            problemAt(name,
                      {.en = "{name} is a wire or lead and says that it is core '{core}' of a cable.",
                       .es = "{name} es un hilo suelto y dice ser el hilo '{core}' de un cable."},
                      {.en = "Make it a core, or take it out of the cable.",
                       .es = "Hágalo hilo del cable o sáquelo del cable."},
                      gaps));
    else if (!row.cable)
        problems.push_back(problemAt(
            name,
            {.en = "{name} is core '{core}' of no cable.",
             .es = "{name} es el hilo '{core}' de ningún cable."},
            {.en = "Choose its cable, or make it a wire.", .es = "Elija su cable o hágalo un hilo suelto."},
            gaps));
    else
        problems.push_back(problemAt(
            name,
            {.en = "Cable {cable} ({type}) has no core '{core}', which {name} is.",
             .es = "El cable {cable} ({type}) no tiene el hilo '{core}', que es {name}."},
            {.en = "Use one of its cores: {cores}.", .es = "Use uno de sus hilos: {cores}."}, gaps));
}

bool isOnNothing(const End& end)
{
    const Landing* landing = landingOf(end);
    const SpliceId* splice = spliceOf(end);
    return (!landing && !splice) || (landing && !landing->device) || (splice && !*splice);
}

void verifyEnd(const Job& job, const Conductor& row, const End& end, Problems& problems)
{
    constexpr Text remedy = {.en = "Land it on a terminal or splice, or let it wait.",
                             .es = "Conéctelo a un borne o empalme, o déjelo en espera."};
    const bool landed = end.state == EndState::Landed;
    if (landed && isOnNothing(end))
        problems.push_back(
            problemAt(nameOfRow(job, row),
                      {.en = "An end of '{name}' is said to be landed and is on nothing.",
                       .es = "Un extremo de '{name}' consta como conectado y no está en nada."},
                      remedy, {{"name", nameOfRow(job, row)}}));
    if (!landed && !std::holds_alternative<std::monostate>(end.on))
        problems.push_back(
            problemAt(nameOfRow(job, row),
                      {.en = "An end of '{name}' is on something and is not said to be landed.",
                       .es = "Un extremo de '{name}' está en algo y no consta como conectado."},
                      remedy, {{"name", nameOfRow(job, row)}}));
    const Landing* landing = landingOf(end);
    const Kind* kind = landing ? kindOf(job, landing->device) : nullptr;
    if (kind && !findTerminal(*kind, landing->terminal))
        problems.push_back(noSuchTerminal(job, *landing));
}

} // namespace

void verifyPromises(const Job&, const CableType& row, Problems& problems)
{
    std::set<int> numbers;
    for (const Core& core : row.cores)
        if (!numbers.insert(core.number).second)
            problems.push_back(problemAt(
                row.name,
                {.en = "Cable type {name} has core '{core}' twice.",
                 .es = "El tipo de cable {name} tiene el hilo '{core}' dos veces."},
                {.en = "Give each core a number of its own.", .es = "Dé a cada hilo su propio número."},
                {{"name", row.name}, {"core", std::to_string(core.number)}}));
}

void verifyPromises(const Job&, const Cable& row, Problems& problems)
{
    if (!isLength(row.length))
        problems.push_back(noLength(row.tag, row.length));
}

void verifyPromises(const Job& job, const Conductor& row, Problems& problems)
{
    if (!isLength(row.length))
        problems.push_back(noLength(nameOfRow(job, row), row.length));
    verifyCable(job, row, problems);
    verifyEnd(job, row, row.from, problems);
    verifyEnd(job, row, row.to, problems);
}

} // namespace doorloom
