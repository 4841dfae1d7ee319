#include "papers/columns.h"
#include "papers/scheduleforms.h"

namespace doorloom {
namespace {

using Rows = std::vector<std::vector<std::string>>;

constexpr const char* indent = "  ";

void addCells(Rows& rows, const ScheduleCells& cells)
{
    rows.emplace_back(cells.begin(), cells.end());
    rows.back().front().insert(0, indent);
}

void addBlock(Rows& rows, const ScheduleBlock& block, Language language)
{
    rows.push_back({""});
    rows.push_back({nameOf(block, language) + " · " + aboutOf(block, language)});
    for (const auto* lines : {&block.before, &block.facts})
        for (const Message& line : *lines)
            rows.push_back({indent + inWords(line, language)});
    addCells(rows, headCells(language));
    const Words* strip = nullptr;
    for (const ScheduleRow& row : block.rows) {
        if (block.showsStrips && (!strip || *strip != row.strip)) {
            strip = &row.strip;
            rows.push_back({indent + inWords(stripInWords(row.strip), language)});
        }
        addCells(rows, cellsOf(row, language));
    }
    rows.push_back({indent + inWords(countsInWords(block.counts), language)});
}

void addBox(Rows& rows, const ScheduleBox& box, Language language)
{
    const std::string heading = headingOf(box, language);
    rows.push_back({""});
    rows.push_back({heading});
    rows.push_back({std::string(lettersIn(heading), '=')});
    for (const ScheduleBlock& block : box.blocks)
        addBlock(rows, block, language);
    rows.push_back({""});
    rows.push_back({box.tag + (box.tag.empty() ? "" : ". ") + inWords(countsInWords(box.counts), language)});
}

void addTitle(Rows& rows, const TitleBlock& title, Language language)
{
    rows.push_back({std::string(inWords(scheduleTitle, language)) + ": " +
                    inWords(jobInWords(title), language)});
    for (const Message& line : titleLines(title))
        rows.push_back({inWords(line, language)});
    rows.push_back({inWords(revisionLine(title), language)});
    rows.push_back({std::string(inWords(unitsLine, language))});
    for (const Language each : {Language::English, Language::Spanish}) {
        rows.push_back({""});
        for (const Message& caution : cautions())
            rows.push_back({"! " + inWords(caution, each)});
    }
}

} // namespace

std::string scheduleText(const Schedule& schedule, Language language)
{
    Rows rows;
    addTitle(rows, schedule.title, language);
    for (const ScheduleBox& box : schedule.boxes)
        addBox(rows, box, language);
    rows.push_back({""});
    rows.push_back({inWords(wholeJobInWords(schedule.counts), language)});
    rows.push_back({std::string(inWords(shortCaution, language))});
    return alignedColumns(rows);
}

} // namespace doorloom
