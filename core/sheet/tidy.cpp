#include "sheet/tidy.h"

#include "edit/draft.h"
#include "edit/drawing.h"
#include "edit/nexttag.h"
#include "edit/rownames.h"
#include "sheet/arrangement.h"

#include <algorithm>
#include <map>

namespace doorloom {
namespace {

constexpr Point corner{300, 300}; // room for the frame of a box in the corner, and its title
constexpr int noteGap = 300, noteLine = 50;

class Tidier {
public:
    Tidier(const Job& job, Numbers& numbers, SheetId sheet) : draft_(job), numbers_(numbers), sheet_(sheet)
    {
        const std::vector<const Sheet*> sheets = sheetsInOrder(job);
        isFirst_ = !sheets.empty() && sheets.front()->id == sheet;
    }

    Change change()
    {
        place();
        moveBends();
        moveNotes();
        return draft_.change();
    }

private:
    const Job& job() const { return draft_.job(); }

    void take(Placeable what, std::uint32_t number)
    {
        const Placement* placement = placementOf(job(), what);
        if (placement ? placement->sheet == sheet_ : isFirst_)
            rows_.emplace(number, what);
    }

    void place()
    {
        for (const Device& device : job().devices)
            take(device.id, device.id.number);
        for (const Splice& splice : job().splices)
            take(splice.id, splice.id.number);
        std::vector<std::uint32_t> numbers;
        for (const auto& [number, what] : rows_)
            numbers.push_back(number);
        bottom_ = corner.y;
        for (const Arranged& each : arranged(job(), numbers, corner)) {
            const Placement* placement = placementOf(job(), each.number);
            offsets_[each.number] = placement ? std::optional(each.seat.at - placement->at) : std::nullopt;
            draft_.put(Placement{placement ? placement->id : PlacementId{numbers_.take()}, sheet_,
                                 rows_.at(each.number), each.seat.at, static_cast<int>(each.seat.facing)});
            bottom_ = std::max(bottom_, each.seat.at.y + each.height);
        }
    }

    // By how much what an end is on is moved; nothing where that is on another sheet, or new on this one.
    std::optional<Point> offsetOf(const End& end) const
    {
        const Landing* landing = landingOf(end);
        const SpliceId* splice = spliceOf(end);
        const auto found =
            offsets_.find(landing ? landing->device.number : splice ? splice->number : std::uint32_t{0});
        return found == offsets_.end() ? std::nullopt : found->second;
    }

    void moveBends()
    {
        for (const Bends& bends : job().bends) {
            const Conductor& row = *job().conductors.find(bends.conductor);
            const std::optional<Point> from = offsetOf(row.from), to = offsetOf(row.to);
            if (!from && !to)
                continue;
            if (from != to) {
                draft_.remove(bends.id);
                continue;
            }
            for (Point& point : draft_.edit(bends.id)->pinned)
                point = point + *from;
        }
    }

    void moveNotes()
    {
        std::vector<const Note*> notes;
        for (const Note& note : job().notes)
            if (note.sheet == sheet_)
                notes.push_back(&note);
        std::stable_sort(notes.begin(), notes.end(), [](const Note* a, const Note* b) {
            return std::pair(a->at.y, a->at.x) < std::pair(b->at.y, b->at.x);
        });
        int y = bottom_ + noteGap;
        for (const Note* note : notes) {
            draft_.edit(note->id)->at = onGrid(Point{corner.x, y});
            const auto lines = std::count(note->words.begin(), note->words.end(), '\n') + 2;
            y += noteLine * static_cast<int>(lines);
        }
    }

    Draft draft_;
    Numbers& numbers_;
    SheetId sheet_;
    bool isFirst_ = false;
    std::map<std::uint32_t, Placeable> rows_;
    std::map<std::uint32_t, std::optional<Point>> offsets_;
    int bottom_ = 0;
};

} // namespace

Result<Change> tidySheet(const Job& job, Numbers& numbers, SheetId sheet)
{
    if (!job.sheets.find(sheet))
        return notInJob(nounOf<Sheet>());
    return Tidier(job, numbers, sheet).change();
}

Result<Change> tidySheets(const Job& job)
{
    Job tidied = job;
    Numbers numbers(job);
    const auto make = [&](const Result<Change>& change) {
        return change.ok() ? applyChange(tidied, change.value()) : change;
    };
    if (job.sheets.empty() && !(job.devices.empty() && job.splices.empty())) {
        const auto added = addSheet(tidied, numbers, nextSheetTitle(tidied));
        if (!added.ok())
            return added.problem();
        if (const Result<Change> made = make(added.value().second); !made.ok())
            return made;
    }
    std::vector<SheetId> sheets;
    for (const Sheet* sheet : sheetsInOrder(tidied))
        sheets.push_back(sheet->id);
    for (const SheetId sheet : sheets)
        if (const Result<Change> made = make(tidySheet(tidied, numbers, sheet)); !made.ok())
            return made;
    return difference(job, tidied);
}

} // namespace doorloom
