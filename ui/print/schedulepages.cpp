#include "print/schedulepages.h"

#include "print/printwords.h"
#include "print/schedulepieces.h"

#include <algorithm>

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

// Pages that are filled from the top.
class PageStack {
public:
    explicit PageStack(double height) : height_(height) { turn(); }

    double whole() const { return height_; }
    double left() const { return height_ - y_; }
    bool atTop() const { return y_ == 0; }
    std::vector<PrintedPage>& pages() { return pages_; }

    void turn()
    {
        pages_.emplace_back();
        y_ = 0;
    }

    void put(const Piece& piece)
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

private:
    double height_, y_ = 0;
    std::vector<PrintedPage> pages_;
};

class ScheduleLayout {
public:
    ScheduleLayout(const Schedule& schedule, const SchedulePieces& make, double height)
        : schedule_(schedule), make_(make), stack_(height)
    {
    }

    std::vector<PrintedPage> filled(const std::vector<QString>& titles, const QString& wholeJob)
    {
        for (const QString& title : titles)
            stack_.put(make_.paragraph(title, smallPrint, Weight::Plain, 0, 2));
        stack_.put(make_.cautionsPiece());
        for (const ScheduleBox& box : schedule_.boxes)
            addBox(box);
        addLine(wholeJob);
        return std::move(stack_.pages());
    }

private:
    // The first box begins under the cautions; the others, and the first place that is no box, on a new
    // sheet.
    void addBox(const ScheduleBox& box)
    {
        const bool first = !box_;
        if (!first && (box.isBox || box_->isBox))
            stack_.turn();
        box_ = &box;
        const Piece heading = make_.boxHeading(box, Start::First);
        if (!box.blocks.empty() && heading.height + leastStart(box.blocks.front()) > stack_.left())
            stack_.turn();
        if (!first && !stack_.atTop())
            stack_.put(make_.blank(12));
        stack_.put(heading);
        for (const ScheduleBlock& block : box.blocks)
            addBlock(block);
        const std::string name = box.tag.empty() ? "" : box.tag + ". ";
        addLine(printWords(name + inWords(countsInWords(box.counts), make_.language())));
    }

    // One piece a row; a strip's heading stands on its first row, the foot under the last.
    std::vector<Piece> rowsOf(const ScheduleBlock& block) const
    {
        std::vector<Piece> rows;
        const Words* strip = nullptr;
        for (const ScheduleRow& row : block.rows) {
            rows.emplace_back();
            if (block.showsStrips && (!strip || *strip != row.strip)) {
                strip = &row.strip;
                append(rows.back(), make_.stripHead(*strip));
            }
            append(rows.back(), make_.row(row));
        }
        append(rows.back(), make_.blockFoot(block));
        return rows;
    }

    // Its head and three rows: less of it at the foot of a sheet helps nobody.
    double leastStart(const ScheduleBlock& block) const
    {
        return make_.blockHead(block, Start::First).height + make_.columnHeads().height + 3 * leastRowHeight;
    }

    // A device stays on one sheet where it can, unless half a sheet would stay empty for that.
    bool shouldTurn(double height, const ScheduleBlock& block) const
    {
        if (height <= stack_.left())
            return false;
        if (leastStart(block) > stack_.left())
            return true;
        const double room = stack_.whole() - make_.boxHeading(*box_, Start::Continued).height;
        return height <= room && stack_.left() < stack_.whole() / 2;
    }

    void addBlock(const ScheduleBlock& block)
    {
        const Piece head = make_.blockHead(block, Start::First), columns = make_.columnHeads();
        const std::vector<Piece> rows = rowsOf(block);
        double height = head.height + columns.height;
        for (const Piece& row : rows)
            height += row.height;
        if (shouldTurn(height, block))
            turnInBox();
        stack_.put(head);
        stack_.put(columns);
        for (const Piece& row : rows) {
            if (row.height > stack_.left()) {
                turnInBox();
                stack_.put(make_.blockHead(block, Start::Continued));
                stack_.put(columns);
            }
            stack_.put(row);
        }
    }

    void turnInBox()
    {
        stack_.turn();
        stack_.put(make_.boxHeading(*box_, Start::Continued));
    }

    void addLine(const QString& text)
    {
        const Piece piece = make_.paragraph(text, smallPrint, Weight::Bold, 0, 4);
        if (piece.height > stack_.left())
            stack_.turn();
        stack_.put(piece);
    }

    const Schedule& schedule_;
    const SchedulePieces& make_;
    PageStack stack_;
    const ScheduleBox* box_ = nullptr;
};

// What stands on every sheet, known once it is known how many there are.
class Furniture {
public:
    Furniture(const TitleBlock& title, const PaperFont& font, Language language, PageSize page)
        : title_(title), font_(font), language_(language), page_(page), right_(page.width - sideMargin)
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
    double paperWidth() const
    {
        return font_.widthOf(printWords(scheduleTitle, language_), paperPrint, Weight::Bold);
    }

    void addHeader(PrintedPage& page, std::size_t number, std::size_t count) const
    {
        const QString place = printWords(
            Message(pageWords, {{"page", std::to_string(number)}, {"pages", std::to_string(count)}}),
            language_);
        const double line = topMargin + 14;
        page.texts.push_back(
            {sideMargin, line, paperPrint, Weight::Bold, printWords(scheduleTitle, language_)});
        page.texts.push_back({sideMargin + paperWidth() + 14, line, jobPrint, Weight::Plain, jobThatFits()});
        page.texts.push_back(
            {right_ - font_.widthOf(place, smallPrint, Weight::Bold), line, smallPrint, Weight::Bold, place});
        page.rules.push_back({sideMargin, line + 6, right_, line + 6, 0.6});
    }

    void addFooter(PrintedPage& page) const
    {
        const double top = page_.height - bottomMargin - footerHeight + 5;
        page.rules.push_back({sideMargin, top, right_, top, 0.6});
        page.texts.push_back({sideMargin, top + 10, smallPrint, Weight::Bold, revision()});
        page.texts.push_back(
            {sideMargin, top + 20.5, smallPrint, Weight::Plain, printWords(shortCaution, language_)});
    }

    const TitleBlock& title_;
    const PaperFont& font_;
    Language language_;
    PageSize page_;
    double right_;
};

std::vector<QString> titlesOf(const TitleBlock& title, const Furniture& furniture, Language language)
{
    std::vector<QString> lines;
    if (const QString whole = printWords(furniture.jobName()); whole != furniture.jobThatFits())
        lines.push_back(whole);
    QString about;
    for (const Message& line : titleLines(title))
        about += (about.isEmpty() ? "" : " · ") + printWords(line, language);
    if (!about.isEmpty())
        lines.push_back(about);
    lines.push_back(printWords(unitsLine, language));
    return lines;
}

Problem lettersMissing(const QString& letters)
{
    return {.what = {noLetters, {{"letters", letters.toStdString()}}},
            .where = inWords(Message(scheduleTitle)),
            .remedy = otherLetters};
}

} // namespace

Result<std::vector<PrintedPage>> schedulePages(const Schedule& schedule, const PaperFont& font,
                                               const PageSetup& setup)
{
    const PageSize page = landscapeOf(setup.size);
    const double width = page.width - 2 * sideMargin;
    const double height = page.height - topMargin - bottomMargin - headerHeight - footerHeight;
    const Result<FittedColumns> columns = fittedColumns(schedule, font, setup.language, width);
    if (!font.lettersMissing().isEmpty())
        return lettersMissing(font.lettersMissing());
    if (!columns.ok())
        return columns.problem();
    const SchedulePieces make(font, setup.language, width, columns.value());
    const Furniture furniture(schedule.title, font, setup.language, page);
    if (font.widthOf(furniture.revision(), smallPrint, Weight::Bold) > width)
        return tooLongForThePage(furniture.revision());
    std::vector<PrintedPage> pages =
        ScheduleLayout(schedule, make, height)
            .filled(titlesOf(schedule.title, furniture, setup.language),
                    printWords(wholeJobInWords(schedule.counts), setup.language));
    for (std::size_t number = 0; number < pages.size(); ++number)
        pages[number] = furniture.around(std::move(pages[number]), number + 1, pages.size());
    if (!font.lettersMissing().isEmpty())
        return lettersMissing(font.lettersMissing());
    if (!make.tooWide().isEmpty())
        return tooLongForThePage(make.tooWide());
    return pages;
}

} // namespace doorloom
