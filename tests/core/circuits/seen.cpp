#include "seen.h"

#include "core/jobs.h"

#include "judge/findings.h"
#include "judge/findingtext.h"

namespace doorloom {

namespace {

std::string filling(const Message& message)
{
    std::string text;
    for (const auto& [gap, argument] : message.arguments) {
        if (const auto* plain = std::get_if<std::string>(&argument))
            text += *plain;
        else if (const auto* words = std::get_if<Words>(&argument))
            text += words->en;
        else
            for (const Message& each : std::get<std::vector<Message>>(argument))
                text += (each.arguments.empty() ? inWords(each) : filling(each)) + " ";
        text += " ";
    }
    return text;
}

std::string namesIn(const Job& job, const Finding& finding)
{
    std::string text = filling(finding.why) + filling(finding.remedy);
    for (const Origin& origin : finding.path)
        text += originText(job, origin) + " ";
    for (const Finding& line : finding.lines)
        text += namesIn(job, line);
    return text;
}

Seen seen(const Job& job, const Finding& finding)
{
    Seen found{.rule = ruleOf(finding),
               .severity = std::string(severityKey(finding.severity)),
               .at = atText(job, finding),
               .reason = std::string(finding.reason),
               .names = namesIn(job, finding),
               .remedyNames = filling(finding.remedy)};
    for (const std::vector<std::string>& cube : throwTexts(job, finding))
        found.throws.insert({cube.begin(), cube.end()});
    for (const Finding& line : finding.lines)
        found.lines.push_back(seen(job, line));
    for (const Remedy& remedy : finding.remedies)
        found.remedies.push_back(remedy.change);
    return found;
}

} // namespace

std::string Seen::known() const
{
    return rule + ", " + severity + ", " + at + ", " + inWords(throws);
}

std::vector<Seen> seenIn(const Job& job, std::uint64_t budget)
{
    std::vector<Seen> all;
    for (const Finding& finding : findingsOf(job, budget))
        all.push_back(seen(job, finding));
    return all;
}

ThrowSets throwSets(const std::vector<std::string>& cubes)
{
    ThrowSets sets;
    for (const std::string& cube : cubes)
        if (cube.find('=') == std::string::npos) // a situation is one word of its own
            sets.insert(cube.empty() ? std::set<std::string>() : std::set<std::string>{cube});
        else {
            const std::vector<std::string> throws = splitWords(cube);
            sets.insert({throws.begin(), throws.end()});
        }
    return sets;
}

std::string inWords(const ThrowSets& throws)
{
    std::string text;
    for (const std::set<std::string>& cube : throws) {
        text += text.empty() ? "[" : " [";
        for (const std::string& one : cube)
            text += (text.back() == '[' ? "" : ", ") + one;
        text += "]";
    }
    return text;
}

std::string written(const Seen& seen)
{
    std::string text = seen.known();
    for (const Seen& line : seen.lines)
        text += "\n        line: " + line.known() + (line.reason.empty() ? "" : ", " + line.reason);
    return text + (seen.reason.empty() ? "" : "\n        because: " + seen.reason);
}

} // namespace doorloom
