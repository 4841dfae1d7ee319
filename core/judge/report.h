#pragma once

#include "judge/findings.h"

#include <string>

// What a check says as a whole: for people, for programs, and in one word.
namespace doorloom {

// Who answers for a finding; null when nobody does. A danger can't be set aside.
const SetAside* setAsideFor(const Job& job, const Finding& finding);
// The finding's throws as a job file keeps them: "LM1:K1=in, PB1=pressed; mains=lost"
std::string throwsKey(const Job& job, const Finding& finding);

enum class Outcome {
    Fine,      // nothing above a doubt and every question answered
    Found,     // a danger or a fault
    Unanswered // no danger or fault, but some answer is unknown
};
// Faults that are set aside don't count, nor what was neither proved nor excluded.
Outcome outcomeOf(const Job& job, const CheckResult& result);

// For people: grouped by severity, then what was looked at, what was not, and the cautions.
// In: the name of the job's file
std::string reportText(const Job& job, const CheckResult& result, const std::string& file, Language language);

// For programs; DEVELOPERS.md describes it.
std::string reportJson(const Job& job, const CheckResult& result, Language language);

} // namespace doorloom
