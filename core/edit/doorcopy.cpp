#include "edit/doorcopy.h"

#include "edit/drawing.h"
#include "edit/references.h"
#include "edit/rownames.h"

#include <set>
#include <string>
#include <utility>

namespace doorloom {

namespace {

class DoorCopy {
public:
    DoorCopy(DrawingAgain& drawing, const DoorRows& door, const std::string& pattern, std::string newTag)
        : job_(drawing.job), drawing_(drawing), door_(door),
          texts_{pattern, job_.openings.find(door.opening)->tag, std::move(newTag), ownPullsOf(door)},
          tags_(drawing.tags, pattern, texts_.oldDoor, texts_.newDoor)
    {
        const auto number = [&](const DoorRows::Numbers& rows) {
            for (std::uint32_t row : rows)
                made_.again[row] = drawing_.numbers.take();
        };
        for (const auto* group : {&door.joints, &door.places, &door.operators, &door.cables, &door.conductors,
                                  &door.sheets, &door.drawing})
            number(*group);
        number({door.opening.number});
    }

    DuplicatedDoor made()
    {
        addAll<Opening>({door_.opening.number});
        addAll<Place>(door_.places);
        addAll<Operator>(door_.operators);
        addAll<Device>(door_.joints);
        addAll<Splice>(door_.joints);
        addAll<Cable>(door_.cables);
        for (std::uint32_t row : door_.conductors)
            addConductor(*job_.conductors.find({row}));
        addAll<Sheet>(door_.sheets);
        addAll<Placement>(door_.drawing);
        addAll<Bends>(door_.drawing);
        for (std::uint32_t row : door_.joints)
            made_.rows.push_back(made_.again.at(row));
        made_.opening = {made_.again.at(door_.opening.number)};
        return std::move(made_);
    }

private:
    std::set<std::string> ownPullsOf(const DoorRows& door) const
    {
        std::set<std::string> pulls;
        for (std::uint32_t cable : door.cables)
            pulls.insert(job_.cables.find({cable})->pull);
        return ownPulls(job_, std::move(pulls), door.cables);
    }

    template <class Row> void addAll(const DoorRows::Numbers& rows)
    {
        for (std::uint32_t number : rows)
            if (const Row* row = tableOf<Row>(job_).find({number})) {
                Row copy = *row;
                tags_.give(copy);
                texts_.give(copy);
                finish(*row, copy);
                renumber(copy, made_.again);
                put(std::move(copy));
            }
    }

    template <class Row> void finish(const Row&, const Row&) {}
    void finish(const Cable& old, const Cable& copy) { cableTags_[old.id.number] = copy.tag; }
    void finish(const Sheet&, Sheet& copy) { copy.order = ++drawing_.lastSheet; }

    template <class Row> void put(Row row)
    {
        const Id<Row> id = row.id;
        made_.change.steps.emplace_back(Put<Row>{id, std::move(row)});
    }

    void addConductor(const Conductor& old)
    {
        Conductor copy = conductorAgain(old, made_.again);
        const Cable* cable = job_.cables.find(old.cable);
        if (const auto tag =
                coreTag(old, cable ? cable->tag : "", cable ? cableTags_.at(cable->id.number) : ""))
            copy.tag = *tag;
        else
            tags_.give(copy);
        const bool isLoose = isShared(old.from, made_.again) &&
                             isShared(old.to, made_.again); // another door's core in the same cable
        for (const End* end : {&old.from, &old.to})
            if (!isLoose && isShared(*end, made_.again))
                made_.leftWaiting.push_back(waitsWords(job_, copy.tag, old, *end));
        put(std::move(copy));
    }

    const Job& job_;
    DrawingAgain& drawing_;
    const DoorRows& door_;
    DoorTexts texts_;
    DoorTags tags_;
    std::map<std::uint32_t, std::string> cableTags_;
    DuplicatedDoor made_;
};

} // namespace

DrawingAgain::DrawingAgain(const Job& from, Numbers& take) : job(from), numbers(take), tags(from)
{
    if (const auto sheets = sheetsInOrder(from); !sheets.empty())
        lastSheet = sheets.back()->order;
}

bool isShared(const End& end, const Renumbering& again)
{
    const std::uint32_t there = jointAt(end);
    return there != 0 && again.count(there) == 0;
}

Conductor conductorAgain(Conductor row, const Renumbering& again)
{
    for (End* end : {&row.from, &row.to})
        if (isShared(*end, again))
            *end = End{};
    renumber(row, again);
    return row;
}

Message waitsWords(const Job& job, const std::string& tag, const Conductor& old, const End& shared)
{
    const Landing* landing = landingOf(shared);
    const Splice* splice = landing ? nullptr : job.splices.find(*spliceOf(shared));
    return {{.en = "{tag} waits: {old} is on {there}.", .es = "{tag} espera: {old} está en {there}."},
            {{"tag", tag.empty() ? "…" : tag},
             {"old", old.tag.empty() ? nameOfRow(job, old) : old.tag},
             {"there", landing  ? nameOf(job, *landing)
                       : splice ? splice->tag
                                : "…"}}};
}

DuplicatedDoor doorAgain(DrawingAgain& drawing, const DoorRows& door, const std::string& pattern,
                         std::string newTag)
{
    return DoorCopy(drawing, door, pattern, std::move(newTag)).made();
}

} // namespace doorloom
