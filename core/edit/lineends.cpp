#include "edit/linereader.h"

#include "edit/rownames.h"
#include "edit/undowords.h"

#include <algorithm>

// Typed lines about the ends of conductors.
namespace doorloom {

std::optional<Typed> LineReader::end(EndState state)
{
    const Text doingWhat = state == EndState::Spare ? doing::cap : doing::insulate;
    const LineWord* word = words_.take({"a core", "un hilo"}, [&](Offers& offers) {
        offerConductors(job_, Cores::Waiting, offers);
        if (state == EndState::Spare)
            offerCables(job_, offers);
    });
    if (!word)
        return std::nullopt;
    const std::vector<const Cable*> cables = tagged(job_.cables, word->text);
    if (state == EndState::Spare && cables.size() == 1)
        return typed(naming(doingWhat, cables.front()->tag), capUnused(job_, cables.front()->id),
                     {cables.front()->id.number});
    const Conductor* core = conductorCalled(*word);
    if (!core)
        return std::nullopt;
    const LineWord* where = words_.maybe([&](Offers& offers) {
        for (WhichEnd which : {WhichEnd::From, WhichEnd::To})
            if (const Place* place = job_.places.find(placeOfEnd(job_, {core->id, which})))
                offers.add(place->tag, verbatim(place->words));
    });
    const Place* at = where ? placeCalled(*where) : nullptr;
    if (words_.problem())
        return std::nullopt;
    Change all;
    Job later = job_;
    for (WhichEnd which : {WhichEnd::From, WhichEnd::To}) {
        const ConductorEnd end{core->id, which};
        if (endOf(*core, which).state != EndState::Waiting || (at && placeOfEnd(job_, end) != at->id))
            continue;
        Result<Change> one = state == EndState::Spare ? capEnd(later, end) : insulateEnd(later, end);
        if (!one.ok())
            return typed({}, one, {});
        static_cast<void>(applyChange(later, one.value()).ok());
        all = joined(std::move(all), std::move(one.value()));
    }
    if (all.steps.empty()) {
        words_.refuse(problemAt(
            word->text,
            {.en = "No end of '{core}' waits{where}.", .es = "Ningún extremo de '{core}' espera{where}."},
            {.en = "Take it off first: lift {core}.", .es = "Suéltelo antes: soltar {core}."},
            {{"core", word->text}, {"where", at ? " (" + at->tag + ")" : std::string()}}));
        return std::nullopt;
    }
    return typed(naming(doingWhat, word->text), std::move(all), {core->id.number});
}

std::optional<Typed> LineReader::lift()
{
    const LineWord* word =
        words_.take({"a core, or a device", "un hilo o un dispositivo"}, [&](Offers& offers) {
            offerConductors(job_, Cores::Landed, offers);
            offerDevices(job_, offers);
        });
    if (!word)
        return std::nullopt;
    const bool isPoint =
        !tagged(job_.devices, word->text).empty() || word->text.find(':') != std::string::npos;
    if (!isPoint) {
        const Conductor* conductor = conductorCalled(*word);
        return conductor ? typed(naming(doing::unland, word->text), takeOff(job_, conductor->id),
                                 {conductor->id.number})
                         : std::nullopt;
    }
    const Device* device = nullptr;
    const Terminal* terminal = nullptr;
    if (const std::size_t colon = word->text.find(':'); colon != std::string::npos) {
        device = deviceCalled(*word, std::string_view(word->text).substr(0, colon));
        terminal =
            device ? terminalCalled(*word, *device, std::string_view(word->text).substr(colon + 1)) : nullptr;
    } else if ((device = deviceCalled(*word, word->text))) {
        const LineWord* name =
            words_.take({"a terminal of " + device->tag, "un borne de " + device->tag},
                        [&](Offers& offers) { offerTerminals(job_, *device, {}, offers); });
        terminal = name ? terminalCalled(*name, *device, name->text) : nullptr;
    }
    return terminal ? liftAll({device->id, terminal->key}) : std::nullopt;
}

// Cores' ends wait; wires go.
std::optional<Typed> LineReader::liftAll(const Landing& landing)
{
    Change all;
    std::vector<std::uint32_t> rows;
    for (const Conductor* row : conductorsOn(job_, landing.device)) {
        Conductor after = *row;
        for (End* end : {&after.from, &after.to})
            if (const Landing* there = landingOf(*end); there && *there == landing)
                *end = End{};
        if (after == *row)
            continue;
        Result<Change> off = row->make == ConductorMake::Core && row->standing != Standing::LeaveAlone
                                 ? Result<Change>(Change{{Put<Conductor>{row->id, after}}})
                                 : takeOff(job_, row->id);
        if (!off.ok())
            return typed({}, off, {});
        all = joined(std::move(all), std::move(off.value()));
        rows.push_back(row->id.number);
    }
    const std::string name = nameOf(job_, landing);
    if (rows.empty()) {
        words_.refuse(
            problemAt(name, {.en = "Nothing is on '{name}'.", .es = "No hay nada en '{name}'."},
                      {.en = "Choose a terminal that is in use.", .es = "Elija un borne que esté en uso."},
                      {{"name", name}}));
        return std::nullopt;
    }
    return typed(naming(doing::unland, name), std::move(all), std::move(rows));
}

std::optional<Typed> LineReader::splice()
{
    const Offering offering = [&](Offers& offers) { offerConductors(job_, Cores::Waiting, offers); };
    std::vector<const Conductor*> cores;
    const Place* at = nullptr;
    std::string tag, names;
    while (const LineWord* word =
               cores.size() < 2 ? words_.take({"a core", "un hilo"}, offering) : words_.maybe(offering)) {
        const std::vector<const Conductor*> found = conductorsTagged(job_, word->text);
        const std::vector<const Place*> places = tagged(job_.places, word->text);
        if (found.size() == 1) {
            cores.push_back(found.front());
            names += (names.empty() ? "" : ", ") + word->text;
        } else if (cores.size() < 2) {
            conductorCalled(*word);
        } else if (places.size() == 1 && !at) {
            at = places.front();
        } else if (tag.empty()) {
            tag = capitals(word->text);
        } else {
            conductorCalled(*word);
        }
    }
    std::vector<ConductorEnd> ends;
    if (words_.problem() || !spliceEnds(cores, at, ends))
        return std::nullopt;
    const Result<Spliced> spliced = joinAtSplice(job_, numbers_, ends, tag);
    return typed(naming(doing::splice, names),
                 spliced.ok() ? Result<Change>(spliced.value().change) : spliced.problem(),
                 spliced.ok() ? std::vector{spliced.value().splice.number} : std::vector<std::uint32_t>());
}

// The ends that are at one place and not landed; the place is said, or the only one where all meet.
bool LineReader::spliceEnds(const std::vector<const Conductor*>& cores, const Place* at,
                            std::vector<ConductorEnd>& ends)
{
    std::vector<std::vector<ConductorEnd>> meetings;
    std::vector<PlaceId> places;
    for (WhichEnd first : {WhichEnd::From, WhichEnd::To}) {
        const PlaceId place = placeOfEnd(job_, {cores.front()->id, first});
        if (!place || (at && at->id != place) ||
            std::find(places.begin(), places.end(), place) != places.end())
            continue;
        places.push_back(place);
        std::vector<ConductorEnd> meeting;
        for (const Conductor* core : cores)
            for (WhichEnd which : {WhichEnd::From, WhichEnd::To})
                if (placeOfEnd(job_, {core->id, which}) == place &&
                    endOf(*core, which).state != EndState::Landed &&
                    std::none_of(meeting.begin(), meeting.end(),
                                 [&](const ConductorEnd& each) { return each.conductor == core->id; }))
                    meeting.push_back({core->id, which});
        if (meeting.size() == cores.size())
            meetings.push_back(std::move(meeting));
    }
    if (meetings.size() == 1) {
        ends = std::move(meetings.front());
        return true;
    }
    if (meetings.empty())
        words_.refuse(problemAt({},
                                {.en = "These cores do not all wait at one place.",
                                 .es = "Estos hilos no esperan todos en un mismo lugar."},
                                {.en = "Name cores whose cables meet, and take off what is landed there.",
                                 .es = "Nombre hilos cuyos cables se encuentren y suelte lo conectado allí."},
                                {}));
    else
        words_.refuse(problemAt({},
                                {.en = "These cores wait together at two places.",
                                 .es = "Estos hilos esperan juntos en dos lugares."},
                                {.en = "Say behind them at which: {one} or {other}.",
                                 .es = "Diga detrás en cuál: {one} o {other}."},
                                {{"one", job_.places.find(placeOfEnd(job_, meetings[0][0]))->tag},
                                 {"other", job_.places.find(placeOfEnd(job_, meetings[1][0]))->tag}}));
    return false;
}

} // namespace doorloom
