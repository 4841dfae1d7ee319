#pragma once

#include "papers/titleblock.h"
#include "print/piece.h"
#include "print/printedpage.h"

#include <vector>

// What the sheets of every paper have in common: margins, what stands above and below, and the first lines.
namespace doorloom {

// What a paper may fill of a sheet, in points.
PageSize roomOn(SheetSize size);

// What stands at the head of every sheet: dangers that nobody has mended.
Piece dangersPiece(const PaperPieces& make, const TitleBlock& title);

// Sheets that are filled from the top, each with the same head.
class PageStack {
public:
    PageStack(double height, Piece head) : height_(height), head_(std::move(head)) { turn(); }

    double whole() const { return height_ - head_.height; }
    double left() const { return height_ - y_; }
    bool atTop() const { return y_ == head_.height; }
    void turn();
    void put(const Piece& piece);
    std::vector<PrintedPage> taken() { return std::move(pages_); }

private:
    double height_, y_ = 0;
    Piece head_;
    std::vector<PrintedPage> pages_;
};

// The first sheet begins with them: the whole title where it does not fit above, site and people, then `lines`, and the
// cautions in both languages.
void putOpening(PageStack& stack, const PaperPieces& make, const TitleBlock& title, Text paper, SheetSize size, const std::vector<Message>& lines);

// The sheets with what stands on every one of them: paper, job, number of the sheet, revision and caution.
// Errors: a letter that the font does not hold, a text that fits nowhere; anywhere on the sheets
Result<std::vector<PrintedPage>> finishedSheets(std::vector<PrintedPage> pages, const PaperPieces& make, const TitleBlock& title, Text paper,
                                                SheetSize size);

// 'The font of the papers has no '…'.'
Problem lettersMissing(const PaperFont& font, Text paper);

} // namespace doorloom
