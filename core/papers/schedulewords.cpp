#include "model/colours.h"
#include "papers/schedule.h"

#include <fmt/format.h>

namespace doorloom {

constinit const Text scheduleTitle = {.en = "Terminal schedule", .es = "Lista de bornes"};

namespace {

constexpr Text heads[scheduleColumns] = {
    {.en = "Terminal", .es = "Borne"},
    {.en = "As set", .es = "Según ajuste"},
    {.en = "Wire", .es = "Hilo"},
    {.en = "Colour", .es = "Color"},
    {.en = "Tag", .es = "Etiqueta"},
    {.en = "Gauge", .es = "Calibre"},
    {.en = "Also in clamp", .es = "También en el borne"},
    {.en = "Carries", .es = "Lleva"},
    {.en = "Goes to", .es = "Va a"},
    {.en = "At", .es = "En"},
    {.en = "Landed", .es = "Conectado"},
    {.en = "Tugged, checked", .es = "Tirado, revisado"},
};

constexpr Text here = {.en = "here", .es = "aquí"};
constexpr Text placeNotSaid = {.en = "place not said yet", .es = "lugar aún sin indicar"};
constexpr Text looseWires = {.en = "Loose wires", .es = "Cables sueltos"};
constexpr Text farSpare = {.en = "spare, capped", .es = "reserva, tapado"};
constexpr Text farWaiting = {.en = "NOT LANDED YET", .es = "AÚN SIN CONECTAR"};
constexpr Text farInsulated = {.en = "insulated", .es = "aislado"};
constexpr Text thereAlready = {.en = "existing ☐", .es = "existente ☐"};
constexpr Text moveHere = {.en = "move ☐", .es = "mover ☐"};
constexpr Text leave = {.en = "existing: leave", .es = "existente: no tocar"};
constexpr Text byOthers = {.en = "by others", .es = "de otros"};
constexpr Text breakerWords = {.en = "breaker {breaker}", .es = "interruptor {breaker}"};
constexpr Text countBack = {.en = "Count back: {counts}.", .es = "Cuente de nuevo: {counts}."};
constexpr Text stripWords = {.en = "strip: {strip}", .es = "regleta: {strip}"};
constexpr Text wholeJob = {.en = "Whole job. {counts}", .es = "Toda la obra. {counts}"};
constexpr Text nothingToCount = {.en = "Nothing to count back.", .es = "Nada que contar."};
constexpr Text oneLanding = {.en = "1 landing", .es = "1 conexión"};
constexpr Text manyLandings = {.en = "{count} landings", .es = "{count} conexiones"};
constexpr Text oneEmpty = {.en = "1 empty terminal", .es = "1 borne vacío"};
constexpr Text manyEmpty = {.en = "{count} empty terminals", .es = "{count} bornes vacíos"};
constexpr Text oneSpare = {.en = "1 spare core end", .es = "1 extremo de reserva"};
constexpr Text manySpare = {.en = "{count} spare core ends", .es = "{count} extremos de reserva"};
constexpr Text oneWaiting = {.en = "1 end WAITING", .es = "1 extremo PENDIENTE"};
constexpr Text manyWaiting = {.en = "{count} ends WAITING", .es = "{count} extremos PENDIENTES"};

constexpr const char* nothing = "–";
constexpr const char* box = "☐";

std::string orNothing(std::string words)
{
    return words.empty() ? nothing : std::move(words);
}

std::string joined(const std::vector<Message>& messages, Language language)
{
    std::string all;
    for (const Message& message : messages)
        all += (all.empty() ? "" : ", ") + inWords(message, language);
    return all;
}

std::string spaced(std::initializer_list<std::string> words, const char* between)
{
    std::string all;
    for (const std::string& word : words)
        if (!word.empty())
            all += (all.empty() ? "" : between) + word;
    return all;
}

std::string farInWords(const FarEnd& far, Language language)
{
    switch (far.state) {
    case EndState::Spare:
        return std::string(inWords(farSpare, language));
    case EndState::Waiting:
        return std::string(inWords(farWaiting, language));
    case EndState::Insulated:
        return std::string(inWords(farInsulated, language));
    case EndState::Landed:
        break;
    }
    return far.terminal.empty() ? far.device : far.device + ":" + far.terminal;
}

std::string farPlaceInWords(const FarEnd& far, Language language)
{
    if (far.sameBox)
        return std::string(inWords(here, language));
    return spaced({far.box, far.boxWords}, " ");
}

std::string landedCell(Standing standing, Language language)
{
    switch (standing) {
    case Standing::New:
        return box;
    case Standing::Existing:
        return std::string(inWords(thereAlready, language));
    case Standing::Moved:
        return std::string(inWords(moveHere, language));
    case Standing::ByOthers:
        return std::string(inWords(byOthers, language));
    case Standing::LeaveAlone:
        break;
    }
    return std::string(inWords(leave, language));
}

bool hasConductor(RowKind kind)
{
    return kind != RowKind::Empty && kind != RowKind::Link && kind != RowKind::Bare;
}

void fillTicks(const ScheduleRow& row, ScheduleCells& cells, Language language)
{
    if (row.kind != RowKind::Waiting)
        cells[LandedColumn] = landedCell(row.standing, language);
    if (row.standing != Standing::LeaveAlone)
        cells[CheckedColumn] = box;
}

} // namespace

ScheduleCells headCells(Language language)
{
    ScheduleCells cells;
    for (std::size_t column = 0; column < scheduleColumns; ++column)
        cells[column] = inWords(heads[column], language);
    return cells;
}

ScheduleCells cellsOf(const ScheduleRow& row, Language language)
{
    ScheduleCells cells;
    cells.fill(nothing);
    const std::string note = inWords(row.note, language);
    cells[TerminalColumn] = orNothing(row.terminal);
    cells[SignColumn] = orNothing(joined(row.signs, language));
    if (!hasConductor(row.kind)) {
        cells[WireColumn] = note;
        return cells;
    }
    cells[WireColumn] = orNothing(inWords(row.wire, language));
    cells[ColourColumn] = orNothing(spaced({row.colour, inWords(colourInWords(row.colour), language)}, " "));
    cells[TagColumn] = orNothing(row.tag);
    cells[GaugeColumn] = orNothing(row.gauge);
    cells[AlsoColumn] = orNothing(fmt::format("{}", fmt::join(row.alsoInClamp, ", ")));
    cells[CarriesColumn] = orNothing(inWords(row.carries, language));
    if (row.kind !=
        RowKind::Landing) // the end itself lies loose: say what to do with it where a landing says its sign
        cells[SignColumn] = note;
    cells[FarColumn] = orNothing(farInWords(row.far, language));
    cells[PlaceColumn] = orNothing(farPlaceInWords(row.far, language));
    fillTicks(row, cells, language);
    return cells;
}

std::string headingOf(const ScheduleBox& place, Language language)
{
    if (place.tag.empty() && place.words.empty())
        return std::string(inWords(placeNotSaid, language));
    const std::string breaker =
        place.breaker.empty() ? "" : inWords(Message(breakerWords, {{"breaker", place.breaker}}), language);
    return spaced({place.tag, place.words, breaker}, " · ");
}

std::string nameOf(const ScheduleBlock& block, Language language)
{
    return block.tag.empty() ? std::string(inWords(looseWires, language)) : block.tag;
}

std::string aboutOf(const ScheduleBlock& block, Language language)
{
    return spaced({block.words, inWords(block.title, language), block.kindName}, " · ");
}

Message countsInWords(const Counts& counts)
{
    std::vector<Message> each;
    const auto add = [&](int count, Text one, Text many) {
        each.push_back(count == 1 ? Message(one) : Message(many, {{"count", std::to_string(count)}}));
    };
    if (counts.landings)
        add(counts.landings, oneLanding, manyLandings);
    if (counts.empties)
        add(counts.empties, oneEmpty, manyEmpty);
    if (counts.spares)
        add(counts.spares, oneSpare, manySpare);
    if (counts.waiting)
        add(counts.waiting, oneWaiting, manyWaiting);
    return each.empty() ? Message(nothingToCount) : Message(countBack, {{"counts", each}});
}

Message wholeJobInWords(const Counts& counts)
{
    return {wholeJob, {{"counts", std::vector{countsInWords(counts)}}}};
}

Message stripInWords(const Words& strip)
{
    return {stripWords, {{"strip", strip}}};
}

} // namespace doorloom
