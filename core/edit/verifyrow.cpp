#include "edit/verifyrow.h"

#include "edit/references.h"
#include "edit/rownames.h"

#include <algorithm>
#include <set>
#include <string>

namespace doorloom {

namespace {

template <class Row> struct CheckReference {
    const Job& job;
    const Row& row;
    Problems& problems;

    void operator()(std::uint32_t number) const
    {
        if (tablesWith(job, number) == 0)
            lost({"row", "elemento"});
    }
    template <class Thing> void operator()(Id<Thing> id) const
    {
        if (!tableOf<Thing>(job).find(id))
            lost(nounOf<Thing>());
    }
    void lost(Words noun) const
    {
        const std::string name = nameOfRow(job, row);
        problems.push_back(
            problemAt(name,
                      {.en = "The {row} '{name}' refers to a {noun} that is not in the job.",
                       .es = "{row} '{name}' se refiere a un elemento ({noun}) que no está en el trabajo."},
                      {.en = "Put the {noun} into the job too, or choose another.",
                       .es = "Añada también ese elemento ({noun}) al trabajo o elija otro."},
                      {{"row", nounOf<Row>()}, {"name", name}, {"noun", std::move(noun)}}));
    }
};

// An id that must be set.
template <class Thing, class Row> void wants(const Job& job, const Row& row, Id<Thing> id, Problems& problems)
{
    if (id)
        return;
    const std::string name = nameOfRow(job, row);
    problems.push_back(
        problemAt(name, {.en = "The {row} '{name}' has no {noun}.", .es = "{row} '{name}' no tiene {noun}."},
                  {.en = "Choose its {noun}.", .es = "Elija: {noun}."},
                  {{"row", nounOf<Row>()}, {"name", name}, {"noun", nounOf<Thing>()}}));
}

void verifyWanted(const Job& job, const Device& row, Problems& problems)
{
    wants(job, row, row.kind, problems);
}
void verifyWanted(const Job& job, const Cable& row, Problems& problems)
{
    wants(job, row, row.type, problems);
}
void verifyWanted(const Job& job, const Bends& row, Problems& problems)
{
    wants(job, row, row.conductor, problems);
}
void verifyWanted(const Job& job, const Note& row, Problems& problems)
{
    wants(job, row, row.sheet, problems);
}
void verifyWanted(const Job& job, const Stamp& row, Problems& problems)
{
    wants(job, row, row.typical, problems);
}
void verifyWanted(const Job& job, const Placement& row, Problems& problems)
{
    wants(job, row, row.sheet, problems);
    std::visit([&](auto id) { wants(job, row, id, problems); }, row.what);
}

} // namespace

template <class Row> void verifyRow(const Job& job, const Row& row, Problems& problems)
{
    forEachReference(row, CheckReference<Row>{job, row, problems});
    if constexpr (requires { verifyWanted(job, row, problems); })
        verifyWanted(job, row, problems);
    if constexpr (requires { verifyPromises(job, row, problems); })
        verifyPromises(job, row, problems);
}

template void verifyRow(const Job&, const JobInfo&, Problems&);
template void verifyRow(const Job&, const JobKind&, Problems&);
template void verifyRow(const Job&, const CableType&, Problems&);
template void verifyRow(const Job&, const Place&, Problems&);
template void verifyRow(const Job&, const Operator&, Problems&);
template void verifyRow(const Job&, const Device&, Problems&);
template void verifyRow(const Job&, const Cable&, Problems&);
template void verifyRow(const Job&, const Splice&, Problems&);
template void verifyRow(const Job&, const Conductor&, Problems&);
template void verifyRow(const Job&, const Opening&, Problems&);
template void verifyRow(const Job&, const Sheet&, Problems&);
template void verifyRow(const Job&, const Placement&, Problems&);
template void verifyRow(const Job&, const Bends&, Problems&);
template void verifyRow(const Job&, const Note&, Problems&);
template void verifyRow(const Job&, const SetAside&, Problems&);
template void verifyRow(const Job&, const Typical&, Problems&);
template void verifyRow(const Job&, const Stamp&, Problems&);

namespace {

// A typical and its stamps remember rows that may be gone; but never one that the job has not had.
template <class Row> void neverHad(const Row& row, Problems& problems)
{
    problems.push_back(problemAt(row.name,
                                 {.en = "The {noun} '{name}' remembers a row that the job never had.",
                                  .es = "{noun} '{name}' recuerda un elemento que el trabajo nunca tuvo."},
                                 {.en = "Name rows by numbers from 1, below the job's counter.",
                                  .es = "Indique elementos por números desde 1, menores que el contador."},
                                 {{"noun", nounOf<Row>()}, {"name", row.name}}));
}

bool hasGiven(const Job& job, std::uint32_t number)
{
    return number > 0 && number < job.nextNumber;
}

bool hasGivenAllOf(const Job& job, const DoorRow& drawn)
{
    return std::visit(
        [&](const auto& row) {
            const std::vector<std::uint32_t> numbers = referencesOf(row);
            return hasGiven(job, row.id.number) &&
                   std::ranges::all_of(numbers, [&](std::uint32_t number) { return hasGiven(job, number); });
        },
        drawn);
}

} // namespace

void verifyPromises(const Job& job, const Typical& row, Problems& problems)
{
    for (const Edition& edition : row.editions)
        if (!std::ranges::all_of(edition.rows,
                                 [&](const DoorRow& drawn) { return hasGivenAllOf(job, drawn); })) {
            neverHad(row, problems);
            break;
        }
    const std::set<std::uint32_t> each(row.rows.begin(), row.rows.end());
    if (each.size() != row.rows.size())
        problems.push_back(problemAt(row.name,
                                     {.en = "The typical '{name}' lists a row twice.",
                                      .es = "La puerta tipo '{name}' enumera un elemento dos veces."},
                                     {.en = "List each row once.", .es = "Enumere cada elemento una vez."},
                                     {{"name", row.name}}));
    std::set<int> editions;
    for (const Edition& edition : row.editions)
        if (edition.number < 1 || !editions.insert(edition.number).second)
            problems.push_back(
                problemAt(row.name,
                          {.en = "The typical '{name}' has the edition {number} twice, or below 1.",
                           .es = "La puerta tipo '{name}' tiene la edición {number} dos veces, o "
                                 "menor que 1."},
                          {.en = "Give each edition a number of its own, from 1.",
                           .es = "Dé a cada edición un número propio, desde 1."},
                          {{"name", row.name}, {"number", std::to_string(edition.number)}}));
}

void verifyPromises(const Job& job, const Stamp& row, Problems& problems)
{
    const Typical* drawn = job.typicals.find(row.typical);
    const auto isItsOwn = [&](const Edition& edition) { return edition.number == row.edition; };
    if (drawn && row.edition != 0 && std::ranges::none_of(drawn->editions, isItsOwn))
        problems.push_back(problemAt(
            row.name,
            {.en = "The stamp '{name}' is at edition {number}, which its typical "
                   "'{typical}' does not have.",
             .es = "La copia '{name}' está en la edición {number}, que su puerta tipo "
                   "'{typical}' no tiene."},
            {.en = "Name an edition that it has, or 0 where none is known.",
             .es = "Indique una edición que tenga, o 0 si no se conoce ninguna."},
            {{"name", row.name}, {"number", std::to_string(row.edition)}, {"typical", drawn->name}}));
    std::set<std::uint32_t> ofTypical, ofStamp;
    for (const auto& [typical, stamp] : row.rows) {
        ofTypical.insert(typical);
        ofStamp.insert(stamp);
    }
    if (!std::ranges::all_of(ofTypical, [&](std::uint32_t number) { return hasGiven(job, number); }))
        neverHad(row, problems);
    if (ofTypical.size() != row.rows.size() || ofStamp.size() != row.rows.size())
        problems.push_back(problemAt(row.name,
                                     {.en = "The stamp '{name}' pairs a row twice.",
                                      .es = "La copia '{name}' empareja un elemento dos veces."},
                                     {.en = "Pair each row of the typical with one row of the stamp.",
                                      .es = "Empareje cada elemento de la puerta tipo con uno de la copia."},
                                     {{"name", row.name}}));
}

Problem tagUsedTwice(const Device& device)
{
    return problemAt(
        device.tag,
        {.en = "The tag '{tag}' is on two devices.", .es = "La etiqueta '{tag}' está en dos dispositivos."},
        {.en = "Give one of them another tag.", .es = "Dé otra etiqueta a uno de ellos."},
        {{"tag", device.tag}});
}

Problem coreUsedTwice(const Job& job, const Conductor& core)
{
    const Cable* cable = job.cables.find(core.cable);
    const std::string tag = cable ? cable->tag : std::string();
    return problemAt(tag,
                     {.en = "Core '{core}' of cable {cable} is there twice.",
                      .es = "El hilo '{core}' del cable {cable} está dos veces."},
                     {.en = "Give one of the two another core number, or take it away.",
                      .es = "Dé otro número de hilo a uno de los dos o quítelo."},
                     {{"core", std::to_string(core.core)}, {"cable", tag}});
}

Problem secondTitleBlock(const Job& job)
{
    const std::string name = job.info.begin()->title;
    return problemAt(name,
                     {.en = "The job would have a second title block beside '{name}'.",
                      .es = "El trabajo tendría un segundo cajetín además de '{name}'."},
                     {.en = "Alter the one that is there.", .es = "Modifique el que ya existe."},
                     {{"name", name}});
}

Problem numberUsedTwice(const Job& job, std::uint32_t number)
{
    return problemAt({},
                     {.en = "Two rows of the job have the number '{number}'.",
                      .es = "Dos elementos del trabajo tienen el número '{number}'."},
                     {.en = "Give one of them an unused number: {next} or higher.",
                      .es = "Dé a uno de ellos un número libre: {next} o mayor."},
                     {{"number", std::to_string(number)}, {"next", std::to_string(job.nextNumber)}});
}

bool sameThrows(const std::vector<Throw>& ones, const std::vector<Throw>& others)
{
    return ones.size() == others.size() && std::all_of(ones.begin(), ones.end(), [&](const Throw& each) {
               return findThrow(others, each.key).has_value();
           });
}

} // namespace doorloom
