#include "edit/removeany.h"

#include "edit/references.h"
#include "edit/removal.h"
#include "edit/rownames.h"

#include <set>
#include <type_traits>

namespace doorloom {

namespace {

using Rows = std::set<std::uint32_t>;

template <class Row> constexpr bool isRemovable()
{
    return std::is_same_v<Row, Device> || std::is_same_v<Row, Splice> || std::is_same_v<Row, Cable> ||
           std::is_same_v<Row, Note> || std::is_same_v<Row, Sheet> || std::is_same_v<Row, Opening> ||
           std::is_same_v<Row, Place> || std::is_same_v<Row, SetAside> || std::is_same_v<Row, Conductor>;
}

template <class Row> bool isLeftAlone(const Row& row)
{
    if constexpr (requires { row.standing; })
        return row.standing == Standing::LeaveAlone;
    else
        return false;
}

bool isCore(const Job& job, std::uint32_t number)
{
    const Conductor* row = job.conductors.find({number});
    return row && row->make == ConductorMake::Core;
}

bool losesItsEnd(const End& end, const Rows& gone)
{
    const Landing* landing = landingOf(end);
    const SpliceId* splice = spliceOf(end);
    return end.state != EndState::Landed || (landing && gone.count(landing->device.number) > 0) ||
           (splice && gone.count(splice->number) > 0);
}

// Wires that the rows hold up.
void addFallenWires(const Job& job, Rows& rows)
{
    Rows fallen;
    for (std::uint32_t number : rows)
        for (std::uint32_t user : referrersOf(job, number)) {
            const Conductor* wire = job.conductors.find({user});
            if (wire && wire->make != ConductorMake::Core && losesItsEnd(wire->from, rows) &&
                losesItsEnd(wire->to, rows))
                fallen.insert(user);
        }
    rows.merge(fallen);
}

} // namespace

Result<Change> removeAny(const Job& job, const std::vector<std::uint32_t>& rows)
{
    Rows gone, takenOff;
    std::optional<Problem> problem;
    for (std::uint32_t number : rows)
        visitRow(job, number, [&]<class Row>(const Row& row) {
            if (!isRemovable<Row>())
                return;
            if (isLeftAlone(row) && !problem)
                problem = leftAlone(nameOfRow(job, row));
            (isCore(job, number) ? takenOff : gone).insert(number);
        });
    if (problem)
        return *std::move(problem);
    addFallenWires(job, gone);
    Draft draft(job);
    removeRows(draft, {gone.begin(), gone.end()});
    for (std::uint32_t number : takenOff)
        if (Conductor* core = draft.edit(ConductorId{number}))
            core->from = core->to = End{};
    return draft.change();
}

} // namespace doorloom
