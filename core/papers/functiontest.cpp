#include "papers/functiontest.h"

#include "edit/openings.h"
#include "judge/lockstates.h"
#include "model/modelwords.h"
#include "papers/lockwords.h"

namespace doorloom {

constinit const Text functionTestTitle = {.en = "Function test", .es = "Prueba de funcionamiento"};

namespace {

constexpr Text order = {.en = "After ring-out and meter readings, one step after another; what is seen otherwise is mended before the next step. Do not leave a door "
                              "locked until each release has been proved alone.",
                        .es = "Después de la continuidad y las mediciones, un paso tras otro; lo que se vea distinto se corrige antes del siguiente. No deje una puerta "
                              "bloqueada hasta probar cada liberación por sí sola."};
constexpr Text derived = {.en = "What must be seen is what the opening promises; where it promises nothing, what the wiring as drawn does. Times and sequences are not derived.",
                          .es = "Lo que debe verse es lo que promete la abertura; donde no promete nada, lo que hace el cableado dibujado. Tiempos y secuencias no se deducen."};
constexpr Text noOpenings = {.en = "The job names no opening: nothing can be derived.", .es = "El trabajo no nombra ninguna abertura: no se puede deducir nada."};

const std::vector<Text> heads = {{.en = "Step", .es = "Paso"}, {.en = "Do", .es = "Haga"},      {.en = "See", .es = "Vea"},
                                 {.en = "Seen", .es = "Visto"}, {.en = "Initials", .es = "Iniciales"}};

constexpr Text steps[] = {
    {.en = "Nobody at the door, door shut, everything at rest", .es = "Nadie en la puerta, puerta cerrada, todo en reposo"},
    {.en = "{act} ({side})", .es = "{act} ({side})"},
    {.en = "With the controller's plugs pulled: {act} alone ({side})", .es = "Con los conectores del controlador quitados: solo {act} ({side})"},
    {.en = "Make the room occupied", .es = "Ponga el local en ocupado"},
    {.en = "While occupied: {act} ({side})", .es = "En ocupado: {act} ({side})"},
    {.en = "Hold the other door open", .es = "Mantenga abierta la otra puerta"},
    {.en = "Switch the mains off, battery in", .es = "Corte la red, con la batería puesta"},
    {.en = "Mains off, then battery out", .es = "Corte la red y quite la batería"},
    {.en = "Take the power of {act} away, the rest stays on", .es = "Quite la alimentación de {act}, lo demás sigue"},
    {.en = "Put the fire alarm's relay into alarm", .es = "Ponga el relé de incendio en alarma"},
    {.en = "Reset the fire alarm", .es = "Rearme la alarma de incendio"},
};

constexpr Text lockSeen = {.en = "{lock} {does}", .es = "{lock} {does}"};
constexpr Text otherwise = {.en = "{seen} (as drawn it would be {does}: see the findings)", .es = "{seen} (según el dibujo sería {does}: vea los hallazgos)"};
constexpr Text operatorStarts = {.en = "{operator} starts", .es = "{operator} arranca"};
constexpr Text operatorStays = {.en = "{operator} does not start", .es = "{operator} no arranca"};
constexpr Text egress = {.en = "; the way out opens by hand", .es = "; la salida se abre a mano"};

// What no job can tell. Common practice, no source.
struct SiteStep {
    Text doIt, see;
    bool (*applies)(const Opening& opening);
};
bool always(const Opening&) { return true; }
bool isAsked(const Opening& opening) { return !opening.requests.empty(); }
bool isOccupiedAsked(const Opening& opening) { return !opening.occupied.empty(); }
bool isFireRated(const Opening& opening) { return opening.fireRated; }
const SiteStep siteSteps[] = {
    {{.en = "On each request: let the door come", .es = "En cada pedido: deje abrir la puerta"},
     {.en = "the leaf has left the frame before the lock is back; the request ends by itself", .es = "la hoja sale del marco antes de que vuelva el cierre; el pedido termina solo"},
     isAsked},
    {{.en = "While occupied: open the door from inside", .es = "En ocupado: abra la puerta desde dentro"},
     {.en = "'occupied' ends when the door opens, not when it shuts", .es = "'ocupado' termina al abrir la puerta, no al cerrarla"},
     isOccupiedAsked},
    {{.en = "Leave the door at rest for a minute", .es = "Deje la puerta en reposo un minuto"},
     {.en = "nothing hums, sounds or gets warm; lamps say what is so", .es = "nada zumba, suena ni se calienta; las lámparas dicen lo que es"},
     always},
    {{.en = "Let the door shut from any angle", .es = "Deje cerrar la puerta desde cualquier ángulo"},
     {.en = "it shuts and latches by itself; the frame's gaps are as they were", .es = "cierra y enclava sola; las holguras del marco son las de antes"},
     isFireRated},
};

std::string sideWords(Side side, Language language) { return std::string(inWords(wordsOf(side), language)); }

Side sideOf(const std::vector<Act>& acts, const std::string& name)
{
    for (const Act& act : acts)
        if (act.name == name)
            return act.side;
    return Side::Both;
}

Message toDo(const Job& job, const Opening& opening, const Situation& situation, Language language)
{
    const bool isRelease = situation.kind == SituationKind::Release;
    const std::string act = situation.kind == SituationKind::LostAlone ? nameOf(job, situation.lost) : situation.act;
    return {steps[static_cast<std::size_t>(situation.kind)],
            {{"act", act}, {"side", sideWords(sideOf(isRelease ? opening.releases : opening.requests, situation.act), language)}}};
}

std::string lockWords(const Job& job, DeviceId device, const LockInSituation& lock, Language language)
{
    const Text& drawn = wordsOf(lock.does);
    const Text& wanted = lock.promised == Promised::Nothing ? drawn : wordsOf(lock.promised);
    Message seen{lockSeen, {{"lock", tagOf(job, device)}, {"does", std::vector<Message>{wanted}}}};
    if (!lock.keepsPromise())
        seen = {otherwise, {{"seen", std::vector<Message>{seen}}, {"does", std::vector<Message>{drawn}}}};
    return inWords(seen, language);
}

std::string operatorWords(const Job& job, const Opening& opening, const Situation& situation, Language language)
{
    std::string words;
    for (const DeviceId device : opening.doorOperators)
        if (const Promised promised = promisedIn(opening, situation, device); promised != Promised::Nothing)
            words += "; " + inWords(Message{promised == Promised::MayStart ? operatorStarts : operatorStays, {{"operator", tagOf(job, device)}}}, language);
    return words;
}

PaperTable tableOf(const Job& job, const Opening& opening, const LockStates& states, Language language)
{
    PaperTable table{opening.tag + (opening.words.empty() ? "" : ", " + opening.words), {}, headsIn(heads, language), {}, {0}};
    const auto add = [&](const std::string& doIt, const std::string& see) {
        table.rows.push_back({std::to_string(table.rows.size() + 1), doIt, see, tickBox, toFillIn});
    };
    const std::vector<Situation> situations = situationsOf(opening);
    for (std::size_t i = 0; i < situations.size(); ++i) {
        std::string see;
        for (std::size_t k = 0; k < states.locks.size(); ++k)
            see += (k ? "; " : "") + lockWords(job, states.locks[k], states.lines[i].locks[k], language);
        const std::string operators = operatorWords(job, opening, situations[i], language);
        see += see.empty() && !operators.empty() ? operators.substr(2) : operators;
        if (opening.egress == Egress::ByHand)
            see += see.empty() ? std::string(inWords(egress, language)).substr(2) : std::string(inWords(egress, language));
        if (!see.empty())
            add(inWords(toDo(job, opening, situations[i], language), language), see);
    }
    for (const SiteStep& each : siteSteps)
        if (each.applies(opening))
            add(std::string(inWords(each.doIt, language)), std::string(inWords(each.see, language)));
    return table;
}

} // namespace

TablePaper functionTestTables(const Job& job, std::string digest, Language language)
{
    const LocksInSituations locks(job);
    TablePaper paper{functionTestTitle, titleBlockOf(job, std::move(digest)), {order, derived}, {}};
    for (const Opening& opening : job.openings)
        paper.tables.push_back(tableOf(job, opening, locks.of(opening.id), language));
    if (paper.tables.empty())
        paper.tables.push_back({std::string(inWords(functionTestTitle, language)), std::string(inWords(noOpenings, language)), headsIn(heads, language), {}, {}});
    return paper;
}

} // namespace doorloom
