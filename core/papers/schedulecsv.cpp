#include "model/colours.h"
#include "papers/csv.h"
#include "papers/scheduleforms.h"

#include <fmt/format.h>

namespace doorloom {
namespace {

const std::vector<std::string> columns = {
    "box",      "box_name", "device",       "device_name", "kind",         "options",   "settings",
    "standing", "strip",    "terminal",     "as_set",      "row",          "cable",     "core",
    "pair",     "colour",   "colour_words", "wire",        "conductor",    "gauge",     "also_in_clamp",
    "carries",  "far_box",  "far_box_name", "far_device",  "far_terminal", "far_state", "note",
    "landed",   "checked",  "job",          "revision",    "digest"};

std::string nameOf(RowKind kind)
{
    switch (kind) {
    case RowKind::Landing:
        return "landing";
    case RowKind::Empty:
        return "empty";
    case RowKind::Link:
        return "link";
    case RowKind::Spare:
        return "spare";
    case RowKind::Waiting:
        return "waiting";
    case RowKind::Insulated:
        return "insulated";
    case RowKind::Bare:
        break;
    }
    return "bare";
}

std::string nameOf(Standing standing)
{
    switch (standing) {
    case Standing::New:
        return "new";
    case Standing::Existing:
        return "existing";
    case Standing::Moved:
        return "moved";
    case Standing::ByOthers:
        return "by others";
    case Standing::LeaveAlone:
        break;
    }
    return "leave alone";
}

std::string nameOf(EndState state)
{
    switch (state) {
    case EndState::Waiting:
        return "waiting";
    case EndState::Landed:
        return "landed";
    case EndState::Spare:
        return "spare";
    case EndState::Insulated:
        break;
    }
    return "insulated";
}

std::string numberOrNothing(int number)
{
    return number ? std::to_string(number) : std::string();
}

std::string signsOf(const ScheduleRow& row, Language language)
{
    std::string signs;
    for (const Message& sign : row.signs)
        signs += (signs.empty() ? "" : ", ") + inWords(sign, language);
    return signs;
}

std::string lineOf(const Schedule& schedule, const ScheduleBox& box, const ScheduleBlock& block,
                   const ScheduleRow& row, Language language)
{
    const bool hasFarEnd = row.conductor || row.kind == RowKind::Link;
    const ScheduleCells cells = cellsOf(row, language);
    const auto tick = [&](ScheduleColumn column) { return row.conductor ? cells[column] : std::string(); };
    return csvRow({box.tag,
                   box.words,
                   block.kind == BlockKind::LooseEnds ? "" : block.tag,
                   block.words,
                   block.kindName,
                   block.options,
                   block.settings,
                   nameOf(row.standing),
                   inWords(row.strip, language),
                   row.terminal,
                   signsOf(row, language),
                   nameOf(row.kind),
                   row.cable,
                   numberOrNothing(row.core),
                   numberOrNothing(row.pair),
                   row.colour,
                   inWords(colourInWords(row.colour), language),
                   inWords(row.wire, language),
                   row.tag,
                   row.gauge,
                   fmt::format("{}", fmt::join(row.alsoInClamp, "; ")),
                   inWords(row.carries, language),
                   hasFarEnd ? row.far.box : "",
                   hasFarEnd ? row.far.boxWords : "",
                   hasFarEnd ? row.far.device : "",
                   hasFarEnd ? row.far.terminal : "",
                   hasFarEnd ? nameOf(row.far.state) : "",
                   inWords(row.note, language),
                   tick(LandedColumn),
                   tick(CheckedColumn),
                   schedule.title.number,
                   schedule.title.revision,
                   schedule.title.digest});
}

} // namespace

std::string scheduleCsv(const Schedule& schedule, Language language)
{
    std::string csv = csvRow(columns);
    for (const ScheduleBox& box : schedule.boxes)
        for (const ScheduleBlock& block : box.blocks)
            for (const ScheduleRow& row : block.rows)
                csv += lineOf(schedule, box, block, row, language);
    return csv;
}

} // namespace doorloom
