#pragma once

#include "base/result.h"
#include "model/job.h"

#include <optional>
#include <string>
#include <vector>

// What one row promises, judged from it and the rows that it refers to. Look-ups are not used.
// What a row promises against its neighbours (a tag or core used twice, a second title block) is
// applyChange's and verifyJob's to judge, each in its own way.
namespace doorloom {

using Problems = std::vector<Problem>;

// Whatever the row; includes that every id it holds leads to a row of the right table.
template <class Row> void verifyRow(const Job& job, const Row& row, Problems& problems);

extern template void verifyRow(const Job&, const JobInfo&, Problems&);
extern template void verifyRow(const Job&, const JobKind&, Problems&);
extern template void verifyRow(const Job&, const CableType&, Problems&);
extern template void verifyRow(const Job&, const Place&, Problems&);
extern template void verifyRow(const Job&, const Operator&, Problems&);
extern template void verifyRow(const Job&, const Device&, Problems&);
extern template void verifyRow(const Job&, const Cable&, Problems&);
extern template void verifyRow(const Job&, const Splice&, Problems&);
extern template void verifyRow(const Job&, const Conductor&, Problems&);
extern template void verifyRow(const Job&, const Opening&, Problems&);
extern template void verifyRow(const Job&, const Sheet&, Problems&);
extern template void verifyRow(const Job&, const Placement&, Problems&);
extern template void verifyRow(const Job&, const Bends&, Problems&);
extern template void verifyRow(const Job&, const Note&, Problems&);
extern template void verifyRow(const Job&, const SetAside&, Problems&);
extern template void verifyRow(const Job&, const Typical&, Problems&);
extern template void verifyRow(const Job&, const Stamp&, Problems&);

// What rows of one sort promise beyond their references.
void verifyPromises(const Job& job, const JobKind& row, Problems& problems);
void verifyPromises(const Job& job, const CableType& row, Problems& problems);
void verifyPromises(const Job& job, const Operator& row, Problems& problems);
void verifyPromises(const Job& job, const Device& row, Problems& problems);
void verifyPromises(const Job& job, const Cable& row, Problems& problems);
void verifyPromises(const Job& job, const Conductor& row, Problems& problems);
void verifyPromises(const Job& job, const Opening& row, Problems& problems);
void verifyPromises(const Job& job, const Typical& row, Problems& problems);
void verifyPromises(const Job& job, const Stamp& row, Problems& problems);

// Sentences about neighbours, and about values that an operation wants to judge before.
Problem tagUsedTwice(const Device& device);
Problem coreUsedTwice(const Job& job, const Conductor& core);
Problem secondTitleBlock(const Job& job);
Problem numberUsedTwice(const Job& job, std::uint32_t number);
std::optional<Problem> tagProblem(const Device& device); // of the tag alone
std::optional<Problem> choiceProblem(const Device& device, const Kind& kind, const Choice& choice);
Problem noSuchSetting(const Device& device, const Kind& kind, const Key& setting);
std::optional<Problem> settingProblem(const Device& device, const Setting& setting,
                                      const SettingValue& value);
// Whether an operator with the ones can stand for a role with the others.
bool sameThrows(const std::vector<Throw>& ones, const std::vector<Throw>& others);
Problem noSuchRole(const Device& device, const Kind& kind, const Key& role);
Problem noSuchThrowAtRest(const std::string& name, const std::vector<Throw>& throws, const Key& idle);
Problem throwsDoNotMatch(const Job& job, const Device& device, const Role& role, const Operator& moved);

} // namespace doorloom
