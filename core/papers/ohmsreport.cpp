#include "papers/ohmsreport.h"

#include "base/json.h"
#include "papers/columns.h"
#include "papers/voltsreport.h"

#include <fmt/format.h>

#include <cmath>

namespace doorloom {

namespace {

constexpr Text allOff = {.en = "All power off and proved dead, batteries out{throws}.",
                         .es = "Todo sin tensión y comprobado, baterías fuera{throws}."};
constexpr Text withThrows = {.en = "; with {throws}", .es = "; con {throws}"};
constexpr Text noThrows = {.en = "", .es = ""};
constexpr Text liftedWords = {.en = "Lifted: {landings}.", .es = "Levantado: {landings}."};
constexpr Text redOn = {.en = "red lead on {red}, black on {black}", .es = "punta roja en {red}, negra en {black}"};
constexpr Text eitherWay = {.en = "{red} to {black}, either way round", .es = "{red} a {black}, en ambos sentidos"};
constexpr Text reads[] = {
    {.en = "{ohms}", .es = "{ohms}"},
    {.en = "a diode, forward; over limit in ohms", .es = "un diodo en directo; fuera de escala en ohmios"},
    {.en = "open: over limit", .es = "abierto: fuera de escala"},
    {.en = "no useful ohms: electronics or a source's output", .es = "ohmios sin valor: electrónica o salida de una fuente"},
    {.en = "not readable here: other ways round are read as well", .es = "no se puede leer aquí: se miden también otros caminos"},
};
constexpr Text togetherWords = {.en = "not readable here: {ohms}, other ways round read as well", .es = "no se puede leer aquí: {ohms}, con otros caminos medidos a la vez"};
constexpr Text liftWords = {.en = "Lift {landings}; then:", .es = "Levante {landings}; entonces:"};
constexpr Text noLift = {.en = "No two terminals are enough: take the device off its conductors.", .es = "Dos bornes no bastan: separe el aparato de sus conductores."};
constexpr Text missing = {.en = "{count} conductors on the way have no length or no gauge and count as no ohms.",
                          .es = "{count} conductores del camino no tienen longitud o calibre y cuentan como cero ohmios."};
constexpr Text computed = {.en = "Computed, not measured: ±20 % of wire and coils, and what the meter's own leads have.",
                           .es = "Calculado, no medido: ±20 % en hilos y bobinas, más lo que tengan las puntas del medidor."};
constexpr const char* keys[] = {"ohms", "diode", "open", "no useful ohms", "not readable"};

bool isSame(const OhmsRead& one, const OhmsRead& other)
{
    return one.what == other.what && one.ohms.has_value() == other.ohms.has_value() && (!one.ohms || ohmsFigure(*one.ohms) == ohmsFigure(*other.ohms));
}

void addReadings(std::vector<std::vector<std::string>>& rows, const Job& job, const Probes& probes, const RingOut& read, Language language)
{
    const auto add = [&](Text words, const Landing& red, const Landing& black, const OhmsRead& shown) {
        rows.push_back({"  " + inWords(Message{words, {{"red", nameOf(job, red)}, {"black", nameOf(job, black)}}}, language), ohmsWords(shown, language)});
    };
    if (isSame(read.redOnFirst, read.redOnSecond))
        return add(eitherWay, probes.first, probes.second, read.redOnFirst);
    add(redOn, probes.first, probes.second, read.redOnFirst);
    add(redOn, probes.second, probes.first, read.redOnSecond);
}

std::string readJson(const OhmsRead& read)
{
    return fmt::format("{{\"reads\": {}, \"ohms\": {}}}", quoted(keys[static_cast<std::size_t>(read.what)]), read.ohms ? numberText(std::round(read.ohms->value * 1e6) / 1e6) : "null");
}

std::string ringJson(const RingOut& read)
{
    return fmt::format("\"redOnFirst\": {}, \"redOnSecond\": {}", readJson(read.redOnFirst), readJson(read.redOnSecond));
}

} // namespace

std::string listed(const Job& job, const std::vector<Landing>& landings)
{
    std::string names;
    for (const Landing& landing : landings)
        names += (names.empty() ? "" : ", ") + nameOf(job, landing);
    return names;
}

std::string ohmsWords(const OhmsRead& read, Language language)
{
    const bool tellsOhms = read.ohms && (read.what == Reads::Resistance || read.what == Reads::NotReadable);
    const Text words = read.what == Reads::NotReadable && tellsOhms ? togetherWords : reads[static_cast<std::size_t>(read.what)];
    return inWords(Message{words, {{"ohms", tellsOhms ? ohmsFigure(*read.ohms) : ""}}}, language);
}

std::string ohmsFigure(Ohms ohms)
{
    const double kilo = ohms.value / 1000;
    if (kilo >= 1)
        return fmt::format("{:.4g} kΩ", kilo);
    return fmt::format("{:.{}f} Ω", ohms.value, ohms.value < 99.95 ? 2 : 0);
}

OhmsReport ohmsReport(const Job& job, const Netlist& net, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws, const Probes& probes)
{
    const Meter meter(job, net);
    const Position position = positionOff(job, net, throws);
    OhmsReport report{probes, ringOut(job, meter, position, probes), {}, {}};
    for (const auto& [moved, thrown] : throws)
        report.position.emplace_back(nameOf(job, net.moved(moved).id), net.moved(moved).throws[thrown].key);
    if (!report.read.lift.empty()) {
        Probes more = probes;
        more.lifted.insert(more.lifted.end(), report.read.lift.begin(), report.read.lift.end());
        report.onceLifted = ringOut(job, meter, position, more);
    }
    return report;
}

std::string ohmsText(const Job& job, const OhmsReport& report, const std::string& file, Language language)
{
    std::string throws;
    for (const auto& [moved, thrown] : report.position)
        throws += fmt::format("{}{}={}", throws.empty() ? "" : ", ", moved, thrown);
    const Message with = throws.empty() ? Message(noThrows) : Message(withThrows, {{"throws", throws}});
    std::vector<std::vector<std::string>> rows = {{file}, {inWords(Message{allOff, {{"throws", std::vector{with}}}}, language)}};
    const auto say = [&](const Message& line) { rows.push_back({inWords(line, language)}); };
    if (!report.probes.lifted.empty())
        say({liftedWords, {{"landings", listed(job, report.probes.lifted)}}});
    addReadings(rows, job, report.probes, report.read, language);
    if (report.onceLifted) {
        say({liftWords, {{"landings", listed(job, report.read.lift)}}});
        addReadings(rows, job, report.probes, *report.onceLifted, language);
    } else if (report.read.redOnFirst.what == Reads::NotReadable || report.read.redOnSecond.what == Reads::NotReadable) {
        say(noLift);
    }
    if (report.read.withoutOhms)
        say({missing, {{"count", std::to_string(report.read.withoutOhms)}}});
    say(computed);
    return alignedColumns(rows);
}

std::string ohmsJson(const Job& job, const OhmsReport& report)
{
    return fmt::format("{{\"position\": {}, \"first\": {}, \"second\": {}, \"lifted\": {},\n{},\n\"lift\": {}, \"onceLifted\": {}, \"withoutOhms\": {}}}\n",
                       throwsJson(report.position), quoted(nameOf(job, report.probes.first)), quoted(nameOf(job, report.probes.second)),
                       namesJson(job, report.probes.lifted), ringJson(report.read), namesJson(job, report.read.lift),
                       report.onceLifted ? "{" + ringJson(*report.onceLifted) + "}" : "null", report.read.withoutOhms);
}

} // namespace doorloom
