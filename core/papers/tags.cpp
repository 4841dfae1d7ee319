#include "papers/tags.h"

#include "papers/columns.h"
#include "papers/csv.h"
#include "papers/naturalorder.h"

#include <algorithm>
#include <map>

namespace doorloom {

constinit const Text tagsTitle = {.en = "Tags", .es = "Etiquetas"};

namespace {

constexpr Text toFarEnd = {.en = "to {far}", .es = "a {far}"};
constexpr Text farLoose = {.en = "far end {state}", .es = "otro extremo {state}"};
constexpr Text spareHere = {.en = "SPARE", .es = "RESERVA"};
constexpr Text waitingHere = {.en = "WAITING", .es = "PENDIENTE"};
constexpr Text insulatedHere = {.en = "INSULATED", .es = "AISLADO"};
constexpr Text cableWay = {.en = "{type}, {from} to {to}", .es = "{type}, {from} a {to}"};
constexpr Text nowhere = {.en = "?", .es = "?"};
constexpr Text heads[] = {{.en = "Kind", .es = "Tipo"},     {.en = "Large", .es = "Grande"},
                          {.en = "Small", .es = "Pequeño"}, {.en = "Conductor", .es = "Conductor"},
                          {.en = "Cable", .es = "Cable"},   {.en = "Colour", .es = "Color"}};
constexpr Text kinds[] = {{.en = "conductor end", .es = "extremo de hilo"},
                          {.en = "cable", .es = "cable"},
                          {.en = "device", .es = "equipo"}};
constexpr const char* names[] = {"conductor", "cable", "device"};

Text stateWords(EndState state)
{
    return state == EndState::Spare ? spareHere : state == EndState::Insulated ? insulatedHere : waitingHere;
}

Message farOf(const ScheduleRow& row)
{
    if (row.far.state != EndState::Landed)
        return {farLoose, {{"state", std::vector{Message(stateWords(row.far.state))}}}};
    return {toFarEnd, {{"far", row.far.device + (row.far.terminal.empty() ? "" : ":" + row.far.terminal)}}};
}

Text looseName(RowKind kind)
{
    return kind == RowKind::Spare ? spareHere : kind == RowKind::Insulated ? insulatedHere : waitingHere;
}

Message hereOf(const ScheduleBlock& block, const ScheduleRow& row)
{
    if (row.kind != RowKind::Landing)
        return looseName(row.kind);
    return verbatim(block.tag + (row.terminal.empty() ? "" : ":" + row.terminal));
}

Tag tagIn(const ScheduleBox& box, TagKind kind, Message large, Message small)
{
    Tag tag;
    tag.kind = kind;
    tag.box = box.tag;
    tag.boxWords = box.words;
    tag.large = std::move(large);
    tag.small = std::move(small);
    return tag;
}

void addDevices(std::vector<Tag>& tags, const ScheduleBox& box)
{
    for (const ScheduleBlock& block : box.blocks)
        if (block.kind == BlockKind::Device)
            tags.push_back(tagIn(box, TagKind::Device, verbatim(block.tag),
                                 block.words.empty() ? block.title : verbatim(block.words)));
}

void addEnds(std::vector<Tag>& tags, const ScheduleBox& box)
{
    for (const ScheduleBlock& block : box.blocks)
        for (const ScheduleRow& row : block.rows) {
            if (!row.conductor)
                continue;
            Tag tag = tagIn(box, TagKind::ConductorEnd, hereOf(block, row), farOf(row));
            tag.conductor = row.tag;
            tag.cable = row.cable;
            tag.core = row.core;
            tag.colour = row.colour;
            tags.push_back(std::move(tag));
        }
}

Message placeInWords(const Job& job, PlaceId id)
{
    const Place* place = job.places.find(id);
    if (!place || (place->tag.empty() && place->words.empty()))
        return nowhere;
    return verbatim(place->tag.empty() ? place->words : place->tag);
}

Tag cableTagAt(const Job& job, const Cable& cable, const ScheduleBox& box)
{
    const CableType* type = job.cableTypes.find(cable.type);
    Tag tag = tagIn(box, TagKind::Cable, verbatim(cable.tag),
                    {cableWay,
                     {{"type", type ? type->name : std::string("?")},
                      {"from", std::vector{placeInWords(job, cable.from)}},
                      {"to", std::vector{placeInWords(job, cable.to)}}}});
    tag.cable = cable.tag;
    return tag;
}

// One label for each end of each cable, by the place of the end.
std::map<std::uint32_t, std::vector<const Cable*>> cableEndsByPlace(const Job& job)
{
    std::map<std::uint32_t, std::vector<const Cable*>> ends;
    for (const Cable& cable : job.cables) {
        ends[cable.from.number].push_back(&cable);
        ends[cable.to.number].push_back(&cable);
    }
    for (auto& [place, cables] : ends)
        std::stable_sort(cables.begin(), cables.end(),
                         [](const Cable* a, const Cable* b) { return naturallyLess(a->tag, b->tag); });
    return ends;
}

} // namespace

TagSheet tagsOf(const Job& job, std::string digest)
{
    const Schedule schedule = scheduleOf(job, std::move(digest));
    auto cables = cableEndsByPlace(job);
    TagSheet sheet{schedule.title, {}};
    for (const ScheduleBox& box : schedule.boxes) {
        addDevices(sheet.tags, box);
        for (const Cable* cable : cables[box.place.number])
            sheet.tags.push_back(cableTagAt(job, *cable, box));
        cables.erase(box.place.number);
        addEnds(sheet.tags, box);
    }
    for (const auto& [place, here] : cables) // where a cable passes and nothing is landed
        for (const Cable* cable : here)
            sheet.tags.push_back(cableTagAt(job, *cable, boxAt(job, {place})));
    return sheet;
}

std::string tagsText(const TagSheet& sheet, Language language)
{
    std::vector<std::vector<std::string>> rows;
    rows.push_back({std::string(inWords(tagsTitle, language)) + ": " +
                    inWords(jobInWords(sheet.title), language)});
    rows.push_back({inWords(revisionLine(sheet.title), language)});
    const Tag* last = nullptr;
    for (const Tag& tag : sheet.tags) {
        if (!last || last->box != tag.box || last->boxWords != tag.boxWords) {
            ScheduleBox box;
            box.tag = tag.box;
            box.words = tag.boxWords;
            rows.push_back({""});
            rows.push_back({headingOf(box, language)});
            rows.emplace_back();
            for (const Text& head : heads)
                rows.back().emplace_back(inWords(head, language));
        }
        last = &tag;
        rows.push_back(
            {std::string(inWords(kinds[static_cast<std::size_t>(tag.kind)], language)), inWords(tag.large, language),
             inWords(tag.small, language), tag.conductor.empty() ? "–" : tag.conductor,
             tag.cable.empty() ? "–" : tag.cable + (tag.core ? "." + std::to_string(tag.core) : ""),
             tag.colour.empty() ? "–" : tag.colour});
    }
    return alignedColumns(rows);
}

std::string tagsCsv(const TagSheet& sheet, Language language)
{
    std::string csv = csvRow(
        {"tag", "box", "box_name", "large", "small", "conductor", "cable", "core", "colour", "digest"});
    for (const Tag& tag : sheet.tags)
        csv += csvRow({names[static_cast<std::size_t>(tag.kind)], tag.box, tag.boxWords, inWords(tag.large, language),
                       inWords(tag.small, language), tag.conductor, tag.cable,
                       tag.core ? std::to_string(tag.core) : "", tag.colour, sheet.title.digest});
    return csv;
}

} // namespace doorloom
