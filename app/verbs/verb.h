#pragma once

#include "base/result.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace doorloom {

// What the shell gets back. Other programs read these: they don't change.
enum class Exit {
    Fine = 0,      // check: nothing above a doubt and every question answered; others: done
    Found = 1,     // check: a danger or a fault
    BadInput = 2,  // bad usage, input that can't be read, output that can't be written
    Unanswered = 3, // check: no danger or fault, but some answer is unknown
    OwnError = 70  // a mistake in this program
};

struct Option {
    std::string_view name;  // "--to"
    std::string_view value; // what stands for its value in the usage; empty: it takes none
};

// A command line after the verb: what is left when the options are taken out, and the options by name.
struct Request {
    std::vector<std::string> words;
    std::vector<std::pair<std::string, std::string>> options;
    Language language = Language::English;

    const std::string* find(std::string_view option) const; // null when it was not given
};

// What a verb has to say; main writes it.
struct Answer {
    Exit exit = Exit::Fine;
    std::string out, err;
};

struct Verb {
    std::string_view name;
    std::string_view words;          // the usage of its words: "FILE"
    std::size_t fewestWords, mostWords;
    std::span<const Option> options; // besides --lang and --help, which all have
    Text purpose;
    Answer (*run)(const Request& request);
};

std::span<const Verb* const> allVerbs();

// Sorts words from options by the verb's own list.
// Errors: an option the verb does not have, one without its value or given twice, a language not known, too few
//         or too many words
Result<Request> readRequest(const Verb& verb, std::span<const std::string> arguments);

std::string usage(const Verb& verb);
std::string usageOfAll(Language language);

// The answer to input that can't be used: the problem on stderr, exit 2.
Answer refusal(const Problem& problem, Language language);

} // namespace doorloom
