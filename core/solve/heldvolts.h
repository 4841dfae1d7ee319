#pragma once

#include "graph/circuit.h"

#include <cmath>
#include <numeric>
#include <optional>
#include <vector>

namespace doorloom {

// Vertices whose volts against each other are held: by joints at nothing, by sources at theirs.
class HeldVolts {
public:
    explicit HeldVolts(Vertex vertices) : parent_(vertices), above_(vertices) { std::iota(parent_.begin(), parent_.end(), Vertex{0}); }

    struct Place {
        Vertex root = 0;
        double volts = 0; // of the vertex, above its root
    };
    Place find(Vertex vertex)
    {
        Vertex root = vertex;
        double above = 0;
        while (parent_[root] != root) {
            above += above_[root];
            root = parent_[root];
        }
        const double volts = above;
        while (parent_[vertex] != root && vertex != root) { // the next one asks a shorter way
            const Vertex up = parent_[vertex];
            const double step = above_[vertex];
            parent_[vertex] = root;
            above_[vertex] = above;
            above -= step;
            vertex = up;
        }
        return {root, volts};
    }
    // v(a) − v(b), where it is held.
    std::optional<double> between(Vertex a, Vertex b)
    {
        const Place one = find(a), other = find(b);
        return one.root == other.root ? std::optional(one.volts - other.volts) : std::nullopt;
    }
    // Holds v(a) − v(b) = volts. In: not held yet
    void hold(Vertex a, Vertex b, double volts)
    {
        const Place one = find(a), other = find(b);
        parent_[one.root] = other.root;
        above_[one.root] = other.volts + volts - one.volts;
    }

private:
    std::vector<Vertex> parent_;
    std::vector<double> above_; // its parent
};

} // namespace doorloom
