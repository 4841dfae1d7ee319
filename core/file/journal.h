#pragma once

#include "edit/change.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

// The unsaved edits of a job, in a file until they are saved. One record a line:
//
//   NUMBER LENGTH CHECKSUM JSON
//
// NUMBER    counts from 1
// LENGTH    of the JSON, in bytes
// CHECKSUM  the first 16 hexadecimal digits of SHA-256 of 'NUMBER LENGTH JSON'
// JSON      {"journal":1,"file":"9f…"}  what follows was done to the file with this SHA-256; a mark is
// written
//                                       before saving too, so that what was saved is not done again
//           {"journal":1,"job":"…"}     what follows was done to this job, which has no file: its text
//           {"what":{"en":"…","es":"…"},"merging":"…","change":[…]}
//                                       an edit, undone and redone ones too; the change as in changefile.h
namespace doorloom {

inline constexpr int journalVersion = 1;

struct FileHash {
    std::string sha256; // of the file's bytes, 64 hexadecimal digits

    friend bool operator==(const FileHash&, const FileHash&) = default;
};
using JournalStart = std::variant<FileHash, Job>;

struct JournalEdit {
    Words what;
    std::string merging; // edits one after another with the same one are one step of the history
    Change change;

    friend bool operator==(const JournalEdit&, const JournalEdit&) = default;
};

// With its line's end.
std::string journalRecord(std::uint64_t number, const JournalStart& start);
std::string journalRecord(std::uint64_t number, const JournalEdit& edit);

struct Journal {
    std::optional<Job> job;         // where the edits start from, when that is no file
    std::vector<JournalEdit> edits; // in their order
    std::optional<Problem> damage;  // edits after these are lost
    std::size_t goodBytes = 0;      // of the text up to the last of the edits
    std::uint64_t nextNumber = 1;   // of the record that would come then
};

// What was done since the file, or the job without one, was as it is.
// In:     file: the hash of the file as it is now; nothing: the journal of a job without a file
// Out:    no edits where the journal broke off before the first; an edit at the end that was cut short was
// never
//         whole, and is left out
// Errors: edits to another state of the file, a beginning that can't be read, a newer version: with name and
//         line
Result<Journal> readJournal(std::string_view text, const std::string& name,
                            const std::optional<FileHash>& file);

} // namespace doorloom
