#include "papers/papers.h"

#include "papers/findingssheet.h"
#include "papers/functiontest.h"
#include "papers/locksheet.h"
#include "papers/metersheet.h"
#include "papers/partslist.h"
#include "papers/powerforms.h"
#include "papers/pulllist.h"
#include "papers/ringoutsheet.h"
#include "papers/scheduleforms.h"
#include "papers/settingssheet.h"
#include "papers/tags.h"

namespace doorloom {
namespace {

std::string scheduleAsText(const Job& job, const PaperSetup& setup)
{
    return scheduleText(scheduleOf(job, setup.digest), setup.language);
}

std::string scheduleAsCsv(const Job& job, const PaperSetup& setup)
{
    return scheduleCsv(scheduleOf(job, setup.digest), setup.language);
}

std::string tagsAsText(const Job& job, const PaperSetup& setup)
{
    return tagsText(tagsOf(job, setup.digest), setup.language);
}

std::string tagsAsCsv(const Job& job, const PaperSetup& setup)
{
    return tagsCsv(tagsOf(job, setup.digest), setup.language);
}

std::string powerAsText(const Job& job, const PaperSetup& setup)
{
    return powerText(powerOf(job, setup.digest), setup.language);
}

std::string powerAsCsv(const Job& job, const PaperSetup& setup)
{
    return powerCsv(powerOf(job, setup.digest), setup.language);
}

TablePaper pullAsTables(const Job& job, const PaperSetup& setup)
{
    return pullTables(job, pullListOf(job, setup.digest), setup.language);
}

std::string pullAsCsv(const Job& job, const PaperSetup& setup)
{
    return pullCsv(job, pullListOf(job, setup.digest));
}

TablePaper settingsAsTables(const Job& job, const PaperSetup& setup)
{
    return settingsTables(job, settingsOf(job, setup.digest), setup.language);
}

std::string settingsAsCsv(const Job& job, const PaperSetup& setup)
{
    return settingsCsv(job, settingsOf(job, setup.digest), setup.language);
}

TablePaper partsAsTables(const Job& job, const PaperSetup& setup)
{
    return partsTables(partsOf(job, setup.digest), setup.language);
}

std::string partsAsCsv(const Job& job, const PaperSetup& setup)
{
    return partsCsv(partsOf(job, setup.digest), setup.language);
}

TablePaper ringOutAsTables(const Job& job, const PaperSetup& setup)
{
    return ringOutTables(job, setup.digest, setup.language);
}

std::string ringOutAsCsv(const Job& job, const PaperSetup& setup)
{
    return tableCsv(ringOutAsTables(job, setup), {"what", "lift", "red_on", "black_on", "position", "reads", "read", "initials"});
}

TablePaper meterAsTables(const Job& job, const PaperSetup& setup)
{
    return meterTables(job, setup.digest, setup.language);
}

std::string meterAsCsv(const Job& job, const PaperSetup& setup)
{
    return tableCsv(meterAsTables(job, setup), {"what", "red_on", "black_on", "current", "at_rest", "from_to", "on_battery", "read", "initials"});
}

TablePaper locksAsTables(const Job& job, const PaperSetup& setup)
{
    return lockTables(job, setup.digest, setup.language);
}

std::string locksAsCsv(const Job& job, const PaperSetup& setup)
{
    return tableCsv(locksAsTables(job, setup), {"situation", "lock", "does", "promised", "kept"});
}

TablePaper functionTestAsTables(const Job& job, const PaperSetup& setup)
{
    return functionTestTables(job, setup.digest, setup.language);
}

std::string functionTestAsCsv(const Job& job, const PaperSetup& setup)
{
    return tableCsv(functionTestAsTables(job, setup), {"step", "do", "see", "seen", "initials"});
}

TablePaper findingsAsTables(const Job& job, const PaperSetup& setup)
{
    return findingsTables(job, setup.digest, setup.language);
}

std::string findingsAsCsv(const Job& job, const PaperSetup& setup)
{
    return tableCsv(findingsAsTables(job, setup), {"severity", "where", "what", "when", "to_do", "done"});
}

} // namespace

static const Paper schedulePaper{"schedule", scheduleTitle, nullptr, scheduleAsText, scheduleAsCsv};
static const Paper tagsPaper{"tags", tagsTitle, nullptr, tagsAsText, tagsAsCsv};
static const Paper powerPaper{"power", powerTitle, nullptr, powerAsText, powerAsCsv};
static const Paper pullPaper{"pull", pullTitle, pullAsTables, nullptr, pullAsCsv};
static const Paper settingsPaper{"settings", settingsTitle, settingsAsTables, nullptr, settingsAsCsv};
static const Paper partsPaper{"parts", partsTitle, partsAsTables, nullptr, partsAsCsv};
static const Paper ringOutPaper{"ring-out", ringOutTitle, ringOutAsTables, nullptr, ringOutAsCsv};
static const Paper meterPaper{"meter", meterTitle, meterAsTables, nullptr, meterAsCsv};
static const Paper locksPaper{"locks", locksTitle, locksAsTables, nullptr, locksAsCsv};
static const Paper functionTestPaper{"function-test", functionTestTitle, functionTestAsTables, nullptr, functionTestAsCsv};
static const Paper findingsPaper{"findings", findingsTitle, findingsAsTables, nullptr, findingsAsCsv};
static const Paper* const papers[] = {&schedulePaper, &tagsPaper,  &pullPaper,  &settingsPaper,     &powerPaper,   &partsPaper,
                                      &ringOutPaper,  &meterPaper, &locksPaper, &functionTestPaper, &findingsPaper};

std::string textOf(const Paper& paper, const Job& job, const PaperSetup& setup)
{
    std::string text;
    for (const Message& danger : setup.dangers)
        text += inWords(danger, setup.language) + "\n";
    return text + (paper.tables ? tableText(paper.tables(job, setup), setup.language) : paper.text(job, setup));
}

std::span<const Paper* const> allPapers()
{
    return papers;
}

const Paper* paperNamed(std::string_view name)
{
    for (const Paper* paper : papers)
        if (paper->name == name)
            return paper;
    return nullptr;
}

std::string namesOfPapers()
{
    std::string names;
    for (const Paper* paper : papers)
        names += (names.empty() ? "" : ", ") + std::string(paper->name);
    return names;
}

Language languageOf(const Job& job)
{
    const bool spanishAlone = !job.info.empty() && job.info.begin()->spanish && !job.info.begin()->english;
    return spanishAlone ? Language::Spanish : Language::English;
}

} // namespace doorloom
