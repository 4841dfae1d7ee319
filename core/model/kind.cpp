#include "model/kind.h"

#include <algorithm>

namespace doorloom {

namespace {

template <class Rows>
auto findKey(const Rows& rows, const Key& key) -> decltype(rows.data())
{
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.key == key; });
    return found == rows.end() ? nullptr : &*found;
}

template <class Matches>
const Terminal* findTerminalIf(const Kind& kind, Matches matches)
{
    for (const Strip& strip : kind.strips)
        for (const Terminal& terminal : strip.terminals)
            if (matches(terminal))
                return &terminal;
    return nullptr;
}

} // namespace

const Terminal* findTerminal(const Kind& kind, const Key& key)
{
    return findTerminalIf(kind, [&](const Terminal& terminal) { return terminal.key == key; });
}

const Terminal* findPrinted(const Kind& kind, const std::string& printed)
{
    return findTerminalIf(kind, [&](const Terminal& terminal) { return terminal.printed == printed; });
}

const Role* findRole(const Kind& kind, const Key& key) { return findKey(kind.roles, key); }
const Option* findOption(const Kind& kind, const Key& key) { return findKey(kind.options, key); }
const Setting* findSetting(const Kind& kind, const Key& key) { return findKey(kind.settings, key); }
const Part* findPart(const Kind& kind, const Key& key) { return findKey(kind.parts, key); }

std::optional<std::size_t> findThrow(const std::vector<Throw>& throws, const Key& key)
{
    const Throw* found = findKey(throws, key);
    return found ? std::optional(static_cast<std::size_t>(found - throws.data())) : std::nullopt;
}

std::vector<const Terminal*> terminalsOf(const Kind& kind)
{
    std::vector<const Terminal*> all;
    for (const Strip& strip : kind.strips)
        for (const Terminal& terminal : strip.terminals)
            all.push_back(&terminal);
    return all;
}

} // namespace doorloom
