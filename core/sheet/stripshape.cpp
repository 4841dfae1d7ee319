#include "sheet/stripshape.h"

#include <algorithm>
#include <iterator>

namespace doorloom {
namespace {

constexpr int padding = 20, titleLine = 32, tagLine = 56, bandHeight = 36;
constexpr int leastWidth = 250, widestTitle = 400;

int roundedUp(int value)
{
    return (value + gridStep - 1) / gridStep * gridStep;
}

// Words in one line, or in two when they are too wide for one.
std::vector<std::string> inLines(const std::string& words)
{
    if (roomFor(words, TextStyle::Title) <= widestTitle)
        return {words};
    const std::size_t middle = words.size() / 2;
    const std::size_t before = words.rfind(' ', middle), after = words.find(' ', middle);
    if (before == std::string::npos && after == std::string::npos)
        return {words};
    const bool useBefore =
        after == std::string::npos || (before != std::string::npos && middle - before <= after - middle);
    const std::size_t cut = useBefore ? before : after;
    return {words.substr(0, cut), words.substr(cut + 1)};
}

int widestOf(const std::vector<std::string>& lines, TextStyle style)
{
    int widest = 0;
    for (const std::string& line : lines)
        widest = std::max(widest, roomFor(line, style));
    return widest;
}

int headWidth(const StripShape& shape, const HeadWords& words)
{
    const int beside = words.corner.empty() ? 0 : padding + roomFor(words.corner, TextStyle::Corner);
    const int first = roomFor(words.tag, TextStyle::Tag) + beside;
    return std::max(first, std::min(widestOf(shape.title, TextStyle::Title), widestTitle)) + 2 * padding;
}

int headHeight(const StripShape& shape)
{
    return roundedUp(tagLine + static_cast<int>(shape.title.size()) * titleLine + padding / 2);
}

int nameWidth(const Kind& kind)
{
    int widest = terminalPitch;
    for (const Strip& strip : kind.strips)
        for (const Terminal& terminal : strip.terminals)
            widest = std::max(widest, roomFor(terminal.printed, TextStyle::Terminal) + 2 * padding);
    return roundedUp(widest);
}

int bandWidth(const Kind& kind, Language language)
{
    int widest = 0;
    for (const Strip& strip : kind.strips)
        widest = std::max(widest, roomFor(inWords(strip.words, language), TextStyle::Band) + padding);
    return std::min(widest, 200);
}

Cell cellOf(const Terminal& terminal, Area area, Facing facing)
{
    Point at = area.middle();
    if (isLevel(facing))
        at.x = facing == Facing::Right ? area.right : area.left;
    else
        at.y = facing == Facing::Bottom ? area.bottom : area.top;
    return {terminal.key, terminal.printed, terminal.lead.value_or(""), area, {at, facing}};
}

// Cells one below the other, names beside the left or right facing.
void stackDown(StripShape& shape, const Kind& kind, int headWide, Language language)
{
    const int name = nameWidth(kind), band = bandWidth(kind, language);
    const int width = roundedUp(std::max({leastWidth, headWide, name + band + padding}));
    const bool right = shape.facing == Facing::Right;
    shape.head = {0, 0, width, headHeight(shape)};
    int y = shape.head.bottom;
    for (const Strip& strip : kind.strips) {
        const int top = y;
        for (const Terminal& terminal : strip.terminals) {
            const Area cell = shape.isThrough ? Area{0, y, width, y + terminalPitch}
                              : right         ? Area{width - name, y, width, y + terminalPitch}
                                              : Area{0, y, name, y + terminalPitch};
            shape.cells.push_back(cellOf(terminal, cell, shape.facing));
            y += terminalPitch;
        }
        shape.bands.push_back({inWords(strip.words, language),
                               right ? Area{0, top, width - name, y} : Area{name, top, width, y}});
    }
    shape.area = {0, 0, width, y};
}

// Cells side by side, along the lower or upper facing.
void stackAcross(StripShape& shape, const Kind& kind, int headWide, Language language)
{
    const int name = nameWidth(kind);
    const int count = static_cast<int>(terminalsOf(kind).size());
    const int width = roundedUp(std::max({leastWidth, headWide, name * count}));
    const int head = headHeight(shape), foot = terminalPitch + bandHeight;
    const bool below = shape.facing == Facing::Bottom;
    const int height = roundedUp(head + foot);
    shape.area = {0, 0, width, height};
    shape.head = below ? Area{0, 0, width, height - foot} : Area{0, foot, width, height};
    const int cellTop = below ? height - terminalPitch : 0;
    const int bandTop = below ? height - foot : terminalPitch;
    int x = 0;
    for (const Strip& strip : kind.strips) {
        const int left = x;
        for (const Terminal& terminal : strip.terminals) {
            const Area cell{x, cellTop, x + name, cellTop + terminalPitch};
            shape.cells.push_back(cellOf(terminal, cell, shape.facing));
            x += name;
        }
        shape.bands.push_back({inWords(strip.words, language), {left, bandTop, x, bandTop + bandHeight}});
    }
}

} // namespace

int heightOf(TextStyle style)
{
    switch (style) {
    case TextStyle::Tag:
        return 42;
    case TextStyle::Terminal:
        return 32;
    case TextStyle::Place:
        return 36;
    case TextStyle::Note:
        return 32;
    case TextStyle::Cable:
        return 28;
    case TextStyle::Title:
    case TextStyle::Corner:
    case TextStyle::PlaceWords:
    case TextStyle::Reference:
        return 26;
    case TextStyle::Band:
    case TextStyle::Letters:
        break;
    }
    return 24;
}

int roomFor(const std::string& words, TextStyle style)
{
    const auto letters =
        std::count_if(words.begin(), words.end(), [](char byte) { return (byte & 0xC0) != 0x80; });
    const bool bold = style == TextStyle::Tag || style == TextStyle::Place;
    return static_cast<int>(letters) * heightOf(style) * (bold ? 72 : 62) / 100;
}

StripShape stripShape(const Kind& kind, const HeadWords& words, Facing facing, Language language)
{
    StripShape shape;
    shape.facing = facing;
    shape.isThrough = kind.family == "joint" && isLevel(facing);
    shape.title = inLines(inWords(kind.title, language));
    if (!words.below.empty())
        shape.title.push_back(words.below);
    const int head = headWidth(shape, words);
    if (isLevel(facing))
        stackDown(shape, kind, head, language);
    else
        stackAcross(shape, kind, head, language);
    return shape;
}

Port landingOn(const StripShape& shape, std::size_t cell, Point at, Point otherEnd)
{
    Port port = shape.cells[cell].landing;
    if (shape.isThrough) {
        const Point middle = shape.area.middle() + at;
        port.facing = otherEnd.x >= middle.x ? Facing::Right : Facing::Left;
        port.at.x = port.facing == Facing::Right ? shape.area.right : shape.area.left;
    }
    port.at = port.at + at;
    return port;
}

} // namespace doorloom
