#pragma once

#include "edit/mergerow.h"
#include "edit/mergewords.h"
#include "edit/rownames.h"

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

namespace doorloom {

inline constexpr Text isOwn = {.en = "{row}: {what} is {own} here; the typical has {new}.",
                        .es = "{row}: {what} es {own} aquí; la puerta tipo tiene {new}."};
inline constexpr Text leadsBack = {
    .en = "{row} stays as it is: the typical's needs something that this door has no more.",
    .es = "{row} se queda como está: el de la puerta tipo necesita algo que esta puerta ya no tiene."};

// One row three ways, in the stamp's numbers; what is merged goes into `own`.
template <class Row> class Merging {
public:
    Merging(const StampView& view, const Row& base, const Row& fresh, const Row& own, DoorLines& lines)
        : view_(view), oldBase_(base), oldFresh_(fresh), base_(view.asStamped(base)),
          fresh_(view.asStamped(fresh)), before_(own), own_(own), lines_(lines), from_(lines.size())
    {
        if constexpr (requires { own.tag; })
            name_ = own.tag;
        if (name_.empty())
            name_ = nameOfRow(view.job, own);
    }

    template <class Value> void one(Words what, Value Row::*at)
    {
        const Value &base = base_.*at, &fresh = fresh_.*at;
        Value& own = own_.*at;
        const Words was = said(own);
        if (mayTake(base == fresh, own == base, own == fresh, what, said(base), said(fresh), was))
            own = fresh;
    }

    // Things of a list, each known by its key.
    template <class Thing, class KeyOf, class WhatIs>
    void each(std::vector<Thing> Row::*at, KeyOf keyOf, WhatIs whatIs)
    {
        const std::vector<Thing>&base = base_.*at, &fresh = fresh_.*at;
        std::vector<Thing>& own = own_.*at;
        const bool isUntouched = own == base;
        std::vector<Thing> keys = fresh;
        for (const std::vector<Thing>* list : {&base, static_cast<const std::vector<Thing>*>(&own)})
            for (const Thing& thing : *list)
                if (!find(keys, keyOf(thing), keyOf))
                    keys.push_back(thing);
        for (const Thing& thing : keys) {
            const auto key = keyOf(thing);
            const Thing *b = find(base, key, keyOf), *f = find(fresh, key, keyOf), *o = find(own, key, keyOf);
            if (mayTake(same(b, f), same(o, b), same(o, f), whatIs(thing), saidOf(b), saidOf(f), saidOf(o)))
                take(own, o, f);
        }
        if (isUntouched)
            own = fresh; // in its order
    }

    // An end of a conductor: one that the typical has on what doors share is each door's own affair.
    void end(Words what, End Row::*at)
    {
        const bool isShare = isShared(oldFresh_.*at, view_.again);
        const bool isSame = oldBase_.*at == oldFresh_.*at;
        End& own = own_.*at;
        if (isShare && isSame)
            return;
        const bool isAsStamped = own == base_.*at;
        const Words there = isShare ? said(oldFresh_.*at) : said(fresh_.*at);
        if (isShare && isAsStamped)
            lines_.push_back({DoorLineSort::ByHand, waitsWords(view_.job, name_, oldFresh_, oldFresh_.*at)});
        if (isShare && isAsStamped && own == fresh_.*at)
            return;
        if (mayTake(isSame, isAsStamped, !isShare && own == fresh_.*at, what, said(oldBase_.*at, base_.*at),
                    there, said(own)))
            own = fresh_.*at;
    }

    Row done()
    {
        if (own_ == before_ || !view_.leadsIntoTypical(own_))
            return std::move(own_);
        lines_.resize(from_);
        lines_.push_back({DoorLineSort::Conflict, {leadsBack, {{"row", name_}}}});
        return before_;
    }

    const Row& base() const { return base_; }
    const Row& fresh() const { return fresh_; }
    const Row& own() const { return own_; }

private:
    template <class Thing> static bool same(const Thing* one, const Thing* other)
    {
        return one && other ? *one == *other : one == other;
    }

    template <class Thing, class Key, class KeyOf>
    static const Thing* find(const std::vector<Thing>& list, const Key& key, KeyOf keyOf)
    {
        const auto found =
            std::find_if(list.begin(), list.end(), [&](const Thing& thing) { return keyOf(thing) == key; });
        return found == list.end() ? nullptr : &*found;
    }

    template <class Thing> static void take(std::vector<Thing>& own, const Thing* old, const Thing* fresh)
    {
        const auto at = own.begin() + (old ? old - own.data() : 0);
        if (old && fresh)
            *at = *fresh;
        else if (old)
            own.erase(at);
        else
            own.push_back(*fresh);
    }

    template <class Value> Words said(const Value& value) const { return mergeWords(view_, value); }
    template <class Thing> Words saidOf(const Thing* thing) const
    {
        return thing ? mergeWords(view_, *thing) : nothingThere();
    }
    // Where the typical was: on what is shared by its own name, else by the stamp's.
    Words said(const End& old, const End& stamped) const
    {
        return isShared(old, view_.again) ? said(old) : said(stamped);
    }

    // Whether what the typical has now is taken; says what is done and what is not.
    bool mayTake(bool isSame, bool isAsStamped, bool isThereAlready, const Words& what, const Words& old,
                 const Words& now, const Words& own)
    {
        if (isThereAlready)
            return false;
        const auto say = [&](DoorLineSort sort, Text text) {
            lines_.push_back(
                {sort, {text, {{"row", name_}, {"what", what}, {"old", old}, {"new", now}, {"own", own}}}});
        };
        if (isSame)
            say(DoorLineSort::Own, isOwn);
        else if (isAsStamped)
            say(DoorLineSort::Becomes, becomes);
        else
            say(DoorLineSort::Conflict, conflict);
        return !isSame && isAsStamped;
    }

    const StampView& view_;
    const Row &oldBase_, &oldFresh_;
    const Row base_, fresh_, before_;
    Row own_;
    DoorLines& lines_;
    std::size_t from_;
    std::string name_;
};

} // namespace doorloom
