#include "check/check.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <algorithm>
#include <set>

// Two sources joined through conductors and contacts: on both poles, stacked, or on one pole alone.
namespace doorloom {

namespace {

constexpr Text bothPoles = {
    .en = "{one} and {other} are joined on both poles: the stronger pushes into the weaker, and a fuse or battery pays "
          "for it.",
    .es = "{one} y {other} están unidas en ambos polos: la más fuerte empuja a la más débil, y lo paga un fusible o "
          "una batería."};
constexpr Text stacked = {
    .en = "{one} and {other} stand in series: plus of one on minus of the other. A load across both gets the sum of "
          "their volts.",
    .es = "{one} y {other} quedan en serie: el positivo de una en el negativo de la otra. Una carga entre ambas recibe "
          "la suma de sus tensiones."};
constexpr Text onePole = {
    .en = "{one} and {other} share one pole, by {tie}. That is a common return; needed by: {loads}.",
    .es = "{one} y {other} comparten un polo, por {tie}. Es un retorno común; lo necesita: {loads}."};
constexpr Text nothing = {.en = "nothing", .es = "nada"};
constexpr Text tieWords = {.en = "{from} to {to}", .es = "{from} a {to}"};

struct Pairing {
    std::uint32_t one, other;
    Vertex onePlus, oneMinus, otherPlus, otherMinus;
};

bool mayStandTogether(const Facts& facts, const Pairing& pair)
{
    const Feed &a = facts.circuit().feeds[pair.one], &b = facts.circuit().feeds[pair.other];
    return a.mayParallel && b.mayParallel && a.lowest <= b.highest && b.lowest <= a.highest;
}

Finding begin(const Facts& facts, const Pairing& pair, Severity severity, std::string_view reason, const Verdict& verdict)
{
    Finding finding;
    finding.rule = "two-feeds";
    finding.reason = reason;
    finding.severity = severity;
    finding.at = {deviceSpot(facts.deviceOfFeed(pair.one)), deviceSpot(facts.deviceOfFeed(pair.other))};
    happensIn(finding, facts, verdict);
    return finding;
}

Message inWordsOf(const Facts& facts, const Pairing& pair, const Text& text)
{
    return {text,
            {{"one", tagOf(facts.job, facts.deviceOfFeed(pair.one))},
             {"other", tagOf(facts.job, facts.deviceOfFeed(pair.other))}}};
}

// Loads with one side on a pole of one source and the other side on a pole of the other, which need the tie.
std::vector<Message> loadsThatNeed(const Facts& facts, const Pairing& pair, const std::vector<std::uint32_t>& tie)
{
    std::set<std::string> names;
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        const Element& element = facts.circuit().elements[number];
        if (element.kind != ElementKind::Load)
            continue;
        const auto on = [&](Vertex side, Vertex pole) { return occurs(facts.ask.joined(side, pole, tie)); };
        const auto between = [&](Vertex from, Vertex to) {
            return (on(element.a, from) && on(element.b, to)) || (on(element.b, from) && on(element.a, to));
        };
        if ((between(pair.onePlus, pair.otherMinus) || between(pair.otherPlus, pair.oneMinus)) &&
            occurs(facts.returned(number)))
            names.insert(nameOf(facts, element.a));
    }
    std::vector<Message> loads;
    for (const std::string& name : names)
        loads.push_back(verbatim(name));
    if (loads.empty())
        loads.push_back(nothing);
    return loads;
}

std::vector<std::uint32_t> jointsOf(const Facts& facts, const std::vector<Origin>& way)
{
    std::vector<std::uint32_t> joints;
    for (std::uint32_t number = 0; number < facts.circuit().joints.size(); ++number)
        if (std::find(way.begin(), way.end(), facts.net.origin(facts.circuit().joints[number].origin)) != way.end())
            joints.push_back(number);
    return joints;
}

Finding commonReturn(const Facts& facts, const Pairing& pair, const Verdict& verdict, Vertex x, Vertex y)
{
    Finding finding = begin(facts, pair, Severity::Hint, "one pole", verdict);
    finding.path = wayBetween(facts, verdict.cubes.front(), x, y, false);
    finding.why = inWordsOf(facts, pair, onePole);
    finding.why.arguments.emplace_back(
        "tie", std::vector<Message>{{tieWords, {{"from", nameOf(facts, x)}, {"to", nameOf(facts, y)}}}});
    finding.why.arguments.emplace_back("loads", loadsThatNeed(facts, pair, jointsOf(facts, finding.path)));
    return finding;
}

void meet(const Facts& facts, const Pairing& pair, std::vector<Finding>& findings)
{
    const auto both = [&](Vertex a, Vertex b, Vertex c, Vertex d) { return facts.ask.allJoined({{a, b}, {c, d}}); };
    const auto danger = [&](const Verdict& verdict, Vertex a, Vertex b, Vertex c, Vertex d) {
        Finding finding = begin(facts, pair, Severity::Danger, "both poles", verdict);
        finding.why = inWordsOf(facts, pair, bothPoles);
        finding.path = wayBetween(facts, verdict.cubes.front(), a, b, false);
        Remedies remedies(facts);
        remedies.breakWay(finding.path);
        remedies.breakWay(wayBetween(facts, verdict.cubes.front(), c, d, false));
        finding.remedies = remedies.taken();
        findings.push_back(std::move(finding));
    };
    const Verdict like = both(pair.onePlus, pair.otherPlus, pair.oneMinus, pair.otherMinus);
    if (occurs(like)) {
        if (!mayStandTogether(facts, pair))
            danger(like, pair.onePlus, pair.otherPlus, pair.oneMinus, pair.otherMinus);
        return;
    }
    const Verdict crossed = both(pair.onePlus, pair.otherMinus, pair.oneMinus, pair.otherPlus);
    if (occurs(crossed))
        return danger(crossed, pair.onePlus, pair.otherMinus, pair.oneMinus, pair.otherPlus);

    for (const auto& [x, y] : {std::pair(pair.onePlus, pair.otherMinus), std::pair(pair.oneMinus, pair.otherPlus)})
        if (const Verdict verdict = facts.ask.joined(x, y); occurs(verdict)) {
            Finding finding = begin(facts, pair, Severity::Doubt, "stacked", verdict);
            finding.why = inWordsOf(facts, pair, stacked);
            finding.path = wayBetween(facts, verdict.cubes.front(), x, y, false);
            Remedies remedies(facts);
            remedies.breakWay(finding.path);
            finding.remedies = remedies.taken();
            findings.push_back(std::move(finding));
        }
    for (const auto& [x, y] : {std::pair(pair.onePlus, pair.otherPlus), std::pair(pair.oneMinus, pair.otherMinus)})
        if (const Verdict verdict = facts.ask.joined(x, y); occurs(verdict))
            findings.push_back(commonReturn(facts, pair, verdict, x, y));
}

std::vector<Finding> findTwoFeeds(const Facts& facts)
{
    std::vector<Finding> findings;
    const std::vector<Feed>& feeds = facts.circuit().feeds;
    for (std::uint32_t one = 0; one < feeds.size(); ++one)
        for (std::uint32_t other : facts.ask.feedsNear(feeds[one].plus))
            if (one < other)
                meet(facts, {one, other, feeds[one].plus, feeds[one].minus, feeds[other].plus, feeds[other].minus},
                     findings);
    return findings;
}

} // namespace

extern const Check twoFeeds = {
    .code = "two-feeds",
    .worst = Severity::Danger,
    .title = {.en = "Two feeds", .es = "Dos alimentaciones"},
    .notCovered = {.en = "three or more sources in one ring; sources that meet through loads or resistors; fused feeds "
                         "of one source joined past their fuses",
                   .es = "tres o más fuentes en un anillo; fuentes que se encuentran a través de cargas o resistencias; "
                         "salidas con fusible de una fuente unidas tras sus fusibles"},
    .run = findTwoFeeds,
};

} // namespace doorloom
