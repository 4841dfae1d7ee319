#include "edit/change.h"

#include "edit/lookups.h"
#include "edit/rownames.h"
#include "edit/verifyrow.h"

#include <set>
#include <string>
#include <utility>

namespace doorloom {

namespace {

void verifyRows(const Job& job, Problems& problems)
{
    forEachTable(job, [&]<class Row>(const char*, const Table<Row>& rows) {
        for (const Row& row : rows)
            verifyRow(job, row, problems);
    });
}

void verifyNumbers(const Job& job, Problems& problems)
{
    std::set<std::uint32_t> seen;
    forEachTable(job, [&](const char*, const auto& rows) {
        for (const auto& row : rows) {
            if (!seen.insert(row.id.number).second)
                problems.push_back(numberUsedTwice(job, row.id.number));
            if (row.id.number == 0 || row.id.number >= job.nextNumber)
                problems.push_back(problemAt(
                    {},
                    {.en = "The number '{number}' is not below the job's counter, '{next}'.",
                     .es = "El número '{number}' no es menor que el contador '{next}'."},
                    {.en = "Raise the counter past it, or give the row another number.",
                     .es = "Suba el contador o dé otro número al elemento."},
                    {{"number", std::to_string(row.id.number)}, {"next", std::to_string(job.nextNumber)}}));
        }
    });
}

void verifyTags(const Job& job, Problems& problems)
{
    std::set<std::string> seen;
    for (const Device& device : job.devices)
        if (!seen.insert(device.tag).second)
            problems.push_back(tagUsedTwice(device));
}

void verifyCores(const Job& job, Problems& problems)
{
    std::set<std::pair<CableId, int>> seen;
    for (const Conductor& conductor : job.conductors)
        if (conductor.make == ConductorMake::Core && !seen.insert({conductor.cable, conductor.core}).second)
            problems.push_back(coreUsedTwice(job, conductor));
}

void verifyLookups(const Job& job, Problems& problems)
{
    const Job rebuilt = withLookupsRebuilt(job);
    if (job.referrers == rebuilt.referrers && job.deviceTags == rebuilt.deviceTags)
        return;
    problems.push_back(
        problemAt({},
                  {.en = "What the job remembers about its rows ('{lookup}') is not what they say.",
                   .es = "Lo que el trabajo recuerda de sus elementos ('{lookup}') no es lo que dicen."},
                  {.en = "Save the job and open it again, and report this mistake of the program.",
                   .es = "Guarde el trabajo, ábralo de nuevo e informe de este error del programa."},
                  {{"lookup", job.referrers == rebuilt.referrers ? "deviceTags" : "referrers"}}));
}

} // namespace

std::vector<Problem> verifyJob(const Job& job)
{
    Problems problems;
    verifyRows(job, problems);
    verifyNumbers(job, problems);
    verifyTags(job, problems);
    verifyCores(job, problems);
    if (job.info.size() > 1)
        problems.push_back(secondTitleBlock(job));
    verifyLookups(job, problems);
    return problems;
}

} // namespace doorloom
