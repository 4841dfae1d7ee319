#include "papers/papers.h"

#include "papers/partslist.h"
#include "papers/powerforms.h"
#include "papers/pulllist.h"
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

std::string pullAsText(const Job& job, const PaperSetup& setup)
{
    return tableText(pullTables(job, pullListOf(job, setup.digest), setup.language), setup.language);
}

std::string pullAsCsv(const Job& job, const PaperSetup& setup)
{
    return pullCsv(job, pullListOf(job, setup.digest));
}

std::string settingsAsText(const Job& job, const PaperSetup& setup)
{
    return tableText(settingsTables(job, settingsOf(job, setup.digest), setup.language), setup.language);
}

std::string settingsAsCsv(const Job& job, const PaperSetup& setup)
{
    return settingsCsv(job, settingsOf(job, setup.digest), setup.language);
}

std::string partsAsText(const Job& job, const PaperSetup& setup)
{
    return tableText(partsTables(partsOf(job, setup.digest), setup.language), setup.language);
}

std::string partsAsCsv(const Job& job, const PaperSetup& setup)
{
    return partsCsv(partsOf(job, setup.digest), setup.language);
}

} // namespace

static const Paper schedulePaper{"schedule", scheduleTitle, scheduleAsText, scheduleAsCsv};
static const Paper tagsPaper{"tags", tagsTitle, tagsAsText, tagsAsCsv};
static const Paper powerPaper{"power", powerTitle, powerAsText, powerAsCsv};
static const Paper pullPaper{"pull", pullTitle, pullAsText, pullAsCsv};
static const Paper settingsPaper{"settings", settingsTitle, settingsAsText, settingsAsCsv};
static const Paper partsPaper{"parts", partsTitle, partsAsText, partsAsCsv};
static const Paper* const papers[] = {&schedulePaper, &tagsPaper, &pullPaper, &settingsPaper, &powerPaper, &partsPaper};

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
