#include "check/remedies.h"
#include "check/twofeeds.h"

// A load that is right in some positions and in others stands between like poles of two sources whose other poles are
// tied: the higher one pushes through it into the lower. One that is never fed is told by that rule.
namespace doorloom {

namespace {

constexpr Text why = {
    .en = "{load} stands between {high} and {low}, their other poles tied: {source} pushes through it into {other}.",
    .es = "{load} queda entre {high} y {low}, con sus otros polos unidos: {source} empuja a través de ella hacia {other}."};

struct Sides {
    Vertex like, otherLike, tied, otherTied; // of the higher source and of the lower one
};

void ask(const Facts& facts, std::uint32_t number, std::uint32_t higher, std::uint32_t lower, const Sides& poles,
         std::vector<Finding>& findings)
{
    const Element& load = facts.circuit().elements[number];
    for (const auto& [side, farSide] : {std::pair(load.a, load.b), std::pair(load.b, load.a)}) {
        const Verdict verdict = facts.ask.allJoined({{side, poles.like, poles.tied},
                                                     {farSide, poles.otherLike, poles.otherTied},
                                                     {poles.tied, poles.otherTied}});
        if (!occurs(verdict) || !occurs(facts.returned(number)))
            continue;
        Finding finding = twoFeedsAt(facts, {std::min(higher, lower), std::max(higher, lower)}, Severity::Doubt,
                                     "through a load", verdict);
        finding.why = {why,
                       {{"load", tagOfOrigin(facts, load.origin)},
                        {"high", nameOf(facts, poles.like)},
                        {"low", nameOf(facts, poles.otherLike)},
                        {"source", tagOf(facts.job, facts.deviceOfFeed(higher))},
                        {"other", tagOf(facts.job, facts.deviceOfFeed(lower))}}};
        const Cube& cube = verdict.cubes.front();
        finding.path = wayBetween(facts, cube, poles.like, side, false);
        const std::vector<Origin> on = wayBetween(facts, cube, farSide, poles.otherLike, false);
        finding.path.insert(finding.path.end(), on.begin(), on.end());
        Remedies remedies(facts);
        remedies.breakWay(finding.path);
        finding.remedies = remedies.taken();
        findings.push_back(std::move(finding));
        return;
    }
}

} // namespace

void findLoadsBetweenFeeds(const Facts& facts, std::vector<Finding>& findings)
{
    const std::vector<Feed>& feeds = facts.circuit().feeds;
    for (std::uint32_t number = 0; number < facts.circuit().elements.size(); ++number) {
        const Element& load = facts.circuit().elements[number];
        if (load.kind != ElementKind::Load)
            continue;
        const std::vector<std::uint32_t> near = facts.ask.feedsNear(load.a);
        for (std::uint32_t higher : near)
            for (std::uint32_t lower : near) {
                const Feed &high = feeds[higher], &low = feeds[lower];
                if (high.ac || low.ac || high.lowest <= low.highest)
                    continue;
                ask(facts, number, higher, lower, {high.plus, low.plus, high.minus, low.minus}, findings);
                ask(facts, number, higher, lower, {high.minus, low.minus, high.plus, low.plus}, findings);
            }
    }
}

} // namespace doorloom
