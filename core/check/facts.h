#pragma once

#include "check/figures.h"
#include "graph/netlist.h"
#include "verdict/questions.h"

#include <map>
#include <optional>
#include <vector>

namespace doorloom {

// Whether findings are told with their reasons, or only where and how bad they are: while a remedy is tried, nobody
// reads why.
enum class Telling { Reasons, Places };

// What all checks read: the job, its netlist, and answers that several of them ask for, worked out once.
// Owns: nothing of the job, which must outlive it.
class Facts {
public:
    Facts(const Job& of, std::uint64_t steps, Telling what = Telling::Reasons);

    const Job& job;
    const Telling telling;
    const std::uint64_t budget; // of one question
    const Netlist net;
    const Questions ask;

    const Circuit& circuit() const { return net.circuit(); }
    const Verdict& shorted(std::uint32_t feed) const;
    const Verdict& returned(std::uint32_t element) const;
    const Verdict& operated(std::uint32_t input) const;
    const std::optional<Position>& rest() const; // everything idle, settled; nothing: it never settles
    const Figures& figures() const; // of all positions within the budget, or of those of useFigures
    void useFigures(Figures figures) { figures_ = std::move(figures); }

    DeviceId deviceOf(std::uint32_t origin) const { return net.origin(origin).device; }
    DeviceId deviceOfFeed(std::uint32_t feed) const { return deviceOf(circuit().feeds[feed].origin); }
    // The kind's load behind an element; null when it is another part.
    const LoadPart* loadOf(std::uint32_t element) const;
    // Conductors on the vertex itself: the splice, or the one terminal.
    std::vector<const Conductor*> conductorsAt(Vertex vertex) const;
    bool isLanded(Vertex vertex) const { return !conductorsAt(vertex).empty(); }
    std::optional<Landing> landingAt(Vertex vertex) const; // nothing inside a device or on a splice

    // Joints on this vertex, by number of the circuit's joints.
    const std::vector<std::uint32_t>& jointsAt(Vertex vertex) const { return jointsAt_[vertex]; }

private:
    std::vector<std::vector<std::uint32_t>> jointsAt_;
    mutable std::optional<std::optional<Position>> rest_;
    mutable std::optional<Figures> figures_;
    mutable std::map<std::uint32_t, Verdict> shorted_, returned_, operated_;
};

// From x to y through joints that are closed with these throws alone, and forward diodes where asked.
// Out: what is passed, in order; empty when there is no way (or x is y).
// In:  without: joints that are not passed
std::vector<Origin> wayBetween(const Facts& facts, const Cube& throws, Vertex x, Vertex y, bool throughDiodes,
                               const std::vector<std::uint32_t>& without = {});
// All that hangs on x through joints, every contact closed; sorted.
std::vector<Vertex> reachOf(const Facts& facts, Vertex x);
// All that is one net with x in every position, some joints taken out; sorted.
std::vector<Vertex> alwaysWith(const Facts& facts, Vertex x, const std::vector<std::uint32_t>& without);

} // namespace doorloom
