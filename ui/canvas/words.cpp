#include "canvas/words.h"

#include <algorithm>
#include <vector>

namespace doorloom {
namespace {

constexpr Text noWay = {.en = "{conductor}. No way round was found for it: it is drawn straight across.",
                        .es = "{conductor}. No se halló cómo rodear: se dibuja en línea recta."};
constexpr Text device = {.en = "{tag}: {kind}", .es = "{tag}: {kind}"};
constexpr Text deviceAt = {.en = "{tag}: {kind}, at {place}", .es = "{tag}: {kind}, en {place}"};
constexpr Text terminal = {.en = "{name}: {words}", .es = "{name}: {words}"};
constexpr Text terminalAndLanded = {.en = "{terminal}. {landed}", .es = "{terminal}. {landed}"};
constexpr Text splice = {.en = "Splice {tag}", .es = "Empalme {tag}"};
constexpr Text nothingLanded = {.en = "Nothing is landed here.", .es = "No hay nada conectado aquí."};
constexpr Text landed = {.en = "Landed: {list}.", .es = "Conectado: {list}."};
constexpr Text wayTo = {.en = "{what} to {end}", .es = "{what} a {end}"};
constexpr Text wayFromTo = {.en = "{what} from {start} to {end}", .es = "{what} de {start} a {end}"};
constexpr Text core = {.en = "{colour} core of {cable}", .es = "hilo {colour} de {cable}"};
constexpr Text plainCore = {.en = "core {number} of {cable}", .es = "hilo {number} de {cable}"};
constexpr Text drain = {.en = "drain of {cable}", .es = "hilo de drenaje de {cable}"};
constexpr Text wire = {.en = "{colour} wire {tag}", .es = "conductor {colour} {tag}"};
constexpr Text lead = {.en = "{colour} lead {tag}", .es = "cable propio {colour} {tag}"};
constexpr Text waiting = {.en = "an end that waits", .es = "un extremo en espera"};
constexpr Text spare = {.en = "a capped end", .es = "un extremo reservado"};
constexpr Text insulated = {.en = "an end insulated on purpose", .es = "un extremo aislado a propósito"};
constexpr Text cable = {.en = "Cable {tag}, {type}, from {from} to {to}",
                        .es = "Cable {tag}, {type}, de {from} a {to}"};
constexpr Text cableWaiting = {.en = "{cable}. Ends that wait: {count}",
                               .es = "{cable}. Extremos en espera: {count}"};
constexpr Text placeNotSaid = {.en = "a place not said yet", .es = "un lugar aún sin decir"};
constexpr Text place = {.en = "{tag}: {words}", .es = "{tag}: {words}"};

std::vector<Message> one(Message message)
{
    return {std::move(message)};
}

Message endWords(const Job& job, const End& end)
{
    if (const Landing* landing = landingOf(end))
        return verbatim(nameOfPoint(job, *landing));
    if (const SpliceId* joint = spliceOf(end))
        return verbatim(nameOfPoint(job, *joint));
    return end.state == EndState::Spare ? spare : end.state == EndState::Insulated ? insulated : waiting;
}

Message madeWords(const Job& job, const Conductor& conductor)
{
    const std::string colour = colourOf(job, conductor);
    if (conductor.make != ConductorMake::Core)
        return {conductor.make == ConductorMake::Lead ? lead : wire,
                {{"colour", colour}, {"tag", conductor.tag}}};
    const Cable* of = job.cables.find(conductor.cable);
    const std::string tag = of ? of->tag : std::string();
    const Core* row = coreOf(job, conductor);
    if (row && row->drain)
        return {drain, {{"cable", tag}}};
    if (colour.empty())
        return {plainCore, {{"number", std::to_string(conductor.core)}, {"cable", tag}}};
    return {core, {{"colour", colour}, {"cable", tag}}};
}

bool isOn(const End& end, const LandingPoint& point)
{
    return end == landedAt(point);
}

Message placeName(const Job& job, PlaceId id)
{
    const Place* row = job.places.find(id);
    return row ? verbatim(row->tag) : Message{placeNotSaid};
}

} // namespace

Message deviceWords(const Job& job, const Device& row)
{
    const Kind* kind = kindOf(job, row);
    const Words title = kind ? kind->title : Words{};
    if (const Place* at = job.places.find(row.place))
        return {deviceAt, {{"tag", row.tag}, {"kind", title}, {"place", at->tag}}};
    return {device, {{"tag", row.tag}, {"kind", title}}};
}

Message terminalName(const Job& job, const Landing& landing)
{
    const Kind* kind = kindOf(job, landing.device);
    const Terminal* row = kind ? findTerminal(*kind, landing.terminal) : nullptr;
    return {terminal, {{"name", nameOf(job, landing)}, {"words", row ? row->words : Words{}}}};
}

Message landedOn(const Job& job, const LandingPoint& point)
{
    const std::uint32_t number = std::visit(
        [](const auto& on) {
            if constexpr (std::is_same_v<std::decay_t<decltype(on)>, Landing>)
                return on.device.number;
            else
                return on.number;
        },
        point);
    std::vector<Message> list;
    for (const std::uint32_t referrer : referrersOf(job, number))
        if (const Conductor* row = job.conductors.find({referrer}))
            for (const WhichEnd which : {WhichEnd::From, WhichEnd::To})
                if (isOn(endOf(*row, which), point))
                    list.push_back({wayTo,
                                    {{"what", one(madeWords(job, *row))},
                                     {"end", one(endWords(job, endOf(*row, otherEnd(which))))}}});
    if (list.empty())
        return nothingLanded;
    return {landed, {{"list", list}}};
}

Message conductorWords(const Job& job, const Conductor& row)
{
    return {wayFromTo,
            {{"what", one(madeWords(job, row))},
             {"start", one(endWords(job, row.from))},
             {"end", one(endWords(job, row.to))}}};
}

Message cableWords(const Job& job, const Cable& row)
{
    const CableType* type = job.cableTypes.find(row.type);
    const Message plain{cable,
                        {{"tag", row.tag},
                         {"type", type ? type->name : std::string()},
                         {"from", one(placeName(job, row.from))},
                         {"to", one(placeName(job, row.to))}}};
    int count = 0;
    for (const Conductor* each : coresOf(job, row.id))
        count +=
            (each->from.state == EndState::Waiting ? 1 : 0) + (each->to.state == EndState::Waiting ? 1 : 0);
    return count == 0 ? plain
                      : Message{cableWaiting, {{"cable", one(plain)}, {"count", std::to_string(count)}}};
}

Message wordsOf(const Job& job, const Drawing& drawing, const Hit& hit)
{
    switch (hit.what) {
    case Hit::What::Terminal:
        if (const auto point = landingPointOf(drawing, hit))
            return {terminalAndLanded,
                    {{"terminal", one(terminalName(job, std::get<Landing>(*point)))},
                     {"landed", one(landedOn(job, *point))}}};
        break;
    case Hit::What::Device:
        if (const Device* row = job.devices.find({hit.row}))
            return deviceWords(job, *row);
        break;
    case Hit::What::Splice:
        if (const Splice* row = job.splices.find({hit.row}))
            return {terminalAndLanded,
                    {{"terminal", one({splice, {{"tag", row->tag}}})},
                     {"landed", one(landedOn(job, SpliceId{hit.row}))}}};
        break;
    case Hit::What::ConductorEnd:
    case Hit::What::Conductor:
        if (const Conductor* row = job.conductors.find({hit.row})) {
            const ConductorDrawn* drawn = drawing.conductors().find(hit.row);
            const Message words = conductorWords(job, *row);
            if (drawn && !drawn->straight.empty())
                return {noWay, {{"conductor", one(words)}}};
            return words;
        }
        break;
    case Hit::What::Ring:
    case Hit::What::Cable:
        if (const Cable* row = job.cables.find({hit.row}))
            return cableWords(job, *row);
        break;
    case Hit::What::Frame:
        if (const Place* row = job.places.find({hit.row}))
            return {place, {{"tag", row->tag}, {"words", row->words}}};
        break;
    case Hit::What::Note:
        if (const Note* row = job.notes.find({hit.row}))
            return verbatim(row->words);
        break;
    case Hit::What::Nothing:
        break;
    }
    return {};
}

} // namespace doorloom
