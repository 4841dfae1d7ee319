#include "print/paperfont.h"

#include <QFile>
#include <QFontDatabase>
#include <QFontMetricsF>

#include <algorithm>
#include <map>
#include <optional>

namespace doorloom {
namespace {

constexpr Text noFile = {.en = "The font '{file}' can't be read.",
                         .es = "No se puede leer la fuente '{file}'."};
constexpr Text noFont = {.en = "'{file}' is no font.", .es = "'{file}' no es una fuente."};
constexpr Text putItBack = {.en = "Put the program's folder resources/font back as it came.",
                            .es = "Restaure la carpeta resources/font del programa."};
constexpr double measured = 1000; // pixels an em while measuring
constexpr const char* files[] = {"DejaVuSans.ttf", "DejaVuSans-Bold.ttf"};

Problem fontProblem(Text what, const std::string& file)
{
    return {.what = {what, {{"file", file}}}, .where = file, .remedy = putItBack};
}

// A font given to Qt stays for as long as the application lives: once is enough.
Result<QString> familyIn(const std::string& file)
{
    static std::map<std::string, QString> known;
    if (const auto found = known.find(file); found != known.end())
        return found->second;
    QFile in(QString::fromStdString(file));
    if (!in.open(QIODevice::ReadOnly))
        return fontProblem(noFile, file);
    const QStringList families =
        QFontDatabase::applicationFontFamilies(QFontDatabase::addApplicationFontFromData(in.readAll()));
    if (families.isEmpty())
        return fontProblem(noFont, file);
    known.emplace(file, families.front());
    return families.front();
}

// The text cut where a line may end.
std::vector<QString> piecesOf(const QString& text, Breaks breaks)
{
    std::vector<QString> pieces(1);
    for (qsizetype i = 0; i < text.size(); ++i) {
        pieces.back() += text[i];
        const bool ends =
            text[i] == ' ' || (breaks == Breaks::InsideWords && QString(":./-+,_").contains(text[i]));
        if (ends && i + 1 < text.size())
            pieces.emplace_back();
    }
    return pieces;
}

QString withoutEndBlanks(QString text)
{
    while (text.endsWith(' '))
        text.chop(1);
    return text;
}

} // namespace

QFont PaperFont::plainest(const QString& family, Weight weight)
{
    QFont font(family);
    font.setBold(weight == Weight::Bold);
    font.setKerning(false);
    font.setLetterSpacing(QFont::AbsoluteSpacing, spacingPixels);
    font.setHintingPreference(QFont::PreferNoHinting);
    font.setStyleStrategy(static_cast<QFont::StyleStrategy>(QFont::NoFontMerging | QFont::PreferOutline));
    return font;
}

Result<PaperFont> PaperFont::load(const std::string& folder)
{
    PaperFont font;
    for (const Weight weight : {Weight::Plain, Weight::Bold}) {
        const auto index = static_cast<std::size_t>(weight);
        const Result<QString> family = familyIn(folder + "/" + files[index]);
        if (!family.ok())
            return family.problem();
        font.fonts_[index] = plainest(family.value(), weight);
    }
    return font;
}

QFont PaperFont::at(double points, Weight weight) const
{
    QFont font = fonts_[static_cast<std::size_t>(weight)];
    font.setPixelSize(static_cast<int>(points * unitsPerPoint + 0.5));
    return font;
}

double PaperFont::advanceOf(char32_t letter, Weight weight) const
{
    auto& advances = advances_[static_cast<std::size_t>(weight)];
    if (const auto known = advances.find(letter); known != advances.end())
        return known->second;
    QFont font = fonts_[static_cast<std::size_t>(weight)];
    font.setPixelSize(static_cast<int>(measured));
    const QFontMetricsF metrics(font);
    const QString alone = QString::fromUcs4(&letter, 1);
    if (!metrics.inFontUcs4(letter) && !missing_.contains(alone))
        missing_ += alone;
    return advances.emplace(letter, (metrics.horizontalAdvance(alone) - spacingPixels) / measured).first->second;
}

double PaperFont::shapedWidthOf(const QString& text, double points, Weight weight) const
{
    const double letters = static_cast<double>(text.toUcs4().size());
    return QFontMetricsF(at(points, weight)).horizontalAdvance(text) / unitsPerPoint + letters * (spacingPoints - spacingPixels / unitsPerPoint);
}

double PaperFont::widthOf(const QString& text, double points, Weight weight) const
{
    double width = 0;
    for (qsizetype i = 0; i < text.size(); ++i) {
        const bool pair = text[i].isHighSurrogate() && i + 1 < text.size() && text[i + 1].isLowSurrogate();
        width += points * advanceOf(pair ? QChar::surrogateToUcs4(text[i], text[i + 1]) : text[i].unicode(), weight) + spacingPoints;
        i += pair ? 1 : 0;
    }
    return width;
}

std::vector<QString> wrapped(const PaperFont& font, const QString& text, double points, Weight weight,
                             double width, Breaks breaks)
{
    if (font.widthOf(text, points, weight) <= width)
        return {text};
    std::vector<QString> lines;
    QString line;
    for (const QString& piece : piecesOf(text, breaks)) {
        if (!line.isEmpty() && font.widthOf(withoutEndBlanks(line + piece), points, weight) > width) {
            lines.push_back(withoutEndBlanks(line));
            line.clear();
        }
        line += piece;
    }
    lines.push_back(withoutEndBlanks(line));
    return lines;
}

double widestPiece(const PaperFont& font, const QString& text, double points, Weight weight, Breaks breaks)
{
    double widest = 0;
    for (const QString& piece : piecesOf(text, breaks))
        widest = std::max(widest, font.widthOf(withoutEndBlanks(piece), points, weight));
    return widest;
}

} // namespace doorloom
