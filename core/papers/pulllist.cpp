#include "papers/pulllist.h"

#include "model/modelwords.h"
#include "papers/csv.h"
#include "papers/naturalorder.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

namespace doorloom {

constinit const Text pullTitle = {.en = "Cable pull list", .es = "Lista de tendido de cables"};

namespace {

constexpr Text allowance = {.en = "'Cut' is the drawn length with {percent} % more, {cabinet} m to make up in a cabinet or box and {other} m at any other end, "
                                  "rounded up to {step} m (common practice).",
                            .es = "'Corte' es el largo dibujado con {percent} % más, {cabinet} m para conectar en gabinete o caja y {other} m en otro extremo, "
                                  "redondeado a {step} m hacia arriba (práctica común)."};
constexpr Text order = {.en = "Pull in this order: from each box the longest first; cables of one pull go together. Tag both ends before cutting; leave spare "
                              "cores at full length, capped.",
                        .es = "Tienda en este orden: desde cada caja el más largo primero; los de un mismo tendido van juntos. Etiquete ambos extremos antes de "
                              "cortar; deje los hilos de reserva a todo su largo, tapados."};
constexpr Text cablesTitle = {.en = "Cables in the order of pulling", .es = "Cables en el orden de tendido"};
constexpr Text totalsTitle = {.en = "Totals by type, new and moved cables", .es = "Totales por tipo, cables nuevos y trasladados"};
constexpr Text boxesTitle = {.en = "Glands or knock-outs, one for each cable", .es = "Prensaestopas o perforaciones, una por cable"};
constexpr Text noCables = {.en = "There is no cable.", .es = "No hay ningún cable."};
constexpr Text noBoxes = {.en = "No cable comes into a box.", .es = "Ningún cable entra en una caja."};

const std::vector<Text> cableHeads = {{.en = "Pull", .es = "Tendido"},      {.en = "Cable", .es = "Cable"},   {.en = "Type", .es = "Tipo"},
                                      {.en = "From", .es = "Desde"},        {.en = "To", .es = "Hasta"},      {.en = "Length", .es = "Largo"},
                                      {.en = "Cut", .es = "Corte"},         {.en = "Cores used", .es = "Hilos usados"},
                                      {.en = "Note", .es = "Nota"},         {.en = "Pulled", .es = "Tendido"}, {.en = "Rung out", .es = "Probado"}};
const std::vector<Text> totalHeads = {{.en = "Type", .es = "Tipo"}, {.en = "Cables", .es = "Cables"}, {.en = "Length", .es = "Largo"},
                                      {.en = "Cut", .es = "Corte"}, {.en = "Note", .es = "Nota"},     {.en = "On the van", .es = "En la camioneta"}};
const std::vector<Text> boxHeads = {{.en = "Box", .es = "Caja"},
                                    {.en = "Low voltage", .es = "Baja tensión"},
                                    {.en = "Which", .es = "Cuáles"},
                                    {.en = "Mains, an entry of its own", .es = "Red, entrada propia"},
                                    {.en = "Which", .es = "Cuáles"}};

constexpr Text lengthMissing = {.en = "not said", .es = "sin indicar"};
constexpr Text ofCores = {.en = "{used} of {cores}", .es = "{used} de {cores}"};
constexpr Text mainsNote = {.en = "MAINS: licensed person only", .es = "RED: solo persona con licencia"};
constexpr Text measureFirst = {.en = "measure before cutting", .es = "mida antes de cortar"};
constexpr Text someMissing = {.en = "and {count} without a length", .es = "y {count} sin largo"};
constexpr Text shieldedType = {.en = "{type}, shielded", .es = "{type}, blindado"};

bool isPulled(Standing standing)
{
    return standing == Standing::New || standing == Standing::Moved;
}

Metres tailAt(const Job& job, PlaceId id)
{
    const Place* place = job.places.find(id);
    return place && (place->isBox || place->mounting == Mounting::Cabinet) ? tailInCabinet : tailElsewhere;
}

Metres cutOf(const Job& job, const Cable& cable)
{
    const double whole = cable.length.value * (1 + pullAllowance) + tailAt(job, cable.from).value + tailAt(job, cable.to).value;
    return Metres{std::ceil(whole / cutStep.value - 1e-9) * cutStep.value};
}

bool isSpare(const Conductor& core)
{
    return core.from.state != EndState::Landed && core.to.state != EndState::Landed;
}

PullLine lineOf(const Job& job, const Cable& cable)
{
    PullLine line;
    line.cable = cable.id;
    line.pull = cable.pull;
    line.tag = cable.tag;
    line.from = cable.from;
    line.to = cable.to;
    line.standing = cable.standing;
    line.notes = cable.notes;
    if (cable.length.value > 0) {
        line.length = cable.length;
        line.cut = cutOf(job, cable);
    }
    const CableType* type = job.cableTypes.find(cable.type);
    if (!type)
        return line;
    line.type = type->name;
    line.shielded = type->shielded;
    line.carriesMains = type->carriesMains;
    line.cores = static_cast<int>(type->cores.size());
    const auto cores = coresOf(job, cable.id);
    const auto used = std::count_if(cores.begin(), cores.end(), [](const Conductor* core) { return !isSpare(*core); });
    line.spare = line.cores - static_cast<int>(used);
    return line;
}

std::string tagOfPlace(const Job& job, PlaceId id)
{
    const Place* place = job.places.find(id);
    return place ? place->tag : std::string();
}

// Where a pull starts and how long it is: what its longest cable says.
struct Pull {
    std::string from;
    double length = 0;
    std::vector<PullLine> lines;
};

std::vector<Pull> pullsOf(const Job& job)
{
    std::map<std::string, Pull> together;
    std::vector<Pull> pulls;
    for (const Cable& cable : job.cables) {
        PullLine line = lineOf(job, cable);
        Pull& pull = line.pull.empty() ? pulls.emplace_back() : together[line.pull];
        if (pull.lines.empty() || line.length.value_or(Metres{0}).value > pull.length) {
            pull.length = line.length.value_or(Metres{0}).value;
            pull.from = tagOfPlace(job, line.from);
        }
        pull.lines.push_back(std::move(line));
    }
    for (auto& [name, pull] : together)
        pulls.push_back(std::move(pull));
    return pulls;
}

bool longerFirst(double a, double b, const std::string& one, const std::string& other)
{
    return a != b ? a > b : naturallyLess(one, other);
}

std::vector<PullLine> linesInOrder(const Job& job)
{
    std::vector<Pull> pulls = pullsOf(job);
    for (Pull& pull : pulls)
        std::stable_sort(pull.lines.begin(), pull.lines.end(), [](const PullLine& a, const PullLine& b) {
            return longerFirst(a.length.value_or(Metres{0}).value, b.length.value_or(Metres{0}).value, a.tag, b.tag);
        });
    std::stable_sort(pulls.begin(), pulls.end(), [](const Pull& a, const Pull& b) {
        if (a.from.empty() != b.from.empty()) // from nowhere yet: last
            return b.from.empty();
        return a.from != b.from ? naturallyLess(a.from, b.from) : longerFirst(a.length, b.length, a.lines.front().tag, b.lines.front().tag);
    });
    std::vector<PullLine> lines;
    for (Pull& pull : pulls)
        for (PullLine& line : pull.lines)
            lines.push_back(std::move(line));
    return lines;
}

std::vector<TypeTotal> totalsOf(const std::vector<PullLine>& lines)
{
    std::vector<TypeTotal> totals;
    for (const PullLine& line : lines) {
        if (!isPulled(line.standing))
            continue;
        auto total = std::find_if(totals.begin(), totals.end(), [&](const TypeTotal& each) { return each.type == line.type; });
        if (total == totals.end())
            total = totals.insert(totals.end(), {line.type, 0, 0, {}, {}});
        ++total->cables;
        total->withoutLength += !line.length;
        total->length = total->length + line.length.value_or(Metres{0});
        total->cut = total->cut + line.cut.value_or(Metres{0});
    }
    std::stable_sort(totals.begin(), totals.end(), [](const TypeTotal& a, const TypeTotal& b) { return naturallyLess(a.type, b.type); });
    return totals;
}

std::vector<BoxEntries> boxesOf(const Job& job, const std::vector<PullLine>& lines)
{
    std::vector<BoxEntries> boxes;
    for (const Place& place : job.places) {
        BoxEntries entries{place.id, {}, {}};
        for (const PullLine& line : lines)
            for (const PlaceId end : {line.from, line.to})
                if (place.isBox && end == place.id)
                    (line.carriesMains ? entries.mains : entries.low).push_back(line.tag);
        std::stable_sort(entries.low.begin(), entries.low.end(), naturallyLess);
        std::stable_sort(entries.mains.begin(), entries.mains.end(), naturallyLess);
        if (!entries.low.empty() || !entries.mains.empty())
            boxes.push_back(std::move(entries));
    }
    std::stable_sort(boxes.begin(), boxes.end(), [&](const BoxEntries& a, const BoxEntries& b) { return naturallyLess(tagOfPlace(job, a.box), tagOfPlace(job, b.box)); });
    return boxes;
}

std::string orNothing(std::string text)
{
    return text.empty() ? nothingToSay : std::move(text);
}

std::string noteOf(const PullLine& line, Language language)
{
    std::string note;
    const auto add = [&](std::string_view words) { note += (note.empty() || words.empty() ? "" : "; ") + std::string(words); };
    if (line.carriesMains)
        add(inWords(mainsNote, language));
    if (!isPulled(line.standing))
        add(inWords(wordsOf(line.standing), language));
    else if (!line.length)
        add(inWords(measureFirst, language));
    add(line.notes);
    return orNothing(note);
}

std::vector<std::string> cellsOf(const Job& job, const PullLine& line, Language language)
{
    const std::string missing(inWords(lengthMissing, language));
    const std::string tick = isPulled(line.standing) ? tickBox : nothingToSay;
    const bool saysShielded = line.type.find("shield") != std::string::npos;
    return {orNothing(line.pull),
            line.tag,
            line.shielded && !saysShielded ? inWords(Message{shieldedType, {{"type", line.type}}}, language) : orNothing(line.type),
            placeInWords(job, line.from, language),
            placeInWords(job, line.to, language),
            line.length ? lengthInWords(*line.length) : missing,
            line.cut && isPulled(line.standing) ? lengthInWords(*line.cut) : isPulled(line.standing) ? missing : nothingToSay,
            inWords(Message{ofCores, {{"used", std::to_string(line.cores - line.spare)}, {"cores", std::to_string(line.cores)}}}, language),
            noteOf(line, language),
            tick,
            tickBox};
}

std::vector<std::string> cellsOf(const TypeTotal& total, Language language)
{
    return {orNothing(total.type), std::to_string(total.cables), lengthInWords(total.length), lengthInWords(total.cut),
            total.withoutLength ? inWords(Message{someMissing, {{"count", std::to_string(total.withoutLength)}}}, language) : nothingToSay, tickBox};
}

std::vector<std::string> cellsOf(const Job& job, const BoxEntries& box, Language language)
{
    const auto list = [](const std::vector<std::string>& tags) { return orNothing(fmt::format("{}", fmt::join(tags, ", "))); };
    return {placeInWords(job, box.box, language), std::to_string(box.low.size()), list(box.low), std::to_string(box.mains.size()), list(box.mains)};
}

std::string metres(const std::optional<Metres>& length)
{
    return length ? fmt::format("{:g}", length->value) : std::string();
}

} // namespace

PullList pullListOf(const Job& job, std::string digest)
{
    PullList list;
    list.title = titleBlockOf(job, std::move(digest));
    list.lines = linesInOrder(job);
    list.totals = totalsOf(list.lines);
    list.boxes = boxesOf(job, list.lines);
    return list;
}

TablePaper pullTables(const Job& job, const PullList& list, Language language)
{
    const auto words = [&](Text text) { return std::string(inWords(text, language)); };
    PaperTable cables{words(cablesTitle), words(noCables), headsIn(cableHeads, language), {}, {1}};
    for (const PullLine& line : list.lines)
        cables.rows.push_back(cellsOf(job, line, language));
    PaperTable totals{words(totalsTitle), words(noCables), headsIn(totalHeads, language), {}, {0, 3}};
    for (const TypeTotal& total : list.totals)
        totals.rows.push_back(cellsOf(total, language));
    PaperTable boxes{words(boxesTitle), words(noBoxes), headsIn(boxHeads, language), {}, {1, 3}};
    for (const BoxEntries& box : list.boxes)
        boxes.rows.push_back(cellsOf(job, box, language));
    const Message sums{allowance,
                       {{"percent", fmt::format("{:g}", pullAllowance * 100)},
                        {"cabinet", fmt::format("{:g}", tailInCabinet.value)},
                        {"other", fmt::format("{:g}", tailElsewhere.value)},
                        {"step", fmt::format("{:g}", cutStep.value)}}};
    return {pullTitle, list.title, {order, sums}, {std::move(cables), std::move(totals), std::move(boxes)}};
}

std::string pullCsv(const Job& job, const PullList& list)
{
    std::string csv = csvRow({"row", "pull", "cable", "type", "from", "to", "metres", "cut_metres", "cores", "spare", "mains", "standing", "cables", "without_length",
                              "notes", "job", "revision", "digest"});
    const auto add = [&](std::vector<std::string> cells) {
        cells.insert(cells.end(), {list.title.number, list.title.revision, list.title.digest});
        csv += csvRow(cells);
    };
    for (const PullLine& line : list.lines)
        add({"cable", line.pull, line.tag, line.type, tagOfPlace(job, line.from), tagOfPlace(job, line.to), metres(line.length), metres(line.cut),
             std::to_string(line.cores), std::to_string(line.spare), line.carriesMains ? "yes" : "no", std::string(inWords(wordsOf(line.standing), Language::English)), "",
             "", line.notes});
    for (const TypeTotal& total : list.totals)
        add({"total", "", "", total.type, "", "", metres(total.length), metres(total.cut), "", "", "", "", std::to_string(total.cables),
             std::to_string(total.withoutLength), ""});
    for (const BoxEntries& box : list.boxes)
        for (const auto& [tags, mains] : {std::pair(&box.low, "no"), std::pair(&box.mains, "yes")})
            if (!tags->empty())
                add({"box", "", fmt::format("{}", fmt::join(*tags, " ")), "", tagOfPlace(job, box.box), "", "", "", "", "", mains, "", std::to_string(tags->size()), "", ""});
    return csv;
}

} // namespace doorloom
