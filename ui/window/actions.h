#pragma once

#include <span>

class QAction;

namespace doorloom {

class Window;

// Which menu an action stands in.
enum class Menu { Job, Edit, Draw, Look, Go, Help };
const char* titleOf(Menu menu);

// One thing that the user can do: the menus, the bar, the list of shortcuts and the tests read this table.
struct Action {
    const char* key; // stable: the object name of its QAction
    Menu menu;
    const char* words;    // with its access key
    const char* shortcut; // as QKeySequence spells it in every language; several with "; " between
    const char* tip;      // a sentence
    void (*run)(Window& window);
    bool (*enabled)(const Window& window) = nullptr; // null: always
    bool (*checked)(const Window& window) = nullptr; // null: it is not one that is on or off
    bool onBar = false;
    bool startsGroup = false; // a line above it in its menu
};

std::span<const Action> allActions();

// Puts the table into the window: menus, bar, shortcuts.
void makeActions(Window& window);
// Sets what is enabled and checked now.
void refreshActions(Window& window);

} // namespace doorloom
