#pragma once

#include "model/job.h"

#include <cstdint>
#include <map>

// Rows drawn again under other numbers.
namespace doorloom {

using Renumbering = std::map<std::uint32_t, std::uint32_t>; // from the old number to the new one

// Every id in the row, its own too, as the renumbering has it; ids that it does not have stay.
template <class Row> void renumber(Row& row, const Renumbering& numbers);

extern template void renumber(JobInfo&, const Renumbering&);
extern template void renumber(JobKind&, const Renumbering&);
extern template void renumber(CableType&, const Renumbering&);
extern template void renumber(Place&, const Renumbering&);
extern template void renumber(Operator&, const Renumbering&);
extern template void renumber(Device&, const Renumbering&);
extern template void renumber(Cable&, const Renumbering&);
extern template void renumber(Splice&, const Renumbering&);
extern template void renumber(Conductor&, const Renumbering&);
extern template void renumber(Opening&, const Renumbering&);
extern template void renumber(Sheet&, const Renumbering&);
extern template void renumber(Placement&, const Renumbering&);
extern template void renumber(Bends&, const Renumbering&);
extern template void renumber(Note&, const Renumbering&);
extern template void renumber(SetAside&, const Renumbering&);
extern template void renumber(Typical&, const Renumbering&);
extern template void renumber(Stamp&, const Renumbering&);

} // namespace doorloom
