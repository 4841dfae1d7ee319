#pragma once

#include "print/printedpage.h"

namespace doorloom {

inline constexpr double smallPrint = 9, boxPrint = 14; // points
inline constexpr double hairRule = 0.35, thinRule = 0.6, strongRule = 1.4;

// A strip of the page with its own origin; pieces are stacked one under another.
struct Piece {
    double height = 0;
    std::vector<PlacedText> texts;
    std::vector<Rule> rules;
};

void append(Piece& piece, const Piece& under);
Piece blankPiece(double height);

enum class Start { First, Continued };

// 'X is too long for the page.'
Problem tooLongForThePage(const QString& text, Text paper);

// Makes the pieces that all papers are made of, for one width of page.
class PaperPieces {
public:
    PaperPieces(const PaperFont& font, Language language, double width) : font_(font), language_(language), width_(width) {}

    Piece paragraph(const QString& text, double points, Weight weight, double indent, double gap) const;
    Piece heading(const QString& text, Start start) const; // large, above a strong rule
    Piece cautionsPiece() const;                           // both languages, side by side
    void addParagraph(Piece& piece, const QString& text, double points, Weight weight, double x, double room) const;
    QString withStart(const QString& text, Start start) const; // '…, continued'

    const PaperFont& font() const { return font_; }
    Language language() const { return language_; }
    double width() const { return width_; }

    void refuse(const QString& text) const; // the first is told
    // What did not fit though it was wrapped; none: all is well.
    const QString& tooWide() const { return tooWide_; }

private:
    const PaperFont& font_;
    Language language_;
    double width_;
    mutable QString tooWide_;
};

} // namespace doorloom
