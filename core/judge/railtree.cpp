#include "judge/railtree.h"

#include <algorithm>
#include <utility>

namespace doorloom {

RailTree::RailTree(const Wiring& wiring, const Cells& cells)
    : wiring_(wiring), cells_(cells), isPlus_(wiring.vertices), isShorted_(wiring.nets), hasPole_(wiring.nets),
      steps_(wiring.vertices), end_(wiring.vertices, none)
{
    findJoints();
    findPoles();
    grow(poles_);
    for (Vertex vertex = 0; vertex < wiring.vertices; ++vertex)
        if (onRail(vertex))
            grow({vertex});
    findTies();
    findLoose();
}

void RailTree::findPoles()
{
    for (std::uint32_t device = 0; device < wiring_.devices.size(); ++device)
        for (const auto& source : wiring_.shapes[device]->sources) {
            const Vertex plus = wiring_.base[device] + source.first, minus = wiring_.base[device] + source.second;
            if (!onRail(plus) || !onRail(minus))
                continue;
            poles_.push_back(plus);
            poles_.push_back(minus);
            isPlus_[plus] = 1;
            hasPole_[wiring_.net[plus]] = hasPole_[wiring_.net[minus]] = 1;
            if (wiring_.net[plus] == wiring_.net[minus])
                isShorted_[wiring_.net[plus]] = 1;
        }
}

void RailTree::findJoints()
{
    const auto add = [&](Vertex a, Vertex b, std::uint32_t conductor) {
        if (!onRail(a))
            return;
        joints_.push_back({a, b, conductor});
        joints_.push_back({b, a, conductor});
    };
    for (std::uint32_t device = 0; device < wiring_.devices.size(); ++device) {
        for (const auto& [a, b] : wiring_.shapes[device]->joints)
            add(wiring_.base[device] + a, wiring_.base[device] + b, none);
        for (std::uint32_t terminal : wiring_.shapes[device]->earths)
            add(wiring_.base[device] + terminal, wiring_.earth(), none);
    }
    for (std::uint32_t i = 0; i < wiring_.conductors.size(); ++i)
        if (const auto& [from, to] = wiring_.ends[i]; from != none && to != none)
            add(from, to, i);
    std::stable_sort(joints_.begin(), joints_.end(), [](const Joint& a, const Joint& b) { return a.from < b.from; });
    firstJoint_.assign(wiring_.vertices + 1, 0);
    for (const Joint& joint : joints_)
        ++firstJoint_[joint.from + 1];
    for (Vertex vertex = 0; vertex < wiring_.vertices; ++vertex)
        firstJoint_[vertex + 1] += firstJoint_[vertex];
}

// Breadth first, from all of them at once; what has its way already keeps it.
void RailTree::grow(std::vector<Vertex> roots)
{
    std::vector<Vertex> queue;
    const auto reach = [&](Vertex vertex, Step step, Vertex end) {
        if (steps_[vertex].up != none)
            return;
        steps_[vertex] = step;
        end_[vertex] = end;
        queue.push_back(vertex);
    };
    for (Vertex root : roots)
        reach(root, {root, none}, root);
    for (std::size_t next = 0; next < queue.size(); ++next)
        for (std::uint32_t i = firstJoint_[queue[next]]; i < firstJoint_[queue[next] + 1]; ++i)
            reach(joints_[i].to, {joints_[i].from, joints_[i].conductor}, end_[queue[next]]);
}

// Breadth first over the poles, from the first of each rail.
void RailTree::findTies()
{
    std::map<Vertex, std::vector<const Joint*>> leaving; // joints to what is nearest to another pole, by the pole
    for (const Joint& joint : joints_)
        if (const Vertex one = end_[joint.from], other = end_[joint.to];
            one != other && (!isShorted_[wiring_.net[one]] || isPlus_[one] == isPlus_[other]))
            leaving[one].push_back(&joint);
    std::vector<char> tied(wiring_.vertices);
    for (Vertex first : poles_) {
        std::vector<Vertex> queue;
        if (!std::exchange(tied[first], 1))
            queue.push_back(first);
        for (std::size_t next = 0; next < queue.size(); ++next)
            if (const auto found = leaving.find(queue[next]); found != leaving.end())
                for (const Joint* joint : found->second)
                    if (const Vertex pole = end_[joint->to]; !std::exchange(tied[pole], 1)) {
                        ties_[pole] = {joint->to, joint->from, joint->conductor};
                        queue.push_back(pole);
                    }
    }
}

const RailTree::Tie* RailTree::tieOf(Vertex pole) const
{
    const auto found = ties_.find(pole);
    return found == ties_.end() ? nullptr : &found->second;
}

void RailTree::findLoose()
{
    for (std::uint32_t i = 0; i < wiring_.conductors.size(); ++i) {
        const auto& [from, to] = wiring_.ends[i];
        if ((from == none) == (to == none))
            continue;
        const std::uint32_t rail = wiring_.net[from == none ? to : from];
        if (cells_.isRail[rail] && !hasPole_[rail])
            loose_[rail].push_back(i);
    }
}

const std::vector<std::uint32_t>& RailTree::looseOn(std::uint32_t rail) const
{
    static const std::vector<std::uint32_t> nothing;
    const auto found = loose_.find(rail);
    return found == loose_.end() ? nothing : found->second;
}

} // namespace doorloom
