#include "edit/stampmerge.h"

#include "edit/mergewords.h"
#include "edit/references.h"
#include "edit/removal.h"

#include <algorithm>
#include <set>

namespace doorloom {

namespace {

using Rows = std::set<std::uint32_t>;

constexpr Text goes = {.en = "{noun} {row} goes.", .es = "Se quita: {noun} {row}."};
constexpr Text staysHere = {
    .en = "{noun} {row} is gone from the typical; here {why} has something of its own on it, so it stays.",
    .es = "{noun} {row} ya no está en la puerta tipo; aquí {why} tiene algo propio, así que se queda."};

template <class Row> void copyTag(Row& to, const Row& from)
{
    if constexpr (requires { to.tag; })
        to.tag = from.tag;
}
void copyTag(Sheet& to, const Sheet& from)
{
    to.title = from.title;
    to.order = from.order;
}

class Going {
public:
    explicit Going(StampMerge& merge) : merge_(merge) {}

    void takeAway()
    {
        for (const auto& [ofTypical, ofStamp] : merge_.stamp.rows)
            if (merge_.fresh.count(ofTypical) == 0)
                gone_.insert(ofStamp);
        for (const Rows& group : groupsOfGone())
            judgeGone(group);
        removeRows(merge_.draft, {gone_.begin(), gone_.end()});
    }

private:
    // What hangs together stays together, or goes together.
    std::vector<Rows> groupsOfGone() const
    {
        std::vector<Rows> groups;
        for (std::uint32_t row : gone_) {
            Rows group = {row};
            visitRow(merge_.job, row, [&](const auto& each) {
                for (std::uint32_t near : referencesOf(each))
                    if (gone_.count(near) > 0)
                        group.insert(near);
            });
            std::erase_if(groups, [&](Rows& other) {
                const bool meets =
                    std::ranges::any_of(group, [&](auto each) { return other.count(each) > 0; });
                if (meets)
                    group.merge(other);
                return meets;
            });
            groups.push_back(std::move(group));
        }
        return groups;
    }

    void judgeGone(const Rows& group)
    {
        const std::string holder = holderOf(group);
        for (std::uint32_t row : group) {
            visitRow(merge_.job, row, [&]<class Row>(const Row& each) {
                if (isSeen(each))
                    merge_.say(holder.empty() ? DoorLineSort::Becomes : DoorLineSort::Conflict,
                        holder.empty() ? goes : staysHere, nounOf<Row>(), nameOfRow(merge_.job, each), holder);
            });
            if (!holder.empty()) {
                gone_.erase(row);
                keepLandings(row);
            }
        }
    }

    // What is landed on a device that stays is not taken off it.
    void keepLandings(std::uint32_t joint)
    {
        for (std::uint32_t user : referrersOf(merge_.job, joint)) {
            const Conductor* own = merge_.job.conductors.find({user});
            Conductor* drafted = own ? merge_.draft.edit(own->id) : nullptr;
            if (!drafted)
                continue;
            for (End Conductor::*end : {&Conductor::from, &Conductor::to})
                if (jointAt(own->*end) == joint && !(drafted->*end == own->*end)) {
                    drafted->*end = own->*end;
                    sayThatItStays(user, end == &Conductor::from ? firstEndWords : secondEndWords);
                }
        }
    }

    // The line that said what it becomes.
    void sayThatItStays(std::uint32_t row, const Words& what)
    {
        const std::pair<std::string, Argument> first{"row", merge_.view.nameOf(row)}, second{"what", what};
        for (DoorLine& line : merge_.lines)
            if (line.sort == DoorLineSort::Becomes && line.words.arguments.size() > 1 &&
                line.words.arguments[0] == first && line.words.arguments[1] == second) {
                line.sort = DoorLineSort::Conflict;
                line.words.text = conflict;
            }
    }

    // Who has something of its own in the group: a row that is not as it was stamped, or one that stays and
    // still refers to it. Empty: nobody.
    std::string holderOf(const Rows& group)
    {
        std::string holder;
        for (std::uint32_t row : group) {
            visitRow(merge_.job, row, [&](const auto& each) {
                if (holder.empty() && !isAsStamped(each))
                    holder = nameOfRow(merge_.job, each);
            });
            for (std::uint32_t user : referrersOf(merge_.job, row))
                if (holder.empty() && gone_.count(user) == 0)
                    visitRow(merge_.job, user, [&](const auto& each) {
                        if (stillRefers(each, row))
                            holder = nameOfRow(merge_.job, each);
                    });
        }
        return holder;
    }

    template <class Row> bool isAsStamped(const Row& own) const
    {
        if constexpr (!std::is_constructible_v<DoorRow, const Row&>) {
            return true;
        } else {
            for (const auto& [ofTypical, ofStamp] : merge_.stamp.rows)
                if (const auto base = merge_.base.find(ofTypical);
                    ofStamp == own.id.number && base != merge_.base.end()) {
                    const Row& old = rowOr(base->second, own);
                    Row stamped = merge_.view.asStamped(old);
                    copyTag(stamped, own);
                    forgiveShares(stamped, old, own);
                    return stamped == own;
                }
            return true;
        }
    }

    // Where the typical is on what doors share, each door is landed by hand.
    template <class Row> void forgiveShares(Row&, const Row&, const Row&) const {}
    void forgiveShares(Conductor& stamped, const Conductor& old, const Conductor& own) const
    {
        if (isShared(old.from, merge_.view.again))
            stamped.from = own.from;
        if (isShared(old.to, merge_.view.again))
            stamped.to = own.to;
    }

    // Drawing goes along, and what typicals list; other rows hold what they are on once all is merged.
    template <class Row> bool stillRefers(const Row& user, std::uint32_t row)
    {
        if constexpr (std::is_same_v<Row, Placement> || std::is_same_v<Row, Bends> ||
                      std::is_same_v<Row, Note> || std::is_same_v<Row, Typical> ||
                      std::is_same_v<Row, Stamp>) {
            return false;
        } else {
            const Row* drafted = merge_.draft.edit(user.id);
            const std::vector<std::uint32_t> numbers =
                drafted ? referencesOf(*drafted) : std::vector<std::uint32_t>();
            return std::binary_search(numbers.begin(), numbers.end(), row);
        }
    }

    StampMerge& merge_;
    Rows gone_; // the stamp's
};

} // namespace

void takeGoneAway(StampMerge& merge)
{
    Going(merge).takeAway();
}

} // namespace doorloom
