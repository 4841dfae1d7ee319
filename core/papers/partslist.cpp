#include "papers/partslist.h"

#include "model/modelwords.h"
#include "papers/csv.h"
#include "papers/devicehead.h"
#include "papers/naturalorder.h"
#include "papers/pulllist.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>
#include <optional>

namespace doorloom {

constinit const Text partsTitle = {.en = "Parts list", .es = "Lista de materiales"};

namespace {

constexpr Text ownerTitles[partOwners] = {{.en = "New: to buy and bring", .es = "Nuevo: comprar y llevar"},
                                          {.en = "Existing: there already", .es = "Existente: ya está ahí"},
                                          {.en = "By others: agree who brings it and when", .es = "De otros: acuerde quién lo trae y cuándo"}};
constexpr const char* ownerNames[partOwners] = {"new", "existing", "by others"};
constexpr Text nothingOfIt = {.en = "Nothing.", .es = "Nada."};
constexpr Text notCounted = {.en = "Not counted: screws, ferrules, glands, boxes, conduit, labels, and what comes in a device's own box.",
                             .es = "No se cuentan: tornillos, punteras, prensaestopas, cajas, tubería, etiquetas, ni lo que viene en la caja de cada equipo."};
const std::vector<Text> heads = {{.en = "Count", .es = "Cantidad"}, {.en = "What", .es = "Qué"},   {.en = "Tags", .es = "Etiquetas"},
                                 {.en = "Length", .es = "Largo"},   {.en = "Note", .es = "Nota"}, {.en = "There", .es = "Está"}};
constexpr Text cableOf = {.en = "cable {type}", .es = "cable {type}"};
constexpr Text wireOf = {.en = "wire {gauge} {colour}", .es = "hilo {gauge} {colour}"};
constexpr Text connectorOf = {.en = "connector for a splice: {connector}", .es = "conector de empalme: {connector}"};
constexpr Text anyConnector = {.en = "for {capacity} ends", .es = "para {capacity} extremos"};
constexpr Text someMissing = {.en = "{count} without a length", .es = "{count} sin largo"};

PartOwner ownerOf(Standing standing)
{
    if (standing == Standing::New)
        return PartOwner::New;
    return standing == Standing::ByOthers ? PartOwner::ByOthers : PartOwner::Existing;
}

class Counting {
public:
    // The line of these parts, begun where there is none yet.
    PartLine& line(Standing standing, Message what, std::string kindName = {})
    {
        const PartOwner owner = ownerOf(standing);
        auto found = std::find_if(lines_.begin(), lines_.end(), [&](const PartLine& each) {
            return each.owner == owner && each.kindName == kindName && inWords(each.what, Language::English) == inWords(what, Language::English);
        });
        if (found == lines_.end()) {
            PartLine begun;
            begun.owner = owner;
            begun.what = std::move(what);
            begun.kindName = std::move(kindName);
            found = lines_.insert(lines_.end(), std::move(begun));
        }
        ++found->count;
        if (standing == Standing::Moved || standing == Standing::LeaveAlone)
            noteOnce(*found, wordsOf(standing));
        return *found;
    }

    // Those counted since the last call, by their words.
    void sortFrom(std::size_t first)
    {
        std::stable_sort(lines_.begin() + static_cast<std::ptrdiff_t>(first), lines_.end(),
                         [](const PartLine& a, const PartLine& b) { return naturallyLess(inWords(a.what, Language::English), inWords(b.what, Language::English)); });
    }
    std::size_t size() const { return lines_.size(); }

    std::vector<PartLine> taken()
    {
        std::stable_sort(lines_.begin(), lines_.end(), [](const PartLine& a, const PartLine& b) { return a.owner < b.owner; });
        for (PartLine& line : lines_)
            std::stable_sort(line.tags.begin(), line.tags.end(), naturallyLess);
        return std::move(lines_);
    }

private:
    static void noteOnce(PartLine& line, Text note)
    {
        if (std::none_of(line.notes.begin(), line.notes.end(), [&](const Message& each) { return each == Message(note); }))
            line.notes.push_back(note);
    }

    std::vector<PartLine> lines_;
};

std::string orUnknown(const std::string& text)
{
    return text.empty() ? "?" : text;
}

void addTag(PartLine& line, const std::string& tag)
{
    if (!tag.empty())
        line.tags.push_back(tag);
}

void addLength(PartLine& line, const std::optional<Metres>& length)
{
    line.length = line.length + length.value_or(Metres{0});
    line.withoutLength += !length;
}

void countDevices(Counting& counting, const Job& job)
{
    for (const Device& device : job.devices)
        if (const Kind* kind = kindOf(job, device))
            addTag(counting.line(device.standing, titleOf(*kind), kind->name), device.tag);
}

void countCables(Counting& counting, const PullList& pulls)
{
    for (const PullLine& each : pulls.lines) {
        PartLine& line = counting.line(each.standing, {cableOf, {{"type", each.type}}});
        addTag(line, each.tag);
        addLength(line, each.cut);
    }
}

void countWires(Counting& counting, const Job& job)
{
    for (const Conductor& conductor : job.conductors)
        if (conductor.make == ConductorMake::Wire) {
            PartLine& line = counting.line(conductor.standing, {wireOf, {{"gauge", orUnknown(conductor.gauge)}, {"colour", orUnknown(conductor.colour)}}});
            addTag(line, conductor.tag);
            addLength(line, conductor.length.value > 0 ? std::optional(conductor.length) : std::nullopt);
        }
}

void countConnectors(Counting& counting, const Job& job)
{
    for (const Splice& splice : job.splices) {
        const Message size{anyConnector, {{"capacity", std::to_string(splice.capacity)}}};
        const Message connector = splice.connector.empty() ? size : verbatim(splice.connector);
        addTag(counting.line(Standing::New, {connectorOf, {{"connector", std::vector{connector}}}}), splice.tag);
    }
}

std::string noteOf(const PartLine& line, Language language)
{
    std::string note;
    for (const Message& each : line.notes)
        note += (note.empty() ? "" : "; ") + inWords(each, language);
    if (line.withoutLength && line.kindName.empty())
        note += (note.empty() ? "" : "; ") + inWords(Message{someMissing, {{"count", std::to_string(line.withoutLength)}}}, language);
    return note.empty() ? nothingToSay : note;
}

std::string tagsOf(const PartLine& line, const char* between)
{
    return fmt::format("{}", fmt::join(line.tags, between));
}

} // namespace

PartsList partsOf(const Job& job, std::string digest)
{
    const PullList pulls = pullListOf(job, digest);
    Counting counting;
    countDevices(counting, job);
    counting.sortFrom(0);
    for (const auto& count : {std::function([&] { countCables(counting, pulls); }), std::function([&] { countWires(counting, job); }),
                              std::function([&] { countConnectors(counting, job); })}) {
        const std::size_t first = counting.size();
        count();
        counting.sortFrom(first);
    }
    return {pulls.title, counting.taken()};
}

TablePaper partsTables(const PartsList& list, Language language)
{
    TablePaper paper{partsTitle, list.title, {notCounted}, {}};
    for (std::size_t owner = 0; owner < partOwners; ++owner) {
        PaperTable table{std::string(inWords(ownerTitles[owner], language)), std::string(inWords(nothingOfIt, language)), headsIn(heads, language), {}, {0, 1}};
        for (const PartLine& line : list.lines)
            if (line.owner == static_cast<PartOwner>(owner))
                table.rows.push_back({std::to_string(line.count), inWords(line.what, language), line.tags.empty() ? nothingToSay : tagsOf(line, ", "),
                                      line.length.value > 0 ? lengthInWords(line.length) : nothingToSay, noteOf(line, language), tickBox});
        paper.tables.push_back(std::move(table));
    }
    return paper;
}

std::string partsCsv(const PartsList& list, Language language)
{
    std::string csv = csvRow({"owner", "count", "what", "kind", "tags", "metres", "without_length", "note", "job", "revision", "digest"});
    for (const PartLine& line : list.lines) {
        const std::string note = noteOf(line, language);
        csv += csvRow({ownerNames[static_cast<std::size_t>(line.owner)], std::to_string(line.count), inWords(line.what, language), line.kindName, tagsOf(line, " "),
                       line.length.value > 0 ? fmt::format("{:g}", line.length.value) : "", std::to_string(line.withoutLength), note == nothingToSay ? "" : note,
                       list.title.number, list.title.revision, list.title.digest});
    }
    return csv;
}

} // namespace doorloom
