#pragma once

#include "base/result.h"
#include "model/job.h"

#include <string>
#include <string_view>

// The job file, *.doorjob: JSON, UTF-8, LF, keys in a fixed order, one row a line.
namespace doorloom {

inline constexpr int jobFileVersion = 1;

// Errors: with file, line, path and what to do; nothing is ever dropped: unknown keys are refused
// Cost:   linear in the text
Result<Job> readJob(std::string_view text, const std::string& name);
Result<Job> readJobFile(const std::string& path);

// Equal jobs (and counters) give equal bytes.
std::string jobText(const Job& job);

// Writes beside the file, syncs, renames: the old file survives everything that goes wrong.
Result<Done> saveJobFile(const Job& job, const std::string& path);

// The same for any output: CSV, text, PDF bytes. Errors: a folder that is not there, a full disk …
Result<Done> saveBytes(std::string_view bytes, const std::string& path);

// First 12 hexadecimal digits of SHA-256 of jobText, as printed in title blocks.
std::string digestOf(const Job& job);

} // namespace doorloom
