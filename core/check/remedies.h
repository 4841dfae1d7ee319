#pragma once

#include "check/facts.h"
#include "check/finding.h"

#include <optional>
#include <vector>

// The edits that mend something, each with its words. A refused edit is left out.
namespace doorloom {

class Remedies {
public:
    explicit Remedies(const Facts& facts) : facts_(facts) {}

    void takeOff(ConductorId conductor);
    void takeOut(DeviceId device);
    void setOption(DeviceId device, const Key& option, const Key& value);
    void setOtherValues(DeviceId device, const Key& option); // each value that is not set
    void exchange(DeviceId device, const Key& one, const Key& other);
    void land(Vertex from, Vertex to);
    void landFreeEnd(const Conductor& conductor, const Landing& to);
    void moveEnd(const Conductor& conductor, const Landing& from, const Landing& to);
    // NO for NC on each changeover that one of these moves, where it is landed; other values of the outputs' options.
    void turnContacts(const std::vector<MovedIndex>& operators);
    void add(Message words, Result<Change> change);
    // All of these as one edit; none of them reads what another writes.
    void addTogether(std::vector<Remedy> steps);

    // What undoes a way: options that closed it, parts turned round or taken out, each conductor taken off.
    void breakWay(const std::vector<Origin>& way);

    bool empty() const { return remedies_.empty(); }
    std::vector<Remedy> taken() { return std::move(remedies_); }

private:
    void exchangeChangeovers(const Device& device, const Kind& kind, MovedIndex moved);

    const Facts& facts_;
    std::vector<Remedy> remedies_;
};

} // namespace doorloom
