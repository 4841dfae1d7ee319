#include "papers/settingssheet.h"

#include "check/settingfigures.h"
#include "check/shortrequest.h"
#include "model/modelwords.h"
#include "papers/csv.h"
#include "papers/devicehead.h"
#include "papers/schedule.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace doorloom {

constinit const Text settingsTitle = {.en = "Settings sheet", .es = "Hoja de ajustes"};

namespace {

constexpr Text powerOff = {.en = "Power off means: mains off, battery unplugged, proved dead. Then set, tick, and write down how it was left.",
                           .es = "Sin alimentación quiere decir: red cortada, batería desconectada, comprobado sin tensión. Luego ajuste, marque y anote cómo quedó."};
constexpr Text howToRead = {.en = "[■■]□ a jumper over the first two of three pins; the positions stand in the order of the words, which on the board may be another: "
                                  "go by its print. ◉ chosen. ├──●──┤ a dial from its least to its most. CHANGE: not as it comes from the factory.",
                            .es = "[■■]□ un puente sobre los dos primeros de tres pines; las posiciones siguen el orden de las palabras, que en la placa puede ser otro: "
                                  "guíese por su impresión. ◉ elegido. ├──●──┤ un mando de su mínimo a su máximo. CAMBIE: no es como sale de fábrica."};
constexpr Text noSettings = {.en = "No device has anything to set.", .es = "Ningún equipo tiene ajustes."};

constexpr Text boxTitle = {.en = "{place}: SET WITH POWER OFF", .es = "{place}: AJUSTE SIN ALIMENTACIÓN"};

const std::vector<Text> heads = {{.en = "Device", .es = "Equipo"},        {.en = "Jumper, switch or dial", .es = "Puente, interruptor o mando"},
                                 {.en = "Set it so", .es = "Póngalo así"}, {.en = "In words", .es = "En palabras"},
                                 {.en = "From factory", .es = "De fábrica"}, {.en = "Note", .es = "Nota"},
                                 {.en = "Found", .es = "Hallado"},        {.en = "As left", .es = "Como quedó"},
                                 {.en = "Set", .es = "Listo"}};

constexpr Text jumperOf = {.en = "{what}: jumper {jumper}", .es = "{what}: puente {jumper}"};
constexpr Text notChosen = {.en = "NOT CHOSEN: ask", .es = "SIN ELEGIR: pregunte"};
constexpr Text notSaid = {.en = "–", .es = "–"};
constexpr Text change = {.en = "CHANGE", .es = "CAMBIE"};
constexpr Text disagree = {.en = "the jumpers disagree: ask", .es = "los puentes no coinciden: pregunte"};
constexpr Text leaveIt = {.en = "leave as it comes", .es = "deje como viene"};
constexpr Text setLonger = {.en = "SET OVER {least} s: it asks {operator}", .es = "PONGA MÁS DE {least} s: pide a {operator}"};
constexpr Text setAFunction = {.en = "CHOOSE: as it stands, nothing happens", .es = "ELIJA: tal como está, no pasa nada"};
constexpr Text setApart = {.en = "SET {least} mm APART", .es = "SEPARE {least} mm"};
constexpr Text whilePowering = {.en = "while power comes on: {value}", .es = "al dar tensión: {value}"};

Message valueWords(const Setting& about, const SettingValue& value)
{
    if (const auto* number = std::get_if<double>(&value))
        return verbatim(fmt::format("{:g}{}{}", *number, about.unit.empty() ? "" : " ", about.unit));
    const auto found = findThrow(about.values, std::get<std::string>(value));
    return found ? verbatim(about.values[*found].words) : verbatim(std::get<std::string>(value));
}

SettingLine lineOf(const Device& device, const Kind& kind)
{
    SettingLine line;
    line.device = device.tag;
    line.title = titleOf(kind);
    line.standing = device.standing;
    return line;
}

void addPositions(SettingLine& line, const std::vector<Throw>& values, const std::optional<Key>& wished)
{
    for (const Throw& each : values)
        line.positions.push_back(each.words);
    line.position = wished ? findThrow(values, *wished) : std::nullopt;
    line.wished = line.position ? verbatim(values[*line.position].words) : Message(notChosen);
}

void addJumpers(std::vector<SettingLine>& lines, const Device& device, const Kind& kind)
{
    for (const Option& option : kind.options) {
        std::set<Key> chosenOnes;
        for (const Jumper& jumper : option.jumpers)
            chosenOnes.insert(chosen(device, option.key, jumper.key).value_or(""));
        for (const Jumper& jumper : option.jumpers) {
            SettingLine line = lineOf(device, kind);
            const auto value = chosen(device, option.key, jumper.key);
            line.isJumper = true;
            line.what = option.words;
            line.jumper = jumper.key;
            line.fromSheet = option.standing == ValueStanding::Sheet;
            line.disagrees = chosenOnes.size() > 1;
            addPositions(line, option.values, value);
            const auto factory = findThrow(option.values, option.factory);
            line.factory = factory ? verbatim(option.values[*factory].words) : Message(notSaid);
            line.differs = factory && value && *value != option.factory;
            lines.push_back(std::move(line));
        }
    }
}

SettingLine settingLine(const Device& device, const Kind& kind, const Setting& about)
{
    SettingLine line = lineOf(device, kind);
    const auto own = settingOf(device, about.key);
    const auto value = own ? own : about.factory;
    line.asFromFactory = !own && about.factory;
    line.what = about.words;
    line.unit = about.unit;
    line.least = about.least;
    line.most = about.most;
    line.fromSheet = about.standing == ValueStanding::Sheet;
    const auto* word = value ? std::get_if<std::string>(&*value) : nullptr;
    addPositions(line, about.values, word ? std::optional(*word) : std::nullopt);
    if (!value && about.form == Setting::Form::Number)
        line.wished = notSaid; // nothing to turn: it is asked of the job
    if (value) {
        line.wished = valueWords(about, *value);
        if (const auto* number = std::get_if<double>(&*value))
            line.number = *number;
    }
    line.factory = about.factory ? valueWords(about, *about.factory) : Message(notSaid);
    line.differs = own && about.factory && *own != *about.factory;
    if (about.beforePower)
        line.beforePower = valueWords(about, *about.beforePower);
    return line;
}

// What the rules about settings say of this one (core/check).
std::optional<Message> adviceOn(const Job& job, const Device& device, const Setting& about, const std::vector<ShortTime>& times)
{
    for (const ShortTime& time : times)
        if (time.device == device.id && time.setting == about.key)
            return Message{setLonger,
                           {{"least", fmt::format("{:g}", time.mustExceed)}, {"operator", tagOf(job, time.doorOperator)}}};
    const auto own = settingOf(device, about.key);
    const auto value = own ? own : about.factory;
    if (value && isNothing(*value))
        return setAFunction;
    const double* number = value ? std::get_if<double>(&*value) : nullptr;
    if (number && about.key == "spacing" && *number < leastActuatorSpacing)
        return Message{setApart, {{"least", fmt::format("{:g}", leastActuatorSpacing)}}};
    return std::nullopt;
}

std::string noteOf(const SettingLine& line, Language language)
{
    std::string note;
    const auto add = [&](const Message& words) { note += (note.empty() ? "" : "; ") + inWords(words, language); };
    if (line.standing == Standing::Existing || line.standing == Standing::ByOthers || line.standing == Standing::LeaveAlone)
        add(wordsOf(line.standing));
    if (line.differs)
        add(change);
    if (line.disagrees)
        add(disagree);
    if (line.advice)
        add(*line.advice);
    else if (line.asFromFactory && line.standing != Standing::LeaveAlone)
        add(leaveIt);
    if (line.beforePower)
        add({whilePowering, {{"value", std::vector{*line.beforePower}}}});
    return note.empty() ? nothingToSay : note;
}

std::string whatOf(const SettingLine& line, Language language)
{
    const std::string what = line.isJumper ? inWords(Message{jumperOf, {{"what", line.what}, {"jumper", line.jumper}}}, language) : inWords(line.what, language);
    return what + (line.fromSheet ? "" : " †");
}

std::vector<std::string> cellsOf(const SettingLine& line, Language language)
{
    return {line.device,  whatOf(line, language), pictureOf(line, language), inWords(line.wished, language), inWords(line.factory, language), noteOf(line, language),
            toFillIn, toFillIn, tickBox};
}

// ---- Pictures in letters.

std::string shuntPicture(const SettingLine& line)
{
    std::string picture;
    const std::size_t pins = line.positions.size() + 1;
    for (std::size_t pin = 0; pin < pins; ++pin) {
        if (line.position && pin == *line.position) {
            picture += "[■■]";
            ++pin;
        } else {
            picture += "□";
        }
    }
    return picture;
}

std::string choicePicture(const SettingLine& line, Language language)
{
    std::string picture;
    for (std::size_t i = 0; i < line.positions.size(); ++i)
        picture += std::string(i ? "  " : "") + (line.position == i ? "◉ " : "○ ") + inWords(line.positions[i], language);
    return picture;
}

std::string dialPicture(const SettingLine& line)
{
    constexpr int steps = 10;
    if (!line.number || !(line.most > line.least))
        return nothingToSay;
    const double share = std::clamp((*line.number - line.least) / (line.most - line.least), 0.0, 1.0);
    const int at = static_cast<int>(std::lround(share * steps));
    std::string dial;
    for (int i = 0; i <= steps; ++i)
        dial += i == at ? "●" : "─";
    return fmt::format("{:g} ├{}┤ {:g}{}{}", line.least, dial, line.most, line.unit.empty() ? "" : " ", line.unit);
}

} // namespace

SettingsSheet settingsOf(const Job& job, std::string digest)
{
    const Schedule schedule = scheduleOf(job, std::move(digest));
    const std::vector<ShortTime> times = shortTimes(Facts(job, windowBudget));
    SettingsSheet sheet{schedule.title, {}};
    for (const ScheduleBox& box : schedule.boxes) {
        SettingsBox here{box.place, {}};
        for (const ScheduleBlock& block : box.blocks) {
            const Device* device = job.devices.find(block.device);
            const Kind* kind = device ? kindOf(job, *device) : nullptr;
            if (!kind)
                continue;
            addJumpers(here.lines, *device, *kind);
            for (const Setting& about : kind->settings) {
                here.lines.push_back(settingLine(*device, *kind, about));
                here.lines.back().advice = adviceOn(job, *device, about, times);
            }
        }
        if (!here.lines.empty())
            sheet.boxes.push_back(std::move(here));
    }
    return sheet;
}

std::string pictureOf(const SettingLine& line, Language language)
{
    if (line.isJumper)
        return shuntPicture(line) + "  " + choicePicture(line, language);
    return line.positions.empty() ? dialPicture(line) : choicePicture(line, language);
}

TablePaper settingsTables(const Job& job, const SettingsSheet& sheet, Language language)
{
    TablePaper paper{settingsTitle, sheet.title, {powerOff, howToRead}, {}};
    for (const SettingsBox& box : sheet.boxes) {
        const Message title{boxTitle, {{"place", placeInWords(job, box.place, language)}}};
        PaperTable table{inWords(title, language), {}, headsIn(heads, language), {}, {0, 2}};
        for (const SettingLine& line : box.lines)
            table.rows.push_back(cellsOf(line, language));
        paper.tables.push_back(std::move(table));
    }
    if (paper.tables.empty())
        paper.tables.push_back({std::string(inWords(settingsTitle, language)), std::string(inWords(noSettings, language)), headsIn(heads, language), {}, {}});
    return paper;
}

std::string settingsCsv(const Job& job, const SettingsSheet& sheet, Language language)
{
    std::string csv = csvRow({"box", "device", "what", "jumper", "set_to", "factory", "change", "disagrees", "before_power", "advice", "from_sheet", "standing", "picture", "job",
                              "revision", "digest"});
    for (const SettingsBox& box : sheet.boxes)
        for (const SettingLine& line : box.lines) {
            const Place* place = job.places.find(box.place);
            csv += csvRow({place ? place->tag : "", line.device, inWords(line.what, language), line.jumper, inWords(line.wished, language), inWords(line.factory, language),
                           line.differs ? "yes" : "no", line.disagrees ? "yes" : "no", line.beforePower ? inWords(*line.beforePower, language) : "",
                           line.advice ? inWords(*line.advice, language) : "",
                           line.fromSheet ? "yes" : "no", std::string(inWords(wordsOf(line.standing), Language::English)), pictureOf(line, language), sheet.title.number,
                           sheet.title.revision, sheet.title.digest});
        }
    return csv;
}

} // namespace doorloom
