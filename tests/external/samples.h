#pragma once

#include "file/jobfile.h"

#include <filesystem>
#include <map>
#include <stdexcept>
#include <string>

namespace doorloom {

// The jobs that come with the program, by file name.
inline std::map<std::string, Job> sampleJobs()
{
    std::map<std::string, Job> jobs;
    for (const auto& entry : std::filesystem::directory_iterator(SOURCE_FOLDER "/samples"))
        if (entry.path().extension() == ".doorjob") {
            Result<Job> job = readJobFile(entry.path().string());
            if (!job.ok())
                throw std::runtime_error(inWords(job.problem()));
            jobs.emplace(entry.path().filename().string(), std::move(job.value()));
        }
    return jobs;
}

} // namespace doorloom
