#include "check/starters.h"

namespace doorloom {

std::vector<Starter> startersOf(const Facts& facts, std::uint32_t input)
{
    std::vector<Starter> starters;
    const auto rest = facts.ask.settled(atRest(facts.circuit()));
    if (!rest || facts.ask.operatedIn(*rest, input))
        return starters;
    for (const MovedIndex moved : facts.ask.operatorsThatMatterToInput(input)) {
        const std::size_t throws = facts.circuit().operators[moved].throws;
        for (std::size_t thrown = 0; thrown < throws; ++thrown) {
            Position position = *rest;
            position[moved] = static_cast<ThrowIndex>(thrown);
            if (facts.ask.operatedIn(position, input))
                starters.push_back({moved, static_cast<ThrowIndex>(thrown)});
        }
    }
    return starters;
}

} // namespace doorloom
