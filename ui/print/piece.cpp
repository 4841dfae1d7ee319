#include "print/piece.h"

#include "papers/titleblock.h"
#include "print/printwords.h"

#include <algorithm>

namespace doorloom {
namespace {

constexpr Text continuedWords = {.en = "continued", .es = "continuación"};
constexpr Text cautionWords = {.en = "Before anything else", .es = "Antes de todo"};
constexpr Text tooWide = {.en = "'{text}' is too long for the page.", .es = "'{text}' no cabe en la página."};
constexpr Text shorten = {.en = "Shorten that name, or print the text or CSV form.",
                          .es = "Acorte ese nombre, o imprima en texto o CSV."};

// Running text; the lines of a cell stand a little closer.
double lineHeightOf(double points)
{
    return points * 11 / smallPrint;
}

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

Piece blankPiece(double height)
{
    return {height, {}, {}};
}

Problem tooLongForThePage(const QString& text, Text paper)
{
    return {.what = {tooWide, {{"text", text.toStdString()}}}, .where = inWords(Message(paper)), .remedy = shorten};
}

Piece PaperPieces::paragraph(const QString& text, double points, Weight weight, double indent, double gap) const
{
    Piece piece;
    addParagraph(piece, text, points, weight, indent, width_ - indent);
    piece.height += gap;
    return piece;
}

Piece PaperPieces::heading(const QString& text, Start start) const
{
    Piece piece = paragraph(withStart(text, start), boxPrint, Weight::Bold, 0, 3);
    piece.rules.push_back({0, piece.height, width_, piece.height, strongRule});
    piece.height += 5;
    return piece;
}

Piece PaperPieces::cautionsPiece() const
{
    constexpr double gutter = 16;
    const double half = (width_ - gutter) / 2;
    Piece piece;
    for (const Language language : {Language::English, Language::Spanish}) {
        Piece column = blankPiece(2);
        const double x = language == Language::English ? 0 : half + gutter;
        addParagraph(column, printWords(cautionWords, language), smallPrint, Weight::Bold, x, half);
        for (const Message& caution : cautions())
            addParagraph(column, "• " + printWords(caution, language), smallPrint, Weight::Plain, x, half);
        piece.texts.insert(piece.texts.end(), column.texts.begin(), column.texts.end());
        piece.height = std::max(piece.height, column.height);
    }
    piece.height += 5;
    piece.rules.push_back({0, piece.height, width_, piece.height, thinRule});
    piece.height += 6;
    return piece;
}

void PaperPieces::addParagraph(Piece& piece, const QString& text, double points, Weight weight, double x,
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

QString PaperPieces::withStart(const QString& text, Start start) const
{
    return start == Start::Continued ? text + ", " + printWords(continuedWords, language_) : text;
}

void PaperPieces::refuse(const QString& text) const
{
    if (tooWide_.isEmpty())
        tooWide_ = text;
}

} // namespace doorloom
