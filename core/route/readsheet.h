#pragma once

#include "base/result.h"
#include "route/sheet.h"

#include <string_view>

namespace doorloom::routing {

// A box to be moved, and where its top left corner goes.
struct Move {
    int box = 0;
    Spot corner;
};

// A sheet as plain text, one item a line, # before a comment:
//     box ID x y w h            port BOX ID side x y  (side L R T B)
//     conn ID BOX.PORT BOX.PORT pin ID x y            (a bend that stands, after the others of that
//     connector)
// Errors: the first line that can't be read, with its number; numbers beyond 1e9 either way; sheets of more
// than
//      a million lines
Result<Sheet> readSheet(std::string_view text);

// Lines `move BOX x y`, one after another.
Result<std::vector<Move>> readMoves(std::string_view text, const Sheet& sheet);

} // namespace doorloom::routing
