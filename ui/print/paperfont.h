#pragma once

#include "base/result.h"

#include <QFont>
#include <QString>

#include <array>
#include <string>
#include <unordered_map>
#include <vector>

namespace doorloom {

enum class Weight { Plain, Bold };

// The font that comes with the program, and no other: a page is the same on every machine. Measures without
// shaping (no kerning, no ligatures), which is what makes a page of 200 cells cost little.
class PaperFont {
public:
    // In:     the folder with DejaVuSans.ttf and DejaVuSans-Bold.ttf (resources/font)
    // Errors: a file that is missing or is no font.   Needs a QGuiApplication.
    static Result<PaperFont> load(const std::string& folder);

    QFont at(double points, Weight weight) const; // for a device of `unitsPerPoint` below
    double widthOf(const QString& text, double points, Weight weight) const; // in points
    // As it is drawn, shaped: letters of some scripts are narrower or wider beside each other. In points.   Cost: dear
    double shapedWidthOf(const QString& text, double points, Weight weight) const;

    // Letters asked for that the font does not hold; a page with one of them must not be printed.
    QString lettersMissing() const { return missing_; }

    static constexpr int unitsPerPoint = 20; // of the page: whole numbers are fine enough for a printer

private:
    // A device takes a font's spacing for pixels of 96 an inch, metrics without a device for pixels of the font.
    static constexpr double spacingPixels = 1 / 64.0; // the least there is: it keeps 'fi' two letters
    static constexpr double spacingPoints = spacingPixels * 72 / 96;

    PaperFont() = default;
    static QFont plainest(const QString& family, Weight weight);
    double advanceOf(char32_t letter, Weight weight) const; // of one point

    std::array<QFont, 2> fonts_;
    mutable std::array<std::unordered_map<char32_t, double>, 2> advances_;
    mutable QString missing_;
};

enum class Breaks { BetweenWords, InsideWords };

// Lines no wider than `width`. InsideWords also breaks after : . / - + , where a word alone is too wide.
// A piece that cannot be broken stays as it is: compare its width.
std::vector<QString> wrapped(const PaperFont& font, const QString& text, double points, Weight weight,
                             double width, Breaks breaks = Breaks::BetweenWords);

// The widest piece that wrapped() cannot break.
double widestPiece(const PaperFont& font, const QString& text, double points, Weight weight, Breaks breaks);

} // namespace doorloom
