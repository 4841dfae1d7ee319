#include "check/twofeeds.h"

#include "check/check.h"
#include "check/remedies.h"

#include <algorithm>
#include <map>
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
constexpr Text manyOnePole = {
    .en = "{sources} share one pole: {poles} are one net. That is a common return.",
    .es = "{sources} comparten un polo: {poles} son un solo nodo. Es un retorno común."};
constexpr Text nothing = {.en = "nothing", .es = "nada"};
constexpr Text tieWords = {.en = "{from} to {to}", .es = "{from} a {to}"};

struct Pairing {
    std::uint32_t one, other;
    Vertex onePlus, oneMinus, otherPlus, otherMinus;
};

Finding begin(const Facts& facts, const Pairing& pair, Severity severity, std::string_view reason, const Verdict& verdict)
{
    return twoFeedsAt(facts, {pair.one, pair.other}, severity, reason, verdict);
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

void meetAt(const Facts& facts, const Pairing& pair, std::vector<Finding>& findings)
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
        if (!mayStandTogether(facts.circuit().feeds[pair.one], facts.circuit().feeds[pair.other]))
            danger(like, pair.onePlus, pair.otherPlus, pair.oneMinus, pair.otherMinus);
        return;
    }
    const Verdict crossed = both(pair.onePlus, pair.otherMinus, pair.oneMinus, pair.otherPlus);
    if (occurs(crossed))
        return danger(crossed, pair.onePlus, pair.otherMinus, pair.oneMinus, pair.otherPlus);

    for (const auto& [x, y] : {std::pair(pair.onePlus, pair.otherMinus), std::pair(pair.oneMinus, pair.otherPlus)})
        if (const Verdict verdict = facts.ask.joined(x, y); occurs(verdict)) {
            const bool alternates = facts.circuit().feeds[pair.one].ac || facts.circuit().feeds[pair.other].ac; // either leg is as good
            Finding finding = begin(facts, pair, alternates ? Severity::Hint : Severity::Doubt, "stacked", verdict);
            finding.why = inWordsOf(facts, pair, stacked);
            finding.path = wayBetween(facts, verdict.cubes.front(), x, y, false);
            Remedies remedies(facts);
            remedies.breakWay(finding.path);
            finding.remedies = remedies.taken();
            findings.push_back(std::move(finding));
        }
    for (const auto& [x, y] : {std::pair(pair.onePlus, pair.otherPlus), std::pair(pair.oneMinus, pair.otherMinus)})
        if (const Verdict verdict = facts.ask.joined(x, y); occurs(verdict)) {
            Finding hint = commonReturn(facts, pair, verdict, x, y);
            if (!hint.path.empty()) // outputs of one supply may share a pole inside it
                findings.push_back(std::move(hint));
        }
}

// Poles that are one net in every position.
struct Tie {
    bool plus;
    std::vector<std::uint32_t> feeds; // two or more
};

// Many sources on one net are told as one, not pair by pair.
std::vector<Tie> tiesOfMany(const Facts& facts)
{
    std::vector<Tie> ties;
    for (const bool plus : {true, false}) {
        std::map<Vertex, std::vector<std::uint32_t>> onNet;
        for (std::uint32_t number = 0; number < facts.circuit().feeds.size(); ++number) {
            const Feed& feed = facts.circuit().feeds[number];
            onNet[facts.ask.netOf(plus ? feed.plus : feed.minus)].push_back(number);
        }
        for (auto& [net, feeds] : onNet)
            if (feeds.size() > 2)
                ties.push_back({plus, std::move(feeds)});
    }
    return ties;
}

Finding commonPole(const Facts& facts, const Tie& tie)
{
    Verdict always;
    always.answer = Answer::Always;
    Finding finding = twoFeedsAt(facts, tie.feeds, Severity::Hint, "one pole", always);
    std::vector<Message> sources, poles;
    const auto poleOf = [&](std::uint32_t number) {
        const Feed& feed = facts.circuit().feeds[number];
        return tie.plus ? feed.plus : feed.minus;
    };
    for (std::uint32_t number : tie.feeds) {
        sources.push_back(verbatim(tagOf(facts.job, facts.deviceOfFeed(number))));
        poles.push_back(verbatim(nameOf(facts, poleOf(number))));
    }
    finding.why = {manyOnePole, {{"sources", std::move(sources)}, {"poles", std::move(poles)}}};
    finding.path = wayBetween(facts, {}, poleOf(tie.feeds[0]), poleOf(tie.feeds[1]), false);
    return finding;
}

// What two of its sources do at one of its ties is the ring's line; that they share a pole says nothing more.
void takeIntoRings(const Facts& facts, std::vector<Finding>& findings)
{
    std::vector<Finding> rings;
    findSourceRings(facts, rings);
    for (Finding& ring : rings) {
        const auto isOfTheRing = [&](const Finding& each) {
            return std::all_of(each.at.begin(), each.at.end(), [&](const Spot& spot) {
                return std::find(ring.at.begin(), ring.at.end(), spot) != ring.at.end();
            });
        };
        for (Finding& each : findings)
            if (isOfTheRing(each) && each.severity > Severity::Hint)
                ring.lines.push_back(each);
        std::erase_if(findings, isOfTheRing);
    }
    std::move(rings.begin(), rings.end(), std::back_inserter(findings));
}

std::vector<Finding> findTwoFeeds(const Facts& facts)
{
    std::vector<Finding> findings;
    const std::vector<Feed>& feeds = facts.circuit().feeds;
    const std::vector<Tie> ties = tiesOfMany(facts);
    std::vector<std::size_t> tieOf[2]; // by feed; past the end: none
    for (std::vector<std::size_t>& each : tieOf)
        each.assign(feeds.size(), ties.size());
    for (std::size_t tie = 0; tie < ties.size(); ++tie)
        for (std::uint32_t number : ties[tie].feeds)
            tieOf[ties[tie].plus][number] = tie;
    const auto isTold = [&](std::uint32_t one, std::uint32_t other) {
        return std::any_of(std::begin(tieOf), std::end(tieOf),
                           [&](const auto& of) { return of[one] == of[other] && of[one] < ties.size(); });
    };
    const auto meet = [&](Vertex x, Vertex y) { return facts.ask.couldMeet(x, y); };
    // Shorted by its wires alone: it stands on every net of its one pole's, and the short speaks.
    const auto isOneNet = [&](const Feed& feed) { return facts.ask.netOf(feed.plus) == facts.ask.netOf(feed.minus); };
    for (std::uint32_t one = 0; one < feeds.size(); ++one)
        for (std::uint32_t other : facts.ask.feedsNear(feeds[one].plus)) {
            if (other <= one || isOneNet(feeds[one]) || isOneNet(feeds[other]))
                continue;
            const Pairing pair{one, other, feeds[one].plus, feeds[one].minus, feeds[other].plus, feeds[other].minus};
            const bool plus = meet(pair.onePlus, pair.otherPlus), minus = meet(pair.oneMinus, pair.otherMinus);
            if (meet(pair.onePlus, pair.otherMinus) || meet(pair.oneMinus, pair.otherPlus) || (plus && minus) ||
                ((plus || minus) && !isTold(one, other)))
                meetAt(facts, pair, findings);
        }
    for (const Tie& tie : ties)
        findings.push_back(commonPole(facts, tie));
    findLoadsBetweenFeeds(facts, findings);
    takeIntoRings(facts, findings);
    findJoinedPastFuses(facts, findings);
    return findings;
}

} // namespace

Finding twoFeedsAt(const Facts& facts, const std::vector<std::uint32_t>& feeds, Severity severity,
                   std::string_view reason, const Verdict& verdict)
{
    Finding finding;
    finding.rule = "two-feeds";
    finding.reason = reason;
    finding.severity = severity;
    for (std::uint32_t feed : feeds)
        finding.at.push_back(deviceSpot(facts.deviceOfFeed(feed)));
    happensIn(finding, facts, verdict);
    return finding;
}

bool mayStandTogether(const Feed& one, const Feed& other)
{
    return one.mayParallel && other.mayParallel && one.lowest <= other.highest && other.lowest <= one.highest;
}

extern const Check twoFeeds = {
    .code = "two-feeds",
    .worst = Severity::Danger,
    .title = {.en = "Two feeds", .es = "Dos alimentaciones"},
    .notCovered = {.en = "sources that push into one another through a diode, a resistor or several loads in series; how "
                         "much current goes round; rings whose joints could all become one net; more than 16 rings",
                   .es = "fuentes que empujan una hacia otra por un diodo, una resistencia o varias cargas en serie; "
                         "cuánta corriente circula; anillos cuyas uniones podrían ser todas un solo nodo; más de 16 "
                         "anillos"},
    .run = findTwoFeeds,
};

} // namespace doorloom
