#include "edit/linereader.h"

#include "edit/nexttag.h"
#include "edit/references.h"
#include "edit/removeany.h"
#include "edit/rownames.h"
#include "edit/undowords.h"
#include "edit/verifyrow.h"

#include <algorithm>
#include <charconv>

namespace doorloom {

namespace {

// A new tag is written as tags are, in capitals.
std::string capitals(std::string tag)
{
    for (char& letter : tag)
        if (letter >= 'a' && letter <= 'z')
            letter = static_cast<char>(letter - 'a' + 'A');
    return tag;
}

void noOffers(Offers&) {}

template <class Keyed> const Keyed* keyed(const std::vector<Keyed>& list, std::string_view word)
{
    const std::string wanted = folded(word);
    const Keyed* begun = nullptr;
    std::size_t count = 0;
    for (const Keyed& each : list) {
        if (each.key == word || folded(each.key) == wanted || folded(each.words.en) == wanted ||
            folded(each.words.es) == wanted)
            return &each;
        if (folded(each.key).starts_with(wanted)) {
            begun = &each;
            ++count;
        }
    }
    return count == 1 ? begun : nullptr;
}

template <class Keyed> void offerKeys(const std::vector<Keyed>& list, Offers& offers)
{
    for (const Keyed& each : list)
        offers.add(each.key, verbatim(each.words));
}

std::optional<double> decimal(std::string text, std::string_view unit)
{
    std::replace(text.begin(), text.end(), ',', '.');
    if (!unit.empty() && text.size() > unit.size() && text.ends_with(unit))
        text.resize(text.size() - unit.size());
    double number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc() && end == text.data() + text.size() ? std::optional(number) : std::nullopt;
}

// Option and jumper of "K1.JA"; none when the kind has no such jumper.
std::pair<const Option*, const Jumper*> jumperCalled(const Kind& kind, std::string_view word)
{
    for (const Option& option : kind.options)
        for (const Jumper& jumper : option.jumpers)
            if (folded(option.key + "." + jumper.key) == folded(word))
                return {&option, &jumper};
    return {};
}

} // namespace

LineReader::LineReader(const Job& job, const Stock& stock, LineWords words, Language language)
    : job_(job), stock_(stock), words_(std::move(words)), language_(language), numbers_(job)
{
}

std::optional<Typed> LineReader::line()
{
    const Offering offering = [&](Offers& offers) { offerFirst(offers); };
    const LineWord* first = words_.peek();
    if (!first) {
        words_.take({"a tag or a command", "una etiqueta o una orden"}, offering);
        return std::nullopt;
    }
    if (const std::optional<LineCommand> called = commandCalled(first->text)) {
        words_.skip();
        return command(*called);
    }
    const bool isPoint = !tagged(job_.devices, first->text).empty() ||
                         !tagged(job_.splices, first->text).empty() ||
                         first->text.find(':') != std::string::npos;
    const std::vector<const Cable*> cables = tagged(job_.cables, first->text);
    if (!isPoint && cables.size() == 1) {
        words_.skip();
        return landCable(*cables.front());
    }
    if (isPoint)
        return join();
    words_.refuse(*first,
                  {"a command, or a device, splice or cable of the job",
                   "una orden ni un dispositivo, empalme o cable del trabajo"},
                  offering);
    return std::nullopt;
}

std::optional<Typed> LineReader::command(LineCommand command)
{
    switch (command) {
    case LineCommand::Place:
        return place();
    case LineCommand::Pull:
        return pull();
    case LineCommand::Cap:
        return end(EndState::Spare);
    case LineCommand::Insulate:
        return end(EndState::Insulated);
    case LineCommand::Lift:
        return lift();
    case LineCommand::Splice:
        return splice();
    case LineCommand::Set:
        return set();
    case LineCommand::Move:
        return move();
    case LineCommand::Rename:
        return rename();
    case LineCommand::Remove:
        return remove();
    }
    return std::nullopt;
}

std::optional<Typed> LineReader::typed(Message what, Result<Change> change, std::vector<std::uint32_t> rows)
{
    if (!words_.ended())
        return std::nullopt;
    if (!change.ok()) {
        words_.refuse(change.problem());
        return std::nullopt;
    }
    return Typed{std::move(what), joined(before_, std::move(change.value())), std::move(rows)};
}

std::optional<Typed> LineReader::join()
{
    const Offering offering = [&](Offers& offers) {
        offerDevices(job_, offers);
        offerSplices(job_, offers);
    };
    const std::optional<LandingPoint> a = point(offering);
    const std::optional<LandingPoint> b = a ? point(offering) : std::nullopt;
    const std::optional<ConductorWish> wished = b ? wish(*a, *b) : std::nullopt;
    if (!wished)
        return std::nullopt;
    const Result<Landed> landed = joinTerminals(job_, numbers_, *a, *b, *wished);
    return typed(naming(doing::land, nameOfPoint(job_, *a) + " – " + nameOfPoint(job_, *b)),
                 landed.ok() ? Result<Change>(landed.value().change) : landed.problem(),
                 landed.ok() ? std::vector{landed.value().conductor.number} : std::vector<std::uint32_t>());
}

std::optional<Typed> LineReader::landCable(const Cable& cable)
{
    const std::optional<LandingPoint> at = point([&](Offers& offers) {
        for (PlaceId place : {cable.from, cable.to})
            for (const Device& device : job_.devices)
                if (device.place == place)
                    offers.add(device.tag,
                               kindOf(job_, device) ? verbatim(kindOf(job_, device)->title) : Message{});
        offerSplices(job_, offers);
    });
    if (!at)
        return std::nullopt;
    const Result<Landed> landed = landNext(job_, cable.id, *at);
    return typed(naming(doing::land, cable.tag + " – " + nameOfPoint(job_, *at)),
                 landed.ok() ? Result<Change>(landed.value().change) : landed.problem(),
                 landed.ok() ? std::vector{landed.value().conductor.number} : std::vector<std::uint32_t>());
}

std::optional<PlaceId> LineReader::placeOrNew()
{
    const Offering offering = [&](Offers& offers) { offerPlaces(job_, offers); };
    const LineWord* word = words_.take({"a place", "un lugar"}, offering);
    if (!word)
        return std::nullopt;
    if (const std::vector<const Place*> found = tagged(job_.places, word->text); !found.empty())
        return found.front()->id;
    const LineWord* said = nullptr;
    for (std::size_t ahead = 0; words_.peek(ahead) && !said; ++ahead)
        if (words_.peek(ahead)->isQuoted)
            said = words_.peek(ahead);
    if (!said || word->isQuoted) {
        Offers offers;
        offering(offers);
        std::string places;
        for (const Completion& each : offers.list())
            places += (places.empty() ? "" : ", ") + each.text;
        words_.refuse(
            problemAt({},
                      {.en = "'{word}' is not a place of the job ({places}).",
                       .es = "'{word}' no es un lugar del trabajo ({places})."},
                      {.en = "To make it, say behind it what it is, in quotes: \"cabinet above ceiling\".",
                       .es = "Para crearlo, diga detrás qué es, entre comillas: \"caja sobre el techo\"."},
                      {{"word", word->text}, {"places", places.empty() ? "–" : places}}));
        return std::nullopt;
    }
    Place place;
    place.tag = capitals(word->text);
    place.words = said->text;
    Result<std::pair<PlaceId, Change>> added = addPlace(job_, numbers_, std::move(place));
    if (!added.ok()) {
        words_.refuse(added.problem());
        return std::nullopt;
    }
    before_ = joined(std::move(before_), added.value().second);
    return added.value().first;
}

std::optional<Typed> LineReader::place()
{
    const Kind* wanted = kind();
    const std::optional<PlaceId> at = wanted ? placeOrNew() : std::nullopt;
    if (!at)
        return std::nullopt;
    Device named;
    const Offering offering = [&](Offers& offers) {
        offers.add(nextDeviceTag(job_, *wanted),
                   Message{{.en = "the next tag", .es = "la etiqueta siguiente"}});
    };
    bool placeIsSaid = before_.steps.empty(); // the first words in quotes are a new place's
    while (const LineWord* word = words_.maybe(named.tag.empty() ? offering : Offering(noOffers))) {
        if (word->isQuoted && !placeIsSaid)
            placeIsSaid = true;
        else if (word->isQuoted)
            named.words = word->text;
        else if (named.tag.empty())
            named.tag = capitals(word->text);
        else {
            words_.refuse(*word, {"words in quotes", "palabras entre comillas"}, noOffers);
            return std::nullopt;
        }
    }
    if (words_.problem())
        return std::nullopt;
    if (named.tag.empty())
        named.tag = nextDeviceTag(job_, *wanted);
    if (auto problem = tagProblem(named))
        words_.refuse(*std::move(problem));
    else if (deviceTagged(job_, named.tag))
        words_.refuse(tagUsedTwice(named));
    auto [id, change] = placeDevice(job_, numbers_, *wanted, named.tag, *at);
    for (Step& step : change.steps)
        if (auto* put = std::get_if<Put<Device>>(&step))
            put->after->words = named.words;
    return typed(naming(doing::place, named.tag), std::move(change), {id.number});
}

std::optional<Typed> LineReader::pull()
{
    const CableType* type = cableType();
    Cable cable;
    const std::optional<PlaceId> from = type ? placeOrDevices() : std::nullopt;
    const std::optional<PlaceId> to = from ? placeOrDevices() : std::nullopt;
    if (!to)
        return std::nullopt;
    if (*from == *to) {
        words_.refuse(problemAt({},
                                {.en = "The cable would begin and end at {place}.",
                                 .es = "El cable empezaría y terminaría en {place}."},
                                {.en = "Name two places; within one, wires do.",
                                 .es = "Nombre dos lugares; dentro de uno bastan hilos sueltos."},
                                {{"place", job_.places.find(*from)->tag}}));
        return std::nullopt;
    }
    cable.from = *from;
    cable.to = *to;
    const Offering offering = [&](Offers& offers) {
        offers.add(nextCableTag(job_), Message{{.en = "the next tag", .es = "la etiqueta siguiente"}});
    };
    while (words_.left() > 0) {
        const std::size_t left = words_.left();
        if (!length(cable.length))
            return std::nullopt;
        if (words_.left() < left)
            continue;
        if (!cable.tag.empty())
            break;
        cable.tag = capitals(words_.peek()->text);
        words_.skip();
    }
    if (cable.tag.empty()) {
        words_.maybe(offering);
        cable.tag = nextCableTag(job_);
    }
    auto [typeId, taken] = takeCableType(job_, numbers_, *type);
    // The type may be new to the job: the cable's cores are those of the type that it has then.
    Job later = job_;
    if (const Result<Change> made = applyChange(later, taken); !made.ok())
        words_.refuse(made.problem());
    cable.type = typeId;
    const auto isSame = [&](const Cable& each) { return each.tag == cable.tag; };
    if (std::any_of(job_.cables.begin(), job_.cables.end(), isSame))
        words_.refuse(problemAt(
            cable.tag, {.en = "There is a cable '{tag}' already.", .es = "Ya existe el cable '{tag}'."},
            {.en = "Give it another tag, or none: the next one is {next}.",
             .es = "Déle otra etiqueta, o ninguna: la siguiente es {next}."},
            {{"tag", cable.tag}, {"next", nextCableTag(job_)}}));
    const std::string tag = cable.tag;
    auto [id, change] = pullCable(later, numbers_, std::move(cable));
    return typed(naming(doing::pull, tag), joined(std::move(taken), std::move(change)), {id.number});
}

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
    if (tag.empty())
        tag = nextSpliceTag(job_);
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

std::optional<Typed> LineReader::set()
{
    const LineWord* word = words_.take({"a device", "un dispositivo"}, [&](Offers& offers) {
        for (const Device& device : job_.devices)
            if (const Kind* each = kindOf(job_, device);
                each && (!each->options.empty() || !each->settings.empty()))
                offers.add(device.tag, verbatim(each->title));
    });
    const Device* device = word ? deviceCalled(*word, word->text) : nullptr;
    return device ? setOptionOrSetting(*device, *kindOf(job_, *device)) : std::nullopt;
}

std::optional<Typed> LineReader::setOptionOrSetting(const Device& device, const Kind& kind)
{
    const Words wanted = {"an option or setting of " + device.tag, "una opción o un ajuste de " + device.tag};
    const Offering offering = [&](Offers& offers) {
        offerKeys(kind.options, offers);
        offerKeys(kind.settings, offers);
        for (const Option& option : kind.options)
            for (const Jumper& jumper : option.jumpers)
                offers.add(option.key + "." + jumper.key, verbatim(jumper.words));
    };
    const LineWord* word = words_.take(wanted, offering);
    if (!word)
        return std::nullopt;
    const auto [jumperOption, jumper] = jumperCalled(kind, word->text);
    const Option* option = jumper ? jumperOption : keyed(kind.options, word->text);
    const Setting* setting = option ? nullptr : keyed(kind.settings, word->text);
    if (!option && !setting) {
        words_.refuse(*word, wanted, offering);
        return std::nullopt;
    }
    const std::vector<Throw>& values = option ? option->values : setting->values;
    const Offering valueOffering = [&](Offers& offers) {
        offerKeys(values, offers);
        if (setting && setting->factory && values.empty())
            offers.add(settingText(*setting->factory),
                       Message{{.en = "as from the factory", .es = "de fábrica"}});
    };
    const LineWord* value = words_.take({"a value", "un valor"}, valueOffering);
    if (!value)
        return std::nullopt;
    const Throw* known = keyed(values, value->text);
    const Key key = known ? known->key : value->text == "?" ? Key() : value->text;
    const std::string name = device.tag + " " + word->text + " " + value->text;
    if (jumper)
        return typed(naming(doing::set, name), setJumper(job_, device.id, option->key, jumper->key, key),
                     {device.id.number});
    if (option)
        return typed(naming(doing::set, name), setOption(job_, device.id, option->key, key),
                     {device.id.number});
    const std::optional<double> number = values.empty() ? decimal(value->text, setting->unit) : std::nullopt;
    if (const LineWord* unit = words_.peek(); unit && number && folded(unit->text) == folded(setting->unit))
        words_.skip();
    return typed(
        naming(doing::set, name),
        setSetting(job_, device.id, setting->key, number ? SettingValue(*number) : SettingValue(key)),
        {device.id.number});
}

std::optional<Typed> LineReader::move()
{
    const Offering offering = [&](Offers& offers) {
        offerDevices(job_, offers);
        offerSplices(job_, offers);
    };
    const LineWord* word = words_.take({"a device or splice", "un dispositivo o empalme"}, offering);
    if (!word)
        return std::nullopt;
    std::vector<std::uint32_t> rows;
    for (const Device* device : tagged(job_.devices, word->text))
        rows.push_back(device->id.number);
    for (const Splice* splice :
         rows.empty() ? tagged(job_.splices, word->text) : std::vector<const Splice*>())
        rows.push_back(splice->id.number);
    if (rows.size() != 1) {
        words_.refuse(*word, {"a device or splice of the job", "un dispositivo o empalme del trabajo"},
                      offering);
        return std::nullopt;
    }
    const std::optional<PlaceId> to = placeOrNew();
    if (!to)
        return std::nullopt;
    if (!before_.steps.empty() && words_.peek() && words_.peek()->isQuoted)
        words_.skip(); // the new place's words
    Job later = job_;
    if (!before_.steps.empty())
        static_cast<void>(applyChange(later, before_).ok());
    return typed(naming(doing::move, word->text), setPlace(later, rows, *to), rows);
}

std::optional<Typed> LineReader::rename()
{
    const Offering offering = [&](Offers& offers) {
        offerDevices(job_, offers);
        offerCables(job_, offers);
        offerSplices(job_, offers);
        offerPlaces(job_, offers);
    };
    const Words wanted = {"a tag of the job", "una etiqueta del trabajo"};
    const LineWord* word = words_.take(wanted, offering);
    if (!word)
        return std::nullopt;
    const std::vector<std::uint32_t> rows = rowsTagged(word->text);
    if (rows.size() != 1) {
        words_.refuse(*word, wanted, offering);
        return std::nullopt;
    }
    const LineWord* to = words_.take({"its new tag", "su etiqueta nueva"}, noOffers);
    if (!to)
        return std::nullopt;
    const std::string tag = capitals(to->text);
    Result<Change> change = Change{};
    visitRow(job_, rows.front(), [&]<class Row>(const Row& row) {
        if constexpr (std::is_same_v<Row, Device>)
            change = renameDevice(job_, row.id, tag);
        else if constexpr (std::is_same_v<Row, Splice>)
            change = renameSplice(job_, row.id, tag);
        else if constexpr (std::is_same_v<Row, Cable>)
            change = renameCable(job_, row.id, tag);
        else if constexpr (std::is_same_v<Row, Place>)
            change = renamePlace(job_, row.id, tag);
        else if constexpr (std::is_same_v<Row, Conductor>)
            change = renameConductor(job_, row.id, tag);
    });
    return typed(naming(doing::rename, word->text), std::move(change), rows);
}

std::optional<Typed> LineReader::remove()
{
    const Offering offering = [&](Offers& offers) {
        offerDevices(job_, offers);
        offerCables(job_, offers);
        offerSplices(job_, offers);
        offerConductors(job_, Cores::Landed, offers);
    };
    const Words wanted = {"a tag of the job", "una etiqueta del trabajo"};
    std::vector<std::uint32_t> rows;
    std::string names;
    while (const LineWord* word = rows.empty() ? words_.take(wanted, offering) : words_.maybe(offering)) {
        const std::vector<std::uint32_t> found = rowsTagged(word->text);
        if (found.size() != 1) {
            words_.refuse(*word, wanted, offering);
            return std::nullopt;
        }
        rows.push_back(found.front());
        names += (names.empty() ? "" : ", ") + word->text;
    }
    if (words_.problem())
        return std::nullopt;
    return typed(naming(doing::remove, names), removeAny(job_, rows), rows);
}

} // namespace doorloom
