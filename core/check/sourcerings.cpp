#include "check/remedies.h"
#include "check/twofeeds.h"

#include <algorithm>

// Rings of sources: plus of one on a pole of the next, and so on back to the first. With two of them the pair itself
// is found; here are three and more.
namespace doorloom {

namespace {

constexpr Text why = {
    .en = "{sources} stand in a ring, pole to pole: nothing but their own wires stops the current that they drive round.",
    .es = "{sources} forman un anillo, polo a polo: nada salvo sus propios hilos frena la corriente que hacen circular."};

constexpr std::size_t mostRings = 16; // told of one island
constexpr std::size_t mostSteps = 20'000;

// A source on the way round, entered at one pole and left at the other.
struct Passed {
    std::uint32_t feed;
    Vertex enter, leave;
    bool forward; // from minus to plus
};

// Simple rings through the places where poles could meet, with every contact closed.
class RingSearch {
public:
    RingSearch(const Facts& facts, std::vector<std::uint32_t> feeds) : facts_(facts), feeds_(std::move(feeds)) {}

    template <class Visit> void forEachRing(Visit visit)
    {
        for (std::uint32_t first : feeds_) {
            const Feed& feed = facts_.circuit().feeds[first];
            way_ = {{first, feed.minus, feed.plus, true}};
            extend(visit);
        }
    }

private:
    bool meet(Vertex x, Vertex y) const { return facts_.ask.couldMeet(x, y); }
    bool passes(Vertex pole) const
    {
        return std::any_of(way_.begin(), way_.end(), [&](const Passed& each) { return meet(each.enter, pole); });
    }

    template <class Visit> void extend(Visit& visit)
    {
        const Passed last = way_.back(), first = way_.front();
        for (std::uint32_t number : feeds_) {
            const Feed& feed = facts_.circuit().feeds[number];
            for (const bool forward : {true, false}) {
                const Passed next{number, forward ? feed.minus : feed.plus, forward ? feed.plus : feed.minus, forward};
                // The lowest number begins, and forwards: each ring once.
                if (number <= first.feed || ++steps_ > mostSteps || !meet(last.leave, next.enter) ||
                    meet(next.enter, next.leave) || passes(next.enter))
                    continue;
                way_.push_back(next);
                if (!meet(next.leave, first.enter))
                    extend(visit);
                else if (way_.size() > 2)
                    visit(way_);
                way_.pop_back();
            }
        }
    }

    const Facts& facts_;
    std::vector<std::uint32_t> feeds_;
    std::vector<Passed> way_;
    std::size_t steps_ = 0;
};

// All may be paralleled, and their volts can add to nothing.
bool mayStandSo(const Facts& facts, const std::vector<Passed>& ring)
{
    Millivolts lowest = 0, highest = 0;
    for (const Passed& each : ring) {
        const Feed& feed = facts.circuit().feeds[each.feed];
        if (!feed.mayParallel || feed.ac)
            return false;
        lowest += each.forward ? feed.lowest : -feed.highest;
        highest += each.forward ? feed.highest : -feed.lowest;
    }
    return lowest <= 0 && highest >= 0;
}

void tell(const Facts& facts, const std::vector<Passed>& ring, std::vector<Finding>& findings)
{
    std::vector<Questions::Pair> ties;
    std::vector<std::uint32_t> feeds;
    std::vector<Message> names;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        ties.push_back({ring[i].leave, ring[(i + 1) % ring.size()].enter});
        feeds.push_back(ring[i].feed);
        names.push_back(verbatim(tagOfOrigin(facts, facts.circuit().feeds[ring[i].feed].origin)));
    }
    const Verdict verdict = facts.ask.allJoined(ties);
    if (!occurs(verdict))
        return;
    Finding finding = twoFeedsAt(facts, feeds, Severity::Danger, "ring", verdict);
    finding.why = {why, {{"sources", std::move(names)}}};
    Remedies remedies(facts);
    for (const Questions::Pair& tie : ties) {
        const std::vector<Origin> way = wayBetween(facts, verdict.cubes.front(), tie.x, tie.y, false);
        finding.path.insert(finding.path.end(), way.begin(), way.end());
        remedies.breakWay(way);
    }
    finding.remedies = remedies.taken();
    findings.push_back(std::move(finding));
}

// Only sources both of whose poles could meet another's can stand in a ring.
std::vector<std::uint32_t> withBothPolesMet(const Facts& facts, std::vector<std::uint32_t> feeds)
{
    const auto& all = facts.circuit().feeds;
    for (bool changed = true; changed;) {
        const auto lonely = [&](std::uint32_t number) {
            const auto met = [&](Vertex pole) {
                return std::any_of(feeds.begin(), feeds.end(), [&](std::uint32_t other) {
                    return other != number && (facts.ask.couldMeet(pole, all[other].plus) ||
                                               facts.ask.couldMeet(pole, all[other].minus));
                });
            };
            return !met(all[number].plus) || !met(all[number].minus);
        };
        std::vector<std::uint32_t> left;
        std::copy_if(feeds.begin(), feeds.end(), std::back_inserter(left), [&](std::uint32_t each) { return !lonely(each); });
        changed = left.size() < feeds.size();
        feeds = std::move(left);
    }
    return feeds;
}

} // namespace

void findSourceRings(const Facts& facts, std::vector<Finding>& findings)
{
    for (std::uint32_t first = 0; first < facts.circuit().feeds.size(); ++first) {
        std::vector<std::uint32_t> island = facts.ask.feedsNear(facts.circuit().feeds[first].plus);
        if (island.size() < 3 || island.front() != first)
            continue;
        std::size_t told = findings.size() + mostRings;
        RingSearch(facts, withBothPolesMet(facts, std::move(island))).forEachRing([&](const std::vector<Passed>& ring) {
            if (findings.size() < told && !mayStandSo(facts, ring))
                tell(facts, ring, findings);
        });
    }
}

} // namespace doorloom
