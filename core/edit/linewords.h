#pragma once

#include "base/result.h"
#include "edit/typedline.h"

#include <functional>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

// The words of a typed line, taken one after another. Where the line ends, what may follow is noted: it
// becomes the list of a problem, or the completions.
namespace doorloom {

struct LineWord {
    std::string text;
    std::size_t begin = 0; // in the line
    bool isQuoted = false;
};
std::vector<LineWord> wordsOfLine(std::string_view line);

// What may stand at one spot, in the order of their use.
class Offers {
public:
    explicit Offers(std::string begun = {}) : begun_(std::move(begun)) {}

    // Only what goes on from what is begun, and no more than can be looked through.
    void add(const std::string& text, Message words);
    bool wants(const std::string& text) const; // goes on from what is begun
    bool isFull() const { return list_.size() >= most; }
    const std::vector<Completion>& list() const { return list_; }

private:
    static constexpr std::size_t most = 200;
    std::string begun_; // folded
    std::vector<Completion> list_;
};
using Offering = std::function<void(Offers&)>;
inline void noOffers(Offers&) {}

class LineWords {
public:
    // In: begun: the word at the cursor, for completions
    explicit LineWords(std::vector<LineWord> words, std::string_view begun = {});

    const LineWord* peek(std::size_t ahead = 0) const;
    void skip() { ++at_; }
    std::size_t left() const { return words_.size() - at_; }

    // The next word; null at the line's end, with a problem, and what may follow noted.
    const LineWord* take(const Words& wanted, const Offering& offering);
    // The same for a word that may be left out: no problem.
    const LineWord* maybe(const Offering& offering);
    // Nothing may be left.
    bool ended();

    // Notes a problem with a word, unless there is one already; lists what would do. Out: null
    std::nullptr_t refuse(const LineWord& word, const Words& wanted, const Offering& offering);
    std::nullptr_t refuse(Problem problem);

    const std::optional<Problem>& problem() const { return problem_; }
    const std::vector<Completion>& offered() const { return offered_; }

private:
    std::vector<LineWord> words_;
    std::size_t at_ = 0;
    std::string begun_;
    std::optional<Problem> problem_;
    std::vector<Completion> offered_;
};

} // namespace doorloom
