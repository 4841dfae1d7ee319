#include "edit/drawing.h"

#include "edit/draft.h"
#include "edit/removal.h"
#include "edit/removeany.h"
#include "edit/rownames.h"

#include <algorithm>
#include <utility>

namespace doorloom {

namespace {

std::optional<Problem> titleProblem(const Job& job, SheetId sheet, const std::string& title)
{
    const bool taken = std::any_of(job.sheets.begin(), job.sheets.end(), [&](const Sheet& each) {
        return each.id != sheet && each.title == title;
    });
    if (title.find_first_not_of(' ') == std::string::npos)
        return problemAt(
            {}, {.en = "A sheet has the title ''.", .es = "Una hoja tiene el título ''."},
            {.en = "Give it a title such as 'Door 114'.", .es = "Déle un título como 'Puerta 114'."}, {});
    if (taken)
        return problemAt(
            title, {.en = "There is a sheet '{title}' already.", .es = "Ya existe la hoja '{title}'."},
            {.en = "Give this one another title.", .es = "Dé otro título a esta."}, {{"title", title}});
    return std::nullopt;
}

// What a sheet shows goes with it: its placements and notes by themselves, the bends of its conductors here.
std::vector<std::uint32_t> withItsBends(const Job& job, SheetId sheet)
{
    std::vector<std::uint32_t> rows = {sheet.number};
    for (std::uint32_t user : referrersOf(job, sheet.number)) {
        const Placement* placement = job.placements.find({user});
        if (!placement)
            continue;
        const auto conductors = std::visit([&](auto id) { return conductorsOn(job, id); }, placement->what);
        for (const Conductor* conductor : conductors)
            if (const Bends* bends = bendsOf(job, conductor->id))
                rows.push_back(bends->id.number);
    }
    return rows;
}

} // namespace

std::vector<const Sheet*> sheetsInOrder(const Job& job)
{
    std::vector<const Sheet*> sheets;
    for (const Sheet& sheet : job.sheets)
        sheets.push_back(&sheet);
    std::stable_sort(sheets.begin(), sheets.end(),
                     [](const Sheet* a, const Sheet* b) { return a->order < b->order; });
    return sheets;
}

Result<std::pair<SheetId, Change>> addSheet(const Job& job, Numbers& numbers, std::string title)
{
    if (auto problem = titleProblem(job, {}, title))
        return *std::move(problem);
    const std::vector<const Sheet*> sheets = sheetsInOrder(job);
    const int order = sheets.empty() ? 1 : sheets.back()->order + 1;
    Sheet sheet{.id = {numbers.take()}, .title = std::move(title), .order = order};
    return std::pair(sheet.id, Change{{Put<Sheet>{sheet.id, sheet}}});
}

Result<Change> renameSheet(const Job& job, SheetId sheet, std::string title)
{
    Draft draft(job);
    Sheet* row = draft.edit(sheet);
    if (!row)
        return notInJob(nounOf<Sheet>());
    if (auto problem = titleProblem(job, sheet, title))
        return *std::move(problem);
    row->title = std::move(title);
    return draft.change();
}

Result<Change> moveSheet(const Job& job, SheetId sheet, std::size_t position)
{
    const Sheet* row = job.sheets.find(sheet);
    if (!row)
        return notInJob(nounOf<Sheet>());
    std::vector<const Sheet*> sheets = sheetsInOrder(job);
    std::erase(sheets, row);
    sheets.insert(sheets.begin() + static_cast<std::ptrdiff_t>(std::min(position, sheets.size())), row);
    Draft draft(job);
    int order = 1;
    for (const Sheet* each : sheets)
        draft.edit(each->id)->order = order++;
    return draft.change();
}

Result<Change> removeSheet(const Job& job, SheetId sheet)
{
    if (!job.sheets.find(sheet))
        return notInJob(nounOf<Sheet>());
    Draft draft(job);
    removeRows(draft, withItsBends(job, sheet));
    return draft.change();
}

Result<Change> removeSheetAndDevices(const Job& job, SheetId sheet)
{
    if (!job.sheets.find(sheet))
        return notInJob(nounOf<Sheet>());
    std::vector<std::uint32_t> rows = {sheet.number};
    for (std::uint32_t user : referrersOf(job, sheet.number))
        if (const Placement* placement = job.placements.find({user}))
            rows.push_back(std::visit([](auto id) { return id.number; }, placement->what));
    return removeAny(job, rows);
}

} // namespace doorloom
