#include "judge/findingtext.h"

#include "check/check.h"

#include <algorithm>

namespace doorloom {

namespace {

constexpr Text always = {.en = "in every position", .es = "en toda posición"};
constexpr Text within = {.en = "with {throws}", .es = "con {throws}"};
constexpr Text orWithin = {.en = "{first}; or {others}", .es = "{first}; o {others}"};
constexpr Text andMore = {.en = "{first}; and others", .es = "{first}; y otras"};
constexpr Text oneThrow = {.en = "{moved} {thrown}", .es = "{moved} {thrown}"};
constexpr Text leftAt = {.en = "{option} left at {thrown}", .es = "{option} dejada en {thrown}"};
constexpr Text inSituation = {.en = "in the situation '{situation}'", .es = "en la situación '{situation}'"};

constexpr Text situationNames[] = {
    {.en = "rest", .es = "reposo"},
    {.en = "request {act}", .es = "petición {act}"},
    {.en = "release {act}", .es = "liberación {act}"},
    {.en = "occupied", .es = "ocupado"},
    {.en = "request {act} while occupied", .es = "petición {act} estando ocupado"},
    {.en = "other door open", .es = "otra puerta abierta"},
    {.en = "mains lost", .es = "sin red eléctrica"},
    {.en = "all power lost", .es = "sin ninguna alimentación"},
    {.en = "{act} lost", .es = "{act} perdido"},
    {.en = "fire alarm", .es = "alarma de incendio"},
    {.en = "fire reset", .es = "reposición de incendio"},
};

constexpr Text severities[] = {{.en = "hint", .es = "nota"},
                               {.en = "doubt", .es = "duda"},
                               {.en = "fault", .es = "falla"},
                               {.en = "danger", .es = "peligro"}};

const std::vector<Throw>* throwsOf(const Job& job, const NamedThrow& thrown)
{
    if (const Operator* moved = job.operators.find(thrown.moved))
        return &moved->throws;
    const Kind* kind = kindOf(job, thrown.device);
    const Option* option = kind ? findOption(*kind, thrown.option) : nullptr;
    return option ? &option->values : nullptr;
}

std::string movedName(const Job& job, const NamedThrow& thrown)
{
    return thrown.moved ? nameOf(job, thrown.moved) : tagOf(job, thrown.device) + ":" + thrown.option;
}

// Throws that equal idle come last: they are how things stand anyway.
std::vector<NamedThrow> byInterest(const Job& job, std::vector<NamedThrow> throws)
{
    std::stable_partition(throws.begin(), throws.end(), [&](const NamedThrow& each) {
        const Operator* moved = job.operators.find(each.moved);
        return !moved || moved->idle != each.thrown;
    });
    return throws;
}

Message witnessWords(const Job& job, const Witness& witness)
{
    if (!witness.situation.empty())
        return {inSituation, {{"situation", std::vector<Message>{situationWords(job, witness.situation.front())}}}};
    if (witness.throws.empty())
        return always;
    std::vector<Message> throws;
    for (const NamedThrow& each : byInterest(job, witness.throws))
        throws.push_back(throwWords(job, each));
    return {within, {{"throws", std::move(throws)}}};
}

std::string endText(const Job& job, const End& end)
{
    if (const Landing* landing = landingOf(end))
        return nameOf(job, *landing);
    if (const SpliceId* splice = spliceOf(end))
        if (const Splice* row = job.splices.find(*splice))
            return row->tag;
    return "…";
}

// A link of the factory between two terminals of one strip.
bool isBar(const Job& job, const Origin& origin)
{
    const Kind* kind = origin.because.empty() ? kindOf(job, origin.device) : nullptr;
    const auto* link = kind ? findPartAs<LinkPart>(*kind, origin.part) : nullptr;
    return link && std::any_of(kind->strips.begin(), kind->strips.end(), [&](const Strip& strip) {
               const auto has = [&](const Key& key) {
                   return std::any_of(strip.terminals.begin(), strip.terminals.end(),
                                      [&](const Terminal& terminal) { return terminal.key == key; });
               };
               return has(link->a) && has(link->b);
           });
}

bool namesDevice(const Job& job, const Origin& origin, DeviceId device)
{
    const Conductor* conductor = job.conductors.find(origin.conductor);
    if (!conductor)
        return origin.device == device;
    const Landing *from = landingOf(conductor->from), *to = landingOf(conductor->to);
    return (from && from->device == device) || (to && to->device == device);
}

} // namespace

std::string ruleOf(const Finding& finding) { return std::string(finding.rule); }

std::string atText(const Job& job, const Spot& spot)
{
    if (const Conductor* conductor = job.conductors.find(spot.conductor))
        return !conductor->tag.empty() ? conductor->tag : endText(job, conductor->from) + " - " + endText(job, conductor->to);
    if (const Cable* cable = job.cables.find(spot.cable))
        return cable->tag;
    if (!spot.device || spot.key.empty())
        return spot.device ? tagOf(job, spot.device) : spot.key;
    return nameOf(job, Landing{spot.device, spot.key});
}

std::string atText(const Job& job, const Finding& finding)
{
    std::vector<std::string> names;
    for (const Spot& spot : finding.at)
        names.push_back(atText(job, spot));
    std::sort(names.begin(), names.end());
    names.erase(std::unique(names.begin(), names.end()), names.end());
    std::string all;
    for (const std::string& name : names)
        all += (all.empty() ? "" : " ") + name;
    return all;
}

std::string throwText(const Job& job, const NamedThrow& thrown) { return movedName(job, thrown) + "=" + thrown.thrown; }

std::string situationText(const Job& job, const Situation& situation)
{
    return inWords(situationWords(job, situation), Language::English);
}

std::vector<std::vector<std::string>> throwTexts(const Job& job, const Finding& finding)
{
    std::vector<std::vector<std::string>> all;
    for (const Witness& witness : finding.throws) {
        std::vector<std::string> one;
        for (const NamedThrow& each : witness.throws)
            one.push_back(throwText(job, each));
        for (const Situation& situation : witness.situation)
            one.push_back(situationText(job, situation));
        std::sort(one.begin(), one.end());
        all.push_back(std::move(one));
    }
    std::sort(all.begin(), all.end());
    return all;
}

std::string originText(const Job& job, const Origin& origin)
{
    if (const Conductor* conductor = job.conductors.find(origin.conductor))
        return endText(job, conductor->from) + " to " + endText(job, conductor->to);
    std::string text = tagOf(job, origin.device) + ":" + origin.part;
    for (const JumperAt& at : origin.because)
        text += " (" + at.jumper + " " + at.value + ")";
    return text;
}

std::vector<Origin> pathForPeople(const Job& job, const Finding& finding)
{
    std::vector<Origin> path;
    for (auto at = finding.path.begin(); at != finding.path.end();) {
        const auto end = std::find_if(at, finding.path.end(), [&](const Origin& each) {
            return each.device != at->device || !isBar(job, each);
        });
        const bool isNamed = end != at && !path.empty() && end != finding.path.end() &&
                             namesDevice(job, path.back(), at->device) && namesDevice(job, *end, at->device);
        const auto next = end == at ? at + 1 : end;
        if (!isNamed)
            path.insert(path.end(), at, next);
        at = next;
    }
    return path;
}

Message throwWords(const Job& job, const NamedThrow& thrown)
{
    const std::vector<Throw>* throws = throwsOf(job, thrown);
    const auto index = throws ? findThrow(*throws, thrown.thrown) : std::nullopt;
    const Argument word = index ? Argument((*throws)[*index].words) : Argument(thrown.thrown);
    if (thrown.moved)
        return {oneThrow, {{"moved", movedName(job, thrown)}, {"thrown", word}}};
    return {leftAt, {{"option", movedName(job, thrown)}, {"thrown", word}}};
}

Message inPosition(const Job& job, const Finding& finding)
{
    if (finding.throws.empty())
        return always;
    const Message first = witnessWords(job, finding.throws.front());
    std::vector<Message> others;
    for (std::size_t i = 1; i < finding.throws.size(); ++i)
        others.push_back(witnessWords(job, finding.throws[i]));
    Message words = others.empty() ? first
                                   : Message{orWithin, {{"first", std::vector<Message>{first}}, {"others", std::move(others)}}};
    return finding.moreThrows ? Message{andMore, {{"first", std::vector<Message>{words}}}} : words;
}

Message situationWords(const Job& job, const Situation& situation)
{
    const std::string act = situation.kind == SituationKind::LostAlone ? nameOf(job, situation.lost) : situation.act;
    return {situationNames[static_cast<std::size_t>(situation.kind)], {{"act", act}}};
}

const Text& severityWord(Severity severity) { return severities[static_cast<std::size_t>(severity)]; }
std::string_view severityKey(Severity severity) { return severityWord(severity).en; }

const Text& titleOf(const Finding& finding)
{
    static constexpr Text none = {.en = "Finding", .es = "Hallazgo"};
    const Check* check = checkCalled(finding.rule);
    return check ? check->title : none;
}

const std::vector<Text>& notExamined()
{
    static const std::vector<Text> all = {
        {.en = "loads behind rectifiers on alternating current, conductors on the return side of fuses, one supply dead while another "
               "lives; conductors without a length or a gauge count as no ohms",
         .es = "cargas tras rectificadores en alterna, hilos del lado de retorno de los fusibles, una fuente muerta mientras otra vive; los "
               "conductores sin longitud o calibre cuentan como cero ohmios"},
        {.en = "releases that no opening names, battery time where no hours are asked",
         .es = "liberaciones que ninguna abertura nombra, autonomía de baterías si no se piden horas"},
        {.en = "times: how long things stay, and delays that no data gives", .es = "tiempos: cuánto duran las cosas, y retardos que ningún dato da"},
        {.en = "mains wiring, protective earth, boxes that hold mains and low voltage, and what local codes ask for",
         .es = "cableado de red, tierra de protección, cajas con red y baja tensión, y lo que exigen las normas locales"},
    };
    return all;
}

const std::vector<Text>& checkCautions()
{
    static const std::vector<Text> all = {
        {.en = "Isolate mains, battery and any second source, and prove dead, before work.",
         .es = "Aísle la red, la batería y cualquier segunda fuente, y compruebe la ausencia de tensión, antes de trabajar."},
        {.en = "Never two sources on one load.", .es = "Nunca dos fuentes en una carga."},
        {.en = "Set jumpers before power.", .es = "Coloque los puentes antes de dar tensión."},
        {.en = "Free egress always.", .es = "Salida libre siempre."},
        {.en = "No finding is not approval. Local codes and the authority having jurisdiction decide; licensed persons "
               "where the law asks for it.",
         .es = "La falta de hallazgos no es una aprobación. Deciden las normas locales y la autoridad competente; "
               "personas con licencia donde la ley lo exija."},
    };
    return all;
}

} // namespace doorloom
