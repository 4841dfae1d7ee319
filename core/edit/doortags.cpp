#include "edit/doortags.h"

#include "edit/rownames.h"

#include <cctype>
#include <utility>

namespace doorloom {

namespace {

constexpr std::string_view doorGap = "{door}", tagGap = "{tag}";

std::string replaced(std::string text, std::string_view gap, std::string_view words)
{
    const auto at = text.find(gap);
    return at == std::string::npos ? text : text.replace(at, gap.size(), words);
}

bool isDigitAt(const std::string& text, std::size_t at)
{
    return at < text.size() && text[at] >= '0' && text[at] <= '9';
}

// Letters outside ASCII are parts of words too.
bool isOfWordAt(const std::string& text, std::size_t at)
{
    if (at >= text.size())
        return false;
    const auto letter = static_cast<unsigned char>(text[at]);
    return std::isalnum(letter) || letter >= 0x80;
}

// The text with the word replaced wherever it stands and is not cut out of something longer; nothing where it does
// not stand. isPart: whether what is at a spot would make one with its neighbour.
std::optional<std::string> withOther(std::string text, const std::string& word, const std::string& other,
                                     bool (*isPart)(const std::string&, std::size_t))
{
    bool isThere = false;
    for (std::size_t at = 0; !word.empty() && (at = text.find(word, at)) != std::string::npos;) {
        const std::size_t end = at + word.size();
        const bool isCut = (isPart(text, at) && at > 0 && isPart(text, at - 1)) ||
                           (isPart(text, end) && isPart(text, end - 1));
        if (!isCut)
            text.replace(at, word.size(), other);
        isThere = isThere || !isCut;
        at += isCut ? 1 : other.size();
    }
    return isThere ? std::optional(std::move(text)) : std::nullopt;
}

// The tag as the pattern has it for the new door.
std::string byPattern(const std::string& pattern, const std::string& oldDoor, const std::string& newDoor,
                      const std::string& tag)
{
    const std::string old = replaced(pattern, doorGap, oldDoor);
    const std::size_t gap = old.find(tagGap);
    if (gap == std::string::npos)
        return tag; // such a pattern is refused, but a file may have it
    const std::string before = old.substr(0, gap), after = old.substr(gap + tagGap.size());
    std::string own = tag;
    if (tag.size() > before.size() + after.size() && tag.starts_with(before) && tag.ends_with(after))
        own = tag.substr(before.size(), tag.size() - before.size() - after.size());
    return replaced(replaced(pattern, tagGap, own), doorGap, newDoor);
}

} // namespace

DoorTags::DoorTags(FreshTags& fresh, std::string pattern, std::string oldDoor, std::string newDoor)
    : fresh_(fresh), pattern_(std::move(pattern)), oldDoor_(std::move(oldDoor)), newDoor_(std::move(newDoor))
{
}

std::string DoorTags::wanted(const std::string& tag) const
{
    return pattern_.empty() || tag.empty() ? tag : byPattern(pattern_, oldDoor_, newDoor_, tag);
}

std::string DoorTags::ofNewDoor(const std::string& tag) const
{
    const std::optional<std::string> there = withOther(tag, oldDoor_, newDoor_, isDigitAt);
    return there ? *there : wanted(tag);
}

void DoorTexts::give(Cable& row) const
{
    row.notes = words(std::move(row.notes));
    if (ownPulls.count(row.pull) == 0)
        return;
    const std::optional<std::string> there = withOther(row.pull, oldDoor, newDoor, isDigitAt);
    row.pull = there ? *there : byPattern(pattern.empty() ? "{door}-{tag}" : pattern, oldDoor, newDoor, row.pull);
}

std::string DoorTexts::words(std::string text) const
{
    const std::optional<std::string> there = withOther(text, oldDoor, newDoor, isOfWordAt);
    return there ? *there : text;
}

std::set<std::string> ownPulls(const Job& job, std::set<std::string> pulls, const std::set<std::uint32_t>& cables)
{
    pulls.erase("");
    for (const Cable& cable : job.cables)
        if (cables.count(cable.id.number) == 0)
            pulls.erase(cable.pull);
    return pulls;
}

std::optional<Problem> patternProblem(const std::string& pattern)
{
    const bool hasGaps =
        pattern.find(doorGap) != std::string::npos && pattern.find(tagGap) != std::string::npos;
    if (hasGaps && pattern.find_first_of(" \t\r\n:\"") == std::string::npos)
        return std::nullopt;
    return problemAt(
        pattern,
        {.en = "'{pattern}' is no pattern for tags.", .es = "'{pattern}' no es un patrón de etiquetas."},
        {.en = "Write one such as '{example}', without blanks, quotes or ':'.",
         .es = "Escriba uno como '{example}', sin espacios, comillas ni ':'."},
        {{"pattern", pattern}, {"example", "{door}-{tag}"}});
}

std::optional<std::string> coreTag(const Conductor& row, const std::string& oldCable,
                                   const std::string& newCable)
{
    const std::string core = "." + std::to_string(row.core);
    if (row.make == ConductorMake::Core && row.tag == oldCable + core)
        return newCable + core;
    return std::nullopt;
}

} // namespace doorloom
