#include "print/papersheet.h"

#include "print/printwords.h"

namespace doorloom {
namespace {

constexpr Text pageWords = {.en = "page {page} of {pages}", .es = "página {page} de {pages}"};
constexpr Text noLetters = {.en = "The font of the papers has no '{letters}'.",
                            .es = "La fuente de los papeles no tiene '{letters}'."};
constexpr Text otherLetters = {.en = "Write names with other letters, or print the text or CSV form.",
                               .es = "Escriba los nombres con otras letras, o imprima en texto o CSV."};

constexpr double millimetre = 72 / 25.4;
constexpr double sideMargin = 11 * millimetre, topMargin = 9 * millimetre, bottomMargin = 8 * millimetre;
constexpr double headerHeight = 30, footerHeight = 27;
constexpr double paperPrint = 14, jobPrint = 11; // points

// What stands on every sheet, known once it is known how many there are.
class Furniture {
public:
    Furniture(const TitleBlock& title, Text paper, const PaperPieces& make, PageSize page)
        : title_(title), font_(make.font()), language_(make.language()), paper_(printWords(paper, language_)), page_(page),
          right_(page.width - sideMargin)
    {
    }

    // The job's number and title, or as much of it as fits beside the paper's name.
    QString jobThatFits() const
    {
        const double room = right_ - sideMargin - paperWidth() - 110;
        for (const std::string& text : {jobName(), title_.number})
            if (font_.widthOf(printWords(text), jobPrint, Weight::Plain) <= room)
                return printWords(text);
        return {};
    }

    std::string jobName() const
    {
        return title_.number + (title_.number.empty() || title_.title.empty() ? "" : " · ") + title_.title;
    }

    QString revision() const { return printWords(revisionLine(title_), language_); }

    PrintedPage around(PrintedPage body, std::size_t number, std::size_t count) const
    {
        PrintedPage page;
        addHeader(page, number, count);
        page.texts.insert(page.texts.end(), body.texts.begin(), body.texts.end());
        page.rules.insert(page.rules.end(), body.rules.begin(), body.rules.end());
        addFooter(page);
        return page;
    }

private:
    double paperWidth() const { return font_.widthOf(paper_, paperPrint, Weight::Bold); }

    void addHeader(PrintedPage& page, std::size_t number, std::size_t count) const
    {
        const QString place = printWords(
            Message(pageWords, {{"page", std::to_string(number)}, {"pages", std::to_string(count)}}),
            language_);
        const double line = topMargin + 14;
        page.texts.push_back({sideMargin, line, paperPrint, Weight::Bold, paper_});
        page.texts.push_back({sideMargin + paperWidth() + 14, line, jobPrint, Weight::Plain, jobThatFits()});
        page.texts.push_back(
            {right_ - font_.widthOf(place, smallPrint, Weight::Bold), line, smallPrint, Weight::Bold, place});
        page.rules.push_back({sideMargin, line + 6, right_, line + 6, thinRule});
    }

    void addFooter(PrintedPage& page) const
    {
        const double top = page_.height - bottomMargin - footerHeight + 5;
        page.rules.push_back({sideMargin, top, right_, top, thinRule});
        page.texts.push_back({sideMargin, top + 10, smallPrint, Weight::Bold, revision()});
        page.texts.push_back(
            {sideMargin, top + 20.5, smallPrint, Weight::Plain, printWords(shortCaution, language_)});
    }

    const TitleBlock& title_;
    const PaperFont& font_;
    Language language_;
    QString paper_;
    PageSize page_;
    double right_;
};

} // namespace

PageSize roomOn(SheetSize size)
{
    const PageSize page = landscapeOf(size);
    return {page.width - 2 * sideMargin, page.height - topMargin - bottomMargin - headerHeight - footerHeight};
}

void PageStack::turn()
{
    pages_.emplace_back();
    y_ = 0;
    put(head_);
}

Piece dangersPiece(const PaperPieces& make, const TitleBlock& title)
{
    Piece piece;
    for (const Message& danger : title.dangers)
        append(piece, make.paragraph(printWords(danger, make.language()), smallPrint, Weight::Bold, 0, 2));
    if (piece.height > 0)
        piece.rules.push_back({0, piece.height + 1, make.width(), piece.height + 1, thinRule});
    piece.height += piece.height > 0 ? 4 : 0;
    return piece;
}

void PageStack::put(const Piece& piece)
{
    const double top = topMargin + headerHeight + y_;
    for (PlacedText text : piece.texts) {
        text.x += sideMargin;
        text.baseline += top;
        pages_.back().texts.push_back(std::move(text));
    }
    for (const Rule& rule : piece.rules)
        pages_.back().rules.push_back(
            {rule.x1 + sideMargin, rule.y1 + top, rule.x2 + sideMargin, rule.y2 + top, rule.width});
    y_ += piece.height;
}

void putOpening(PageStack& stack, const PaperPieces& make, const TitleBlock& title, Text paper, SheetSize size,
                const std::vector<Message>& lines)
{
    const Furniture furniture(title, paper, make, landscapeOf(size));
    const auto put = [&](const QString& text) { stack.put(make.paragraph(text, smallPrint, Weight::Plain, 0, 2)); };
    if (const QString whole = printWords(furniture.jobName()); whole != furniture.jobThatFits())
        put(whole);
    QString about;
    for (const Message& line : titleLines(title))
        about += (about.isEmpty() ? "" : " · ") + printWords(line, make.language());
    if (!about.isEmpty())
        put(about);
    for (const Message& line : lines)
        put(printWords(line, make.language()));
    stack.put(make.cautionsPiece());
}

Result<std::vector<PrintedPage>> finishedSheets(std::vector<PrintedPage> pages, const PaperPieces& make, const TitleBlock& title,
                                                Text paper, SheetSize size)
{
    const Furniture furniture(title, paper, make, landscapeOf(size));
    if (make.font().widthOf(furniture.revision(), smallPrint, Weight::Bold) > make.width())
        return tooLongForThePage(furniture.revision(), paper);
    for (std::size_t number = 0; number < pages.size(); ++number)
        pages[number] = furniture.around(std::move(pages[number]), number + 1, pages.size());
    if (!make.font().lettersMissing().isEmpty())
        return lettersMissing(make.font(), paper);
    if (!make.tooWide().isEmpty())
        return tooLongForThePage(make.tooWide(), paper);
    return pages;
}

Problem lettersMissing(const PaperFont& font, Text paper)
{
    return {.what = {noLetters, {{"letters", font.lettersMissing().toStdString()}}},
            .where = inWords(Message(paper)),
            .remedy = otherLetters};
}

} // namespace doorloom
