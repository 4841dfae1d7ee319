#pragma once

#include "judge/cells.h"

#include <map>
#include <vector>

namespace doorloom {

// The way along each rail to the nearest pole on it, for citing it; and the ways that tie the poles of one rail together.
// Where a source's two poles are one net, the ways that join unlike poles are left out: what hangs on the source is judged
// as if that short were mended, which the rails' own wiring shows.
// Cost: linear in what is on rails
class RailTree {
public:
    RailTree(const Wiring& wiring, const Cells& cells);

    static constexpr std::uint32_t none = Wiring::none;
    struct Step {
        Vertex up = none;               // itself at the end; none: not on a rail
        std::uint32_t conductor = none; // none: inside a device
    };
    const Step& from(Vertex vertex) const { return steps_[vertex]; }
    Vertex endOf(Vertex vertex) const { return end_[vertex]; }

    // From one pole to another of its rail, nearer to the rail's first: from `here`, which is nearest to the one, by a
    // conductor (or inside a device) to `there`, which is nearest to the other.
    struct Tie {
        Vertex here = none, there = none;
        std::uint32_t conductor = none;
    };
    const Tie* tieOf(Vertex pole) const; // null: none, or the first pole itself

    bool hasPole(std::uint32_t rail) const { return hasPole_[rail] != 0; }
    // Conductors on a rail without a pole that have one end free: landing it may be what is missing.
    const std::vector<std::uint32_t>& looseOn(std::uint32_t rail) const;

private:
    struct Joint {
        Vertex from, to;
        std::uint32_t conductor;
    };
    void findJoints();
    void findPoles();
    void grow(std::vector<Vertex> roots);
    void findTies();
    void findLoose();
    bool onRail(Vertex vertex) const { return cells_.isRail[wiring_.net[vertex]] != 0; }

    const Wiring& wiring_;
    const Cells& cells_;
    std::vector<Joint> joints_;             // both ways, by the vertex they start from
    std::vector<std::uint32_t> firstJoint_; // by vertex, and one more
    std::vector<Vertex> poles_;
    std::vector<char> isPlus_, isShorted_, hasPole_; // by vertex; by net; by net
    std::vector<Step> steps_;
    std::vector<Vertex> end_; // by vertex: where its way ends
    std::map<Vertex, Tie> ties_;
    std::map<std::uint32_t, std::vector<std::uint32_t>> loose_; // by rail
};

} // namespace doorloom
