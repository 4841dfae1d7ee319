#pragma once

#include "solve/readings.h"
#include "verdict/questions.h"

#include <cstdint>
#include <functional>
#include <vector>

// Which positions the worst of a reading is sought in.
namespace doorloom {

// Hands, sensors and programmed outputs take every throw, coils and what follows go as the circuit gives, supplies are live.
// Operators whose throws can change the same reading are one group. Groups meet at nothing but the poles of sources, whose
// volts are held: what one does leaves every reading elsewhere as it is, and amperes out of a source are the sum of theirs.
class LookedAt {
public:
    enum class For { Loads, AnyReading }; // operators that matter to a load, or all that have contacts or are sensed

    // In:   budget: steps; a position costs so many thousands of them
    // Owns: nothing of meter and questions, which must outlive it
    LookedAt(const Meter& meter, const Questions& ask, For what, std::uint64_t budget);

    struct Group {
        std::vector<MovedIndex> operators; // sorted
        double positions = 1;
    };
    const std::vector<Group>& groups() const { return groups_; }
    static constexpr std::size_t rest = ~std::size_t{0}; // no group

    // Rest first, then the positions of each group with the others at rest.
    // In:   visit: gets the group and the settled position, gives the amperes drawn from all sources, by which the heaviest is
    //       found where a group has more positions than the budget allows: then rest, the heaviest, and each load's own
    //       operators beside it are looked at
    // Out:  positions: of all operators together; covered: all of them, where every group was gone through
    // Cost: a visit for each position
    using Visit = std::function<double(std::size_t group, const Position& settled)>;
    Coverage forEach(const Visit& visit) const;

    // All positions of these groups together, within the budget.   In: each group once
    Coverage forEachTogether(const std::vector<std::size_t>& groups, const Visit& visit) const;

    // Groups whose throws can change the volts at this vertex against the poles of the sources; each once.
    std::vector<std::size_t> groupsAt(Vertex vertex) const;

private:
    static constexpr std::uint32_t none = ~0u;
    struct Run;
    void findTried(For what);
    void add(Group& group, MovedIndex moved) const;
    bool look(Run& run, std::size_t group, const Position& given, double* drawn) const; // false: the budget is spent
    Position goThrough(Run& run, std::size_t group, const Group& these, const Position& from) const;
    std::vector<Group> doorsOf(const Group& group) const;
    void goThroughParts(Run& run, std::size_t number, const Group& group, double share) const;

    const Meter& meter_;
    const Questions& ask_;
    const Circuit& circuit_;
    double most_; // positions that the budget allows
    std::vector<char> tried_;
    std::vector<Group> groups_;
    std::vector<std::uint32_t> doorOf_;        // by operator: parts of the job that meet at rails, whatever the ohms of these
    std::vector<std::uint32_t> groupOfVertex_; // none: its volts are held, or nothing moves them
    std::uint32_t betweenSources_ = none;      // the group of what lies between sources that are not tied
};

} // namespace doorloom
