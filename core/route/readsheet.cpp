#include "route/readsheet.h"

#include <charconv>
#include <cmath>
#include <map>
#include <optional>

namespace doorloom::routing {
namespace {

constexpr double mostPlace = 1e9;
constexpr std::size_t mostLines = 1'000'000;

constexpr Text notAWord = {.en = "A sheet has no line that begins with '{word}'.",
                           .es = "Una hoja no tiene líneas que empiecen por '{word}'."};
constexpr Text useWords = {.en = "Begin it with box, port, conn, pin or #.",
                           .es = "Empiécela con box, port, conn, pin o #."};
constexpr Text notAMove = {.en = "'{word}' is no move.", .es = "'{word}' no es un movimiento."};
constexpr Text useMove = {.en = "Write: move BOX x y.", .es = "Escriba: move BOX x y."};
constexpr Text wrongCount = {.en = "'{word}' takes {count} words after it.",
                             .es = "'{word}' lleva {count} palabras detrás."};
constexpr Text useForm = {.en = "Write: {form}.", .es = "Escriba: {form}."};
constexpr Text notANumber = {.en = "'{word}' is no number between −1e9 and 1e9.",
                             .es = "'{word}' no es un número entre −1e9 y 1e9."};
constexpr Text useNumber = {.en = "Write digits with a point, as in 12.5; a width or height is not below 0.",
                            .es = "Escriba cifras con punto, como 12.5; un ancho o alto no es menor que 0."};
constexpr Text notKnown = {.en = "There is no '{word}' before this line.",
                           .es = "No hay '{word}' antes de esta línea."};
constexpr Text useKnown = {.en = "Name it in a line above, or correct the name.",
                           .es = "Nómbrelo en una línea anterior o corrija el nombre."};
constexpr Text takenTwice = {.en = "'{word}' is there already.", .es = "'{word}' ya existe."};
constexpr Text useAnother = {.en = "Give it another name.", .es = "Dele otro nombre."};
constexpr Text notASide = {.en = "'{word}' is no side.", .es = "'{word}' no es un lado."};
constexpr Text useSide = {.en = "Use L, R, T or B.", .es = "Use L, R, T o B."};
constexpr Text tooLong = {.en = "The sheet has more than {count} lines.",
                          .es = "La hoja tiene más de {count} líneas."};
constexpr Text useLess = {.en = "Divide it.", .es = "Divídala."};

using Line = std::vector<std::string_view>;

struct Form {
    std::string_view word, form;
    std::size_t words; // with the first
};

Line wordsOf(std::string_view line)
{
    constexpr std::string_view blanks = " \t\r\v\f";
    Line words;
    for (std::size_t at = line.find_first_not_of(blanks); at != line.npos;
         at = line.find_first_not_of(blanks, at)) {
        const std::size_t end = std::min(line.find_first_of(blanks, at), line.size());
        words.push_back(line.substr(at, end - at));
        at = end;
    }
    return words;
}

class Reader {
public:
    explicit Reader(std::string_view text) : text_(text) {}

    // Calls take(words) for each line that has some, until one makes a problem.
    template <class Take> std::optional<Problem> read(Take take)
    {
        while (!text_.empty() && !problem_) {
            const std::size_t end = std::min(text_.find('\n'), text_.size());
            const Line words = wordsOf(text_.substr(0, end));
            text_.remove_prefix(std::min(end + 1, text_.size()));
            if (++number_ > mostLines)
                refuse({tooLong, {{"count", std::to_string(mostLines)}}}, useLess);
            else if (!words.empty() && words[0][0] != '#')
                take(words);
        }
        return problem_;
    }

    void refuse(Message what, Message remedy)
    {
        if (!problem_)
            problem_ = Problem{std::move(what), "line " + std::to_string(number_), std::move(remedy)};
    }
    void refuse(const Text& what, std::string_view word, const Text& remedy)
    {
        refuse(Message{what, {{"word", std::string(word)}}}, remedy);
    }
    bool isRefused() const { return problem_.has_value(); }

    // Whether the line has as many words as its first asks for.
    bool fits(const Line& words, const Form& form)
    {
        if (words.size() == form.words)
            return true;
        refuse({wrongCount, {{"word", std::string(words[0])}, {"count", std::to_string(form.words - 1)}}},
               {useForm, {{"form", std::string(form.form)}}});
        return false;
    }
    double number(std::string_view word, double least = -mostPlace)
    {
        double value = 0;
        const auto [end, error] = std::from_chars(word.data(), word.data() + word.size(), value);
        if (error == std::errc() && end == word.data() + word.size() && value >= least && value <= mostPlace)
            return value;
        refuse(notANumber, word, useNumber);
        return 0;
    }
    int known(const std::map<std::string, int, std::less<>>& names, std::string_view word)
    {
        const auto found = names.find(word);
        if (found != names.end())
            return found->second;
        refuse(notKnown, word, useKnown);
        return 0;
    }
    void name(std::map<std::string, int, std::less<>>& names, std::string word, std::size_t place)
    {
        if (!names.emplace(word, static_cast<int>(place)).second)
            refuse(takenTwice, word, useAnother);
    }

private:
    std::string_view text_;
    std::size_t number_ = 0;
    std::optional<Problem> problem_;
};

using Names = std::map<std::string, int, std::less<>>;

struct Reading {
    Reader& reader;
    Sheet sheet = {};
    Names boxes = {}, ports = {}, connectors = {};

    void box(const Line& words)
    {
        reader.name(boxes, std::string(words[1]), sheet.boxes.size());
        const Spot corner{reader.number(words[2]), reader.number(words[3])};
        sheet.boxes.push_back(
            {std::string(words[1]), corner, reader.number(words[4], 0), reader.number(words[5], 0)});
    }
    void port(const Line& words)
    {
        constexpr std::string_view sides = "LRTB";
        const std::size_t side = words[3].size() == 1 ? sides.find(words[3]) : sides.npos;
        if (side == sides.npos)
            return reader.refuse(notASide, words[3], useSide);
        reader.name(ports, std::string(words[1]) + "." + std::string(words[2]), sheet.ports.size());
        const Spot at{reader.number(words[4]), reader.number(words[5])};
        sheet.ports.push_back(
            {std::string(words[2]), reader.known(boxes, words[1]), static_cast<Side>(side), at});
    }
    void connector(const Line& words)
    {
        reader.name(connectors, std::string(words[1]), sheet.connectors.size());
        sheet.connectors.push_back(
            {std::string(words[1]), reader.known(ports, words[2]), reader.known(ports, words[3])});
    }
    void pin(const Line& words)
    {
        const Spot at{reader.number(words[2]), reader.number(words[3])};
        const auto place = static_cast<std::size_t>(reader.known(connectors, words[1]));
        if (!reader.isRefused())
            sheet.connectors[place].pinned.push_back(at);
    }
};

// A word, and what the reading takes from its line.
struct Taken : Form {
    void (Reading::*take)(const Line&);
};
constexpr Taken takes[] = {{{"box", "box ID x y w h", 6}, &Reading::box},
                           {{"port", "port BOX ID side x y", 6}, &Reading::port},
                           {{"conn", "conn ID BOX.PORT BOX.PORT", 4}, &Reading::connector},
                           {{"pin", "pin ID x y", 4}, &Reading::pin}};
constexpr Form moveForm = {"move", "move BOX x y", 4};

} // namespace

Result<Sheet> readSheet(std::string_view text)
{
    Reader reader(text);
    Reading reading{reader};
    const auto take = [&](const Line& words) {
        for (const Taken& each : takes)
            if (words[0] == each.word) {
                if (reader.fits(words, each))
                    (reading.*each.take)(words);
                return;
            }
        reader.refuse(notAWord, words[0], useWords);
    };
    const std::optional<Problem> problem = reader.read(take);
    if (problem)
        return *problem;
    return std::move(reading.sheet);
}

Result<std::vector<Move>> readMoves(std::string_view text, const Sheet& sheet)
{
    Names boxes;
    for (std::size_t i = 0; i < sheet.boxes.size(); ++i)
        boxes.emplace(sheet.boxes[i].id, static_cast<int>(i));
    std::vector<Move> moves;
    Reader reader(text);
    const std::optional<Problem> problem = reader.read([&](const Line& words) {
        if (words[0] != moveForm.word)
            reader.refuse(notAMove, words[0], useMove);
        else if (reader.fits(words, moveForm))
            moves.push_back(
                {reader.known(boxes, words[1]), {reader.number(words[2]), reader.number(words[3])}});
    });
    if (problem)
        return *problem;
    return moves;
}

} // namespace doorloom::routing
