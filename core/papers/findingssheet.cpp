#include "papers/findingssheet.h"

#include "judge/findings.h"
#include "judge/findingtext.h"
#include "judge/report.h"

#include <fmt/format.h>

namespace doorloom {

constinit const Text findingsTitle = {.en = "Findings and sign-off", .es = "Hallazgos y firmas"};

namespace {

constexpr Text lookedAtAll = {.en = "Looked at: all {positions} positions that matter to the questions asked.",
                              .es = "Se miró: todas las {positions} posiciones que importan a lo preguntado."};
constexpr Text lookedAtSome = {.en = "Looked at, not exhaustive: {covered} of {positions} positions.", .es = "Se miró, sin agotar: {covered} de {positions} posiciones."};
constexpr Text notExaminedLine = {.en = "Not examined: {what}.", .es = "No se examinó: {what}."};
constexpr Text openTitle = {.en = "Found", .es = "Hallado"};
constexpr Text nothingFound = {.en = "Nothing was found by the rules that there are. No finding is not approval.",
                               .es = "Las reglas que hay no hallaron nada. Que no haya hallazgos no es una aprobación."};
constexpr Text asideTitle = {.en = "Set aside", .es = "Apartado"};
constexpr Text signTitle = {.en = "Signed", .es = "Firmado"};
constexpr Text asideWords = {.en = "{what} SET ASIDE: {reason} ({name}, {date})", .es = "{what} APARTADO: {reason} ({name}, {date})"};
constexpr Text sameCause = {.en = "{what} Same cause: {others}.", .es = "{what} Misma causa: {others}."};
constexpr Text titled = {.en = "{title}: {why}", .es = "{title}: {why}"};

const std::vector<Text> heads = {{.en = "How bad", .es = "Gravedad"}, {.en = "Where", .es = "Dónde"},    {.en = "What", .es = "Qué"},
                                 {.en = "When", .es = "Cuándo"},      {.en = "To do", .es = "Qué hacer"}, {.en = "Done", .es = "Hecho"}};
// In the columns of what is found, so that programs read one sort of row.
const std::vector<Text> signHeads = {{.en = "Who", .es = "Quién"},  {.en = "Name", .es = "Nombre"}, {.en = "For what", .es = "De qué responde"},
                                     {.en = "Date", .es = "Fecha"}, {.en = "Signature", .es = "Firma"}, {.en = "Done", .es = "Hecho"}};
struct Signer {
    Text who, forWhat;
};
const Signer signers[] = {
    {{.en = "Drawn by", .es = "Dibujó"}, {.en = "the job as drawn, and every finding set aside", .es = "el trabajo dibujado y cada hallazgo apartado"}},
    {{.en = "Wired by", .es = "Cableó"}, {.en = "every landing as in the terminal schedule", .es = "cada conexión como en la lista de bornes"}},
    {{.en = "Tested by", .es = "Probó"}, {.en = "ring-out, meter and function test", .es = "prueba de continuidad, medición y funcionamiento"}},
    {{.en = "Accepted by", .es = "Aceptó"}, {.en = "for the owner; the authority having jurisdiction decides", .es = "por el propietario; decide la autoridad competente"}},
};

std::string whatOf(const Job& job, const Finding& finding, Language language)
{
    Message words{titled, {{"title", std::vector<Message>{titleOf(finding)}}, {"why", std::vector<Message>{finding.why}}}};
    std::string others;
    for (const Finding& line : finding.lines)
        others += fmt::format("{}{} ({})", others.empty() ? "" : "; ", inWords(titleOf(line), language), atText(job, line));
    if (!others.empty())
        words = {sameCause, {{"what", std::vector<Message>{words}}, {"others", others}}};
    if (const SetAside* aside = setAsideFor(job, finding))
        words = {asideWords, {{"what", std::vector<Message>{words}}, {"reason", aside->reason}, {"name", aside->name}, {"date", aside->date}}};
    return inWords(words, language);
}

std::vector<std::string> rowOf(const Job& job, const Finding& finding, Language language)
{
    const bool isDanger = finding.severity == Severity::Danger;
    const std::string severity(inWords(severityWord(finding.severity), language));
    const std::string remedy = inWords(finding.remedy, language);
    return {isDanger ? "!! " + severity : severity, atText(job, finding), whatOf(job, finding, language), inWords(inPosition(job, finding), language),
            remedy.empty() ? nothingToSay : remedy, tickBox};
}

std::vector<Message> openingOf(const CheckResult& result)
{
    const auto figure = [](double number) { return fmt::format("{:.0f}", number); };
    const bool isWhole = result.coverage.covered >= result.coverage.positions && result.everyQuestionAnswered;
    std::vector<Message> lines{{isWhole ? lookedAtAll : lookedAtSome, {{"positions", figure(result.coverage.positions)}, {"covered", figure(result.coverage.covered)}}}};
    for (const Text& each : notExamined())
        lines.push_back({notExaminedLine, {{"what", std::vector<Message>{each}}}});
    return lines;
}

} // namespace

TablePaper findingsTables(const Job& job, std::string digest, Language language)
{
    const CheckResult result = checkJob(job);
    TablePaper paper{findingsTitle, titleBlockOf(job, std::move(digest)), openingOf(result), {}};
    const auto words = [&](const Text& text) { return std::string(inWords(text, language)); };
    PaperTable open{words(openTitle), words(nothingFound), headsIn(heads, language), {}, {0, 1}};
    PaperTable aside{words(asideTitle), {}, headsIn(heads, language), {}, {0, 1}};
    for (const Finding& finding : result.findings)
        (setAsideFor(job, finding) ? aside : open).rows.push_back(rowOf(job, finding, language));
    PaperTable sign{words(signTitle), {}, headsIn(signHeads, language), {}, {0}};
    for (const Signer& signer : signers)
        sign.rows.push_back({words(signer.who), "____________", words(signer.forWhat), toFillIn, "____________", tickBox});
    paper.tables.push_back(std::move(open));
    if (!aside.rows.empty())
        paper.tables.push_back(std::move(aside));
    paper.tables.push_back(std::move(sign));
    return paper;
}

} // namespace doorloom
