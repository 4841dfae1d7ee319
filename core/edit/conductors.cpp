#include "edit/details.h"

#include "edit/draft.h"
#include "edit/tagrules.h"

#include <cmath>
#include <utility>

#include <fmt/format.h>

namespace doorloom {

Result<Change> renameConductor(const Job& job, ConductorId conductor, std::string tag)
{
    Draft draft(job);
    Conductor* row = draft.edit(conductor);
    if (!row)
        return notInJob(nounOf<Conductor>());
    row->tag = std::move(tag);
    return draft.change();
}

Result<Change> setWire(const Job& job, ConductorId conductor, std::string colour, std::string gauge,
                       Metres length)
{
    Draft draft(job);
    Conductor* row = draft.edit(conductor);
    if (!row)
        return notInJob(nounOf<Conductor>());
    const std::string name = nameOfRow(job, *row);
    if (row->make == ConductorMake::Core)
        return problemAt(
            name,
            {.en = "'{name}' is a core: its colour, gauge and length are its cable's.",
             .es = "'{name}' es un hilo de cable: su color, calibre y longitud son los del cable."},
            {.en = "Choose another type or length for the cable.",
             .es = "Elija otro tipo o longitud para el cable."},
            {{"name", name}});
    if (!std::isfinite(length.value) || length.value < 0)
        return problemAt(name,
                         {.en = "'{name}' can't be '{length}' metres long.",
                          .es = "'{name}' no puede medir '{length}' metros."},
                         {.en = "Give the length in metres, 0 while it is not known.",
                          .es = "Dé la longitud en metros, 0 mientras no se conozca."},
                         {{"name", name}, {"length", fmt::format("{}", length.value)}});
    row->colour = std::move(colour);
    row->gauge = std::move(gauge);
    row->length = length;
    return draft.change();
}

Result<Change> renameSplice(const Job& job, SpliceId splice, std::string tag)
{
    Draft draft(job);
    Splice* row = draft.edit(splice);
    if (!row)
        return notInJob(nounOf<Splice>());
    if (auto problem = newTagProblem(job.splices, splice, tag))
        return *std::move(problem);
    row->tag = std::move(tag);
    return draft.change();
}

Result<Change> setSpliceConnector(const Job& job, SpliceId splice, std::string connector, int capacity)
{
    Draft draft(job);
    Splice* row = draft.edit(splice);
    if (!row)
        return notInJob(nounOf<Splice>());
    if (capacity < 2)
        return problemAt(
            row->tag,
            {.en = "A connector for '{count}' ends joins nothing.",
             .es = "Un conector para '{count}' extremos no une nada."},
            {.en = "Give how many ends it takes, 2 or more.", .es = "Dé cuántos extremos admite, 2 o más."},
            {{"count", std::to_string(capacity)}});
    row->connector = std::move(connector);
    row->capacity = capacity;
    return draft.change();
}

} // namespace doorloom
