#include "edit/change.h"
#include "edit/drawing.h"
#include "file/fragment.h"
#include "fuzz/insist.h"

#include <algorithm>
#include <string>

namespace {

using namespace doorloom;

// Pastes and gives what was pasted as it would be copied again. Nothing: it was refused.
std::string pastedInto(Job& job, std::string_view text, SheetId sheet)
{
    const Job before = job;
    Numbers numbers(job);
    const Result<Pasted> read = pasted(job, numbers, text, {.sheet = sheet, .by = {100, 100}});
    if (!read.ok()) {
        if (isCopiedText(text)) // else there is no line to name
            insistOnWords(read.problem());
        return {};
    }
    const Result<Change> back = applyChange(job, read.value().change);
    insist(back.ok(), "what was read can be pasted");
    insist(verifyJob(job).empty(), "what was pasted keeps every promise of the model");
    Job undone = job;
    insist(applyChange(undone, back.value()).ok() && undone == before, "undo takes it away again");
    return copiedText(job, read.value().rows);
}

void paste(std::string_view text)
{
    Job job;
    Numbers numbers(job);
    const auto sheet = addSheet(job, numbers, "1");
    insist(sheet.ok() && applyChange(job, sheet.value().second).ok(), "a job has a sheet");
    const std::string again = pastedInto(job, text, sheet.value().first);
    if (!again.empty())
        insist(!pastedInto(job, again, sheet.value().first).empty(), "what was copied is pasted beside it");
    pastedInto(job, text, {}); // drawn nowhere
}

} // namespace

// Any bytes are pasted or refused in words; what is pasted can be undone, copied and pasted again.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    const std::string_view text = textOf(data, size);
    paste(text);
    if (!isCopiedText(text)) // so that the fuzzer gets behind the first line
        paste("doorloom part\n" + std::string(text));
    return 0;
}
