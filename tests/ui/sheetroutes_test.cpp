#include "ui/sheetdesk.h"
#include "ui/sheetjobs.h"
#include "ui/testwindow.h"

#include "canvas/drawing.h"
#include "edit/drawing.h"
#include "edit/jointerminals.h"
#include "file/jobfile.h"
#include "sheet/tidy.h"

#include <QFont>

#include <algorithm>
#include <map>
#include <set>

namespace doorloom {
namespace {

Job sample(const std::string& name)
{
    Result<Job> job = readJobFile(SOURCE_FOLDER "/samples/" + name + ".doorjob");
    EXPECT_TRUE(job.ok());
    return job.value();
}

Job tidied(Job job)
{
    EXPECT_TRUE(applyChange(job, tidySheets(job).value()).ok());
    return job;
}

struct Piece {
    Area area;
    std::uint32_t row;
    bool isLevel;
};

std::vector<Piece> piecesOf(const Drawing& drawing)
{
    std::vector<Piece> pieces;
    for (const ConductorDrawn& drawn : drawing.conductors().all())
        for (std::size_t i = 0; i + 1 < drawn.line.size(); ++i)
            pieces.push_back({areaOf(drawn.line[i], drawn.line[i + 1]), drawn.id.number,
                              drawn.line[i].y == drawn.line[i + 1].y});
    return pieces;
}

// What no drawing may show, in words.
Strings faultsOf(const Job& job, const Drawing& drawing)
{
    Strings faults;
    const auto tagOf = [&](std::uint32_t row) { return endsOf(job, *job.conductors.find({row})); };
    for (const ConductorDrawn& drawn : drawing.conductors().all())
        if (!drawn.straight.empty() || drawn.isWaiting)
            faults.push_back(tagOf(drawn.id.number) + " has no way");
    const std::vector<Piece> pieces = piecesOf(drawing);
    for (const Piece& piece : pieces) {
        for (const DeviceDrawn& device : drawing.devices().all())
            if (device.id && piece.area.meets(device.area.grownBy(-1)))
                faults.push_back(tagOf(piece.row) + " goes through " + job.devices.find(device.id)->tag);
        for (const Piece& other : pieces) {
            const bool areParallel = piece.isLevel == other.isLevel && piece.row < other.row;
            const Area common{std::max(piece.area.left, other.area.left), std::max(piece.area.top, other.area.top),
                              std::min(piece.area.right, other.area.right),
                              std::min(piece.area.bottom, other.area.bottom)};
            if (areParallel && common.right >= common.left && common.bottom >= common.top &&
                common.width() + common.height() > gridStep)
                faults.push_back(tagOf(piece.row) + " and " + tagOf(other.row) + " on one line");
        }
    }
    return faults;
}

TEST(SheetRoutes, OfEverySampleGoThroughNoDeviceAndNoTwoLieOnOneLine)
{
    for (const char* name : {"restroom-public", "restroom-staff", "archive-room", "yard-gate"})
        for (const Job& job : {sample(name), tidied(sample(name))}) {
            Drawing drawing(QFont(), Language::English);
            drawing.show(job, {});
            EXPECT_EQ(faultsOf(job, drawing), Strings{}) << name;
        }
}

// Found the slow way: every level piece with every upright one.
TEST(SheetRoutes, PassUnderLevelOnesWithAGapAtEachCrossingAndNowhereElse)
{
    const Job job = sample("restroom-public");
    Drawing drawing(QFont(), Language::English);
    drawing.show(job, {});
    const std::vector<Piece> pieces = piecesOf(drawing);
    std::size_t crossings = 0, gaps = 0;
    for (const Piece& level : pieces)
        for (const Piece& upright : pieces)
            crossings += level.isLevel && !upright.isLevel && level.row != upright.row &&
                         level.area.left < upright.area.left && upright.area.left < level.area.right &&
                         upright.area.top < level.area.top && level.area.top < upright.area.bottom;
    for (const ConductorDrawn& drawn : drawing.conductors().all()) {
        gaps += drawn.gaps.size();
        for (const Gap& gap : drawn.gaps) {
            EXPECT_TRUE(areaOf(drawn.line[gap.piece], drawn.line[gap.piece + 1])
                            .holds(Point{drawn.line[gap.piece].x, gap.at}));
            for (const EndDrawn& end : drawn.ends)
                EXPECT_GT(std::abs(end.port.at.y - gap.at) + std::abs(end.port.at.x - drawn.line[gap.piece].x),
                          gridStep / 2)
                    << "a crossing beside a joint could be taken for one";
        }
    }
    EXPECT_GT(crossings, 10u);
    EXPECT_EQ(gaps, crossings);
}

std::map<std::uint32_t, std::vector<Point>> linesOf(const Drawing& drawing)
{
    std::map<std::uint32_t, std::vector<Point>> lines;
    for (const ConductorDrawn& drawn : drawing.conductors().all())
        lines[drawn.id.number] = drawn.line;
    return lines;
}

TEST(SheetRoutes, FollowADraggedDeviceAndThoseElsewhereKeepTheirPoints)
{
    const Job job = tidied(sample("restroom-public"));
    Drawing drawing(QFont(), Language::English);
    drawing.show(job, {});
    const auto before = linesOf(drawing);
    const DeviceId dragged = deviceTagged(job, "DO1")->id;
    for (int step = 1; step <= 6; ++step) {
        drawing.displace(job, {dragged.number}, {25 * step, 50 * step});
        EXPECT_EQ(faultsOf(job, drawing), Strings{}) << "step " << step;
    }
    std::set<std::uint32_t> own;
    for (const Conductor* row : conductorsOn(job, dragged))
        own.insert(row->id.number);
    std::size_t kept = 0;
    for (const auto& [row, line] : linesOf(drawing)) {
        kept += line == before.at(row) ? 1 : 0;
        EXPECT_TRUE(!own.contains(row) || line != before.at(row));
    }
    EXPECT_GT(kept, before.size() / 2);
    drawing.displace(job, {}, {});
    EXPECT_EQ(linesOf(drawing), before);
}

QImage pictureOf(SheetDesk& desk)
{
    desk.selection.choose({});
    desk.view.fit();
    return desk.view.grab().toImage();
}

TEST(SheetRoutes, ADeviceThatIsPutDownIsDrawnAsFromNothing)
{
    SheetDesk desk(tidied(sample("yard-gate")));
    const QPoint from = desk.head("PS1");
    desk.press(from);
    for (int step = 1; step <= 5; ++step)
        desk.move(from + QPoint(9 * step, 14 * step));
    desk.move(from + QPoint(31, 22));
    desk.release(from + QPoint(31, 22));
    ASSERT_EQ(desk.open.history().count(), 1);

    SheetDesk other(desk.job());
    EXPECT_TRUE(pictureOf(desk) == pictureOf(other));
    desk.open.history().undo();
    SheetDesk before(tidied(sample("yard-gate")));
    EXPECT_TRUE(pictureOf(desk) == pictureOf(before));
}

TEST(SheetRoutes, ADragThatIsGivenUpLeavesThePictureAsItWas)
{
    SheetDesk desk(tidied(sample("yard-gate")));
    const QImage before = pictureOf(desk);
    const QPoint from = desk.head("PS1");
    desk.press(from);
    for (int step = 1; step <= 5; ++step)
        desk.move(from + QPoint(9 * step, 14 * step));
    desk.key(Qt::Key_Escape);
    desk.release(from + QPoint(45, 70));

    EXPECT_EQ(desk.open.history().count(), 0);
    EXPECT_TRUE(pictureOf(desk) == before);
}

TEST(SheetRoutes, WhereADeviceStandsInTheWayTheConductorIsDrawnStraightAndSaysSo)
{
    Job job = cabinetAndFrame();
    Numbers numbers(job);
    const auto put = [&](const char* tag, Point at) {
        const DeviceId id = deviceTagged(job, tag)->id;
        ASSERT_TRUE(applyChange(job, putOnSheet(job, numbers, job.sheets.begin()->id, id, at).value()).ok());
    };
    put("PS1", {0, 0});
    put("LM1", {0, 1000});
    put("ES1", {3000, 0});
    put("SPARE", {6000, 0});
    const Landing plus = landingNamed(job, "PS1:+"), lm1 = landingNamed(job, "LM1:+");
    ASSERT_TRUE(applyChange(job, joinTerminals(job, numbers, plus, lm1).value().change).ok());
    const ConductorId wire = job.conductors.begin()->id;
    Drawing drawing(QFont(), Language::English);
    drawing.show(job, {});
    EXPECT_TRUE(drawing.conductors().find(wire.number)->straight.empty());
    const Area supply = drawing.devices().find(plus.device.number)->area;

    put("SPARE", {supply.right, 0}); // right before its terminals
    drawing.show(job, {});
    const ConductorDrawn& drawn = *drawing.conductors().find(wire.number);
    ASSERT_EQ(drawn.straight, std::vector<std::size_t>{0});
    EXPECT_EQ(drawn.line.size(), 2u);

    SheetDesk desk(job);
    const QRect box = desk.view.rectOf(wire.number);
    std::string said;
    for (int y = box.top(); y <= box.bottom() && said.empty(); ++y)
        for (int x = box.left(); x <= box.right() && said.empty(); ++x)
            if (const std::string words = desk.wordsAt({x, y}); words.find("No way round") != std::string::npos)
                said = words;
    EXPECT_NE(said, "");
}

TEST(SheetRoutes, ConductorsLeaveASpliceByDifferentSides)
{
    Job job = tidied(sample("restroom-staff"));
    Numbers numbers(job);
    const SheetId sheet = job.sheets.begin()->id;
    Splice splice{{numbers.take()}, "S1", PlaceId{}, "", 4};
    const std::uint32_t placement = numbers.take();
    const Point at{100, 100};
    ASSERT_TRUE(applyChange(job, Change{{Put<Splice>{splice.id, splice},
                                         Put<Placement>{{placement},
                                                        Placement{{placement}, sheet, splice.id, at, 0}}}})
                    .ok());
    for (const char* end : {"ES1:1", "PS1:+", "PS1:B+"}) {
        Conductor wire;
        wire.id = {numbers.take()};
        wire.tag = "X" + std::string(end);
        wire.make = ConductorMake::Wire;
        wire.from = landedAt(splice.id);
        wire.to = landedAt(landingNamed(job, end));
        ASSERT_TRUE(applyChange(job, Change{{Put<Conductor>{wire.id, wire}}}).ok());
    }
    Drawing drawing(QFont(), Language::English);
    drawing.show(job, {});
    std::set<std::pair<int, int>> second;
    for (const Conductor* row : conductorsOn(job, splice.id)) {
        const ConductorDrawn& drawn = *drawing.conductors().find(row->id.number);
        EXPECT_EQ(drawn.line.front(), at);
        EXPECT_TRUE(drawn.straight.empty());
        const Point way = drawn.line[1] - at;
        second.insert({(way.x > 0) - (way.x < 0), (way.y > 0) - (way.y < 0)});
    }
    EXPECT_EQ(second.size(), 3u);
}

TEST(SheetRoutes, TidyIsAnActionThatIsUndoneInOneStep)
{
    TestWindow desk;
    desk.window().openSample("yard-gate.doorjob");
    const Job before = desk.job();
    EXPECT_TRUE(desk.action("tidy").isEnabled());
    desk.action("tidy").trigger();

    EXPECT_FALSE(desk.job() == before);
    EXPECT_EQ(desk.window().open().history().count(), 1);
    EXPECT_EQ(desk.window().open().history().undoText(), "tidy the sheet");
    desk.action("tidy").trigger();
    EXPECT_EQ(desk.window().open().history().count(), 1) << "it is tidy: nothing is done";
    desk.action("undo").trigger();
    EXPECT_TRUE(desk.job() == before);
}

} // namespace
} // namespace doorloom
