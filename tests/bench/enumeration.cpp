#include "bench/measure.h"
#include "verdict/lanes.h"

#include <array>
#include <bit>
#include <cstdio>
#include <numeric>

namespace doorloom::bench {
namespace {

constexpr std::uint32_t doors = 8, changeoversADoor = 3;
constexpr Vertex plus = 0;

struct EightDoors {
    Circuit circuit;
    std::array<Vertex, doors> locks{};
};

void join(Circuit& circuit, Vertex a, Vertex b, const Guard& guard = {})
{
    circuit.joints.push_back({a, b, guard, 0, false});
}

Guard when(MovedIndex moved, ThrowIndex thrown)
{
    return Guard{{{{moved, 1u << thrown}}}};
}

// From plus over NO, NC and NO to the lock; the last NC of every two doors tied: 60 joints in all.
EightDoors eightDoors()
{
    EightDoors drawn;
    Circuit& circuit = drawn.circuit;
    circuit.vertices = 1;
    std::array<Vertex, doors> lastRest{};
    for (std::uint32_t door = 0; door < doors; ++door) {
        Vertex common = circuit.vertices++;
        join(circuit, plus, common);
        for (std::uint32_t i = 0; i < changeoversADoor; ++i) {
            const auto moved = static_cast<MovedIndex>(circuit.operators.size());
            circuit.operators.push_back({});
            const Vertex whenIn = circuit.vertices++, atRest = circuit.vertices++;
            join(circuit, common, whenIn, when(moved, 1));
            join(circuit, common, atRest, when(moved, 0));
            common = i == 1 ? atRest : whenIn;
            lastRest[door] = atRest;
        }
        drawn.locks[door] = common;
        if (door % 2 == 1)
            join(circuit, lastRest[door - 1], lastRest[door]);
    }
    return drawn;
}

struct Count {
    std::uint64_t positions = 0;
    std::array<std::uint64_t, doors> joined{};
};

// Every joint's guard, every question, every position: nothing is left out.
Count countedOver(const EightDoors& drawn)
{
    const Circuit& circuit = drawn.circuit;
    std::vector<MovedIndex> operators(circuit.operators.size());
    std::iota(operators.begin(), operators.end(), 0u);
    Lanes lanes(circuit, operators);
    LaneNet net{circuit.vertices, {}};
    for (const Joint& joint : circuit.joints)
        net.joints.push_back({joint.a, joint.b, 0});
    Count count;
    std::uint64_t steps = 0;
    std::vector<std::uint64_t> room;
    do {
        for (std::size_t j = 0; j < net.joints.size(); ++j)
            net.joints[j].closed = lanes.holding(circuit.joints[j].guard);
        for (std::uint32_t door = 0; door < doors; ++door)
            count.joined[door] += static_cast<std::uint64_t>(
                std::popcount(net.joined(plus, drawn.locks[door], lanes.all(), room, steps)));
        count.positions += lanes.lanes();
    } while (lanes.next());
    return count;
}

bool enumerates(Gate gate)
{
    const EightDoors drawn = eightDoors();
    constexpr double positions = 1 << (doors * changeoversADoor), leastPerMillisecond = 10'000;
    Count count;
    const bool within =
        isWithin("enumeration", positions / leastPerMillisecond, gate, [&] { count = countedOver(drawn); });
    bool right = static_cast<double>(count.positions) == positions;
    for (const std::uint64_t joined : count.joined) // one position of eight: in, at rest, in
        right = right && joined * 8 == count.positions;
    if (!right)
        std::puts("enumeration: the answers are wrong");
    return within && right;
}

} // namespace

extern const Row enumeration;
const Row enumeration = {"enumeration", enumerates};

} // namespace doorloom::bench
