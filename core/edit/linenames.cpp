#include "edit/linenames.h"

#include "edit/rownames.h"
#include "model/colours.h"

#include <algorithm>
#include <charconv>

namespace doorloom {

namespace {

// Those that come first, then the others, until there are enough: most rows need not be asked.
template <class Row, class IsFirst, class Words>
void offerRows(const Table<Row>& rows, Offers& offers, IsFirst isFirst, Words wordsOf)
{
    for (const bool first : {true, false})
        for (const Row& row : rows) {
            if (offers.isFull())
                return;
            if (!row.tag.empty() && offers.wants(row.tag) && isFirst(row) == first)
                offers.add(row.tag, wordsOf(row));
        }
}

bool hasFreeTerminal(const Job& job, const Device& device)
{
    const Kind* kind = kindOf(job, device);
    const std::vector<const Terminal*> terminals = kind ? terminalsOf(*kind) : std::vector<const Terminal*>();
    return std::any_of(terminals.begin(), terminals.end(), [&](const Terminal* each) {
        return isFree(job, {device.id, each->key});
    });
}

Message placeWords(const Job& job, PlaceId id)
{
    const Place* place = job.places.find(id);
    return place ? verbatim(place->tag) : Message{{.en = "no place yet", .es = "sin lugar todavía"}};
}

Message deviceWords(const Job& job, const Device& device)
{
    const Kind* kind = kindOf(job, device);
    return {{.en = "{title}, {place}", .es = "{title}, {place}"},
            {{"title", kind ? kind->title : Words{}}, {"place", std::vector{placeWords(job, device.place)}}}};
}

// Tokens of a title: "12 V" is found by "12v" too.
std::vector<std::string> partsOf(const std::string& text)
{
    std::vector<std::string> parts;
    std::string word;
    for (char letter : folded(text) + " ") {
        const bool ends = letter == ' ' || letter == ',' || letter == '(' || letter == ')' || letter == '/';
        if (!ends) {
            word += letter;
            continue;
        }
        if (!word.empty())
            parts.push_back(word);
        word.clear();
    }
    for (std::size_t at = 0; at + 1 < parts.size(); ++at)
        if (parts[at].find_first_not_of("0123456789.") == std::string::npos && parts[at + 1].size() <= 2)
            parts.push_back(parts[at] + parts[at + 1]);
    const std::size_t count = parts.size();
    for (std::size_t at = 0; at < count; ++at)
        for (std::size_t dash = parts[at].find('-'); dash != std::string::npos;
             dash = parts[at].find('-', dash + 1))
            if (dash + 1 < parts[at].size())
                parts.push_back(parts[at].substr(dash + 1));
    return parts;
}

bool isWaiting(const Conductor& row)
{
    return row.from.state == EndState::Waiting || row.to.state == EndState::Waiting;
}

} // namespace

std::vector<const Conductor*> conductorsTagged(const Job& job, std::string_view tag)
{
    const std::size_t dot = tag.rfind('.');
    int number = 0;
    if (dot != std::string_view::npos) {
        const auto [end, error] = std::from_chars(tag.data() + dot + 1, tag.data() + tag.size(), number);
        if (error != std::errc() || end != tag.data() + tag.size())
            number = 0;
    }
    if (number > 0)
        for (const Cable* cable : tagged(job.cables, tag.substr(0, dot)))
            for (const Conductor* core : coresOf(job, cable->id))
                if (core->core == number)
                    return {core};
    return tagged(job.conductors, tag);
}

std::vector<const Terminal*> terminalsNamed(const Kind& kind, std::string_view name)
{
    const std::string wanted = folded(name);
    const std::string colour = colourLetters(name);
    std::vector<const Terminal*> same, lead;
    for (const Terminal* terminal : terminalsOf(kind)) {
        if (terminal->key == name || terminal->printed == name)
            return {terminal};
        if (folded(terminal->key) == wanted || folded(terminal->printed) == wanted)
            same.push_back(terminal);
        if (!colour.empty() && terminal->lead == colour)
            lead.push_back(terminal);
    }
    return same.empty() ? lead : same;
}

std::string capitals(std::string tag)
{
    for (char& letter : tag)
        if (letter >= 'a' && letter <= 'z')
            letter = static_cast<char>(letter - 'a' + 'A');
    return tag;
}

bool isFree(const Job& job, const Landing& landing)
{
    const std::vector<const Conductor*> all = conductorsOn(job, landing.device);
    return std::none_of(all.begin(), all.end(), [&](const Conductor* row) {
        const Landing *from = landingOf(row->from), *to = landingOf(row->to);
        return (from && *from == landing) || (to && *to == landing);
    });
}

bool fitsKind(const Kind& kind, const std::vector<std::string>& words)
{
    std::vector<std::string> parts = {folded(kind.name)};
    for (const std::string& text : {kind.name, kind.title.en, kind.title.es})
        for (std::string& part : partsOf(text))
            parts.push_back(std::move(part));
    return std::all_of(words.begin(), words.end(), [&](const std::string& word) {
        return std::any_of(parts.begin(), parts.end(),
                           [&](const std::string& part) { return part.starts_with(folded(word)); });
    });
}

void offerDevices(const Job& job, Offers& offers)
{
    offerRows(
        job.devices, offers, [&](const Device& each) { return hasFreeTerminal(job, each); },
        [&](const Device& each) { return deviceWords(job, each); });
}

void offerTerminals(const Job& job, const Device& device, std::string_view before, Offers& offers)
{
    const Kind* kind = kindOf(job, device);
    if (!kind)
        return;
    std::vector<const Terminal*> terminals = terminalsOf(*kind);
    std::stable_partition(terminals.begin(), terminals.end(), [&](const Terminal* each) {
        return isFree(job, {device.id, each->key});
    });
    for (const Terminal* terminal : terminals)
        offers.add(std::string(before) + terminal->printed, verbatim(terminal->words));
}

void offerPlaces(const Job& job, Offers& offers)
{
    for (const Place& place : job.places)
        offers.add(place.tag, verbatim(place.words));
}

void offerCables(const Job& job, Offers& offers)
{
    const auto hasWaiting = [&](const Cable& cable) {
        const std::vector<const Conductor*> cores = coresOf(job, cable.id);
        return std::any_of(cores.begin(), cores.end(),
                           [](const Conductor* core) { return isWaiting(*core); });
    };
    offerRows(job.cables, offers, hasWaiting, [&](const Cable& cable) {
        const CableType* type = job.cableTypes.find(cable.type);
        return Message{{.en = "{type}, {from} – {to}", .es = "{type}, {from} – {to}"},
                       {{"type", type ? type->name : std::string()},
                        {"from", std::vector{placeWords(job, cable.from)}},
                        {"to", std::vector{placeWords(job, cable.to)}}}};
    });
}

void offerSplices(const Job& job, Offers& offers)
{
    for (const Splice& splice : job.splices)
        offers.add(splice.tag, {{.en = "splice, {place}", .es = "empalme, {place}"},
                                {{"place", std::vector{placeWords(job, splice.place)}}}});
}

void offerConductors(const Job& job, Cores first, Offers& offers)
{
    offerRows(
        job.conductors, offers,
        [&](const Conductor& row) { return isWaiting(row) == (first == Cores::Waiting); },
        [&](const Conductor& row) { return verbatim(nameOfRow(job, row)); });
}

void offerKinds(const std::vector<const Kind*>& kinds, Offers& offers)
{
    for (const Kind* kind : kinds)
        offers.add(kind->name, verbatim(kind->title));
}

} // namespace doorloom
