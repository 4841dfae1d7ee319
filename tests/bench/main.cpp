#include "bench/row.h"

#include <algorithm>
#include <cstdio>
#include <cstring>
#include <span>
#include <string>
#include <vector>

namespace doorloom::bench {

// Declared and listed, nothing else.
extern const Row readLarge, writeLarge, snapshotLarge, firstCheck, editCheck, stepsToVerdicts, enumeration,
    findRows, completeLine, landTyped, solving, routeSheets, editCurve;
static constexpr const Row* rows[] = {&readLarge,    &writeLarge,      &snapshotLarge, &firstCheck,
                                      &editCheck,    &stepsToVerdicts, &enumeration,   &findRows,
                                      &completeLine, &landTyped,       &solving,       &routeSheets,
                                      &editCurve};

static int runRows(std::span<char* const> arguments)
{
    Gate gate = Gate::Off;
    std::vector<std::string> names;
    for (const char* argument : arguments) {
        if (std::strcmp(argument, "--gate") == 0)
            gate = Gate::On;
        else
            names.emplace_back(argument);
    }

    bool within = true;
    std::size_t found = 0;
    for (const Row* row : rows) {
        if (!names.empty() && std::find(names.begin(), names.end(), row->name) == names.end())
            continue;
        ++found;
        within = row->run(gate) && within;
    }
    if (found == 0 || found < names.size()) {
        std::fputs("usage: bench [--gate] [NAME ...]   the names:", stderr);
        for (const Row* row : rows)
            std::fprintf(stderr, " %s", row->name);
        std::fputs("\n", stderr);
        return 2;
    }
    return within ? 0 : 1;
}

} // namespace doorloom::bench

int main(int count, char** arguments)
{
    return doorloom::bench::runRows({arguments + 1, arguments + count});
}
