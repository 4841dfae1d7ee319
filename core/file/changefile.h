#pragma once

#include "edit/change.h"

#include <string>
#include <string_view>

// One change as JSON in one line: a list with an object for each step, named after the row's table.
//
//   [{"places":{"id":4,"tag":"CAB1"}},{"conductors":20}]
//
// A row, with its members as in the job file (jobfile.h): it is put. A number: the row of this number is
// gone.
namespace doorloom {

std::string changeText(const Change& change);

// Errors: with name, line, path and what to do; nothing is ever dropped: unknown keys are refused. Whether
// the
//         change fits a job is applyChange's to say.
Result<Change> readChange(std::string_view text, const std::string& name);

} // namespace doorloom
