#pragma once

#include "papers/schedule.h"
#include "print/schedulecolumns.h"

namespace doorloom {

inline constexpr double leastRowHeight = 8 * 72 / 25.4; // 8 mm: rows are told apart at arm's length

// Makes the pieces of the terminal schedule for one width of page.
class SchedulePieces {
public:
    SchedulePieces(const PaperPieces& make, FittedColumns columns) : make_(make), columns_(std::move(columns)) {}

    Piece boxHeading(const ScheduleBox& box, Start start) const;
    Piece blockHead(const ScheduleBlock& block, Start start) const;
    Piece columnHeads() const;
    Piece stripHead(const Words& strip) const;
    Piece row(const ScheduleRow& row) const;
    Piece blockFoot(const ScheduleBlock& block) const;

    const PaperPieces& plain() const { return make_; }

private:
    void addLines(Piece& piece, const std::vector<Message>& lines, Weight weight) const;
    void addTagBox(Piece& piece, const QString& tag, double points, double tagWidth) const;

    const PaperPieces& make_;
    FittedColumns columns_;
};

} // namespace doorloom
