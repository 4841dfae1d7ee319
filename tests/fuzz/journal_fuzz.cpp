#include "base/sha256.h"
#include "file/journal.h"
#include "fuzz/insist.h"

#include <algorithm>
#include <string>

namespace {

using namespace doorloom;

// The same text, each of its lines with its checksum and length made right: so that the fuzzer gets behind
// them.
std::string withChecksums(std::string_view text)
{
    std::string mended;
    int number = 0;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find('\n', at), text.size());
        const std::string json(text.substr(at, end - at));
        const std::string head = std::to_string(++number) + " " + std::to_string(json.size()) + " ";
        mended += head + sha256(head + json).substr(0, 16) + " " + json + "\n";
        at = end + 1;
    }
    return mended;
}

void readWhole(std::string_view text, const std::optional<FileHash>& file)
{
    const Result<Journal> journal = readJournal(text, "fuzz.journal", file);
    if (!journal.ok())
        return insistOnWords(journal.problem());
    const Journal& read = journal.value();
    if (read.damage)
        insistOnWords(*read.damage);
    insist(read.goodBytes <= text.size(), "what is good is part of the text");
    insist(read.job.has_value() || file || read.edits.empty(), "edits start from something");

    std::string again =
        journalRecord(1, read.job ? JournalStart(*read.job) : file.value_or(FileHash{"none"}));
    for (std::size_t i = 0; i < read.edits.size(); ++i)
        again += journalRecord(i + 2, read.edits[i]);
    if (!file && !read.job)
        return;
    const Result<Journal> back = readJournal(again, "fuzz.journal", file);
    insist(back.ok(), "what was written is read again");
    insist(back.value().edits == read.edits && back.value().job == read.job, "what is read again is equal");
    insist(!back.value().damage, "what was written is whole");
}

} // namespace

// Any bytes are read or refused in words; what is read reads back equal.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string_view text = textOf(data, size);
    const std::string mended = withChecksums(text);
    for (const auto& file : {std::optional<FileHash>(FileHash{"base"}), std::optional<FileHash>()}) {
        readWhole(text, file);
        readWhole(mended, file);
    }
    return 0;
}
