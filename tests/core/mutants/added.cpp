#include "mutation.h"

namespace doorloom {

namespace {

Mutant wired(const Job& job, const Device& one, const Key& from, const Device& other, const Key& to)
{
    const std::string a = nameOf(job, one, from), b = nameOf(job, other, to);
    return mutant(job, a + " → " + b, [a, b](JobBuilder& builder) { builder.wire(a, b); });
}

bool isTerminal(const Job& job, const Device& device, const Key& node) { return findTerminal(*kindOf(job, device), node) != nullptr; }

bool areLanded(const Job& job, const Device& device, const Key& one, const Key& other)
{
    return isTerminal(job, device, one) && isTerminal(job, device, other) && isLanded(job, device, one) && isLanded(job, device, other);
}

std::vector<Mutant> contactsBypassed(const Job& job)
{
    std::vector<Mutant> all;
    forEachPart<ContactPart>(job, [&](const Device& device, const Part&, const ContactPart& contact) {
        if (areLanded(job, device, contact.a, contact.b))
            all.push_back(wired(job, device, contact.a, device, contact.b));
    });
    return all;
}

std::vector<Mutant> loadsBridged(const Job& job)
{
    std::vector<Mutant> all;
    forEachPart<LoadPart>(job, [&](const Device& device, const Part&, const LoadPart& load) {
        if (areLanded(job, device, load.a, load.b))
            all.push_back(wired(job, device, load.a, device, load.b));
    });
    return all;
}

// Stripe at minus.
std::vector<Mutant> diodesAcross(const Job& job)
{
    std::vector<Mutant> all;
    forEachPart<LoadPart>(job, [&](const Device& device, const Part&, const LoadPart& load) {
        if (areLanded(job, device, load.a, load.b))
            all.push_back(mutant(job, "diode across " + nameOf(job, device, load.a),
                                 [a = nameOf(job, device, load.a), b = nameOf(job, device, load.b)](JobBuilder& builder) {
                                     builder.device("XD1", "diode").wire("XD1:A", a).wire("XD1:K", b);
                                 }));
    });
    return all;
}

std::vector<Mutant> polesOnInputs(const Job& job)
{
    std::vector<Mutant> all;
    forEachPart<DryInputPart>(job, [&](const Device& device, const Part&, const DryInputPart& input) {
        if (isLanded(job, device, input.terminal))
            forEachPart<SourcePart>(job, [&](const Device& supply, const Part&, const SourcePart& source) {
                if (supply.id != device.id && isTerminal(job, supply, source.plus))
                    all.push_back(wired(job, supply, source.plus, device, input.terminal));
            });
    });
    return all;
}

std::vector<Mutant> suppliesJoined(const Job& job)
{
    std::vector<Mutant> all;
    forEachPart<SourcePart>(job, [&](const Device& one, const Part&, const SourcePart& first) {
        forEachPart<SourcePart>(job, [&](const Device& other, const Part&, const SourcePart& second) {
            if (!(one.id < other.id))
                return;
            for (const Key& from : {first.plus, first.minus})
                for (const Key& to : {second.plus, second.minus})
                    if (isTerminal(job, one, from) && isTerminal(job, other, to))
                        all.push_back(wired(job, one, from, other, to));
        });
    });
    return all;
}

// A strand too many.
std::vector<Mutant> neighboursTouch(const Job& job)
{
    std::vector<Mutant> all;
    for (const Device& device : job.devices)
        for (const Strip& strip : kindOf(job, device)->strips)
            for (std::size_t i = 1; i < strip.terminals.size(); ++i)
                if (isLanded(job, device, strip.terminals[i - 1].key) || isLanded(job, device, strip.terminals[i].key))
                    all.push_back(wired(job, device, strip.terminals[i - 1].key, device, strip.terminals[i].key));
    return all;
}

} // namespace

std::vector<KindOfMutation> addedMutations()
{
    return {{"contact bypassed", contactsBypassed}, {"load bridged", loadsBridged},   {"diode the wrong way", diodesAcross},
            {"pole on an input", polesOnInputs},    {"supplies joined", suppliesJoined}, {"neighbours touch", neighboursTouch}};
}

} // namespace doorloom
