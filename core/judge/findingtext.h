#pragma once

#include "check/finding.h"

#include <string>
#include <vector>

// A finding in words and in the stable names that files and programs use.
namespace doorloom {

std::string ruleOf(const Finding& finding);
std::string atText(const Job& job, const Finding& finding);                         // "LM1:K1", "PS1 PS2"
std::string atText(const Job& job, const Spot& spot);
std::string throwText(const Job& job, const NamedThrow& thrown);                    // "LM1:K1=in"
std::string situationText(const Job& job, const Situation& situation);              // "request PB1"
std::vector<std::vector<std::string>> throwTexts(const Job& job, const Finding& finding);
std::string originText(const Job& job, const Origin& origin);                       // "PS1:+ to LM1:K1.C"
// The path as people follow it: bars inside a strip are left out where the words on both sides name the strip.
std::vector<Origin> pathForPeople(const Job& job, const Finding& finding);

Message inPosition(const Job& job, const Finding& finding); // "with LM1:K1 in and the door shut", "in every position"
Message situationWords(const Job& job, const Situation& situation);
Message throwWords(const Job& job, const NamedThrow& thrown);
const Text& severityWord(Severity severity);
std::string_view severityKey(Severity severity); // "danger", "fault", "doubt", "hint"
const Text& titleOf(const Finding& finding);

// What stands in every report: what was not examined, and who decides.
const std::vector<Text>& notExamined();
const std::vector<Text>& checkCautions();

} // namespace doorloom
