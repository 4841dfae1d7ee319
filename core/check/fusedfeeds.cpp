#include "check/remedies.h"
#include "check/twofeeds.h"

#include <array>

// A source that feeds through several fuses, two of its feeds joined past them: a short on one takes both fuses' amps,
// and with one fuse out the other carries both.
namespace doorloom {

namespace {

constexpr Text why = {
    .en = "{one} and {other} come from {source} through a fuse each, and are joined past them: neither fuse limits what "
          "its feed carries.",
    .es = "{one} y {other} vienen de {source}, cada una por su fusible, y se unen tras ellos: ningún fusible limita lo "
          "que lleva su salida."};

// A fuse in one of its two directions: from the source's pole outwards.
struct FusedFeed {
    std::uint32_t joint;
    Vertex near, far;
};

std::vector<std::uint32_t> fusesOf(const Facts& facts)
{
    std::vector<std::uint32_t> fuses;
    for (std::uint32_t number = 0; number < facts.circuit().joints.size(); ++number) {
        const Origin& origin = facts.net.origin(facts.circuit().joints[number].origin);
        const Kind* kind = origin.part.empty() ? nullptr : kindOf(facts.job, origin.device);
        if (kind && findPartAs<FusePart>(*kind, origin.part))
            fuses.push_back(number);
    }
    return fuses;
}

std::vector<FusedFeed> feedsFrom(const Facts& facts, Vertex pole, const std::vector<std::uint32_t>& fuses)
{
    std::vector<FusedFeed> feeds;
    for (std::uint32_t fuse : fuses) {
        const Joint& joint = facts.circuit().joints[fuse];
        for (const auto& [near, far] : {std::pair(joint.a, joint.b), std::pair(joint.b, joint.a)})
            if (occurs(facts.ask.joined(near, pole, fuses)))
                feeds.push_back({fuse, near, far});
    }
    return feeds;
}

void tellJoined(const Facts& facts, const Pole& pole, const FusedFeed& one, const FusedFeed& other,
                const std::vector<std::uint32_t>& fuses, std::vector<Finding>& findings)
{
    const Verdict verdict = facts.ask.allJoined(
        {{one.near, pole.vertex}, {other.near, pole.vertex}, {one.far, other.far}}, fuses);
    if (!occurs(verdict))
        return;
    Finding finding = twoFeedsAt(facts, {pole.feed}, Severity::Fault, "past their fuses", verdict);
    finding.at = {spotOf(facts, one.far), spotOf(facts, other.far)};
    finding.why = {why,
                   {{"one", nameOf(facts, one.far)},
                    {"other", nameOf(facts, other.far)},
                    {"source", tagOf(facts.job, facts.deviceOfFeed(pole.feed))}}};
    finding.path = wayBetween(facts, verdict.cubes.front(), one.far, other.far, false, fuses);
    Remedies remedies(facts);
    remedies.breakWay(finding.path);
    finding.remedies = remedies.taken();
    findings.push_back(std::move(finding));
}

} // namespace

void findJoinedPastFuses(const Facts& facts, std::vector<Finding>& findings)
{
    const std::vector<std::uint32_t> fuses = fusesOf(facts);
    if (fuses.size() < 2)
        return;
    for (std::uint32_t number = 0; number < facts.circuit().feeds.size(); ++number) {
        const Feed& feed = facts.circuit().feeds[number];
        for (const Pole& pole : std::array{Pole{feed.plus, number, true}, Pole{feed.minus, number, false}}) {
            const std::vector<FusedFeed> feeds = feedsFrom(facts, pole.vertex, fuses);
            for (std::size_t i = 0; i < feeds.size(); ++i)
                for (std::size_t k = i + 1; k < feeds.size(); ++k)
                    if (feeds[i].joint != feeds[k].joint)
                        tellJoined(facts, pole, feeds[i], feeds[k], fuses, findings);
        }
    }
}

} // namespace doorloom
