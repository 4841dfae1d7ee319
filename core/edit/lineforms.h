#pragma once

#include "edit/typedline.h"

#include <optional>
#include <string_view>

namespace doorloom {

enum class LineCommand { Place, Pull, Cap, Insulate, Lift, Splice, Set, Move, Rename, Remove };

struct CommandWord {
    LineCommand command;
    Text word, purpose;
};
std::span<const CommandWord> commandWords();
std::optional<LineCommand> commandCalled(std::string_view word); // in either language
bool meansWire(std::string_view word);

} // namespace doorloom
