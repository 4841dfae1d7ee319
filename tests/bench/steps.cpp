#include "bench/row.h"
#include "core/circuits/circuit.h"
#include "judge/findings.h"

#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <map>
#include <string>

// Steps to the verdicts of every circuit that must be judged right. They have no noise: recorded in steps.txt, and
// never more. UPDATE_STEPS=1 records them anew and still fails.
namespace doorloom::bench {

namespace {

const std::string recordPath = SOURCE_FOLDER "/tests/bench/steps.txt";

std::map<std::string, unsigned long long> recorded()
{
    std::map<std::string, unsigned long long> steps;
    std::ifstream file(recordPath);
    for (std::string line; std::getline(file, line);)
        if (const auto tab = line.find('\t'); tab != std::string::npos)
            steps[line.substr(0, tab)] = std::stoull(line.substr(tab + 1));
    return steps;
}

// Eight groups in series of contacts, three or four operators each: 28 in all, in one job.
Job twentyEightOperators()
{
    JobBuilder job = withDevices("PS1 dc-supply-24");
    int key = 0;
    for (int door = 1; door <= 8; ++door) {
        const std::string lock = "ES" + std::to_string(door);
        job.device(lock, "strike-fail-secure");
        std::string last = "PS1:+";
        for (int i = 0; i < (door <= 4 ? 4 : 3); ++i) {
            const std::string tag = "KS" + std::to_string(++key);
            job.device(tag, "key-switch").wire(last, tag + ":C");
            last = tag + (i % 2 == 0 ? ":NO" : ":NC");
        }
        job.wire(last, lock + ":1").wire(lock + ":2", "PS1:−");
    }
    return job.job();
}

bool measure(const std::string& name, const Job& job, std::map<std::string, unsigned long long>& now)
{
    const CheckResult result = checkJob(job, windowBudget);
    now[name] = result.coverage.steps;
    if (!result.everyQuestionAnswered)
        std::printf("steps  %s: a question ran out of its budget\n", name.c_str());
    return result.everyQuestionAnswered;
}

bool runSteps(Gate gate)
{
    std::map<std::string, unsigned long long> now;
    bool answered = true;
    for (const JudgedCircuit& circuit : allCircuits()) {
        answered = measure(circuit.name, circuit.right, now) && answered;
        for (const WrongForm& form : circuit.wrong)
            answered = measure(form.name, wrongJob(circuit, form), now) && answered;
    }
    answered = measure("28 operators", twentyEightOperators(), now) && answered;

    const auto before = recorded();
    bool within = answered;
    unsigned long long sum = 0;
    for (const auto& [name, steps] : now) {
        const auto found = before.find(name);
        sum += steps;
        if (found == before.end() || steps > found->second) {
            std::printf("steps  %s: %llu, recorded %s\n", name.c_str(), steps,
                        found == before.end() ? "not yet" : std::to_string(found->second).c_str());
            within = false;
        }
    }
    std::printf("steps  %zu circuits, %llu steps in all, every question answered: %s\n", now.size(), sum,
                answered ? "yes" : "no");
    if (std::getenv("UPDATE_STEPS")) {
        std::ofstream file(recordPath);
        for (const auto& [name, steps] : now)
            file << name << '\t' << steps << '\n';
        return false;
    }
    return gate == Gate::Off || within;
}

} // namespace

extern const Row stepsToVerdicts = {.name = "steps", .run = runSteps};

} // namespace doorloom::bench
