#pragma once

#include "base/text.h"
#include "edit/change.h"
#include "graph/netlist.h"
#include "model/job.h"
#include "verdict/verdict.h"

#include <string>
#include <string_view>
#include <vector>

namespace doorloom {

enum class Severity { Hint, Doubt, Fault, Danger };

// Where a finding is: a device, one of its terminals or options, a conductor's end, a cable.
struct Spot {
    DeviceId device;
    Key key; // of a terminal or option; empty: the device
    ConductorId conductor;
    CableId cable;

    friend auto operator<=>(const Spot&, const Spot&) = default;
};

// An operator, or an option not chosen yet, in one throw.
struct NamedThrow {
    OperatorId moved;
    DeviceId device;
    Key option, thrown;

    friend auto operator<=>(const NamedThrow&, const NamedThrow&) = default;
};

// Some throws in which it happens, or the situation of an opening. Both empty: always.
struct Witness {
    std::vector<NamedThrow> throws;
    std::vector<Situation> situation; // one at most

    friend bool operator==(const Witness&, const Witness&) = default;
};

// A way to mend it.
struct Remedy {
    Message words;
    Change change;
};

// Something that the checker says. Known by rule, at and throws, never by its text.
struct Finding {
    std::string_view rule;
    std::string_view reason; // which of the rule's cases; may be empty
    Severity severity = Severity::Fault;
    std::vector<Spot> at;
    std::vector<Witness> throws{Witness{}};
    bool moreThrows = false;
    Message why, remedy;
    std::vector<Origin> path;      // from pole to pole, or from pole to where it stops
    std::vector<Finding> lines;    // what has the same root
    std::vector<Remedy> remedies;  // edits to choose from; after the check, those that mend it best, as the remedy
                                   // names them
    bool undecided = false;        // the budget ran out: not proved and not excluded
};

} // namespace doorloom
