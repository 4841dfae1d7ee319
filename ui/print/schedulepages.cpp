#include "print/schedulepages.h"

#include "print/papersheet.h"
#include "print/printwords.h"
#include "print/schedulepieces.h"

#include <algorithm>

namespace doorloom {
namespace {

class ScheduleLayout {
public:
    ScheduleLayout(const Schedule& schedule, const SchedulePieces& make, SheetSize size)
        : schedule_(schedule), make_(make), stack_(roomOn(size).height, dangersPiece(make.plain(), schedule.title))
    {
        putOpening(stack_, make.plain(), schedule.title, scheduleTitle, size, {unitsLine});
    }

    std::vector<PrintedPage> filled()
    {
        for (const ScheduleBox& box : schedule_.boxes)
            addBox(box);
        addLine(printWords(wholeJobInWords(schedule_.counts), make_.plain().language()));
        return stack_.taken();
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
            stack_.put(blankPiece(12));
        stack_.put(heading);
        for (const ScheduleBlock& block : box.blocks)
            addBlock(block);
        const std::string name = box.tag.empty() ? "" : box.tag + ". ";
        addLine(printWords(name + inWords(countsInWords(box.counts), make_.plain().language())));
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
        const Piece piece = make_.plain().paragraph(text, smallPrint, Weight::Bold, 0, 4);
        if (piece.height > stack_.left())
            stack_.turn();
        stack_.put(piece);
    }

    const Schedule& schedule_;
    const SchedulePieces& make_;
    PageStack stack_;
    const ScheduleBox* box_ = nullptr;
};

} // namespace

Result<std::vector<PrintedPage>> schedulePages(const Schedule& schedule, const PaperFont& font,
                                               const PageSetup& setup)
{
    const double width = roomOn(setup.size).width;
    const Result<FittedColumns> columns = fittedColumns(schedule, font, setup.language, width);
    if (!font.lettersMissing().isEmpty())
        return lettersMissing(font, scheduleTitle);
    if (!columns.ok())
        return columns.problem();
    const PaperPieces make(font, setup.language, width);
    std::vector<PrintedPage> pages = ScheduleLayout(schedule, SchedulePieces(make, columns.value()), setup.size).filled();
    return finishedSheets(std::move(pages), make, schedule.title, scheduleTitle, setup.size);
}

} // namespace doorloom
