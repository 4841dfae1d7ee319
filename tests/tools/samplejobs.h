#pragma once

#include "catalogue/catalogue.h"
#include "model/job.h"

#include <string>
#include <vector>

// The invented jobs of samples/, drawn from the catalogue.
namespace doorloom {

struct Sample {
    std::string name; // of its file, without ".doorjob"
    Job job;
};

// Each right job, followed by its broken copy; then forty doors of one typical, and a vestibule.
std::vector<Sample> sampleJobs(const Catalogue& catalogue);

} // namespace doorloom
