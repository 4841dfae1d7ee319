#include "print/schedulepieces.h"

#include "print/printwords.h"

#include <algorithm>

namespace doorloom {
namespace {

constexpr Text continuedWords = {.en = "continued", .es = "continuación"};
constexpr Text cautionWords = {.en = "Before anything else", .es = "Antes de todo"};

constexpr double tagPrint = 15, longTagPrint = 11, boxPrint = 14; // points
constexpr double hair = 0.35, thin = 0.6, strong = 1.4;
constexpr double tagBoxHeight = 21;

// Running text; the lines of a cell stand a little closer.
double lineHeightOf(double points)
{
    return points * 11 / smallPrint;
}

constexpr double cellLine = 10, firstCellLine = 13, aboveBaseline = 11;
constexpr double tickDrop = 1.5; // a large box stands as high above its baseline as capitals do

struct Cell {
    double x = 0, points = 0;
    Weight weight = Weight::Plain;
    std::vector<QString> lines;
};

// The first lines of all cells on one baseline, so that the eye, and a reader of the PDF's text, keeps to the
// row.
Piece stood(const std::vector<Cell>& cells, std::size_t lines, CellUse use)
{
    const double block = firstCellLine + static_cast<double>(lines - 1) * cellLine;
    Piece piece;
    piece.height = std::max(block + 3, use == CellUse::Head ? 0 : leastRowHeight);
    for (const Cell& cell : cells) {
        double baseline =
            (piece.height - block) / 2 + aboveBaseline + (cell.points == tickPrint ? tickDrop : 0);
        for (const QString& text : cell.lines) {
            piece.texts.push_back({cell.x, baseline, cell.points, cell.weight, text});
            baseline += cellLine;
        }
    }
    return piece;
}

const QString nothing(QChar(0x2013)); // what cellsOf puts where there is nothing to say

} // namespace

void append(Piece& piece, const Piece& under)
{
    for (PlacedText text : under.texts) {
        text.baseline += piece.height;
        piece.texts.push_back(std::move(text));
    }
    for (Rule rule : under.rules) {
        rule.y1 += piece.height;
        rule.y2 += piece.height;
        piece.rules.push_back(rule);
    }
    piece.height += under.height;
}

SchedulePieces::SchedulePieces(const PaperFont& font, Language language, double width, FittedColumns columns)
    : font_(font), language_(language), width_(width), columns_(columns)
{
}

Piece SchedulePieces::blank(double height) const
{
    return {height, {}, {}};
}

Piece SchedulePieces::paragraph(const QString& text, double points, Weight weight, double indent,
                                double gap) const
{
    Piece piece;
    addParagraph(piece, text, points, weight, indent, width_ - indent);
    piece.height += gap;
    return piece;
}

Piece SchedulePieces::cautionsPiece() const
{
    constexpr double gutter = 16;
    const double half = (width_ - gutter) / 2;
    Piece piece;
    for (const Language language : {Language::English, Language::Spanish}) {
        Piece column = blank(2);
        const double x = language == Language::English ? 0 : half + gutter;
        addParagraph(column, printWords(cautionWords, language), smallPrint, Weight::Bold, x, half);
        for (const Message& caution : cautions())
            addParagraph(column, "• " + printWords(caution, language), smallPrint, Weight::Plain, x, half);
        piece.texts.insert(piece.texts.end(), column.texts.begin(), column.texts.end());
        piece.height = std::max(piece.height, column.height);
    }
    piece.height += 5;
    piece.rules.push_back({0, piece.height, width_, piece.height, thin});
    piece.height += 6;
    return piece;
}

Piece SchedulePieces::boxHeading(const ScheduleBox& box, Start start) const
{
    Piece piece = paragraph(withStart(headingOf(box, language_), start), boxPrint, Weight::Bold, 0, 3);
    piece.rules.push_back({0, piece.height, width_, piece.height, strong});
    piece.height += 5;
    return piece;
}

Piece SchedulePieces::blockHead(const ScheduleBlock& block, Start start) const
{
    const QString tag = printWords(nameOf(block, language_));
    const double points = font_.widthOf(tag, tagPrint, Weight::Bold) < width_ / 2 ? tagPrint : longTagPrint;
    const double tagWidth = font_.widthOf(tag, points, Weight::Bold) + 12;
    Piece piece = blank(4);
    addTagBox(piece, tag, points, tagWidth);
    const double under = piece.height + tagBoxHeight + 3;
    piece.height += 5.5;
    addParagraph(piece, withStart(aboutOf(block, language_), start), smallPrint, Weight::Bold, tagWidth + 8,
                 width_ - tagWidth - 8);
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
    Piece piece = cellsPiece(headCells(language_), CellUse::Head, false);
    piece.rules.push_back({0, piece.height, width_, piece.height, thin});
    return piece;
}

Piece SchedulePieces::stripHead(const Words& strip) const
{
    Piece piece =
        paragraph(printWords(stripInWords(strip), language_), smallPrint, Weight::Plain, cellPadding, 2.5);
    piece.rules.push_back({0, piece.height, width_, piece.height, hair});
    return piece;
}

Piece SchedulePieces::row(const ScheduleRow& row) const
{
    Piece piece = cellsPiece(cellsOf(row, language_), CellUse::Body, spansColumns(row));
    piece.rules.push_back({0, piece.height, width_, piece.height, hair});
    return piece;
}

Piece SchedulePieces::blockFoot(const ScheduleBlock& block) const
{
    Piece piece = blank(2);
    append(piece, paragraph(printWords(countsInWords(block.counts), language_), smallPrint, Weight::Plain,
                            cellPadding, 7));
    return piece;
}

void SchedulePieces::addParagraph(Piece& piece, const QString& text, double points, Weight weight, double x,
                                  double room) const
{
    const double height = lineHeightOf(points);
    for (const QString& line : wrapped(font_, text, points, weight, room, Breaks::InsideWords)) {
        if (font_.widthOf(line, points, weight) > room)
            refuse(line);
        piece.texts.push_back({x, piece.height + height * 0.8, points, weight, line});
        piece.height += height;
    }
}

void SchedulePieces::refuse(const QString& text) const
{
    if (tooWide_.isEmpty())
        tooWide_ = text;
}

void SchedulePieces::addLines(Piece& piece, const std::vector<Message>& lines, Weight weight) const
{
    for (const Message& line : lines)
        addParagraph(piece, printWords(line, language_), smallPrint, weight, cellPadding,
                     width_ - 2 * cellPadding);
}

void SchedulePieces::addTagBox(Piece& piece, const QString& tag, double points, double tagWidth) const
{
    if (tagWidth > width_ * 0.6)
        refuse(tag);
    const double top = piece.height, foot = top + tagBoxHeight;
    piece.texts.push_back({6, top + 16, points, Weight::Bold, tag});
    piece.rules.push_back({0, top, tagWidth, top, strong});
    piece.rules.push_back({0, foot, tagWidth, foot, strong});
    piece.rules.push_back({0, top, 0, foot, strong});
    piece.rules.push_back({tagWidth, top, tagWidth, foot, strong});
}

QString SchedulePieces::withStart(const std::string& text, Start start) const
{
    const QString shown = printWords(text);
    return start == Start::Continued ? shown + ", " + printWords(continuedWords, language_) : shown;
}

Piece SchedulePieces::cellsPiece(const ScheduleCells& cells, CellUse use, bool spans) const
{
    std::vector<Cell> drawn;
    std::size_t lines = 1;
    double x = 0;
    for (std::size_t column = 0; column < scheduleColumns; x += columns_.widths[column], ++column) {
        const QString text = printWords(cells[column]);
        if (spans && (column > WireColumn || (column > TerminalColumn && text == nothing)))
            continue;
        const double points = printSizeOf(column, text, use);
        const Weight weight = weightOf(column, use);
        const double room =
            (spans && column == WireColumn ? width_ - x : columns_.widths[column]) - 2 * cellPadding;
        drawn.push_back(
            {x + cellPadding, points, weight, wrapped(font_, text, points, weight, room, columns_.breaks)});
        lines = std::max(lines, drawn.back().lines.size());
    }
    return stood(drawn, lines, use);
}

} // namespace doorloom
