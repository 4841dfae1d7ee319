#include "file/connectionlist.h"

#include "core/smallkinds.h"
#include "edit/operations.h"
#include "fuzz/insist.h"

namespace {

using namespace doorloom;

void put(Job& job, const std::pair<DeviceId, Change>& placed)
{
    insist(applyChange(job, placed.second).ok(), "a device can be placed");
}

// A supply, two switches, and a strip.
Job smallJob()
{
    Job job;
    const Kind contact = kindOfParts("contact", {"C", "NO", "NC"}),
               strip = kindOfParts("strip", {"1", "2", "3", "+24"});
    for (const auto& [tag, kind] : {std::pair<std::string, Kind>{"PS1", smallSupply()},
                                    {"PB1", contact},
                                    {"PB2", contact},
                                    {"TS1", strip}}) {
        Numbers numbers(job);
        put(job, placeDevice(job, numbers, kind, tag));
    }
    return job;
}

void insistOnRows(const ConnectionList& list)
{
    for (const ListedRow& row : list.rows)
        for (Language language : {Language::English, Language::Spanish}) {
            insist(!inWords(row.words, language).empty(), "every row says what became of it");
            insist((row.fate == RowFate::Left) == !inWords(row.remedy, language).empty(),
                   "a row that is left says what to do");
        }
}

} // namespace

// Any bytes are refused in words or read; every row has a fate; the job keeps its promises; what was taken is
// found again when the same list comes once more.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const auto table = readTable(textOf(data, size), "fuzz.csv");
    if (!table.ok()) {
        insistOnWords(table.problem());
        return 0;
    }
    Job job = smallJob();
    const ListLayout layout = guessedLayout(table.value());
    const ConnectionList list = connectionList(job, table.value(), layout);
    insist(list.rows.size() + (layout.hasHead ? 1 : 0) == table.value().size(), "every row has a fate");
    insistOnRows(list);
    insist(applyChange(job, list.change).ok(), "the change can be made");
    insist(verifyJob(job).empty(), "the job keeps its promises");
    const ConnectionList again = connectionList(job, table.value(), layout);
    insist(again.change.steps.empty(), "the same list once more changes nothing");
    insist(countOf(again, RowFate::Again) == countOf(list, RowFate::Taken) + countOf(list, RowFate::Again),
           "what was taken is found again");
    return 0;
}
