#include "papers/titleblock.h"

namespace doorloom {
namespace {

constexpr Text revisionWords = {.en = "Revision {revision} · digest {digest} · destroy older copies",
                                .es =
                                    "Revisión {revision} · huella {digest} · destruya las copias anteriores"};
constexpr Text siteWords = {.en = "Site: {site}", .es = "Obra: {site}"};
constexpr Text clientWords = {.en = "Client: {client}", .es = "Cliente: {client}"};
constexpr Text authorWords = {.en = "Drawn by: {author}", .es = "Dibujó: {author}"};
constexpr Text dateWords = {.en = "Date: {date}", .es = "Fecha: {date}"};
constexpr Text numberAndTitle = {.en = "{number} · {title}", .es = "{number} · {title}"};
constexpr Text noTitle = {.en = "a job without a title yet", .es = "un trabajo aún sin título"};

constexpr Text isolate = {
    .en = "Isolate, lock out and prove dead before work: the mains, AND the battery, AND any second source.",
    .es =
        "Aísle, bloquee y compruebe que no hay tensión antes de trabajar: la red, Y la batería, Y cualquier "
        "segunda fuente."};
constexpr Text oneSource = {.en = "Never put two sources on one load.",
                            .es = "Nunca ponga dos fuentes en una misma carga."};
constexpr Text setFirst = {.en = "Set jumpers, switches and fail modes before power.",
                           .es = "Coloque puentes, interruptores y modos de fallo antes de dar tensión."};
constexpr Text freeEgress = {.en = "The way out stays free at all times, with and without power.",
                             .es = "La salida queda libre en todo momento, con y sin energía."};
constexpr Text mainsCare = {
    .en = "Mains: licensed persons only, and kept apart from everything on these sheets.",
    .es = "Red eléctrica: solo personas con licencia, y separada de todo lo de estas hojas."};
constexpr Text noApproval = {
    .en = "No finding is not approval. Not examined: the hardware itself, how it is mounted and set on site, "
          "the "
          "walls and ways of the cables, mains wiring, codes.",
    .es = "Que no haya hallazgos no es una aprobación. No se examinó: los herrajes mismos, cómo están "
          "montados y "
          "ajustados en obra, paredes y recorridos de cables, la red eléctrica, las normas."};
constexpr Text whoDecides = {
    .en = "Local codes and the authority having jurisdiction decide; licensed persons where the law asks for "
          "it.",
    .es =
        "Deciden las normas locales y la autoridad competente; personas con licencia donde la ley lo pida."};
constexpr Text daggerWords = {
    .en = "† is not from a sheet: check against the sheet in the box.",
    .es = "† no viene de una hoja técnica: compare con la hoja que viene en la caja."};

} // namespace

constinit const Text unitsLine = {
    .en = "Units: gauge as marked on the wire; strip length in mm; torque in N·m; times in s.",
    .es = "Unidades: calibre como está marcado en el cable; pelado en mm; par en N·m; tiempos en s."};
constinit const Text shortCaution = {.en = "Prove dead before work. No finding is not approval; local codes "
                                           "and the authority having jurisdiction "
                                           "decide.",
                                     .es = "Compruebe que no hay tensión antes de trabajar. Sin hallazgos no "
                                           "es aprobado; deciden las normas locales "
                                           "y la autoridad."};

Message jobInWords(const TitleBlock& block)
{
    if (block.number.empty() && block.title.empty())
        return noTitle;
    if (block.number.empty() || block.title.empty())
        return verbatim(block.number + block.title);
    return {numberAndTitle, {{"number", block.number}, {"title", block.title}}};
}

TitleBlock titleBlockOf(const Job& job, std::string digest)
{
    TitleBlock block;
    if (!job.info.empty()) {
        const JobInfo& info = *job.info.begin();
        block = {.number = info.number,
                 .title = info.title,
                 .site = info.site,
                 .client = info.client,
                 .author = info.author,
                 .revision = info.revision,
                 .date = info.date,
                 .digest = {},
                 .dangers = {}};
    }
    block.digest = std::move(digest);
    return block;
}

Message revisionLine(const TitleBlock& block)
{
    return {revisionWords,
            {{"revision", block.revision.empty() ? "–" : block.revision}, {"digest", block.digest}}};
}

std::vector<Message> titleLines(const TitleBlock& block)
{
    std::vector<Message> lines;
    const auto add = [&](Text words, const char* name, const std::string& value) {
        if (!value.empty())
            lines.push_back({words, {{name, value}}});
    };
    add(siteWords, "site", block.site);
    add(clientWords, "client", block.client);
    add(authorWords, "author", block.author);
    add(dateWords, "date", block.date);
    return lines;
}

std::vector<Message> cautions()
{
    return {isolate, oneSource, setFirst, freeEgress, mainsCare, noApproval, whoDecides, daggerWords};
}

} // namespace doorloom
