#include "papers/locksheet.h"

#include "judge/findingtext.h"
#include "judge/lockstates.h"
#include "model/modelwords.h"
#include "papers/lockwords.h"

namespace doorloom {

constinit const Text locksTitle = {.en = "Every lock in every situation", .es = "Cada cerradura en cada situación"};

namespace {

constexpr Text byWiring = {.en = "What the wiring as drawn does with each lock, whatever programmed outputs do; not the hardware, how it is mounted, or times.",
                           .es = "Lo que el cableado dibujado hace con cada cerradura, hagan lo que hagan las salidas programadas; no el herraje, su montaje ni los tiempos."};
constexpr Text noLocks = {.en = "No opening names a lock.", .es = "Ninguna abertura nombra una cerradura."};
constexpr Text openingTitle = {.en = "{opening}{words} · {egress}", .es = "{opening}{words} · {egress}"};

const std::vector<Text> heads = {{.en = "Situation", .es = "Situación"}, {.en = "Lock", .es = "Cerradura"},  {.en = "As wired", .es = "Según cableado"},
                                 {.en = "Promised", .es = "Prometido"},  {.en = "Kept", .es = "Se cumple"}};

constexpr Text does[] = {
    {.en = "locked", .es = "bloqueada"},
    {.en = "free", .es = "libre"},
    {.en = "stays as it was", .es = "queda como estaba"},
    {.en = "locked or free: by a programmed output or a jumper", .es = "bloqueada o libre: según una salida programada o un puente"},
    {.en = "never at rest: see the findings", .es = "nunca en reposo: vea los hallazgos"},
    {.en = "on no terminals yet", .es = "aún sin bornes"},
};
constexpr Text kept = {.en = "yes", .es = "sí"}, broken = {.en = "NO", .es = "NO"};

std::string keptWords(const LockInSituation& lock, Language language)
{
    if (lock.promised == Promised::Nothing)
        return nothingToSay;
    return std::string(inWords(lock.keepsPromise() ? kept : broken, language));
}

PaperTable tableOf(const Job& job, const LockStates& states, Language language)
{
    const Opening& opening = *job.openings.find(states.opening);
    const Message title{openingTitle,
                        {{"opening", opening.tag},
                         {"words", opening.words.empty() ? "" : ", " + opening.words},
                         {"egress", std::vector<Message>{wordsOf(opening.egress)}}}};
    PaperTable table{inWords(title, language), {}, headsIn(heads, language), {}, {1, 4}};
    for (const SituationLine& line : states.lines)
        for (std::size_t i = 0; i < line.locks.size(); ++i)
            table.rows.push_back({inWords(situationWords(job, line.situation), language), tagOf(job, states.locks[i]),
                                  std::string(inWords(wordsOf(line.locks[i].does), language)),
                                  line.locks[i].promised == Promised::Nothing ? nothingToSay : std::string(inWords(wordsOf(line.locks[i].promised), language)),
                                  keptWords(line.locks[i], language)});
    return table;
}

} // namespace

const Text& wordsOf(LockDoes what)
{
    return does[static_cast<std::size_t>(what)];
}

TablePaper lockTables(const Job& job, std::string digest, Language language)
{
    TablePaper paper{locksTitle, titleBlockOf(job, std::move(digest)), {byWiring}, {}};
    const LocksInSituations locks(job);
    for (const Opening& opening : job.openings)
        if (!opening.locks.empty())
            paper.tables.push_back(tableOf(job, locks.of(opening.id), language));
    if (paper.tables.empty())
        paper.tables.push_back({std::string(inWords(locksTitle, language)), std::string(inWords(noLocks, language)), headsIn(heads, language), {}, {}});
    return paper;
}

} // namespace doorloom
