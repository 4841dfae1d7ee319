#include "edit/linereader.h"

#include "edit/nexttag.h"
#include "edit/rownames.h"
#include "edit/tagrules.h"
#include "edit/undowords.h"
#include "edit/verifyrow.h"

namespace doorloom {

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
    if (!cableTagAndLength(cable))
        return std::nullopt;
    auto [typeId, taken] = takeCableType(job_, numbers_, *type);
    cable.type = typeId;
    // The type may be new to the job: the cable's cores are those of the type that it has then.
    Job later = job_;
    if (const Result<Change> made = applyChange(later, taken); !made.ok())
        words_.refuse(made.problem());
    auto [id, change] = pullCable(later, numbers_, cable);
    return typed(naming(doing::pull, cable.tag), joined(std::move(taken), std::move(change)), {id.number});
}

bool LineReader::cableTagAndLength(Cable& cable)
{
    while (words_.left() > 0) {
        const std::size_t left = words_.left();
        if (!length(cable.length))
            return false;
        if (words_.left() < left)
            continue;
        if (!cable.tag.empty())
            break;
        cable.tag = capitals(words_.peek()->text);
        words_.skip();
    }
    if (cable.tag.empty()) {
        cable.tag = nextCableTag(job_);
        words_.maybe([&](Offers& offers) {
            offers.add(cable.tag, Message{{.en = "the next tag", .es = "la etiqueta siguiente"}});
        });
    }
    if (auto problem = newTagProblem(job_.cables, {}, cable.tag))
        words_.refuse(*std::move(problem));
    return !words_.problem();
}

} // namespace doorloom
