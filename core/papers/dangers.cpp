#include "papers/dangers.h"

#include "judge/findingtext.h"

namespace doorloom {
namespace {

constexpr std::size_t mostNamed = 3;
constexpr Text notMended = {.en = "!! DANGER not mended, do not give power: {where}: {what}", .es = "!! PELIGRO sin corregir, no dé tensión: {where}: {what}"};
constexpr Text more = {.en = "!! {count} more dangers: see the sheet of findings", .es = "!! {count} peligros más: vea la hoja de hallazgos"};

} // namespace

std::vector<Message> dangersOf(const Job& job, const CheckResult& result)
{
    std::vector<Message> lines;
    std::size_t count = 0;
    for (const Finding& finding : result.findings)
        if (finding.severity == Severity::Danger && ++count <= mostNamed)
            lines.push_back({notMended, {{"where", atText(job, finding)}, {"what", std::vector<Message>{titleOf(finding)}}}});
    if (count > mostNamed)
        lines.push_back({more, {{"count", std::to_string(count - mostNamed)}}});
    return lines;
}

} // namespace doorloom
