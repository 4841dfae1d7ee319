#include "print/schedulepieces.h"

#include "print/printwords.h"

#include <algorithm>

namespace doorloom {
namespace {

constexpr double tagPrint = 15, longTagPrint = 11; // points
constexpr double tagBoxHeight = 21;

const QString nothing(QChar(0x2013)); // what cellsOf puts where there is nothing to say

} // namespace

Piece SchedulePieces::boxHeading(const ScheduleBox& box, Start start) const
{
    return make_.heading(printWords(headingOf(box, make_.language())), start);
}

Piece SchedulePieces::blockHead(const ScheduleBlock& block, Start start) const
{
    const QString tag = printWords(nameOf(block, make_.language()));
    const double points = make_.font().widthOf(tag, tagPrint, Weight::Bold) < make_.width() / 2 ? tagPrint : longTagPrint;
    const double tagWidth = make_.font().widthOf(tag, points, Weight::Bold) + 12;
    Piece piece = blankPiece(4);
    addTagBox(piece, tag, points, tagWidth);
    const double under = piece.height + tagBoxHeight + 3;
    piece.height += 5.5;
    make_.addParagraph(piece, make_.withStart(printWords(aboutOf(block, make_.language())), start), smallPrint, Weight::Bold, tagWidth + 8,
                 make_.width() - tagWidth - 8);
    piece.height = std::max(piece.height, under);
    if (start == Start::Continued)
        return piece;
    addLines(piece, block.before, Weight::Bold);
    addLines(piece, block.facts, Weight::Plain);
    piece.height += 2;
    return piece;
}

Piece SchedulePieces::columnHeads() const
{
    Piece piece = cellsPiece(inColumns(printedCells(headCells(make_.language()), CellUse::Head), columns_), make_.font(), columns_.breaks, 0);
    piece.rules.push_back({0, piece.height, make_.width(), piece.height, thinRule});
    return piece;
}

Piece SchedulePieces::stripHead(const Words& strip) const
{
    Piece piece =
        make_.paragraph(printWords(stripInWords(strip), make_.language()), smallPrint, Weight::Plain, cellPadding, 2.5);
    piece.rules.push_back({0, piece.height, make_.width(), piece.height, hairRule});
    return piece;
}

Piece SchedulePieces::row(const ScheduleRow& row) const
{
    std::vector<StoodCell> cells = inColumns(printedCells(cellsOf(row, make_.language()), CellUse::Body), columns_);
    if (spansColumns(row)) {
        cells.resize(WireColumn + 1);
        cells.back().room = make_.width() - cells.back().x - cellPadding;
        cells.erase(std::remove_if(cells.begin() + 1, cells.end(), [](const StoodCell& each) { return each.cell.text == nothing; }), cells.end());
    }
    Piece piece = cellsPiece(cells, make_.font(), columns_.breaks, leastRowHeight);
    piece.rules.push_back({0, piece.height, make_.width(), piece.height, hairRule});
    return piece;
}

Piece SchedulePieces::blockFoot(const ScheduleBlock& block) const
{
    Piece piece = blankPiece(2);
    append(piece, make_.paragraph(printWords(countsInWords(block.counts), make_.language()), smallPrint, Weight::Plain,
                            cellPadding, 7));
    return piece;
}

void SchedulePieces::addLines(Piece& piece, const std::vector<Message>& lines, Weight weight) const
{
    for (const Message& line : lines)
        make_.addParagraph(piece, printWords(line, make_.language()), smallPrint, weight, cellPadding,
                     make_.width() - 2 * cellPadding);
}

void SchedulePieces::addTagBox(Piece& piece, const QString& tag, double points, double tagWidth) const
{
    if (tagWidth > make_.width() * 0.6)
        make_.refuse(tag);
    const double top = piece.height, foot = top + tagBoxHeight;
    piece.texts.push_back({6, top + 16, points, Weight::Bold, tag});
    piece.rules.push_back({0, top, tagWidth, top, strongRule});
    piece.rules.push_back({0, foot, tagWidth, foot, strongRule});
    piece.rules.push_back({0, top, 0, foot, strongRule});
    piece.rules.push_back({tagWidth, top, tagWidth, foot, strongRule});
}

} // namespace doorloom
