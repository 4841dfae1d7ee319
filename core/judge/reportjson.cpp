#include "judge/report.h"

#include "base/json.h"
#include "judge/findingtext.h"

namespace doorloom {
namespace {

using Strings = std::vector<std::string>;

std::string quotedList(const Strings& strings)
{
    std::string list;
    for (const std::string& string : strings)
        list += (list.empty() ? "" : ", ") + quoted(string);
    return "[" + list + "]";
}

Strings spots(const Job& job, const Finding& finding)
{
    Strings names;
    for (const Spot& spot : finding.at)
        names.push_back(atText(job, spot));
    return names;
}

std::string throwsJson(const Job& job, const Finding& finding)
{
    std::string list;
    for (const Strings& witness : throwTexts(job, finding))
        list += (list.empty() ? "" : ", ") + quotedList(witness);
    return "[" + list + "]";
}

Strings pathOf(const Job& job, const Finding& finding)
{
    Strings path;
    for (const Origin& origin : finding.path)
        path.push_back(originText(job, origin));
    return path;
}

std::string setAsideJson(const SetAside& row)
{
    return "{\"reason\": " + quoted(row.reason) + ", \"name\": " + quoted(row.name) +
           ", \"date\": " + quoted(row.date) + "}";
}

std::string findingJson(const Job& job, const Finding& finding, Language language)
{
    std::string lines;
    for (const Finding& line : finding.lines)
        lines += (lines.empty() ? "" : ", ") + findingJson(job, line, language);
    std::string json =
        "{\"rule\": " + quoted(finding.rule) + ", \"severity\": " + quoted(severityKey(finding.severity)) +
        ", \"at\": " + quotedList(spots(job, finding)) + ", \"throws\": " + throwsJson(job, finding) +
        ", \"why\": " + quoted(inWords(finding.why, language)) +
        ", \"remedy\": " + quoted(inWords(finding.remedy, language)) +
        ", \"path\": " + quotedList(pathOf(job, finding)) + ", \"lines\": [" + lines + "]";
    if (finding.moreThrows)
        json += ", \"moreThrows\": true";
    if (finding.undecided)
        json += ", \"undecided\": true";
    if (const SetAside* row = setAsideFor(job, finding))
        json += ", \"setAside\": " + setAsideJson(*row);
    return json + "}";
}

std::string coverageJson(const CheckResult& result)
{
    const Coverage& coverage = result.coverage;
    return "{\"positions\": " + numberText(coverage.positions) +
           ", \"covered\": " + numberText(coverage.covered) +
           ", \"steps\": " + numberText(static_cast<double>(coverage.steps)) +
           ", \"everyQuestionAnswered\": " + (result.everyQuestionAnswered ? "true" : "false") + "}";
}

} // namespace

std::string reportJson(const Job& job, const CheckResult& result, Language language)
{
    std::string findings;
    for (const Finding& finding : result.findings)
        findings += (findings.empty() ? "\n  " : ",\n  ") + findingJson(job, finding, language);
    return "{\"findings\": [" + findings + (findings.empty() ? "" : "\n") +
           "],\n\"coverage\": " + coverageJson(result) + "}\n";
}

} // namespace doorloom
