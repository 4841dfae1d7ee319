#pragma once

#include "base/result.h"
#include "model/kind.h"

#include <algorithm>
#include <set>
#include <string>
#include <vector>

namespace doorloom {

// Collects what a kind says against itself. `where` is always the path in the kind's JSON.
class KindProblems {
public:
    using Keys = std::vector<Key>;
    enum class Dots { Allowed, Refused };

    explicit KindProblems(const Kind& kind);

    void say(const std::string& where, Message what, Message remedy);

    void key(const std::string& where, const Key& key, Dots dots = Dots::Allowed);
    void unique(const std::string& where, const std::string& name, std::set<std::string>& seen);
    void atLeast(const std::string& where, std::size_t count, std::size_t least);
    template <class Rows> bool known(const std::string& where, const Key& key, const Rows& rows)
    {
        const auto isIt = [&](const auto& row) { return keyOf(row) == key; };
        if (std::any_of(rows.begin(), rows.end(), isIt))
            return true;
        Keys all;
        for (const auto& row : rows)
            all.push_back(keyOf(row));
        notKnown(where, key, all);
        return false;
    }
    void node(const std::string& where, const Key& key); // a terminal, or a point inside
    void twoNodes(const std::string& where, const char* nameA, const Key& a, const char* nameB, const Key& b);
    void throws(const std::string& where, const std::vector<Throw>& throws, std::size_t least);
    void inEnglish(const std::string& where, const Words& words);
    void condition(const std::string& where, const Condition& condition);
    void roleThrow(const std::string& where, const Key& role, const Key& thrown);

    void positive(const std::string& where, double number);
    void notNegative(const std::string& where, double number);
    void inOrder(const std::string& where, const char* nameLess, double less, const char* nameMore,
                 double more);

    const Kind& kind;
    const Keys terminalKeys;
    std::vector<Problem> found;

private:
    static const Key& keyOf(const Key& key) { return key; }
    template <class Row> static const Key& keyOf(const Row& row) { return row.key; }
    void notKnown(const std::string& where, const Key& key, const Keys& all);
};

// "parts[3]"
std::string inList(const std::string& list, std::size_t index);

// What the parts, outputs and lock of a kind say against it.
void checkParts(KindProblems& problems);

} // namespace doorloom
