#include "tools/samplejobs.h"

#include "file/jobfile.h"

#include <cstdio>

// Writes the jobs of samples/ anew: make_samples CATALOGUE-FOLDER SAMPLES-FOLDER
int main(int count, char** arguments)
{
    using namespace doorloom;
    if (count != 3) {
        std::fprintf(stderr, "make_samples CATALOGUE-FOLDER SAMPLES-FOLDER\n");
        return 2;
    }
    const Result<Catalogue> catalogue = readCatalogue(arguments[1]);
    if (!catalogue.ok()) {
        std::fprintf(stderr, "%s\n", inWords(catalogue.problem()).c_str());
        return 2;
    }
    for (const Sample& sample : sampleJobs(catalogue.value())) {
        const Result<Done> saved = saveJobFile(sample.job, std::string(arguments[2]) + "/" + sample.name + ".doorjob");
        if (!saved.ok()) {
            std::fprintf(stderr, "%s\n", inWords(saved.problem()).c_str());
            return 2;
        }
    }
    return 0;
}
