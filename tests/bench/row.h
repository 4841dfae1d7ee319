#pragma once

namespace doorloom::bench {

enum class Gate { Off, On };

// One measured thing: a line of the table in main.cpp.
struct Row {
    const char* name;       // "read"
    bool (*run)(Gate gate); // prints its own line; false when the gate is on and the figure is over it
};

} // namespace doorloom::bench
