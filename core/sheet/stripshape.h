#pragma once

#include "sheet/area.h"
#include "sheet/plainroute.h"
#include "model/kind.h"

#include <string>
#include <vector>

namespace doorloom {

// Heights of letters on the sheet, in tenths of a millimetre, by what they say.
enum class TextStyle {
    Tag,
    Title,
    Corner,
    Terminal,
    Band,
    Letters,
    Place,
    PlaceWords,
    Cable,
    Note,
    Reference
};
int heightOf(TextStyle style);
// Room that words take in most fonts: what is wider is cut short when it is drawn.
int roomFor(const std::string& words, TextStyle style);

// One terminal: a cell with its printed name, and where a conductor lands on it.
struct Cell {
    Key terminal;
    std::string printed;
    std::string lead; // the colour of its flying wire; empty: a clamp
    Area area;
    Port landing;
};

struct Band {
    std::string words; // of a strip
    Area area;         // beside its cells
};

// How a device looks on the sheet, from its upper left corner: a head, and its terminals stacked in the order
// printed, their printed names beside the side on which conductors land.
struct StripShape {
    Area area, head;
    Facing facing = Facing::Right;
    bool isThrough = false;         // a joint that stands upright: conductors land on both sides of its cells
    std::vector<std::string> title; // the kind in words, in one or two lines, and the line below
    std::vector<Band> bands;
    std::vector<Cell> cells;
};

// What is written on a device beside its kind's words.
struct HeadWords {
    std::string tag;
    std::string corner; // opposite the tag, such as the place
    std::string below;  // a line of its own, such as 'existing'
};

StripShape stripShape(const Kind& kind, const HeadWords& words, Facing facing, Language language);

// Where a conductor lands on a cell of a device at a point, seen from the other end: a joint has two sides.
Port landingOn(const StripShape& shape, std::size_t cell, Point at, Point otherEnd);

constexpr int terminalPitch = 50;

} // namespace doorloom
