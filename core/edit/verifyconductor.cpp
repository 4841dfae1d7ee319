#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <cmath>
#include <set>

#include <fmt/format.h>

namespace doorloom {

namespace {

void verifyLength(const std::string& name, Metres length, Problems& problems)
{
    if (std::isfinite(length.value) && length.value >= 0)
        return;
    problems.push_back(problemAt(
        name,
        {.en = "{name} can't be '{length}' metres long.", .es = "{name} no puede medir '{length}' metros."},
        {.en = "Give the length in metres, 0 while it is not known.",
         .es = "Dé la longitud en metros, 0 mientras no se conozca."},
        {{"name", name}, {"length", fmt::format("{}", length.value)}}));
}

std::string numbersOf(const std::vector<Core>& cores)
{
    std::string joined;
    for (const Core& core : cores)
        joined += (joined.empty() ? "" : ", ") + std::to_string(core.number);
    return joined;
}

void verifyCable(const Job& job, const Conductor& row, const std::string& name, Problems& problems)
{
    const Cable* cable = job.cables.find(row.cable);
    const CableType* type = cable ? job.cableTypes.find(cable->type) : nullptr;
    const Gaps gaps = {{"name", name},
                       {"core", std::to_string(row.core)},
                       {"cable", cable ? cable->tag : std::string()},
                       {"type", type ? type->name : std::string()},
                       {"cores", type ? numbersOf(type->cores) : std::string()}};
    if (row.make != ConductorMake::Core && (row.cable || row.core != 0))
        problems.push_back(
            problemAt(name,
                      {.en = "{name} is a wire or lead and says that it is core '{core}' of a cable.",
                       .es = "{name} es un hilo suelto y dice ser el hilo '{core}' de un cable."},
                      {.en = "Make it a core, or take it out of the cable.",
                       .es = "Hágalo hilo del cable o sáquelo del cable."},
                      gaps));
    else if (row.make == ConductorMake::Core && !row.cable)
        problems.push_back(problemAt(
            name,
            {.en = "{name} is core '{core}' of no cable.",
             .es = "{name} es el hilo '{core}' de ningún cable."},
            {.en = "Choose its cable, or make it a wire.", .es = "Elija su cable o hágalo un hilo suelto."},
            gaps));
    else if (row.make == ConductorMake::Core && type && !coreOf(job, row))
        problems.push_back(problemAt(
            name,
            {.en = "Cable {cable} ({type}) has no core '{core}', which {name} is.",
             .es = "El cable {cable} ({type}) no tiene el hilo '{core}', que es {name}."},
            {.en = "Use one of its cores: {cores}.", .es = "Use uno de sus hilos: {cores}."}, gaps));
}

void verifyEnd(const Job& job, const std::string& name, const End& end, Problems& problems)
{
    const bool held = !std::holds_alternative<std::monostate>(end.on);
    if (held != (end.state == EndState::Landed)) {
        problems.push_back(
            problemAt(name,
                      held ? Text{.en = "An end of {name} is on something and is not said to be landed.",
                                  .es = "Un extremo de {name} está en algo y no consta como conectado."}
                           : Text{.en = "An end of {name} is said to be landed and is on nothing.",
                                  .es = "Un extremo de {name} consta como conectado y no está en nada."},
                      {.en = "Land it on a terminal or splice, or let it wait.",
                       .es = "Conéctelo a un borne o empalme, o déjelo en espera."},
                      {{"name", name}}));
        return;
    }
    const Landing* landing = landingOf(end);
    const Kind* kind = landing ? kindOf(job, landing->device) : nullptr;
    if (kind && !findTerminal(*kind, landing->terminal))
        problems.push_back(noSuchTerminal(job, *landing));
    const SpliceId* splice = spliceOf(end);
    if ((landing && !landing->device) || (splice && !*splice))
        problems.push_back(
            problemAt(name,
                      {.en = "An end of {name} is landed without a device or splice.",
                       .es = "Un extremo de {name} está conectado sin dispositivo ni empalme."},
                      {.en = "Land it on a terminal or splice, or let it wait.",
                       .es = "Conéctelo a un borne o empalme, o déjelo en espera."},
                      {{"name", name}}));
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
    verifyLength(row.tag, row.length, problems);
}

void verifyPromises(const Job& job, const Conductor& row, Problems& problems)
{
    const std::string name = nameOfRow(job, row);
    verifyLength(name, row.length, problems);
    verifyCable(job, row, name, problems);
    verifyEnd(job, name, row.from, problems);
    verifyEnd(job, name, row.to, problems);
}

} // namespace doorloom
