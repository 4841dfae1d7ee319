#include "judge/setaside.h"

#include "edit/removal.h"
#include "edit/rownames.h"
#include "judge/findingtext.h"
#include "judge/report.h"

#include <algorithm>
#include <utility>

namespace doorloom {

namespace {

bool isBlank(const std::string& words)
{
    return words.find_first_not_of(" \t\r\n") == std::string::npos;
}

bool holdsDanger(const Finding& finding)
{
    return finding.severity == Severity::Danger ||
           std::any_of(finding.lines.begin(), finding.lines.end(), holdsDanger);
}

std::optional<Problem> problemWith(const Job& job, const Finding& finding, const SetAside& row)
{
    const Gaps gaps = {{"title", std::vector<Message>{titleOf(finding)}}, {"at", row.at}};
    if (holdsDanger(finding))
        return problemAt(row.at,
                         {.en = "'{title}' at {at} is a danger: it can't be set aside.",
                          .es = "'{title}' en {at} es un peligro: no se puede apartar."},
                         {.en = "Mend the wiring.", .es = "Corrija el cableado."}, gaps);
    if (isBlank(row.reason) || isBlank(row.name) || isBlank(row.date))
        return problemAt(row.at,
                         {.en = "Whoever sets '{title}' aside has to answer for it.",
                          .es = "Quien aparta '{title}' tiene que responder de ello."},
                         {.en = "Give a reason, a name and a date: they print on the sign-off.",
                          .es = "Dé un motivo, un nombre y una fecha: se imprimen en la hoja de firmas."},
                         gaps);
    if (setAsideFor(job, finding))
        return problemAt(
            row.at,
            {.en = "'{title}' at {at} is set aside already.", .es = "'{title}' en {at} ya está apartado."},
            {.en = "Take it up again first, to give another reason.",
             .es = "Retómelo antes, para dar otro motivo."},
            gaps);
    return std::nullopt;
}

} // namespace

Result<std::pair<SetAsideId, Change>> setAside(const Job& job, Numbers& numbers, const Finding& finding,
                                               std::string reason, std::string name, std::string date)
{
    SetAside row;
    row.rule = finding.rule;
    row.at = atText(job, finding);
    row.throws = throwsKey(job, finding);
    row.reason = std::move(reason);
    row.name = std::move(name);
    row.date = std::move(date);
    if (auto problem = problemWith(job, finding, row))
        return *std::move(problem);
    row.id = {numbers.take()};
    return std::pair(row.id, Change{{Put<SetAside>{row.id, row}}});
}

Result<Change> takeUpAgain(const Job& job, SetAsideId row)
{
    if (!job.setAside.find(row))
        return notInJob(nounOf<SetAside>());
    Draft draft(job);
    removeRows(draft, {row.number});
    return draft.change();
}

} // namespace doorloom
