#pragma once

#include "papers/schedule.h"
#include "print/printedpage.h"
#include "print/schedulecolumns.h"

namespace doorloom {

// A strip of the page with its own origin; pieces are stacked one under another.
struct Piece {
    double height = 0;
    std::vector<PlacedText> texts;
    std::vector<Rule> rules;
};

void append(Piece& piece, const Piece& under);

enum class Start { First, Continued };

inline constexpr double leastRowHeight = 8 * 72 / 25.4; // 8 mm: rows are told apart at arm's length

// Makes the pieces of the terminal schedule for one width of page.
class SchedulePieces {
public:
    SchedulePieces(const PaperFont& font, Language language, double width, FittedColumns columns);

    Piece blank(double height) const;
    Piece paragraph(const QString& text, double points, Weight weight, double indent, double gap) const;
    Piece cautionsPiece() const; // both languages, side by side
    Piece boxHeading(const ScheduleBox& box, Start start) const;
    Piece blockHead(const ScheduleBlock& block, Start start) const;
    Piece columnHeads() const;
    Piece stripHead(const Words& strip) const;
    Piece row(const ScheduleRow& row) const;
    Piece blockFoot(const ScheduleBlock& block) const;

    Language language() const { return language_; }

    // What did not fit though it was wrapped; none: all is well.
    const QString& tooWide() const { return tooWide_; }

private:
    void addParagraph(Piece& piece, const QString& text, double points, Weight weight, double x,
                      double room) const;
    void addLines(Piece& piece, const std::vector<Message>& lines, Weight weight) const;
    void addTagBox(Piece& piece, const QString& tag, double points, double tagWidth) const;
    void refuse(const QString& text) const; // the first is told
    QString withStart(const std::string& text, Start start) const;
    Piece cellsPiece(const ScheduleCells& cells, CellUse use, bool spans) const;

    const PaperFont& font_;
    Language language_;
    double width_;
    FittedColumns columns_;
    mutable QString tooWide_;
};

} // namespace doorloom
