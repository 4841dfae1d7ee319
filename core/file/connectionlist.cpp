#include "file/connectionlist.h"

#include "edit/details.h"
#include "edit/freshtags.h"
#include "edit/landcores.h"
#include "edit/linenames.h"
#include "edit/rownames.h"
#include "edit/tagrules.h"
#include "model/colours.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <map>
#include <set>

namespace doorloom {

namespace {

// What one row wishes for, its names not looked up yet.
struct ListedWish {
    std::string fromDevice, fromTerminal, toDevice, toTerminal, cable, core, colour;
};

std::optional<int> wholeNumber(const std::string& cell)
{
    int number = 0;
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), number);
    return error == std::errc() && end == cell.data() + cell.size() ? std::optional(number) : std::nullopt;
}

void splitAtColon(std::string& device, std::string& terminal)
{
    const std::size_t colon = device.find(':');
    if (!terminal.empty() || colon == std::string::npos)
        return;
    terminal = device.substr(colon + 1);
    device.resize(colon);
}

std::string lettersOf(const std::string& tag)
{
    return tag.substr(0, tag.find_last_not_of("0123456789") + 1);
}

ListedWish wishOf(const ListLayout& layout, const CellRow& row)
{
    const auto cell = [&](ListColumn column) { return cellOf(layout, row, column); };
    ListedWish wish{cell(ListColumn::FromDevice), cell(ListColumn::FromTerminal), cell(ListColumn::ToDevice),
                    cell(ListColumn::ToTerminal), cell(ListColumn::Cable),        cell(ListColumn::Core),
                    cell(ListColumn::Colour)};
    splitAtColon(wish.fromDevice, wish.fromTerminal);
    splitAtColon(wish.toDevice, wish.toTerminal);
    if (wish.colour.empty() && !wholeNumber(wish.core))
        std::swap(wish.colour, wish.core); // 'core: red'
    return wish;
}

// What a list tells of the cores of one cable.
class ToldCores {
public:
    void add(const ListedWish& wish)
    {
        const std::string colour = colourLetters(wish.colour);
        if (const std::optional<int> number = wholeNumber(wish.core);
            number && *number >= 1 && *number <= mostListedCores) {
            std::string& known = byNumber_[*number];
            known = known.empty() ? colour : known;
        } else if (wish.core.empty() && !colour.empty()) {
            if (std::find(byColour_.begin(), byColour_.end(), colour) == byColour_.end())
                byColour_.push_back(colour);
        } else if (wish.core.empty()) {
            std::pair<std::string, std::string> ends{wish.fromDevice + ":" + wish.fromTerminal,
                                                     wish.toDevice + ":" + wish.toTerminal};
            if (ends.first > ends.second)
                std::swap(ends.first, ends.second);
            unnamed_.insert(std::move(ends));
        }
    }

    // Numbers as told; colours without a number, then what is told of by neither, fill the gaps.
    std::vector<Core> cores() const
    {
        std::map<int, std::string> all = byNumber_;
        std::vector<std::string> others = byColour_;
        std::erase_if(others, [&](const std::string& colour) {
            return std::any_of(all.begin(), all.end(),
                               [&](const auto& each) { return each.second == colour; });
        });
        others.resize(others.size() + unnamed_.size());
        int next = 1;
        for (const std::string& colour : others) {
            while (all.contains(next))
                ++next;
            all[next] = colour;
        }
        std::vector<Core> cores;
        for (int number = 1; !all.empty() && number <= std::min(all.rbegin()->first, mostListedCores);
             ++number)
            cores.push_back({.number = number,
                             .colour = all.contains(number) ? all[number] : std::string(),
                             .gauge = {}});
        return cores;
    }

private:
    std::map<int, std::string> byNumber_;
    std::vector<std::string> byColour_;
    std::set<std::pair<std::string, std::string>> unnamed_;
};

class ListTaker {
public:
    ListTaker(const Job& job, const std::vector<CellRow>& table, const ListLayout& layout)
        : job_(job), work_(job), tags_(job)
    {
        for (std::size_t at = layout.hasHead ? 1 : 0; at < table.size(); ++at)
            rows_.emplace_back(table[at].line, wishOf(layout, table[at]));
        for (const auto& [line, wish] : rows_)
            if (!wish.cable.empty())
                told_[wish.cable].add(wish);
        wireTag_ = firstWireTag();
    }

    ConnectionList taken()
    {
        for (const auto& [line, wish] : rows_) {
            line_ = line;
            if (const std::optional<Problem> problem = take(wish))
                list_.rows.push_back({line, RowFate::Left, problem->what, problem->remedy});
        }
        list_.change = difference(job_, work_);
        list_.missingDevices.assign(missing_.begin(), missing_.end());
        return std::move(list_);
    }

private:
    using Trouble = std::optional<Problem>;

    // In a series that no cable of the list is tagged in.
    std::string firstWireTag() const
    {
        const auto isCables = [&](const std::string& tag) {
            const std::string letters = lettersOf(tag);
            return std::any_of(told_.begin(), told_.end(),
                               [&](const auto& cable) { return lettersOf(cable.first) == letters; });
        };
        for (const std::string& tag : {nextWireTag(job_), std::string("B1"), std::string("N1")})
            if (!isCables(tag))
                return tag;
        return "WIRE1";
    }

    Trouble take(const ListedWish& wish)
    {
        LandingPoint from, to;
        if (auto problem = findPoint(wish.fromDevice, wish.fromTerminal, {"first", "primer"}, from))
            return problem;
        if (auto problem = findPoint(wish.toDevice, wish.toTerminal, {"second", "segundo"}, to))
            return problem;
        if (auto problem = joinedAlready(from, to))
            return problem;
        const std::string colour = colourLetters(wish.colour);
        if (colour.empty() && !wish.colour.empty())
            return problemAt({}, {.en = "'{colour}' is no colour.", .es = "'{colour}' no es un color."},
                             {.en = "Write it as 'RD' or 'red', 'WH+BU' for white with a blue stripe.",
                              .es = "Escríbalo como 'RD' o 'rojo', 'WH+BU' para blanco con franja azul."},
                             {{"colour", wish.colour}});
        return wish.cable.empty() ? takeWire(from, to, wish, colour) : takeCore(from, to, wish, colour);
    }

    // ---- Ends

    Trouble findPoint(const std::string& tag, const std::string& terminal, const Words& which,
                      LandingPoint& point)
    {
        if (tag.empty())
            return problemAt(
                {}, {.en = "The row has no {which} device.", .es = "La fila no tiene {which} dispositivo."},
                {.en = "Fill it in, or choose the column that has it.",
                 .es = "Complétela, o elija la columna que lo tiene."},
                {{"which", which}});
        const Device* exact = deviceTagged(work_, tag);
        const std::vector<const Device*> devices = exact ? std::vector{exact} : tagged(work_.devices, tag);
        if (devices.size() == 1)
            return findTerminalOf(*devices.front(), terminal, point);
        if (const std::vector<const Splice*> splices = tagged(work_.splices, tag);
            devices.empty() && splices.size() == 1 && terminal.empty()) {
            point = splices.front()->id;
            return std::nullopt;
        }
        if (devices.empty())
            missing_.insert(tag);
        return problemAt({},
                         devices.empty() ? Text{.en = "The job has no device '{tag}'.",
                                                .es = "El trabajo no tiene el dispositivo '{tag}'."}
                                         : Text{.en = "'{tag}' could be several devices.",
                                                .es = "'{tag}' puede ser varios dispositivos."},
                         {.en = "Place it first, or write its tag as in the job.",
                          .es = "Colóquelo antes, o escriba su etiqueta como en el trabajo."},
                         {{"tag", tag}});
    }

    Trouble findTerminalOf(const Device& device, const std::string& name, LandingPoint& point) const
    {
        const Kind* kind = kindOf(work_, device);
        const std::vector<const Terminal*> found =
            name.empty() ? std::vector<const Terminal*>() : terminalsNamed(*kind, name);
        if (found.size() == 1) {
            point = Landing{device.id, found.front()->key};
            return std::nullopt;
        }
        return problemAt({},
                         found.empty() ? Text{.en = "{tag} has no terminal '{name}'.",
                                              .es = "{tag} no tiene el borne '{name}'."}
                                       : Text{.en = "'{name}' could be several terminals of {tag}.",
                                              .es = "'{name}' puede ser varios bornes de {tag}."},
                         {.en = "Use one of: {terminals}.", .es = "Use uno de: {terminals}."},
                         {{"tag", device.tag}, {"name", name}, {"terminals", printedTerminals(*kind)}});
    }

    // One terminal twice, or two that the device joins whatever its jumpers.
    Trouble joinedAlready(const LandingPoint& from, const LandingPoint& to) const
    {
        const Gaps gaps = {{"a", nameOfPoint(work_, from)}, {"b", nameOfPoint(work_, to)}};
        if (from == to)
            return problemAt(
                {}, {.en = "'{a}' can't be joined to itself.", .es = "'{a}' no se puede unir consigo mismo."},
                {.en = "Correct one of the two ends.", .es = "Corrija uno de los dos extremos."}, gaps);
        const Landing *a = std::get_if<Landing>(&from), *b = std::get_if<Landing>(&to);
        const Kind* kind = a && b && a->device == b->device ? kindOf(work_, a->device) : nullptr;
        const bool linked =
            kind && std::any_of(kind->parts.begin(), kind->parts.end(), [&](const Part& part) {
                const LinkPart* link = part.when.empty() ? std::get_if<LinkPart>(&part.body) : nullptr;
                return link && ((link->a == a->terminal && link->b == b->terminal) ||
                                (link->a == b->terminal && link->b == a->terminal));
            });
        if (!linked)
            return std::nullopt;
        return problemAt({},
                         {.en = "The device itself joins '{a}' and '{b}'.",
                          .es = "El propio dispositivo une '{a}' y '{b}'."},
                         {.en = "Fit no wire there.", .es = "No ponga ahí ningún hilo."}, gaps);
    }

    bool joins(const Conductor& row, const LandingPoint& from, const LandingPoint& to) const
    {
        const End a = landedAt(from), b = landedAt(to);
        return (row.from == a && row.to == b) || (row.from == b && row.to == a);
    }

    // ---- Fates

    Trouble saidAgain(const Conductor& row)
    {
        const auto line = lineOf_.find(row.id);
        const Message words =
            line == lineOf_.end()
                ? Message{{.en = "in the job already: {name}", .es = "ya está en el trabajo: {name}"},
                          {{"name", nameOfRow(work_, row)}}}
                : Message{{.en = "as line {line}", .es = "como la línea {line}"},
                          {{"line", std::to_string(line->second)}}};
        list_.rows.push_back({line_, RowFate::Again, words, {}});
        return std::nullopt;
    }

    Trouble land(Conductor row, Change change)
    {
        change.steps.emplace_back(Put<Conductor>{row.id, row});
        if (const Result<Change> back = applyChange(work_, change); !back.ok())
            return back.problem();
        lineOf_[row.id] = line_;
        list_.rows.push_back({line_, RowFate::Taken, verbatim(nameOfRow(work_, row)), {}});
        return std::nullopt;
    }

    // ---- Wires

    Trouble takeWire(const LandingPoint& from, const LandingPoint& to, const ListedWish& wish,
                     const std::string& colour)
    {
        if (!wish.core.empty())
            return problemAt(
                {},
                {.en = "The row has a core, '{core}', and no cable.",
                 .es = "La fila tiene el hilo '{core}' y ningún cable."},
                {.en = "Write the cable's tag too, or no core for a wire.",
                 .es = "Escriba también la etiqueta del cable, o ningún hilo para un hilo suelto."},
                {{"core", wish.core}});
        const std::vector<const Conductor*> on =
            std::visit([&](const auto& at) { return conductorsAt(at); }, from);
        for (const Conductor* row : on)
            if (row->make != ConductorMake::Core && joins(*row, from, to) &&
                (colour.empty() || row->colour.empty() || row->colour == colour))
                return saidAgain(*row);
        Conductor wire;
        wire.id = {work_.nextNumber};
        wire.tag = wireTag_ = tags_.wire(wireTag_);
        wire.from = landedAt(from);
        wire.to = landedAt(to);
        wire.colour = colour;
        return land(std::move(wire), {});
    }

    std::vector<const Conductor*> conductorsAt(const Landing& landing) const
    {
        return conductorsOn(work_, landing.device);
    }
    std::vector<const Conductor*> conductorsAt(SpliceId splice) const { return conductorsOn(work_, splice); }

    // ---- Cores

    Trouble takeCore(const LandingPoint& from, const LandingPoint& to, const ListedWish& wish,
                     const std::string& colour)
    {
        const std::optional<int> number = wholeNumber(wish.core);
        if (!wish.core.empty() && (!number || *number < 1 || *number > mostListedCores))
            return problemAt(
                {}, {.en = "'{core}' is no core's number.", .es = "'{core}' no es el número de un hilo."},
                {.en = "Write a number from 1 to {most}.", .es = "Escriba un número de 1 a {most}."},
                {{"core", wish.core}, {"most", std::to_string(mostListedCores)}});
        const std::vector<const Cable*> cables = tagged(work_.cables, wish.cable);
        if (cables.size() > 1)
            return problemAt(
                {}, {.en = "'{tag}' could be several cables.", .es = "'{tag}' puede ser varios cables."},
                {.en = "Write its tag as in the job.", .es = "Escriba su etiqueta como en el trabajo."},
                {{"tag", wish.cable}});
        const CableId cable = cables.empty() ? CableId{} : cables.front()->id;
        if (!cable)
            return takeCoreOfNew(from, to, wish.cable, {number.value_or(0), colour});
        return takeCoreOf(cable, from, to, {number.value_or(0), colour}, {});
    }

    struct CoreWish {
        int number = 0; // 0: any
        std::string colour;
    };

    // The cable stays only where the row lands one of its cores.
    Trouble takeCoreOfNew(const LandingPoint& from, const LandingPoint& to, const std::string& tag,
                          const CoreWish& wish)
    {
        if (auto problem = newTagProblem(work_.cables, CableId{}, tag))
            return problem;
        const Job before = work_;
        Numbers numbers(work_);
        const std::vector<Core> cores = told_[tag].cores();
        auto [type, change] = cableTypeOf(numbers, cores);
        if (const auto made = applyChange(work_, change); !made.ok())
            return made.problem();
        const Cable cable{.id = {},
                          .tag = tag,
                          .type = type,
                          .from = placeOf(work_, from),
                          .to = placeOf(work_, to),
                          .length = {},
                          .pull = {},
                          .notes = {}};
        auto [id, pulled] = pullCable(work_, numbers, cable);
        if (const auto made = applyChange(work_, pulled); !made.ok())
            return made.problem();
        auto problem = takeCoreOf(id, from, to, wish, {});
        if (problem)
            work_ = before;
        else
            list_.newCables.push_back(tag);
        return problem;
    }

    // One of the job with the very same cores and no gauge, or a new one.
    std::pair<CableTypeId, Change> cableTypeOf(Numbers& numbers, const std::vector<Core>& cores) const
    {
        for (const CableType& type : work_.cableTypes)
            if (type.cores == cores && !type.shielded && !type.carriesMains)
                return {type.id, {}};
        CableType type;
        type.id = {numbers.take()};
        type.cores = cores;
        type.words = {"cores as in a connection list; gauge not given",
                      "hilos según una lista de conexiones; sin calibre"};
        std::string name = std::to_string(cores.size()) + "×";
        for (const Core& core : cores)
            if (cores.size() <= 8 && !core.colour.empty())
                name += " " + core.colour;
        type.name = countedOn(name, [&](const std::string& each) {
            return std::any_of(work_.cableTypes.begin(), work_.cableTypes.end(),
                               [&](const CableType& other) { return other.name == each; });
        });
        return {type.id, {{Put<CableType>{type.id, type}}}};
    }

    bool suits(const Conductor& core, const CoreWish& wish) const
    {
        return wish.number != 0 ? core.core == wish.number
                                : wish.colour.empty() || colourOf(work_, core) == wish.colour;
    }

    Trouble takeCoreOf(CableId cable, const LandingPoint& from, const LandingPoint& to, const CoreWish& wish,
                       Change change)
    {
        const Cable& row = *work_.cables.find(cable);
        std::vector<const Conductor*> suiting;
        for (const Conductor* core : coresInOrder(work_, row))
            if (suits(*core, wish))
                suiting.push_back(core);
        const Gaps gaps = {{"cable", row.tag},
                           {"core", wish.number != 0 ? std::to_string(wish.number) : wish.colour}};
        if (suiting.empty())
            return problemAt(
                {}, {.en = "{cable} has no core '{core}'.", .es = "{cable} no tiene el hilo '{core}'."},
                {.en = "Give the cable a type that has it, or correct the row.",
                 .es = "Dé al cable un tipo que lo tenga, o corrija la fila."},
                gaps);
        const auto same = std::find_if(suiting.begin(), suiting.end(),
                                       [&](const Conductor* core) { return joins(*core, from, to); });
        if (same != suiting.end())
            return saidAgain(**same);
        if (auto problem = otherColour(row, *suiting.front(), wish))
            return problem;
        Trouble why;
        for (const Conductor* core : suiting) {
            Conductor landed = *core;
            const Trouble trouble = landEnds(row, landed, from, to);
            if (!trouble)
                return land(std::move(landed), std::move(change));
            why = why ? why : trouble;
        }
        return why;
    }

    Trouble otherColour(const Cable& cable, const Conductor& core, const CoreWish& wish) const
    {
        const std::string colour = colourOf(work_, core);
        if (wish.number == 0 || wish.colour.empty() || colour.empty() || colour == wish.colour)
            return std::nullopt;
        return problemAt({},
                         {.en = "Core {core} of {cable} is {colour}, not {wished}.",
                          .es = "El hilo {core} de {cable} es {colour}, no {wished}."},
                         {.en = "Correct its number or its colour.", .es = "Corrija su número o su color."},
                         {{"core", std::to_string(core.core)},
                          {"cable", cable.tag},
                          {"colour", colour},
                          {"wished", wish.colour}});
    }

    // Puts both ends where they belong, as the cable runs.
    Trouble landEnds(const Cable& cable, Conductor& core, const LandingPoint& from,
                     const LandingPoint& to) const
    {
        if (core.standing == Standing::LeaveAlone)
            return leftAlone(nameOfRow(work_, core));
        const auto fits = [](PlaceId one, PlaceId other) { return !one || !other || one == other; };
        const PlaceId a = placeOf(work_, from), b = placeOf(work_, to);
        const bool straight = fits(a, cable.from) && fits(b, cable.to),
                   crossed = fits(a, cable.to) && fits(b, cable.from);
        if (!straight && !crossed)
            return problemAt(
                {}, {.en = "{cable} does not run between {a} and {b}.", .es = "{cable} no va de {a} a {b}."},
                {.en = "Correct the cable's tag, or the places of cable and devices.",
                 .es = "Corrija la etiqueta del cable, o los lugares de cable y dispositivos."},
                {{"cable", cable.tag}, {"a", nameOfPoint(work_, from)}, {"b", nameOfPoint(work_, to)}});
        const auto take = [](End& end, const LandingPoint& point) {
            const bool free = end.state != EndState::Landed || end == landedAt(point);
            end = landedAt(point);
            return free;
        };
        Conductor as = core;
        if (straight && take(as.from, from) && take(as.to, to)) {
            core = std::move(as);
            return std::nullopt;
        }
        as = core;
        if (crossed && take(as.from, to) && take(as.to, from)) {
            core = std::move(as);
            return std::nullopt;
        }
        return problemAt({},
                         {.en = "The core is landed elsewhere: {name}.",
                          .es = "El hilo está conectado en otro sitio: {name}."},
                         {.en = "Take it off first, or name another core.",
                          .es = "Desconéctelo antes, o indique otro hilo."},
                         {{"name", nameOfRow(work_, core)}});
    }

    const Job& job_;
    Job work_; // with the rows taken so far
    FreshTags tags_;
    std::string wireTag_; // the last one given
    std::vector<std::pair<std::size_t, ListedWish>> rows_;
    std::map<std::string, ToldCores> told_; // by the cable's tag
    std::map<ConductorId, std::size_t> lineOf_;
    std::set<std::string> missing_;
    std::size_t line_ = 0;
    ConnectionList list_;
};

} // namespace

ConnectionList connectionList(const Job& job, const std::vector<CellRow>& table, const ListLayout& layout)
{
    return ListTaker(job, table, layout).taken();
}

std::size_t countOf(const ConnectionList& list, RowFate fate)
{
    return static_cast<std::size_t>(std::count_if(list.rows.begin(), list.rows.end(),
                                                  [&](const ListedRow& row) { return row.fate == fate; }));
}

Message summaryOf(const ConnectionList& list)
{
    const auto count = [&](RowFate fate) { return std::to_string(countOf(list, fate)); };
    const std::string cables =
        list.newCables.empty() ? "–" : fmt::format("{}", fmt::join(list.newCables, ", "));
    const std::string missing =
        list.missingDevices.empty() ? "–" : fmt::format("{}", fmt::join(list.missingDevices, ", "));
    return {{.en = "Rows taken: {taken}. Told again: {again}. Left: {left}. New cables: {cables}. Devices "
                   "not in the job: {missing}.",
             .es = "Filas tomadas: {taken}. Repetidas: {again}. Dejadas: {left}. Cables nuevos: {cables}. "
                   "Dispositivos que no están: {missing}."},
            {{"taken", count(RowFate::Taken)},
             {"again", count(RowFate::Again)},
             {"left", count(RowFate::Left)},
             {"cables", cables},
             {"missing", missing}}};
}

} // namespace doorloom
