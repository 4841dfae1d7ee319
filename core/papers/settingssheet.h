#pragma once

#include "papers/tablepaper.h"

#include <optional>

// The settings sheet: every jumper, switch, potentiometer and time of every device, to be set with the power off and written down
// as left.
namespace doorloom {

struct SettingLine {
    std::string device;
    Message title;             // of its kind
    bool isJumper = false;
    Standing standing = Standing::New;
    Words what;                // 'output of relay 1', 'hold time'
    std::string jumper;        // its key, of a jumper
    std::vector<Words> positions;     // of a jumper, choice or row of switches, as the kind lists them; none: a number
    std::optional<std::size_t> position; // which is wished; nothing: not chosen yet
    double least = 0, most = 0;       // of a number
    std::optional<double> number;
    std::string unit;
    Message wished, factory; // in words
    bool asFromFactory = false; // nobody chose it: it stays as it comes
    bool differs = false;    // from the factory: it must be changed
    bool disagrees = false;  // with the other jumpers of its option
    bool fromSheet = false;
    std::optional<Message> advice;      // what a rule about it says (core/check): common practice
    std::optional<Message> beforePower; // what else it must be while power comes on
};

struct SettingsBox {
    PlaceId place;
    std::vector<SettingLine> lines; // device by device as in the terminal schedule
};

struct SettingsSheet {
    TitleBlock title;
    std::vector<SettingsBox> boxes; // those with something to set
};

// In: digestOf(job) (core/file)
SettingsSheet settingsOf(const Job& job, std::string digest);

// How it must look: '[■■]□' is the shunt over the first two of three pins, '◉ pulse ○ toggle' a choice, '├──●───┤' a dial.
std::string pictureOf(const SettingLine& line, Language language);

extern const Text settingsTitle;
TablePaper settingsTables(const Job& job, const SettingsSheet& sheet, Language language);

// For programs; the names of columns are the same in every language.
std::string settingsCsv(const Job& job, const SettingsSheet& sheet, Language language);

} // namespace doorloom
