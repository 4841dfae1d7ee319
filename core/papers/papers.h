#pragma once

#include "model/job.h"

#include <span>
#include <string>
#include <string_view>

// A paper is one file and one line in allpapers.cpp.
namespace doorloom {

struct PaperSetup {
    Language language = Language::English;
    std::string digest; // digestOf(job) (core/file), for the title block
};

// A paper's plain forms; ui/print draws the ones that have pages.
struct Paper {
    std::string_view name; // as typed: 'schedule'
    Text title;
    std::string (*text)(const Job& job, const PaperSetup& setup);
    std::string (*csv)(const Job& job, const PaperSetup& setup);
};

std::span<const Paper* const> allPapers();
const Paper* paperNamed(std::string_view name); // null when there is none
std::string namesOfPapers();                    // 'schedule, tags', for messages

// The language of a job's papers where nobody says another: its own.
Language languageOf(const Job& job);

} // namespace doorloom
