#include "check/protection.h"

#include "check/class2.h"

#include <algorithm>
#include <limits>
#include <queue>
#include <tuple>

namespace doorloom {

namespace {

// The widest ways from all sources at once: what has most amperes to come goes first.
class Widest {
public:
    Widest(const Facts& facts) : facts_(facts), circuit_(facts.circuit()), at_(circuit_.vertices), isMinus_(circuit_.vertices, 0), cathodes_(circuit_.vertices)
    {
        for (std::uint32_t number = 0; number < circuit_.diodes.size(); ++number)
            cathodes_[circuit_.diodes[number].anode].push_back(number);
        for (const Feed& feed : circuit_.feeds)
            if (!feed.ac)
                isMinus_[feed.minus] = 1;
    }

    std::vector<Protection> from(Sources which)
    {
        for (const Feed& feed : circuit_.feeds) {
            const auto* source = partBehind<SourcePart>(facts_.job, facts_.net.origin(feed.origin));
            if (!source || (which == Sources::NotClass2 && source->supplyClass == class2))
                continue;
            const Protection start{source->most.value, feed.origin, Protection::noJoint, feed.plus};
            reach(feed.plus, start);
            if (feed.ac)
                reach(feed.minus, {start.amperes, start.limiter, start.cameBy, feed.minus});
        }
        while (!queue_.empty()) {
            const auto [amperes, vertex] = queue_.top();
            queue_.pop();
            if (amperes == at_[vertex].amperes)
                goOn(vertex);
        }
        return std::move(at_);
    }

private:
    void reach(Vertex vertex, const Protection& by)
    {
        if (by.amperes <= at_[vertex].amperes || isMinus_[vertex])
            return;
        at_[vertex] = by;
        queue_.push({by.amperes, vertex});
    }

    void goOn(Vertex vertex)
    {
        const Protection here = at_[vertex];
        for (std::uint32_t number : facts_.jointsAt(vertex)) {
            const Joint& joint = circuit_.joints[number];
            if (joint.guard.anyOf.empty())
                continue;
            Protection next{here.amperes, here.limiter, number, vertex};
            if (const auto* fuse = partBehind<FusePart>(facts_.job, facts_.net.origin(joint.origin)); fuse && fuse->limit.value < next.amperes) {
                next.amperes = fuse->limit.value;
                next.limiter = joint.origin;
            }
            reach(joint.a == vertex ? joint.b : joint.a, next);
        }
        for (std::uint32_t number : cathodes_[vertex])
            reach(circuit_.diodes[number].cathode, {here.amperes, here.limiter, static_cast<std::uint32_t>(circuit_.joints.size()) + number, vertex});
    }

    const Facts& facts_;
    const Circuit& circuit_;
    std::vector<Protection> at_;
    std::vector<char> isMinus_;                        // of a DC source: no way leads on from there
    std::vector<std::vector<std::uint32_t>> cathodes_; // diodes, by their anode
    std::priority_queue<std::pair<double, Vertex>> queue_;
};

} // namespace

std::vector<Protection> protectionFrom(const Facts& facts, Sources which) { return Widest(facts).from(which); }

std::vector<Origin> wayTo(const Facts& facts, const std::vector<Protection>& protection, Vertex vertex)
{
    const Circuit& circuit = facts.circuit();
    std::vector<Origin> way;
    for (; protection[vertex].cameBy != Protection::noJoint; vertex = protection[vertex].from) {
        const std::uint32_t by = protection[vertex].cameBy;
        way.push_back(facts.net.origin(by < circuit.joints.size() ? circuit.joints[by].origin : circuit.diodes[by - circuit.joints.size()].origin));
    }
    std::reverse(way.begin(), way.end());
    return way;
}

} // namespace doorloom
