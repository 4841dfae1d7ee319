#include "check/contactinplus.h"

#include <algorithm>

namespace doorloom {

namespace {

// A contact between two terminals with a conductor on each.
struct Sides {
    const Conductor *one, *other;
    Landing x, y;
};

bool opensWith(const Guard& guard, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws)
{
    return std::any_of(guard.anyOf.begin(), guard.anyOf.end(), [&](const Term& term) {
        return std::any_of(term.begin(), term.end(), [&](const Atom& atom) {
            return std::any_of(throws.begin(), throws.end(),
                               [&](const auto& each) { return each.first == atom.moved && !((atom.mask >> each.second) & 1u); });
        });
    });
}

std::vector<Sides> contactsOpenedBy(const Facts& facts, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws)
{
    std::vector<Sides> all;
    for (const Joint& joint : facts.circuit().joints) {
        const auto x = facts.landingAt(joint.a), y = facts.landingAt(joint.b);
        if (!x || !y || !opensWith(joint.guard, throws))
            continue;
        for (const Conductor* one : facts.conductorsAt(joint.a))
            for (const Conductor* other : facts.conductorsAt(joint.b)) {
                all.push_back({one, other, *x, *y});
                all.push_back({other, one, *y, *x});
            }
    }
    return all;
}

const Landing* farEnd(const Conductor& conductor, const Landing& near)
{
    const Landing *from = landingOf(conductor.from), *to = landingOf(conductor.to);
    return from && *from == near ? to : from;
}

// From a plus to the load, at rest, coils as the circuit then gives.
std::vector<Origin> plusSide(const Facts& facts, std::uint32_t number)
{
    const Position idle = atRest(facts.circuit()), settled = facts.ask.settled(idle).value_or(idle);
    Cube rest;
    for (MovedIndex moved = 0; moved < settled.size(); ++moved)
        rest.push_back({moved, settled[moved]});
    const Element& element = facts.circuit().elements[number];
    for (std::uint32_t feed : facts.ask.feedsNear(element.a))
        for (Vertex side : {element.a, element.b})
            if (std::vector<Origin> way = wayBetween(facts, rest, facts.circuit().feeds[feed].plus, side, true); !way.empty())
                return way;
    return {};
}

std::vector<Remedy> moved(const Facts& facts, const Conductor& conductor, const Landing& from, const Landing& to)
{
    Remedies one(facts);
    one.moveEnd(conductor, from, to);
    return one.taken();
}

// A contact with one side on the way already and nothing on the other: what leads on from there is moved onto it.
void leadThroughFreeContacts(const Facts& facts, const std::vector<Origin>& way, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws,
                             Remedies& remedies)
{
    const auto netOf = [&](const Landing& landing) { return facts.ask.netOf(*facts.net.vertexOf(landing.device, landing.terminal)); };
    for (const Joint& joint : facts.circuit().joints) {
        if (!opensWith(joint.guard, throws))
            continue;
        for (const auto& [here, free] : {std::pair(joint.a, joint.b), std::pair(joint.b, joint.a)}) {
            const auto target = facts.landingAt(free), own = facts.landingAt(here);
            if (!target || facts.isLanded(free) || !facts.isLanded(here))
                continue;
            for (const Origin& origin : way)
                if (const Conductor* row = facts.job.conductors.find(origin.conductor))
                    for (const Landing* end : {landingOf(row->from), landingOf(row->to)})
                        if (end && (end->device != target->device || *end == own) && netOf(*end) == facts.ask.netOf(here))
                            remedies.moveEnd(*row, *end, *target);
        }
    }
}

} // namespace

void addContactsIntoPlus(const Facts& facts, std::uint32_t element, const std::vector<std::pair<MovedIndex, ThrowIndex>>& throws,
                         OldPlace oldPlace, Remedies& remedies)
{
    const std::vector<Origin> way = plusSide(facts, element);
    for (const auto& [one, other, x, y] : contactsOpenedBy(facts, throws))
        for (const Origin& origin : way) {
            const Conductor* plus = facts.job.conductors.find(origin.conductor);
            const Landing *target = plus ? landingOf(plus->to) : nullptr, *far = farEnd(*other, y);
            if (!plus || !target || !far || plus == one || plus == other)
                continue;
            Remedies off(facts);
            off.takeOff(one->id);
            std::vector<Remedy> steps = moved(facts, *plus, *target, x);
            for (auto more : {moved(facts, *other, *far, *target), oldPlace == OldPlace::ClosedUp ? moved(facts, *one, x, *far) : off.taken()})
                steps.insert(steps.end(), more.begin(), more.end());
            if (steps.size() == 3)
                remedies.addTogether(std::move(steps));
        }
    leadThroughFreeContacts(facts, way, throws, remedies);
}

} // namespace doorloom
