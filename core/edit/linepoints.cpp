#include "edit/linereader.h"

#include "edit/rownames.h"
#include "model/colours.h"

#include <algorithm>
#include <charconv>
#include <set>

namespace doorloom {

namespace {

const Words aDevice = {"a device of the job", "un dispositivo del trabajo"};
const Words aPlace = {"a place of the job", "un lugar del trabajo"};
const Words aCore = {"a core or wire of the job", "un hilo del trabajo"};

Words terminalOf(const Device& device)
{
    return {"a terminal of " + device.tag, "un borne de " + device.tag};
}

template <class Row> const Row* only(const std::vector<const Row*>& rows)
{
    return rows.size() == 1 ? rows.front() : nullptr;
}

bool isAmong(const std::vector<std::string>& said, const std::string& name)
{
    return std::any_of(said.begin(), said.end(),
                       [&](const std::string& word) { return folded(word) == folded(name); });
}

std::string joinedWith(std::string_view between, const std::vector<std::string>& words)
{
    std::string text;
    for (const std::string& word : words)
        text += (text.empty() ? "" : std::string(between)) + word;
    return text;
}

int wholeNumber(std::string_view text)
{
    int number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    return error == std::errc() && end == text.data() + text.size() && number > 0 ? number : 0;
}

} // namespace

void LineReader::offerFirst(Offers& offers) const
{
    offerDevices(job_, offers);
    for (const CommandWord& each : commandWords())
        offers.add(std::string(inWords(each.word, language_)), each.purpose);
    offerCables(job_, offers);
    offerSplices(job_, offers);
}

const Device* LineReader::deviceCalled(const LineWord& word, std::string_view tag)
{
    if (const Device* device = only(tagged(job_.devices, tag)))
        return device;
    return words_.refuse(word, aDevice, [&](Offers& offers) { offerDevices(job_, offers); });
}

const Terminal* LineReader::terminalCalled(const LineWord& word, const Device& device, std::string_view name)
{
    const std::vector<const Terminal*> found = terminalsNamed(*kindOf(job_, device), name);
    for (const Terminal* terminal : found) // of two alike, the one that is free
        if (found.size() == 1 || isFree(job_, {device.id, terminal->key}))
            return terminal;
    if (!found.empty())
        return found.front();
    return words_.refuse(word, terminalOf(device),
                         [&](Offers& offers) { offerTerminals(job_, device, {}, offers); });
}

// "PS1:+"
std::optional<LandingPoint> LineReader::pointWritten(const LineWord& word)
{
    const std::size_t colon = word.text.find(':');
    const Device* device = deviceCalled(word, std::string_view(word.text).substr(0, colon));
    const Terminal* terminal =
        device ? terminalCalled(word, *device, std::string_view(word.text).substr(colon + 1)) : nullptr;
    return terminal ? std::optional<LandingPoint>(Landing{device->id, terminal->key}) : std::nullopt;
}

std::optional<LandingPoint> LineReader::point(const Offering& offering)
{
    const LineWord* word = words_.take({"a terminal", "un borne"}, offering);
    if (!word)
        return std::nullopt;
    const Device* device = only(tagged(job_.devices, word->text));
    if (!device) {
        if (const Splice* splice = only(tagged(job_.splices, word->text)))
            return splice->id;
        if (word->text.find(':') != std::string::npos)
            return pointWritten(*word);
        words_.refuse(*word, {"a device or splice of the job", "un dispositivo o empalme del trabajo"},
                      offering);
        return std::nullopt;
    }
    const LineWord* name =
        words_.take(terminalOf(*device), [&](Offers& offers) { offerTerminals(job_, *device, {}, offers); });
    const Terminal* terminal = name ? terminalCalled(*name, *device, name->text) : nullptr;
    return terminal ? std::optional<LandingPoint>(Landing{device->id, terminal->key}) : std::nullopt;
}

std::optional<ConductorWish> LineReader::wish(const LandingPoint& a, const LandingPoint& b)
{
    const Offering offering = [&](Offers& offers) {
        const PlaceId from = placeOf(job_, a), to = placeOf(job_, b);
        for (const Cable& cable : job_.cables)
            if (from && to && from != to &&
                ((cable.from == from && cable.to == to) || (cable.from == to && cable.to == from)))
                for (const Conductor* core : coresInOrder(job_, cable))
                    if (core->from.state != EndState::Landed || core->to.state != EndState::Landed)
                        offers.add(core->tag, colourInWords(colourOf(job_, *core)));
        offers.add(language_ == Language::Spanish ? "suelto" : "wire",
                   Message{{.en = "a wire of its own", .es = "un hilo suelto"}});
    };
    ConductorWish wish;
    while (const LineWord* word = words_.maybe(offering)) {
        const Conductor* core = only(conductorsTagged(job_, word->text));
        if (meansWire(word->text)) {
            wish.wire = true;
        } else if (core && core->make == ConductorMake::Core) {
            wish.cable = core->cable;
            wish.core = core->core;
        } else if (const int number = wholeNumber(word->text)) {
            wish.core = number;
        } else if (const std::string colour = colourLetters(word->text); !colour.empty()) {
            wish.colour = colour;
        } else {
            words_.refuse(
                *word,
                {"a colour, a core or its number, or 'wire'", "un color, un hilo o su número, ni 'suelto'"},
                offering);
            return std::nullopt;
        }
    }
    return words_.problem() ? std::nullopt : std::optional(wish);
}

const Conductor* LineReader::conductorCalled(const LineWord& word)
{
    if (const Conductor* conductor = only(conductorsTagged(job_, word.text)))
        return conductor;
    return words_.refuse(word, aCore, [&](Offers& offers) { offerConductors(job_, Cores::Waiting, offers); });
}

// The stock's, and those of the job that the stock has no more.
std::vector<const Kind*> LineReader::kindsToChoose() const
{
    std::vector<const Kind*> all;
    for (const Kind& each : stock_.kinds)
        all.push_back(&each);
    for (const JobKind& each : job_.kinds)
        if (std::none_of(all.begin(), all.end(),
                         [&](const Kind* known) { return known->name == each.kind.name; }))
            all.push_back(&each.kind);
    return all;
}

// Takes words as long as they narrow the kinds, up to a place. Out: what was taken
std::vector<std::string> LineReader::takeKindWords(const LineWord& first, std::vector<const Kind*>& fitting)
{
    std::vector<std::string> said;
    for (const LineWord* word = &first; word; word = words_.peek()) {
        const bool isPlace = word != &first && !tagged(job_.places, word->text).empty();
        if (isPlace || word->isQuoted)
            break;
        said.push_back(word->text);
        std::vector<const Kind*> narrower;
        std::copy_if(fitting.begin(), fitting.end(), std::back_inserter(narrower),
                     [&](const Kind* each) { return fitsKind(*each, said); });
        if (narrower.empty()) {
            said.pop_back();
            break;
        }
        fitting = std::move(narrower);
        if (word != &first)
            words_.skip();
    }
    return said;
}

const Kind* LineReader::kind()
{
    std::vector<const Kind*> fitting = kindsToChoose();
    const Words aKind = {"a kind of device", "un tipo de dispositivo"};
    const Offering offering = [&](Offers& offers) { offerKinds(fitting, offers); };
    const LineWord* first = words_.take(aKind, offering);
    if (!first)
        return nullptr;
    const std::vector<std::string> said = takeKindWords(*first, fitting);
    if (said.empty())
        return words_.refuse(*first, aKind, offering);
    for (const Kind* each : fitting)
        if (fitting.size() == 1 || folded(each->name) == folded(joinedWith("-", said)) ||
            isAmong(said, each->name))
            return each;
    if (words_.left() == 0)
        words_.maybe(offering); // while it is typed, more of its words may follow
    std::vector<std::string> names;
    for (const Kind* each : fitting)
        names.push_back(each->name);
    return words_.refuse(
        problemAt({}, {.en = "'{said}' fits several kinds.", .es = "'{said}' vale para varios tipos."},
                  {.en = "Say which: {names}.", .es = "Diga cuál: {names}."},
                  {{"said", joinedWith(" ", said)}, {"names", joinedWith(", ", names)}}));
}

const CableType* LineReader::cableType()
{
    std::vector<const CableType*> all;
    for (const CableType& type : job_.cableTypes)
        all.push_back(&type);
    for (const CableType& type : stock_.cables)
        if (std::none_of(all.begin(), all.end(),
                         [&](const CableType* known) { return known->name == type.name; }))
            all.push_back(&type);
    const Offering offering = [&](Offers& offers) {
        for (const CableType* type : all)
            offers.add(type->name, verbatim(type->words));
    };
    const LineWord* word = words_.take({"a cable type", "un tipo de cable"}, offering);
    if (!word)
        return nullptr;
    const auto called = [&](const std::string& name) {
        return std::find_if(all.begin(), all.end(),
                            [&](const CableType* type) { return folded(type->name) == folded(name); });
    };
    const LineWord* more = words_.peek();
    if (const auto longer = more ? called(word->text + " " + more->text) : all.end(); longer != all.end()) {
        words_.skip();
        return *longer;
    }
    if (const auto found = called(word->text); found != all.end())
        return *found;
    return words_.refuse(*word, {"a cable type", "un tipo de cable"}, offering);
}

const Place* LineReader::placeCalled(const LineWord& word)
{
    if (const Place* place = only(tagged(job_.places, word.text)))
        return place;
    return words_.refuse(word, aPlace, [&](Offers& offers) { offerPlaces(job_, offers); });
}

std::optional<PlaceId> LineReader::placeOrDevices()
{
    const Offering offering = [&](Offers& offers) {
        offerPlaces(job_, offers);
        offerDevices(job_, offers);
    };
    const LineWord* word = words_.take({"a place", "un lugar"}, offering);
    if (!word)
        return std::nullopt;
    if (const Place* place = only(tagged(job_.places, word->text)))
        return place->id;
    const Device* device = only(tagged(job_.devices, word->text));
    if (device && device->place)
        return device->place;
    if (device)
        words_.refuse(problemAt(device->tag,
                                {.en = "'{tag}' has no place yet.", .es = "'{tag}' aún no tiene lugar."},
                                {.en = "Say where it is first: move {tag} PLACE.",
                                 .es = "Diga antes dónde está: mover {tag} LUGAR."},
                                {{"tag", device->tag}}));
    else
        words_.refuse(*word, aPlace, offering);
    return std::nullopt;
}

bool LineReader::length(Metres& length)
{
    const LineWord* word = words_.peek();
    std::string text = word->text;
    if (text.empty() || std::string_view("0123456789.").find(text.front()) == std::string_view::npos)
        return true; // it may be a tag
    std::replace(text.begin(), text.end(), ',', '.');
    double number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error != std::errc())
        return true;
    std::string unit = folded(std::string_view(end, text.data() + text.size()));
    words_.skip();
    if (unit.empty() && words_.peek()) {
        unit = folded(words_.peek()->text);
        words_.skip();
    }
    // A foot is 0.3048 m by definition (international foot of 1959, from memory).
    const double metres = unit == "m" ? number : unit == "ft" || unit == "'" ? number * 0.3048 : -1;
    if (metres < 0)
        words_.refuse(problemAt(
            {}, {.en = "'{length}' is not a length.", .es = "'{length}' no es una longitud."},
            {.en = "Write it with its unit: 12 m or 40 ft.", .es = "Escríbala con su unidad: 12 m o 40 ft."},
            {{"length", word->text}}));
    length = {metres};
    return metres >= 0;
}

std::vector<std::uint32_t> LineReader::rowsTagged(std::string_view tag) const
{
    std::vector<std::uint32_t> rows;
    const auto add = [&](const auto& found) {
        if (rows.empty())
            for (const auto* row : found)
                rows.push_back(row->id.number);
    };
    add(tagged(job_.devices, tag));
    add(tagged(job_.splices, tag));
    add(tagged(job_.cables, tag));
    add(conductorsTagged(job_, tag));
    add(tagged(job_.places, tag));
    return rows;
}

} // namespace doorloom
