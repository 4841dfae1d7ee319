#include "sample.h"

#include "core/circuits/simplest.h"
#include "core/rightjobs/rightjob.h"

#include <stdexcept>

namespace doorloom {

Job rightJobCalled(std::string_view name)
{
    for (const RightJob& right : allRightJobs())
        if (right.name == name)
            return jobOf(right);
    throw std::runtime_error("No right job is called '" + std::string(name) + "'");
}

std::vector<MistakeSample> mistakeSamples()
{
    std::vector<MistakeSample> all;
    for (auto samples : {wiringMistakes, openingMistakes, cableMistakes})
        for (MistakeSample& sample : samples())
            all.push_back(std::move(sample));
    for (const JudgedCircuit& circuit : allCircuits())
        for (const WrongForm& form : circuit.wrong)
            all.push_back({form.name, wrongJob(circuit, form), circuit.right});
    for (const SimplestWiring& wiring : allSimplestWirings())
        if (wiring.slip)
            all.push_back(mistake("slip of " + wiring.kind, jobOf(wiring), wiring.slip->edit));
    return all;
}

} // namespace doorloom
