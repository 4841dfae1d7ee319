#include "print/labeltext.h"

#include "print/printwords.h"

#include <algorithm>

namespace doorloom {
namespace {

// Of the font that comes with the program: how high a capital is, and what stands above it (accents) or hangs below.
constexpr double capitals = 0.729, beyond = 0.24;
constexpr double lineHeight = 1.25;

struct Prints {
    double large[3]; // by kind of tag
    double small[3];
};
// Conductors 2 to 3 mm high, cables 3 to 4, devices 5: common practice, no source.
constexpr Prints prints = {{9.5, 14, 19}, {7, 8.5, 9}};

enum class Arrangement { UnderEachOther, SmallOnesJoined, AllOnOneLine };

struct Attempt {
    double large, small; // points
    Breaks breaks;       // of the large line
    Arrangement arrangement;
};

class Fitting {
public:
    Fitting(const PaperFont& font, double width, double height) : font_(font), width_(width), height_(height) {}

    std::optional<LabelText> tried(const LabelWords& words, const Attempt& attempt)
    {
        text_ = {};
        first_ = attempt.large;
        fits_ = true;
        addLarge(words.large, attempt.large, attempt.breaks);
        if (attempt.arrangement == Arrangement::AllOnOneLine)
            addBeside(joined(words.small), attempt.small);
        else if (attempt.arrangement == Arrangement::SmallOnesJoined)
            addSmall(joined(words.small), attempt.small);
        else
            for (const QString& line : words.small)
                addSmall(line, attempt.small);
        if (!fits_ || text_.lines.empty() || text_.height + beyond * (first_ + text_.lines.back().points) > height_)
            return std::nullopt;
        centre(attempt.arrangement == Arrangement::AllOnOneLine);
        return fits_ ? std::optional(std::move(text_)) : std::nullopt;
    }

private:
    void centre(bool onOneLine)
    {
        text_.width = 0;
        const double gap = text_.lines.back().points / 2;
        for (PlacedText& line : text_.lines) {
            const double wide = font_.shapedWidthOf(line.text, line.points, line.weight);
            line.x = onOneLine ? text_.width + (text_.width > 0 ? gap : 0) : -wide / 2;
            text_.width = onOneLine ? line.x + wide : std::max(text_.width, wide);
        }
        if (onOneLine)
            for (PlacedText& line : text_.lines)
                line.x -= text_.width / 2;
        fits_ = text_.width <= width_;
    }

    static QString joined(const std::vector<QString>& lines)
    {
        QString all;
        for (const QString& line : lines)
            all += (all.isEmpty() ? "" : " · ") + line;
        return all;
    }

    void addLarge(const QString& text, double points, Breaks breaks)
    {
        for (const QString& line : breaks == Breaks::BetweenWords ? std::vector{text} : wrapped(font_, text, points, Weight::Bold, width_, breaks))
            add(line, points, Weight::Bold);
    }

    // Broken inside words only where whole words do not fit.
    void addSmall(const QString& text, double points)
    {
        auto lines = wrapped(font_, text, points, Weight::Plain, width_);
        if (std::any_of(lines.begin(), lines.end(), [&](const QString& line) { return font_.widthOf(line, points, Weight::Plain) > width_; }))
            lines = wrapped(font_, text, points, Weight::Plain, width_, Breaks::InsideWords);
        for (const QString& line : lines)
            add(line, points, Weight::Plain);
    }

    // On the line of the large words, all of it in the middle.
    void addBeside(const QString& text, double points)
    {
        const double gap = points / 2, wide = text_.width + gap + font_.widthOf(text, points, Weight::Plain);
        text_.lines.push_back({0, text_.height, points, Weight::Plain, text});
        text_.width = wide;
        fits_ = fits_ && wide <= width_;
    }

    void add(const QString& line, double points, Weight weight)
    {
        if (line.isEmpty())
            return;
        const double wide = font_.widthOf(line, points, weight);
        fits_ = fits_ && wide <= width_;
        text_.height += text_.lines.empty() ? capitals * points : lineHeight * points;
        text_.width = std::max(text_.width, wide);
        text_.lines.push_back({0, text_.height, points, weight, line});
    }

    const PaperFont& font_;
    double width_, height_;
    LabelText text_;
    double first_ = 0;
    bool fits_ = true;
};

QString coreOf(const Tag& tag)
{
    QString core = printWords(tag.conductor);
    if (!tag.colour.empty())
        core += (core.isEmpty() ? "" : " ") + printWords(tag.colour);
    return core;
}

// Whole twentieths of a point: what the page is drawn in.
double drawn(double points)
{
    return std::max(1, static_cast<int>(points * PaperFont::unitsPerPoint)) / static_cast<double>(PaperFont::unitsPerPoint);
}

} // namespace

LabelWords labelWords(const Tag& tag, Language language)
{
    const auto kind = static_cast<std::size_t>(tag.kind);
    LabelWords words{printWords(tag.large, language), {}, prints.large[kind], prints.small[kind]};
    words.small.push_back(printWords(tag.small, language));
    if (tag.kind == TagKind::ConductorEnd)
        words.small.push_back(coreOf(tag));
    std::erase(words.small, QString());
    return words;
}

std::optional<LabelText> fittedLabel(const LabelWords& words, const PaperFont& font, double width, double height, double largest)
{
    constexpr double step = 0.94;
    Fitting fitting(font, width, height);
    using enum Arrangement;
    struct Way {
        Breaks breaks;
        std::vector<Arrangement> arrangements;
    };
    // One line of all is for the narrowest tape: elsewhere it would only be long.
    const Way ways[] = {{Breaks::BetweenWords, {UnderEachOther, SmallOnesJoined}}, {Breaks::BetweenWords, {AllOnOneLine}}, {Breaks::InsideWords, {UnderEachOther, SmallOnesJoined}}};
    for (const auto& [breaks, arrangements] : ways)
        for (double scale = largest;; scale *= step) {
            const double large = std::max(leastLargeLabelPrint, drawn(words.largePrint * scale)), small = std::max(leastSmallLabelPrint, drawn(words.smallPrint * scale));
            for (const Arrangement arrangement : arrangements)
                if (auto text = fitting.tried(words, {large, small, breaks, arrangement}))
                    return text;
            if (large <= leastLargeLabelPrint && small <= leastSmallLabelPrint)
                break;
        }
    return std::nullopt;
}

void putLabelText(PrintedPage& page, const LabelText& text, double centre, double middle)
{
    for (PlacedText line : text.lines) {
        line.x += centre;
        line.baseline += middle - text.height / 2;
        page.texts.push_back(std::move(line));
    }
}

} // namespace doorloom
