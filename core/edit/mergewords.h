#pragma once

#include "edit/mergerow.h"

#include <string>
#include <vector>

// The lines of a merge, and what stands in a row's member in words for them.
namespace doorloom {

inline constexpr Text becomes = {.en = "{row}: {what} {new}, was {old}.", .es = "{row}: {what} {new}, antes {old}."};
inline constexpr Text conflict = {
    .en = "{row}: {what} is {own} here and stays; the typical goes from {old} to {new}.",
    .es = "{row}: {what} es {own} aquí y se queda; la puerta tipo pasa de {old} a {new}."};
inline const Words firstEndWords{"first end", "primer extremo"}, secondEndWords{"second end", "segundo extremo"};

Words nothingThere();
Words mergeWords(const StampView& view, const std::string& text);
Words mergeWords(const StampView& view, bool is);
Words mergeWords(const StampView& view, int count);
Words mergeWords(const StampView& view, Metres length);
Words mergeWords(const StampView& view, Standing standing);
Words mergeWords(const StampView& view, Mounting mounting);
Words mergeWords(const StampView& view, Egress egress);
Words mergeWords(const StampView& view, Audience audience);
Words mergeWords(const StampView& view, ConductorMake make);
Words mergeWords(const StampView& view, OperatorNature nature);
Words mergeWords(const StampView& view, const std::vector<Throw>& throws);
Words mergeWords(const StampView& view, const Choice& choice);
Words mergeWords(const StampView& view, const SettingChoice& choice);
Words mergeWords(const StampView& view, const Binding& binding);
Words mergeWords(const StampView& view, const End& end);
Words mergeWords(const StampView& view, const Thrown& thrown);
Words mergeWords(const StampView& view, const Act& act);
Words mergeWords(const StampView& view, const Promise& promise);
Words mergeWords(const StampView& view, Point point);
Words mergeWords(const StampView& view, const std::vector<Point>& points);

template <class Thing> Words mergeWords(const StampView& view, Id<Thing> id)
{
    if (!id)
        return nothingThere();
    const std::string name = view.nameOf(id.number);
    return {name, name};
}

} // namespace doorloom
