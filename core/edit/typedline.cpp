#include "edit/linereader.h"

#include <algorithm>
#include <cassert>

namespace doorloom {

namespace {

bool isBlank(char letter)
{
    return letter == ' ' || letter == '\t' || letter == '\n' || letter == '\r';
}

// The terminals of the device before the colon, written out: "PS1:+".
void addWritten(const Job& job, std::string_view begun, Offers& offers)
{
    const std::size_t colon = begun.find(':');
    if (colon == std::string_view::npos)
        return;
    const std::vector<const Device*> found = tagged(job.devices, begun.substr(0, colon));
    if (found.size() == 1)
        offerTerminals(job, *found.front(), found.front()->tag + ":", offers);
}

} // namespace

Result<Typed> readLine(const Job& job, const Stock& stock, std::string_view line)
{
    LineReader reader(job, stock, LineWords(wordsOfLine(line)), Language::English);
    std::optional<Typed> typed = reader.line();
    if (reader.words().problem())
        return *reader.words().problem();
    assert(typed);
    return *std::move(typed);
}

std::size_t wordStart(std::string_view line, std::size_t cursor)
{
    cursor = std::min(cursor, line.size());
    bool isQuoted = false;
    std::size_t start = cursor;
    for (std::size_t at = 0; at < cursor; ++at) {
        const bool starts = at == 0 || (isBlank(line[at - 1]) && !isQuoted);
        if (starts)
            start = at;
        if (line[at] == '"')
            isQuoted = !isQuoted;
        else if (isBlank(line[at]) && !isQuoted)
            start = at + 1;
    }
    return start;
}

std::vector<Completion> completionsFor(const Job& job, const Stock& stock, std::string_view line,
                                       std::size_t cursor, Language language)
{
    cursor = std::min(cursor, line.size());
    const std::size_t start = wordStart(line, cursor);
    const std::string_view begun = line.substr(start, cursor - start);
    if (begun.starts_with('"'))
        return {};
    LineReader reader(job, stock, LineWords(wordsOfLine(line.substr(0, start)), begun), language);
    static_cast<void>(reader.line());
    Offers offers{folded(begun)};
    addWritten(job, begun, offers);
    std::vector<Completion> all = offers.list();
    for (const Completion& each : reader.words().offered())
        if (std::none_of(all.begin(), all.end(),
                         [&](const Completion& known) { return known.text == each.text; }))
            all.push_back(each);
    return all;
}

} // namespace doorloom
