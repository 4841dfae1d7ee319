#include "edit/stampmerge.h"

#include <set>

namespace doorloom {

namespace {

constexpr Text comes = {.en = "{noun} {row} is added.", .es = "Se añade: {noun} {row}."};
constexpr Text cannotCome = {
    .en = "{noun} {row} of the typical can't be added: it needs something that this door "
          "has no more.",
    .es = "{noun} {row} de la puerta tipo no se puede añadir: necesita algo que esta "
          "puerta ya no tiene."};
constexpr Text takenAway = {.en = "{noun} {row} of the typical has been taken away here.",
                            .es = "{noun} {row} de la puerta tipo se quitó aquí."};
constexpr Text takenAwayButChanged = {
    .en = "{noun} {row} has changed in the typical, and has been taken away here.",
    .es = "{noun} {row} ha cambiado en la puerta tipo y aquí se quitó."};

class Coming {
public:
    Coming(StampMerge& merge, DrawingAgain& drawing, std::string oldDoor, std::string newDoor)
        : merge_(merge), drawing_(drawing), oldDoor_(std::move(oldDoor)), newDoor_(std::move(newDoor))
    {
    }

    void bring()
    {
        chooseAdded();
        nameAdded();
        for (const auto& [number, row] : merge_.fresh)
            std::visit([&, rowNumber = number](const auto& each) { mergeOrAdd(rowNumber, each); }, row);
    }

private:
    // Rows that the typical has got since; not those that would lead back into the typical.
    void chooseAdded()
    {
        for (const auto& [number, row] : merge_.fresh)
            if (merge_.base.count(number) == 0 && !merge_.isPaired(number)) {
                added_.insert(number);
                merge_.view.again[number] = drawing_.numbers.take();
            }
        const auto leadsBack = [&](std::uint32_t number) {
            return std::visit([&](const auto& row) { return merge_.view.leadsIntoTypical(merge_.view.asStamped(row)); },
                              merge_.fresh.at(number));
        };
        for (bool again = true; again;) {
            again = false;
            for (std::uint32_t number : std::set<std::uint32_t>(added_))
                if (leadsBack(number)) {
                    again = true;
                    added_.erase(number);
                    merge_.view.again.erase(number);
                    std::visit([&](const auto& row) { sayOf(DoorLineSort::Conflict, cannotCome, row); },
                               merge_.fresh.at(number));
                }
        }
    }

    // Cables before their cores: those are called after them.
    void nameAdded()
    {
        DoorTags tags(drawing_.tags, merge_.stamp.tagPattern, oldDoor_, newDoor_);
        for (std::uint32_t number : added_)
            std::visit([&](const auto& row) { tagAdded(tags, row); }, merge_.fresh.at(number));
        for (std::uint32_t number : added_)
            if (const auto* row = std::get_if<Conductor>(&merge_.fresh.at(number)))
                tagAddedConductor(tags, *row);
    }

    template <class Row> void tagAdded(DoorTags& tags, const Row& row)
    {
        if constexpr (!std::is_same_v<Row, Conductor>) {
            Row copy = row;
            tags.give(copy);
            keepTag(row.id.number, copy);
        }
    }

    void tagAddedConductor(DoorTags& tags, Conductor copy)
    {
        const auto old = merge_.fresh.find(copy.cable.number);
        const std::string oldCable = old == merge_.fresh.end() ? "" : std::get<Cable>(old->second).tag;
        const std::string newCable =
            merge_.isPaired(copy.cable.number) ? merge_.view.nameOf(merge_.view.again.at(copy.cable.number)) : "";
        if (const auto tag = coreTag(copy, oldCable, newCable))
            copy.tag = *tag;
        else
            tags.give(copy);
        keepTag(copy.id.number, copy);
    }

    template <class Row> void keepTag(std::uint32_t number, const Row& row)
    {
        if constexpr (requires { row.tag; })
            merge_.view.newNames[merge_.view.again.at(number)] = row.tag;
        else if constexpr (requires { row.title; })
            merge_.view.newNames[merge_.view.again.at(number)] = row.title;
    }

    template <class Row> void add(const Row& row)
    {
        Row copy = merge_.view.asStamped(row);
        if constexpr (requires { copy.tag; })
            copy.tag = merge_.view.newNames.at(copy.id.number);
        if constexpr (std::is_same_v<Row, Sheet>) {
            copy.title = merge_.view.newNames.at(copy.id.number);
            copy.order = ++drawing_.lastSheet;
        }
        if (isSeen(copy))
            merge_.say(DoorLineSort::Becomes, comes, nounOf<Row>(), nameOfAdded(copy));
        sayWhatWaits(row, copy);
        merge_.draft.put(std::move(copy));
    }

    template <class Row> std::string nameOfAdded(const Row& row) const { return nameOfRow(merge_.job, row); }
    std::string nameOfAdded(const Conductor& row) const
    {
        const auto there = [&](const End& end) {
            const std::uint32_t joint = jointAt(end);
            return joint == 0 ? std::string("…") : merge_.view.nameOf(joint);
        };
        return row.tag.empty() ? there(row.from) + " – " + there(row.to) : row.tag;
    }

    template <class Row> void sayWhatWaits(const Row&, const Row&) {}
    void sayWhatWaits(const Conductor& old, const Conductor& copy)
    {
        for (const End* end : {&old.from, &old.to})
            if (isShared(*end, merge_.view.again))
                merge_.lines.push_back({DoorLineSort::ByHand, waitsWords(merge_.job, copy.tag, old, *end)});
    }

    template <class Row> void mergeOrAdd(std::uint32_t number, const Row& fresh)
    {
        if (added_.count(number) > 0)
            return add(fresh);
        const auto base = merge_.base.find(number);
        if (base == merge_.base.end() && !merge_.isPaired(number))
            return; // it was said that it can't come
        const Row& old = base == merge_.base.end() ? fresh : rowOr(base->second, fresh);
        if (!merge_.isPaired(number))
            return sayOf(old == fresh ? DoorLineSort::Own : DoorLineSort::Conflict,
                         old == fresh ? takenAway : takenAwayButChanged, fresh);
        const Row* own = tableOf<Row>(merge_.job).find({merge_.view.again.at(number)});
        if (!own)
            return;
        Row merged = mergedRow(merge_.view, old, fresh, *own, merge_.lines);
        if (!(merged == *own))
            merge_.draft.put(std::move(merged));
    }

    template <class Row> void sayOf(DoorLineSort sort, Text text, const Row& row)
    {
        if (isSeen(row))
            merge_.say(sort, text, nounOf<Row>(), nameOfAdded(row));
    }

    StampMerge& merge_;
    DrawingAgain& drawing_;
    std::string oldDoor_, newDoor_;
    std::set<std::uint32_t> added_; // the typical's numbers
};

} // namespace

void bringRows(StampMerge& merge, DrawingAgain& drawing, const std::string& oldDoor, const std::string& newDoor)
{
    Coming(merge, drawing, oldDoor, newDoor).bring();
}

} // namespace doorloom
