#include "judge/report.h"

#include "judge/findingtext.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace doorloom {
namespace {

constexpr Text jobHead = {.en = "Job:", .es = "Trabajo:"};
constexpr Text revision = {.en = "revision", .es = "revisión"};
constexpr Text nothingFound = {.en = "Nothing was found by the rules that there are.",
                               .es = "Las reglas que hay no hallaron nada."};
constexpr Text when = {.en = "When:", .es = "Cuándo:"};
constexpr Text why = {.en = "Why:", .es = "Por qué:"};
constexpr Text whatToDo = {.en = "To do:", .es = "Qué hacer:"};
constexpr Text path = {.en = "Path:", .es = "Camino:"};
constexpr Text sameCause = {.en = "Same cause:", .es = "Misma causa:"};
constexpr Text setAsideHead = {.en = "Set aside:", .es = "Apartado:"};
constexpr Text notProved = {.en = "not proved and not excluded: the question was too large",
                            .es = "ni probado ni descartado: la pregunta fue demasiado grande"};
constexpr Text lookedAtAll = {
    .en = "Looked at: all {positions} positions that matter to the questions asked.",
    .es = "Se miró: todas las {positions} posiciones que importan a lo preguntado."};
constexpr Text lookedAtSome = {.en = "Looked at, not exhaustive: {covered} of {positions} positions.",
                               .es = "Se miró, sin agotar: {covered} de {positions} posiciones."};
constexpr Text nothingToAsk = {.en = "Looked at: no position; the job has no circuit yet.",
                               .es = "Se miró: ninguna posición; el trabajo aún no tiene circuito."};
constexpr Text unanswered = {
    .en = "Some questions were too large to answer: for those, nothing here says that all is well.",
    .es = "Algunas preguntas fueron demasiado grandes: para ellas, nada de esto dice que todo esté bien."};
constexpr Text notExaminedHead = {.en = "Not examined:", .es = "No se examinó:"};

constexpr std::size_t columns = 100;

std::size_t widthOf(std::string_view text)
{
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

// Words after a label, the lines after the first set in as far as the first one's words.
std::string paragraph(const std::string& label, std::size_t indent, const std::string& words)
{
    std::string text = label + std::string(indent - std::min(indent, widthOf(label)), ' ');
    std::size_t column = indent;
    bool first = true;
    for (std::size_t at = 0; at < words.size();) {
        const std::size_t end = std::min(words.find(' ', at), words.size());
        const std::string_view word = std::string_view(words).substr(at, end - at);
        if (!first && column + 1 + widthOf(word) > columns) {
            text += "\n" + std::string(indent, ' ');
            column = indent;
        } else if (!first) {
            text += ' ';
            ++column;
        }
        text += word;
        column += widthOf(word);
        first = false;
        at = end + 1;
    }
    return text + "\n";
}

std::string field(const Text& label, const std::string& words, Language language)
{
    constexpr std::size_t indent = 17;
    if (words.empty())
        return "";
    return paragraph("    " + std::string(inWords(label, language)), indent, words);
}

// "1,000,000"; past what anybody reads as digits, a power of two.
std::string countInWords(double count, Language language)
{
    if (count >= 1e7)
        return fmt::format("2^{:.3g}", std::log2(count));
    std::string digits = fmt::format("{:.0f}", count);
    for (std::size_t at = digits.size(); at > 3; at -= 3)
        digits.insert(at - 3, language == Language::Spanish ? "." : ",");
    return digits;
}

std::string pathInWords(const Job& job, const Finding& finding)
{
    std::string words;
    for (const Origin& origin : pathForPeople(job, finding))
        words += (words.empty() ? "" : " · ") + originText(job, origin);
    return words;
}

std::string lineInWords(const Job& job, const Finding& line, Language language)
{
    return fmt::format("{} ({}, {}): {}", inWords(titleOf(line), language), atText(job, line),
                       inWords(inPosition(job, line), language), inWords(line.why, language));
}

std::string setAsideInWords(const SetAside& row)
{
    return fmt::format("{} ({}, {})", row.reason, row.name, row.date);
}

std::string findingInWords(const Job& job, const Finding& finding, Language language)
{
    std::string text = fmt::format("  {}: {}  [{}]\n", atText(job, finding),
                                   inWords(titleOf(finding), language), ruleOf(finding));
    text += field(when, inWords(inPosition(job, finding), language), language);
    text += field(why, inWords(finding.why, language), language);
    if (finding.undecided)
        text += field(why, std::string(inWords(notProved, language)), language);
    text += field(whatToDo, inWords(finding.remedy, language), language);
    text += field(path, pathInWords(job, finding), language);
    for (const Finding& line : finding.lines)
        text += field(sameCause, lineInWords(job, line, language), language);
    if (const SetAside* row = setAsideFor(job, finding))
        text += field(setAsideHead, setAsideInWords(*row), language);
    return text;
}

std::string inCapitals(std::string_view word)
{
    std::string capitals(word);
    std::transform(capitals.begin(), capitals.end(), capitals.begin(),
                   [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c; });
    return capitals;
}

std::string findingsInWords(const Job& job, const CheckResult& result, Language language)
{
    if (result.findings.empty())
        return "\n" + std::string(inWords(nothingFound, language)) + "\n";
    std::string text;
    for (const Severity severity : {Severity::Danger, Severity::Fault, Severity::Doubt, Severity::Hint}) {
        std::string group;
        int count = 0;
        for (const Finding& finding : result.findings) {
            if (finding.severity != severity)
                continue;
            ++count;
            group += "\n" + findingInWords(job, finding, language);
        }
        if (count > 0)
            text += fmt::format("\n{} ({})\n", inCapitals(inWords(severityWord(severity), language)), count) +
                    group;
    }
    return text;
}

std::string titleInWords(const Job& job, const std::string& file, Language language)
{
    std::string title = std::string(inWords(jobHead, language)) + " " + file;
    for (const JobInfo& info : job.info) {
        for (const std::string& part : {info.number, info.title})
            if (!part.empty())
                title += " · " + part;
        if (!info.revision.empty())
            title += " · " + std::string(inWords(revision, language)) + " " + info.revision;
    }
    return title + "\n";
}

std::string coverageInWords(const CheckResult& result, Language language)
{
    const Coverage& coverage = result.coverage;
    if (coverage.positions == 0)
        return "\n" + std::string(inWords(nothingToAsk, language)) + "\n";
    const bool all = coverage.covered >= coverage.positions && result.everyQuestionAnswered;
    std::string text =
        "\n" + paragraph("", 0,
                         inWords(Message{all ? lookedAtAll : lookedAtSome,
                                         {{"positions", countInWords(coverage.positions, language)},
                                          {"covered", countInWords(coverage.covered, language)}}},
                                 language));
    if (!result.everyQuestionAnswered)
        text += paragraph("", 0, std::string(inWords(unanswered, language)));
    return text;
}

std::string listInWords(const std::vector<Text>& texts, Language language)
{
    std::string list;
    for (const Text& text : texts)
        list += paragraph("  -", 4, std::string(inWords(text, language)));
    return list;
}

} // namespace

std::string reportText(const Job& job, const CheckResult& result, const std::string& file, Language language)
{
    return titleInWords(job, file, language) + findingsInWords(job, result, language) +
           coverageInWords(result, language) + std::string(inWords(notExaminedHead, language)) + "\n" +
           listInWords(notExamined(), language) + "\n" + listInWords(checkCautions(), language);
}

} // namespace doorloom
