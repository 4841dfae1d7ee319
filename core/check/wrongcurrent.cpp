#include "check/check.h"
#include "check/tell.h"

// A load that takes DC alone between the legs of an AC source, or one that takes AC alone on DC.
namespace doorloom {

namespace {

constexpr Text acOnDc = {.en = "{load} takes DC alone and lies on {source}, which gives AC.",
                         .es = "{load} solo admite CC y está en {source}, que da CA."};
constexpr Text dcOnAc = {.en = "{load} takes AC alone and lies on {source}, which gives DC: nothing but its coil's ohms holds the current "
                               "back, and it burns.",
                         .es = "{load} solo admite CA y está en {source}, que da CC: solo los ohmios de su bobina limitan la corriente, y se "
                               "quema."};
constexpr Text other = {.en = "Feed {load} from a source of {current}.", .es = "Alimente {load} de una fuente de {current}."};
constexpr Text ac = {.en = "AC", .es = "CA"}, dc = {.en = "DC", .es = "CC"};

// Where its two sides meet the source's two poles through joints alone; what is rectified is another matter.
Verdict onPoles(const Facts& facts, const Element& load, const Feed& feed)
{
    const Verdict straight = facts.ask.allJoined({{load.a, feed.plus}, {load.b, feed.minus}});
    return occurs(straight) ? straight : facts.ask.allJoined({{load.a, feed.minus}, {load.b, feed.plus}});
}

std::vector<Finding> findWrongCurrent(const Facts& facts)
{
    std::vector<Finding> findings;
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        const Element& element = facts.circuit().elements[number];
        const LoadPart* load = facts.loadOf(number);
        if (!load || load->accepts == Current::Either)
            continue;
        for (std::uint32_t source : facts.ask.feedsNear(element.a)) {
            const Feed& feed = facts.circuit().feeds[source];
            if (feed.ac != (load->accepts == Current::Dc))
                continue;
            const Verdict verdict = onPoles(facts, element, feed);
            if (!occurs(verdict))
                continue;
            Finding finding;
            finding.rule = "wrong-current";
            finding.severity = feed.ac ? Severity::Fault : Severity::Danger;
            finding.at = {loadSpot(facts, number)};
            happensIn(finding, facts, verdict);
            const std::string name = tagOfOrigin(facts, element.origin);
            finding.why = {feed.ac ? acOnDc : dcOnAc, {{"load", name}, {"source", tagOfOrigin(facts, feed.origin)}}};
            finding.remedy = {other, {{"load", name}, {"current", std::vector<Message>{feed.ac ? dc : ac}}}};
            for (const auto& [from, to] : {std::pair(feed.plus, element.a), std::pair(feed.plus, element.b),
                                           std::pair(element.a, feed.minus), std::pair(element.b, feed.minus)})
                for (Origin& origin : wayBetween(facts, verdict.cubes.front(), from, to, false))
                    finding.path.push_back(std::move(origin));
            findings.push_back(std::move(finding));
        }
    }
    return findings;
}

} // namespace

extern const Check wrongCurrent = {
    .code = "wrong-current",
    .worst = Severity::Danger,
    .title = {.en = "AC on a DC load, or DC on an AC load", .es = "CA en una carga de CC, o CC en una de CA"},
    .notCovered = {.en = "what reaches a load through diodes", .es = "lo que llega a una carga a través de diodos"},
    .run = findWrongCurrent,
};

} // namespace doorloom
