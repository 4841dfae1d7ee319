#pragma once

#include "check/facts.h"
#include "check/finding.h"
#include "check/remedies.h"
#include "check/tell.h"

#include <optional>
#include <string>
#include <vector>

// A load that no position feeds, and why. For the rule 'never fed' alone.
namespace doorloom {

struct UnfedLoad {
    UnfedLoad(const Facts& of, std::uint32_t element);

    const Facts& facts;
    std::uint32_t number;
    const Element& element;
    std::vector<Pole> poles; // of the sources near it

    Spot place() const { return loadSpot(facts, number); }
    std::string name() const;

    // By a way that does not pass the source's other pole: where the source is shorted, all would meet all.
    bool meets(Vertex side, const Pole& pole) const;
    Vertex opposite(const Pole& pole) const;
    Pole otherPole(const Pole& pole) const { return {opposite(pole), pole.feed, !pole.isPlus}; }
    std::optional<Vertex> cutSide() const; // the side that meets no pole
    // Lands the side that meets no pole on the pole opposite to the other side's.
    void landCutSide(Remedies& remedies) const;
};

// Which of the cases it is, in the rule's words.
struct UnfedBecause {
    std::string_view reason;
    Message why; // with the gap {load} still to fill
    std::vector<Origin> path{};
    std::vector<Remedy> remedies{};
};

// Each says nothing where it is not so.
using UnfedCase = std::optional<UnfedBecause> (*)(const UnfedLoad&);

// ---- By what its sides meet.
std::optional<UnfedBecause> unfedWhileShorted(const UnfedLoad& load);
std::optional<UnfedBecause> unfedOnOnePole(const UnfedLoad& load);
std::optional<UnfedBecause> unfedByExclusiveContacts(const UnfedLoad& load);
std::optional<UnfedBecause> unfedBetweenSupplies(const UnfedLoad& load);
std::optional<UnfedBecause> unfedWithoutReturn(const UnfedLoad& load); // what is left: always so

UnfedBecause exclusiveContacts(const UnfedLoad& load, std::uint32_t feed);

// ---- By what would feed it if something else were otherwise.
std::optional<UnfedBecause> unfedByDeadRelay(const UnfedLoad& load);
std::optional<UnfedBecause> unfedInSeries(const UnfedLoad& load);
std::optional<UnfedBecause> unfedByTurnedDiode(const UnfedLoad& load);

} // namespace doorloom
