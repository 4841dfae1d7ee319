#pragma once

#include "papers/tablepaper.h"

// The parts list: what to buy, what is there, and what others bring.
namespace doorloom {

enum class PartOwner { New, Existing, ByOthers }; // existing: also what is moved, or to be left alone
inline constexpr std::size_t partOwners = 3;

struct PartLine {
    PartOwner owner = PartOwner::New;
    Message what;                  // the device's kind, a cable type, a wire, a connector
    std::string kindName;          // 'relay-module-negative'; empty: no device
    int count = 0;                 // of wires: pieces
    std::vector<std::string> tags; // those that have one
    Metres length;                 // of cables, as cut (papers/pulllist.h), and of wires
    int withoutLength = 0;
    std::vector<Message> notes;    // 'moved', 'leave alone', each once
};

struct PartsList {
    TitleBlock title;
    std::vector<PartLine> lines; // by owner; devices by their words, then cables, wires, connectors
};

// In: digestOf(job) (core/file)
PartsList partsOf(const Job& job, std::string digest);

extern const Text partsTitle;
TablePaper partsTables(const PartsList& list, Language language);

// For programs; the names of columns are the same in every language; lengths in metres.
std::string partsCsv(const PartsList& list, Language language);

} // namespace doorloom
