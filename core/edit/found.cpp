#include "edit/found.h"

#include "base/folded.h"
#include "edit/linewords.h"
#include "edit/references.h"
#include "edit/rownames.h"
#include "model/colours.h"

#include <algorithm>
#include <optional>
#include <tuple>
#include <unordered_map>

namespace doorloom {

namespace {

bool isPartOfWord(char letter)
{
    const auto byte = static_cast<unsigned char>(letter);
    return byte >= 0x80 || (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9');
}

char small(char letter)
{
    return letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
}

// Whether a text without accents holds a folded word, at which byte; only letters are compared.
std::size_t findSmall(std::string_view text, std::string_view word, std::size_t from)
{
    if (word.size() > text.size())
        return std::string_view::npos;
    for (std::size_t at = from; at + word.size() <= text.size(); ++at) {
        std::size_t same = 0;
        while (same < word.size() && small(text[at + same]) == word[same])
            ++same;
        if (same == word.size())
            return at;
    }
    return std::string_view::npos;
}

bool isPlain(std::string_view text)
{
    return std::all_of(text.begin(), text.end(),
                       [](char letter) { return static_cast<unsigned char>(letter) < 0x80; });
}

// How well a word is in a text: 0, it is the text; 1, the text begins with it; 2, a word of it does; 3,
// within.
std::optional<int> fit(std::string_view text, std::string_view word)
{
    std::string without;
    if (!isPlain(text)) {
        without = folded(text);
        text = without;
    }
    std::optional<int> best;
    for (std::size_t at = findSmall(text, word, 0); at != std::string_view::npos;
         at = findSmall(text, word, at + 1)) {
        const bool begins = at == 0 || !isPartOfWord(small(text[at - 1]));
        const int how = at == 0 ? (word.size() == text.size() ? 0 : 1) : begins ? 2 : 3;
        best = std::min(best.value_or(9), how);
        if (how < 3)
            break;
    }
    return best;
}

struct Hit {
    int rank;
    std::uint32_t sort; // what people look for most: devices, places, cables, conductors …
    std::uint32_t row;
};

class Search {
public:
    Search(const Job& job, std::string_view letters, Language language) : job_(job), language_(language)
    {
        for (const LineWord& word : wordsOfLine(letters))
            if (!word.text.empty())
                words_.push_back(folded(word.text));
    }

    std::vector<Hit> hits()
    {
        if (words_.empty())
            return {};
        for (const JobKind& row : job_.kinds)
            titles_[row.id.number] = inWords(row.kind.title, language_);
        for (const Device& row : job_.devices)
            consider(row.id.number, 0, row.tag, {row.words, titles_[row.kind.number]});
        for (const Place& row : job_.places)
            consider(row.id.number, 1, row.tag, {row.words});
        for (const Opening& row : job_.openings)
            consider(row.id.number, 2, row.tag, {row.words});
        for (const Cable& row : job_.cables)
            consider(row.id.number, 3, row.tag, {row.pull, row.notes, typeOf(row)});
        for (const Splice& row : job_.splices)
            consider(row.id.number, 4, row.tag, {row.connector});
        for (const Conductor& row : job_.conductors)
            consider(row.id.number, 5, row.tag, {});
        for (const Sheet& row : job_.sheets)
            consider(row.id.number, 6, row.title, {});
        for (const Note& row : job_.notes)
            consider(row.id.number, 7, {}, {row.words});
        return std::move(hits_);
    }

private:
    std::string_view typeOf(const Cable& row) const
    {
        const CableType* type = job_.cableTypes.find(row.type);
        return type ? std::string_view(type->name) : std::string_view();
    }

    void consider(std::uint32_t row, std::uint32_t sort, std::string_view tag,
                  std::initializer_list<std::string_view> texts)
    {
        int rank = 0;
        for (const std::string& word : words_) {
            std::optional<int> best = fit(tag, word);
            for (std::string_view text : texts)
                if (const auto how = !best || *best > 3 ? fit(text, word) : std::nullopt)
                    best = std::min(best.value_or(99), 4 + *how);
            if (!best)
                return;
            rank += *best;
        }
        hits_.push_back({rank, sort, row});
    }

    const Job& job_;
    Language language_;
    std::vector<std::string> words_;
    std::unordered_map<std::uint32_t, std::string> titles_; // of kinds
    std::vector<Hit> hits_;
};

std::string tagOfPlace(const Job& job, PlaceId id)
{
    const Place* place = job.places.find(id);
    return place ? place->tag : "…";
}

Found told(const Job& job, const Device& row)
{
    const Kind* kind = kindOf(job, row);
    return {row.id.number,
            row.tag,
            {{.en = "{title}, at {place}", .es = "{title}, en {place}"},
             {{"title", kind ? kind->title : Words{}}, {"place", tagOfPlace(job, row.place)}}}};
}

Found told(const Job& job, const Cable& row)
{
    const CableType* type = job.cableTypes.find(row.type);
    return {row.id.number,
            row.tag,
            {{.en = "cable {type}, {from} – {to}", .es = "cable {type}, {from} – {to}"},
             {{"type", type ? type->name : std::string()},
              {"from", tagOfPlace(job, row.from)},
              {"to", tagOfPlace(job, row.to)}}}};
}

Found told(const Job& job, const Conductor& row)
{
    return {row.id.number,
            row.tag,
            {{.en = "{name}, {colour}", .es = "{name}, {colour}"},
             {{"name", nameOfRow(job, row)}, {"colour", std::vector{colourInWords(colourOf(job, row))}}}}};
}

Found told(const Job& job, const Splice& row)
{
    return {
        row.id.number,
        row.tag,
        {{.en = "splice, at {place}", .es = "empalme, en {place}"}, {{"place", tagOfPlace(job, row.place)}}}};
}

Found told(const Job&, const Place& row)
{
    return {
        row.id.number, row.tag, {{.en = "place: {words}", .es = "lugar: {words}"}, {{"words", row.words}}}};
}

Found told(const Job&, const Opening& row)
{
    return {row.id.number,
            row.tag,
            {{.en = "opening: {words}", .es = "puerta: {words}"}, {{"words", row.words}}}};
}

Found told(const Job&, const Sheet& row)
{
    return {row.id.number, row.title, Text{.en = "sheet", .es = "hoja"}};
}

Found told(const Job&, const Note& row)
{
    return {row.id.number, {}, {{.en = "note: {words}", .es = "nota: {words}"}, {{"words", row.words}}}};
}

template <class Row> Found told(const Job&, const Row& row)
{
    return {row.id.number, {}, {}};
}

} // namespace

std::vector<Found> found(const Job& job, std::string_view letters, Language language, std::size_t most)
{
    std::vector<Hit> hits = Search(job, letters, language).hits();
    const auto isBetter = [](const Hit& one, const Hit& other) {
        return std::tie(one.rank, one.sort, one.row) < std::tie(other.rank, other.sort, other.row);
    };
    const std::size_t count = std::min(most, hits.size());
    std::partial_sort(hits.begin(), hits.begin() + static_cast<std::ptrdiff_t>(count), hits.end(), isBetter);
    std::vector<Found> all;
    for (std::size_t at = 0; at < count; ++at)
        visitRow(job, hits[at].row, [&](const auto& row) { all.push_back(told(job, row)); });
    return all;
}

} // namespace doorloom
