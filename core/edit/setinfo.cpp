#include "edit/drawing.h"

#include "edit/draft.h"
#include "edit/rownames.h"

#include <utility>

namespace doorloom {

Result<Change> setInfo(const Job& job, Numbers& numbers, JobInfo wanted)
{
    if (!wanted.english && !wanted.spanish)
        return problemAt({},
                         {.en = "The job's papers would be in no language.",
                          .es = "Los papeles del trabajo no estarían en ningún idioma."},
                         {.en = "Choose English, Spanish or both.", .es = "Elija inglés, español o ambos."},
                         {});
    Draft draft(job);
    wanted.id = job.info.empty() ? JobInfoId{numbers.take()} : job.info.begin()->id;
    draft.put(std::move(wanted));
    return draft.change();
}

} // namespace doorloom
