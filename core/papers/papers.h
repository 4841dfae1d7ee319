#pragma once

#include "papers/tablepaper.h"

#include <span>
#include <string>
#include <string_view>

// A paper is one file and one line in allpapers.cpp.
namespace doorloom {

struct PaperSetup {
    Language language = Language::English;
    std::string digest; // digestOf(job) (core/file), for the title block
    std::vector<Message> dangers{}; // dangersOf(job, its check) (core/papers): at the head of every sheet
};

// A paper's plain forms. One that is nothing but tables says only these and its CSV; ui/print draws pages for the others.
struct Paper {
    std::string_view name; // as typed: 'schedule'
    Text title;
    TablePaper (*tables)(const Job& job, const PaperSetup& setup); // null: it has a text of its own
    std::string (*text)(const Job& job, const PaperSetup& setup);
    std::string (*csv)(const Job& job, const PaperSetup& setup);
};

std::string textOf(const Paper& paper, const Job& job, const PaperSetup& setup);

std::span<const Paper* const> allPapers();
const Paper* paperNamed(std::string_view name); // null when there is none
std::string namesOfPapers();                    // 'schedule, tags', for messages

// The language of a job's papers where nobody says another: its own.
Language languageOf(const Job& job);

} // namespace doorloom
