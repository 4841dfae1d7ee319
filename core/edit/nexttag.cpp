#include "edit/nexttag.h"

#include <algorithm>
#include <array>
#include <unordered_set>

namespace doorloom {

namespace {

struct Letters {
    std::string_view kind, letters; // a kind's name begins so, or its family is called so
};

// Source: common practice, no source.
constexpr auto names = std::to_array<Letters>({{"strike", "ES"},
                                               {"mag-lock", "ML"},
                                               {"exit-button", "EB"},
                                               {"emergency-release", "EP"},
                                               {"exit-bar-switch", "RX"},
                                               {"exit-sensor", "MS"},
                                               {"access-controller", "AC"},
                                               {"reader", "RD"},
                                               {"battery", "BT"},
                                               {"transformer", "TX"},
                                               {"varistor", "V"},
                                               {"power-transfer", "PT"},
                                               {"mains-point", "MP"},
                                               {"half-wave-board", "HB"},
                                               {"bridge-board", "BB"},
                                               {"lever-lock", "EL"},
                                               {"latch-retraction", "LR"},
                                               {"door-switch", "DPS"},
                                               {"key-switch", "KS"},
                                               {"selector", "SS"},
                                               {"terminal-strip", "TS"},
                                               {"earth-bar", "PE"},
                                               {"diode", "D"},
                                               {"resistor", "R"},
                                               {"push-to-lock", "PB"},
                                               {"push-plate", "PB"},
                                               {"wave-actuator", "WO"},
                                               {"timer-relay", "TR"},
                                               {"relay-module", "LM"},
                                               {"fire-relay", "FR"},
                                               {"fire-interface-relay", "FI"},
                                               {"dc-supply-24-inrush", "HP"},
                                               {"distribution-board", "DB"},
                                               {"power-controller", "DB"},
                                               {"sequencer", "SQ"},
                                               {"keypad", "KP"},
                                               {"shear-lock", "ML"},
                                               {"delayed-egress-lock", "DE"},
                                               {"bolt-monitor", "BM"},
                                               {"assistance-pull", "EP"},
                                               {"operator-mode-switch", "SW"},
                                               {"safety-sensor", "SS"},
                                               {"sounder", "SD"},
                                               {"wireless-receiver", "RR"},
                                               {"bridge-rectifier", "BR"},
                                               {"fuse", "F"},
                                               {"ptc", "F"},
                                               {"hinge-transfer", "PT"}});
constexpr auto families = std::to_array<Letters>({{"supply", "PS"},
                                                  {"logic", "LM"},
                                                  {"lock", "EL"},
                                                  {"switch", "S"},
                                                  {"actuator", "PB"},
                                                  {"lamp", "OL"},
                                                  {"operator", "DO"},
                                                  {"relay", "R"},
                                                  {"part", "X"},
                                                  {"joint", "TS"}});

bool isDigit(char letter)
{
    return letter >= '0' && letter <= '9';
}

// "EL" of "EL12", "K1.C" of "K1.C".
std::string_view withoutNumber(std::string_view tag)
{
    while (!tag.empty() && isDigit(tag.back()))
        tag.remove_suffix(1);
    return tag;
}

std::string_view usualLetters(const Kind& kind)
{
    for (const Letters& each : names)
        if (std::string_view(kind.name).starts_with(each.kind))
            return each.letters;
    for (const Letters& each : families)
        if (kind.family == each.kind)
            return each.letters;
    return "X";
}

std::string lettersFor(const Job& job, const Kind& kind)
{
    std::string letters;
    for (const Device& device : job.devices)
        if (const Kind* each = kindOf(job, device); each && each->name == kind.name)
            letters = withoutNumber(device.tag);
    return letters.empty() ? std::string(usualLetters(kind)) : letters;
}

// The letters of the last row that has some, else the usual ones; then the lowest number that is free.
template <class Row, class Wanted>
std::string nextTag(const Table<Row>& rows, std::string_view usual, Wanted isWanted)
{
    std::string letters(usual);
    for (const Row& row : rows)
        if (const std::string_view own = withoutNumber(row.tag); isWanted(row) && !own.empty())
            letters = own;
    std::unordered_set<std::string_view> taken;
    for (const Row& row : rows)
        taken.insert(row.tag);
    return countedOn(letters + "1", [&](const std::string& tag) { return taken.count(tag) > 0; });
}

} // namespace

std::string countedOn(std::string_view tag, const std::function<bool(const std::string&)>& isTaken)
{
    const std::string_view letters = withoutNumber(tag);
    const std::string_view digits = tag.substr(letters.size());
    if (!digits.empty() && digits.size() < 9 && !isTaken(std::string(tag)))
        return std::string(tag);
    unsigned long number = digits.empty() ? 1 : digits.size() < 9 ? std::stoul(std::string(digits)) : 0;
    std::string next(tag);
    while (isTaken(next))
        next = std::string(letters) + std::to_string(++number);
    return next;
}

std::string nextDeviceTag(const Job& job, const Kind& kind)
{
    return countedOn(lettersFor(job, kind) + "1",
                     [&](const std::string& tag) { return deviceTagged(job, tag) != nullptr; });
}

std::string nextCableTag(const Job& job)
{
    return nextTag(job.cables, "C", [](const Cable&) { return true; });
}

std::string nextSpliceTag(const Job& job)
{
    return nextTag(job.splices, "S", [](const Splice&) { return true; });
}

std::string nextSheetTitle(const Job& job)
{
    std::size_t number = job.sheets.size() + 1;
    const auto isTaken = [&] {
        return std::any_of(job.sheets.begin(), job.sheets.end(),
                           [&](const Sheet& sheet) { return sheet.title == std::to_string(number); });
    };
    while (isTaken())
        ++number;
    return std::to_string(number);
}

std::string nextWireTag(const Job& job)
{
    const bool cablesAreW = withoutNumber(nextCableTag(job)) == "W";
    return nextTag(job.conductors, cablesAreW ? "B" : "W",
                   [](const Conductor& row) { return row.make == ConductorMake::Wire; });
}

} // namespace doorloom
