#include "base/result.h"

namespace doorloom {

std::string inWords(const Problem& problem, Language language)
{
    std::string line = problem.where.empty() ? "" : problem.where + ": ";
    line += inWords(problem.what, language);
    if (const std::string remedy = inWords(problem.remedy, language); !remedy.empty())
        line += " " + remedy;
    return line;
}

} // namespace doorloom
