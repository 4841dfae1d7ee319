#pragma once

#include <string>
#include <vector>

namespace doorloom {

// Whether a command line asks for the window rather than a verb: nothing, or one job's file.
bool asksForWindow(const std::vector<std::string>& arguments);

// Opens the window, on a file or on what it begins with, until it is closed. Out: the program's exit code.
// Errors: no display: says so and ends with Exit::Refused
int runWindow(const std::vector<std::string>& arguments);

} // namespace doorloom
