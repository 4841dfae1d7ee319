#pragma once

#include "base/result.h"

#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace doorloom {

// What the shell gets back. Other programs read these: they don't change.
enum class Exit {
    Fine = 0,       // check: nothing above a doubt and every question answered; others: done
    Found = 1,      // check: a danger or a fault
    Refused = 2,    // bad usage, input that can't be read, output that can't be written
    Unanswered = 3, // check: no danger or fault, but some answer is unknown
    OwnError = 70   // a mistake in this program
};

struct VerbOption {
    std::string_view name;  // "--to"
    std::string_view value; // what stands for its value in the usage: "OUT", or "A B" for two words, a line each; empty: it takes none
    bool required = false;
};

// A command line after its verb, options taken out.
struct Request {
    Language language = Language::English;
    bool languageIsAsked = false; // otherwise a paper is in its job's own language
    std::vector<std::string> words;
    std::vector<std::pair<std::string, std::string>> options;

    const std::string* find(std::string_view option) const; // null when it was not given
};

// What a verb has to say; main writes it.
struct Reply {
    Exit exit = Exit::Fine;
    std::string out, err;
};

struct Verb {
    std::string_view name;
    std::string_view words; // as the usage has them: "FILE"
    std::size_t fewestWords = 0, mostWords = 0;
    std::span<const VerbOption> options; // besides --lang and --help, which all verbs have
    Text purpose;
    Reply (*run)(const Request& request);
};

std::span<const Verb* const> allVerbs();

// Answers a whole command line (without the program's name): finds the verb, reads its options, runs it.
Reply reply(std::vector<std::string> arguments);

// The answer to what can't be done: the problem on stderr.
Reply refusal(const Problem& problem, Language language);
// The answer of a verb whose work is a file.
Reply wrote(const std::string& file, Language language);

} // namespace doorloom
