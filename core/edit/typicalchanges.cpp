#include "edit/stampmerge.h"

#include <algorithm>
#include <set>
#include <utility>

namespace doorloom {

namespace {

constexpr Text refused = {.en = "{row} stays as it is: {why}", .es = "{row} se queda como está: {why}"};
constexpr Text nothingDone = {.en = "Nothing is changed in this door: {why}",
                              .es = "No se cambia nada en esta puerta: {why}"};

// What a typical's change does to one of its stamps.
class DoorMerge {
public:
    DoorMerge(DrawingAgain& drawing, const Typical& typical, const RowsByNumber& base,
              const RowsByNumber& fresh, const Stamp& stamp)
        : drawing_(drawing), typical_(typical), merge_(drawing.job, stamp, base, fresh)
    {
        result_.stamp = stamp.id;
        result_.opening = openingOf(drawing.job, stamp);
        const Opening* opening = drawing.job.openings.find(result_.opening);
        result_.tag = opening ? opening->tag : stamp.name;
    }

    DoorChange made()
    {
        const Opening* old = merge_.job.openings.find(openingOf(merge_.job, typical_));
        bringRows(merge_, drawing_, old ? old->tag : "", result_.tag);
        takeGoneAway(merge_);
        merge_.draft.put(stampAfter());
        result_.change = merge_.draft.change();
        dropWhatIsRefused();
        result_.lines = std::move(merge_.lines);
        return std::move(result_);
    }

private:
    Stamp stampAfter() const
    {
        Stamp after = merge_.stamp;
        after.rows.clear();
        for (const auto& [number, row] : merge_.fresh)
            if (const auto paired = merge_.view.again.find(number); paired != merge_.view.again.end())
                after.rows.push_back(*paired);
        after.edition = typical_.editions.back().number;
        return after;
    }

    // What applyChange would refuse stays as it is; its reason is said.
    void dropWhatIsRefused()
    {
        if (result_.change.steps.empty())
            return;
        for (std::size_t tries = result_.change.steps.size(); tries > 0; --tries) {
            Job after = merge_.job;
            std::uint32_t row = 0;
            Change whole{{Put<Typical>{typical_.id, typical_}}};
            const Result<Change> undo = applyChange(after, joined(whole, result_.change), row);
            if (undo.ok())
                return;
            if (!drop(row, undo.problem()))
                break;
        }
        giveUp();
    }

    bool drop(std::uint32_t number, const Problem& problem)
    {
        why_ = problem.what;
        const auto isIt = [&](const Step& step) {
            return std::visit([&](const auto& put) { return put.id.number == number; }, step);
        };
        const auto step = std::find_if(result_.change.steps.begin(), result_.change.steps.end(), isIt);
        if (number == merge_.stamp.id.number || step == result_.change.steps.end() || tablesWith(merge_.job, number) == 0)
            return false;
        result_.change.steps.erase(step);
        const std::string name = merge_.view.nameOf(number);
        std::erase_if(merge_.lines, [&](const DoorLine& line) {
            return line.sort == DoorLineSort::Becomes && !line.words.arguments.empty() &&
                   line.words.arguments.front().second == Argument(name);
        });
        merge_.lines.push_back({DoorLineSort::Conflict,
                                 {refused, {{"row", name}, {"why", std::vector<Message>{problem.what}}}}});
        return true;
    }

    void giveUp()
    {
        result_.change = {};
        merge_.lines = {{DoorLineSort::Conflict, {nothingDone, {{"why", std::vector<Message>{why_}}}}}};
    }

    DrawingAgain& drawing_;
    const Typical& typical_;
    StampMerge merge_;
    Message why_;
    DoorChange result_;
};

const Edition* editionOf(const Typical& typical, int number)
{
    const auto found = std::find_if(typical.editions.begin(), typical.editions.end(),
                                    [&](const Edition& edition) { return edition.number == number; });
    return found == typical.editions.end() ? nullptr : &*found;
}

// The tag that the opening had among these rows; empty: there is none.
std::string doorTagIn(const RowsByNumber& rows)
{
    for (const auto& [number, row] : rows)
        if (const auto* opening = std::get_if<Opening>(&row))
            return opening->tag;
    return {};
}

std::set<std::string> pullsThatAreOwn(const Job& job, const RowsByNumber& base, const RowsByNumber& fresh)
{
    std::set<std::string> pulls;
    std::set<std::uint32_t> cables;
    for (const auto* rows : {&base, &fresh})
        for (const auto& [number, row] : *rows)
            if (const auto* cable = std::get_if<Cable>(&row)) {
                pulls.insert(cable->pull);
                cables.insert(number);
            }
    return ownPulls(job, std::move(pulls), cables);
}

} // namespace

StampMerge::StampMerge(const Job& from, const Stamp& one, const RowsByNumber& then, const RowsByNumber& now)
    : job(from), stamp(one), base(then), fresh(now),
      view{job,
           {stamp.rows.begin(), stamp.rows.end()},
           {},
           {},
           {stamp.tagPattern, doorTagIn(base), stamp.name, pullsThatAreOwn(job, base, fresh)}},
      draft(job)
{
    for (const auto* rows : {&base, &fresh})
        for (const auto& [number, row] : *rows)
            view.typicals.insert(number);
}

bool DoorChange::doesNothing() const
{
    return count(DoorLineSort::Becomes) == 0 && count(DoorLineSort::ByHand) == 0 &&
           count(DoorLineSort::Conflict) == 0;
}

int DoorChange::count(DoorLineSort sort) const
{
    return static_cast<int>(
        std::count_if(lines.begin(), lines.end(), [&](const DoorLine& line) { return line.sort == sort; }));
}

Result<DoorChanges> changesForStamps(const Job& job, Numbers& numbers, TypicalId typical)
{
    const Typical* row = job.typicals.find(typical);
    if (!row)
        return notInJob(nounOf<Typical>());
    const std::optional<DoorRows> door = doorOf(job, *row);
    if (!door)
        return openingIsGone(*row);
    DoorChanges changes{broughtUp(job, *row, *door), {}};
    const RowsByNumber fresh = byNumber(changes.typical.editions.back().rows);
    DrawingAgain drawing(job, numbers);
    for (const Stamp& stamp : job.stamps)
        if (stamp.typical == typical) {
            // Without an edition nobody knows what the typical changed: all that differs is the door's own.
            const Edition* edition = editionOf(changes.typical, stamp.edition);
            changes.doors.push_back(
                DoorMerge(drawing, changes.typical, edition ? byNumber(edition->rows) : fresh, fresh, stamp)
                    .made());
        }
    return changes;
}

Change chosenDoors(const Job& job, const DoorChanges& changes, const std::vector<StampId>& chosen)
{
    Draft draft(job);
    Change doors;
    std::set<int> kept;
    for (const DoorChange& door : changes.doors) {
        const bool isChosen =
            std::ranges::find(chosen, door.stamp) != chosen.end() && !door.change.steps.empty();
        const Stamp* stamp = job.stamps.find(door.stamp);
        kept.insert(isChosen ? changes.typical.editions.back().number : stamp ? stamp->edition : 0);
        if (isChosen)
            doors = joined(std::move(doors), door.change);
    }
    Typical after = changes.typical;
    std::erase_if(after.editions, [&](const Edition& edition) { return kept.count(edition.number) == 0; });
    if (!doors.steps.empty())
        draft.put(std::move(after));
    return joined(draft.change(), std::move(doors));
}

} // namespace doorloom
