#pragma once

#include "base/jsonshape.h"
#include "edit/change.h"

// The JSON of a change (the format is in changefile.h).
namespace doorloom {

template <> struct Form<Change> {
    static void write(JsonWriter& writer, const Change& value);
    static bool read(JsonReader& reader, const Json& json, Change& into);
};

} // namespace doorloom
