#include "verdict/lanes.h"

#include <algorithm>

namespace doorloom {

Lanes::Lanes(const Circuit& circuit, const std::vector<MovedIndex>& operators)
    : circuit_(circuit), at_(circuit.operators.size()), spread_(circuit.operators.size())
{
    for (MovedIndex moved = 0; moved < at_.size(); ++moved)
        at_[moved] = circuit.operators[moved].idle;
    for (MovedIndex moved : operators) {
        const unsigned throws = circuit.operators[moved].throws;
        at_[moved] = 0;
        if (!counted_.empty() || lanes_ * throws > 64) {
            counted_.push_back(moved);
            continue;
        }
        for (unsigned thrown = 0; thrown < throws; ++thrown) {
            std::uint64_t bits = 0;
            for (unsigned lane = 0; lane < 64; ++lane)
                if (lane / lanes_ % throws == thrown)
                    bits |= std::uint64_t(1) << lane;
            spread_[moved].push_back(bits);
        }
        lanes_ *= throws;
    }
    all_ = lanes_ == 64 ? ~std::uint64_t(0) : (std::uint64_t(1) << lanes_) - 1;
}

std::uint64_t Lanes::holding(const Atom& atom) const
{
    if (spread_[atom.moved].empty())
        return (atom.mask >> at_[atom.moved]) & 1u ? ~std::uint64_t(0) : 0;
    std::uint64_t bits = 0;
    for (std::size_t thrown = 0; thrown < spread_[atom.moved].size(); ++thrown)
        if ((atom.mask >> thrown) & 1u)
            bits |= spread_[atom.moved][thrown];
    return bits;
}

std::uint64_t Lanes::holding(const Guard& guard) const
{
    std::uint64_t any = 0;
    for (const Term& term : guard.anyOf) {
        std::uint64_t bits = all_;
        for (const Atom& atom : term)
            bits &= holding(atom);
        any |= bits;
    }
    return any;
}

bool Lanes::next()
{
    for (MovedIndex moved : counted_) {
        if (++at_[moved] < circuit_.operators[moved].throws)
            return true;
        at_[moved] = 0;
    }
    return false;
}

std::uint64_t LaneNet::joined(Vertex x, Vertex y, std::uint64_t all, std::vector<std::uint64_t>& reached,
                              std::uint64_t& steps) const
{
    reached.assign(vertices, 0);
    reached[x] = all;
    for (bool changed = true; changed && reached[y] != all;) {
        std::uint64_t added = 0;
        const auto pass = [&](const Joint& joint) {
            const std::uint64_t both = (reached[joint.a] | reached[joint.b]) & joint.closed;
            added |= (both & ~reached[joint.a]) | (both & ~reached[joint.b]);
            reached[joint.a] |= both;
            reached[joint.b] |= both;
        };
        std::for_each(joints.begin(), joints.end(), pass);
        std::for_each(joints.rbegin(), joints.rend(), pass);
        steps += 2 * joints.size();
        changed = added != 0;
    }
    return reached[y] & all;
}

} // namespace doorloom
