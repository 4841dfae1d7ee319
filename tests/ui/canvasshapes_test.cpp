#include "sheet/arrangement.h"
#include "sheet/cableplan.h"
#include "canvas/look.h"
#include "sheet/plainroute.h"
#include "sheet/stripshape.h"
#include "core/random.h"
#include "model/colours.h"
#include "ui/sheetjobs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace doorloom {
namespace {

constexpr Facing allFacings[] = {Facing::Right, Facing::Bottom, Facing::Left, Facing::Top};

// ---- Strips of terminals

TEST(CanvasShapes, AStripHasItsTerminalsInTheOrderPrintedOnTheSideAskedFor)
{
    const Kind& kind = catalogueKind("relay-module-negative");
    for (const Facing facing : allFacings) {
        const StripShape shape = stripShape(kind, {"LM1", {}, {}}, facing, Language::English);
        const auto terminals = terminalsOf(kind);
        ASSERT_EQ(shape.cells.size(), terminals.size());
        for (std::size_t i = 0; i < terminals.size(); ++i) {
            const Cell& cell = shape.cells[i];
            EXPECT_EQ(cell.printed, terminals[i]->printed);
            EXPECT_TRUE(shape.area.holds(cell.area));
            EXPECT_EQ(cell.landing.facing, facing);
            const Point out = cell.landing.at + away(facing, 1);
            EXPECT_TRUE(shape.area.holds(cell.landing.at) && !shape.area.holds(out)) << "on the edge";
            EXPECT_LE(roomFor(cell.printed, TextStyle::Terminal), cell.area.width());
            if (i > 0) {
                EXPECT_GE(isLevel(facing) ? cell.area.top : cell.area.left,
                          isLevel(facing) ? shape.cells[i - 1].area.bottom : shape.cells[i - 1].area.right);
            }
        }
    }
}

TEST(CanvasShapes, EveryKindStandsOnTheGridAndItsPartsDoNotOverlap)
{
    for (const char* name : {"dc-supply-24", "relay-module-negative", "terminal-strip-8", "terminal-strip-4x",
                             "diode", "wave-actuator", "door-operator", "strike-fail-safe"})
        for (const Facing facing : allFacings) {
            const StripShape shape =
                stripShape(catalogueKind(name), {"XX12", "FRAME", "existing"}, facing, Language::Spanish);
            EXPECT_EQ(shape.area.width() % gridStep, 0) << name;
            EXPECT_EQ(shape.area.height() % gridStep, 0) << name;
            EXPECT_TRUE(shape.area.holds(shape.head));
            for (const Cell& cell : shape.cells) {
                EXPECT_FALSE(cell.area.grownBy(-1).meets(shape.head)) << name << " " << cell.printed;
                for (const Cell& other : shape.cells)
                    EXPECT_TRUE(&cell == &other || !cell.area.grownBy(-1).meets(other.area));
            }
        }
}

TEST(CanvasShapes, AJointIsLandedOnFromTheSideWhereTheOtherEndIs)
{
    const StripShape shape =
        stripShape(catalogueKind("terminal-strip-8"), {"TS1", {}, {}}, Facing::Right, Language::English);

    EXPECT_EQ(landingOn(shape, 2, {1000, 1000}, {5000, 0}).facing, Facing::Right);
    EXPECT_EQ(landingOn(shape, 2, {1000, 1000}, {0, 0}),
              (Port{{1000, 1000 + shape.cells[2].landing.at.y}, Facing::Left}));
    const StripShape supply =
        stripShape(catalogueKind("dc-supply-24"), {"PS1", {}, {}}, Facing::Right, Language::English);
    EXPECT_EQ(landingOn(supply, 0, {1000, 1000}, {0, 0}).facing, Facing::Right);
}

// ---- Routes

int bendsOf(const std::vector<Point>& line)
{
    return static_cast<int>(line.size()) - 2;
}

bool isLevelOrUpright(const std::vector<Point>& line)
{
    for (std::size_t i = 1; i < line.size(); ++i)
        if ((line[i].x == line[i - 1].x) == (line[i].y == line[i - 1].y))
            return false;
    return true;
}

TEST(CanvasRoute, BetweenTwoThatFaceEachOtherHasTwoBends)
{
    const auto line = route({{0, 0}, Facing::Right}, {{1000, 300}, Facing::Left}, {}, 100);

    EXPECT_EQ(line, (std::vector<Point>{{0, 0}, {100, 0}, {100, 300}, {1000, 300}}));
    EXPECT_EQ(bendsOf(route({{0, 0}, Facing::Right}, {{1000, 0}, Facing::Left}, {}, 100)), 0);
    EXPECT_EQ(bendsOf(route({{0, 0}, Facing::Right}, {{0, 500}, Facing::Right}, {}, 100)), 2);
    EXPECT_EQ(bendsOf(route({{0, 0}, Facing::Right}, {{1000, 500}, Facing::Top}, {}, 100)), 1);
}

TEST(CanvasRoute, LeavesEveryPortTheWayItFacesAndRunsLevelAndUprightAlone)
{
    forEachSeed(500, [](Random& random) {
        const auto port = [&] {
            return Port{{random.between(-40, 40) * 25, random.between(-40, 40) * 25},
                        allFacings[random.below(4)]};
        };
        const Port from = port(), to = port();
        const int stub = random.between(50, 400);
        const std::vector<Point> line = route(from, to, {}, stub);
        if (from.at == to.at)
            return;
        ASSERT_GE(line.size(), 2u);
        EXPECT_EQ(line.front(), from.at);
        EXPECT_EQ(line.back(), to.at);
        EXPECT_TRUE(isLevelOrUpright(line));
        EXPECT_LE(bendsOf(line), 4);
    });
}

TEST(CanvasRoute, PassesItsPinnedPointsInTheirOrder)
{
    forEachSeed(200, [](Random& random) {
        const auto point = [&] { return Point{random.between(-40, 40) * 25, random.between(-40, 40) * 25}; };
        const std::vector<Point> pins{point(), point()};
        const std::vector<Point> line =
            route({point(), allFacings[random.below(4)]}, {point(), allFacings[random.below(4)]}, pins, 60);
        std::size_t piece = 0;
        for (const Point pin : pins) {
            while (piece + 1 < line.size() && !areaOf(line[piece], line[piece + 1]).holds(pin))
                ++piece;
            EXPECT_LT(piece + 1, line.size()) << "a pinned point is left out";
        }
        EXPECT_TRUE(isLevelOrUpright(line));
    });
}

// ---- Cables

TEST(CanvasCable, RunsItsCoresSideBySideAndNoneOverAnother)
{
    const CableSide cabinet{{0, 0, 1000, 2000}, true, {}, {}};
    for (const Area& other :
         {Area{2000, 500, 2500, 900}, Area{2000, 3000, 2500, 3400}, Area{-2000, 100, -1500, 300},
          Area{100, 3000, 600, 3300}, Area{0, -3000, 500, -2500}}) {
        const auto plan = planCable(cabinet, {other, true, {}, {}}, 6, 100);
        ASSERT_TRUE(plan);
        EXPECT_TRUE(isLevelOrUpright(plan->trunk));
        for (int core = 0; core + 1 < 6; ++core) {
            const auto line = coreInTrunk(*plan, core), next = coreInTrunk(*plan, core + 1);
            ASSERT_EQ(line.size(), plan->trunk.size());
            EXPECT_TRUE(isLevelOrUpright(line));
            for (std::size_t i = 0; i < line.size(); ++i) {
                const Point step = next[i] - line[i];
                EXPECT_TRUE(std::abs(step.x) == corePitch || std::abs(step.y) == corePitch);
                EXPECT_TRUE(std::abs(step.x) <= corePitch && std::abs(step.y) <= corePitch);
            }
        }
    }
    EXPECT_FALSE(planCable(cabinet, {{500, 500, 3000, 800}, true, {}, {}}, 2, 100)) << "no room for a jacket";
    EXPECT_FALSE(planCable({}, {}, 2, 100)) << "neither end is on the sheet";
    EXPECT_TRUE(planCable(cabinet, {}, 2, 100)) << "the other end is on another sheet";
}

TEST(CanvasCable, GoesThroughAWallBesideItsNeighboursInTheirOrder)
{
    forEachSeed(200, [](Random& random) {
        std::vector<ThroughWall> wishes(random.below(7) + 1);
        int needed = 0;
        for (ThroughWall& wish : wishes) {
            wish = {random.between(0, 2000), random.between(20, 60)};
            needed += 2 * wish.halfWidth + 40;
        }
        const std::vector<int> along = spreadAlong(wishes, 0, 2000);
        for (std::size_t i = 0; i < wishes.size(); ++i) {
            if (needed < 2000) {
                EXPECT_GE(along[i] - wishes[i].halfWidth, 0);
            }
            EXPECT_LE(along[i] + wishes[i].halfWidth, 2000);
            for (std::size_t k = 0; k < i; ++k) {
                EXPECT_GE(std::abs(along[i] - along[k]), wishes[i].halfWidth + wishes[k].halfWidth);
                EXPECT_TRUE(wishes[i].along == wishes[k].along ||
                            (wishes[i].along < wishes[k].along) == (along[i] < along[k]));
            }
        }
    });
    EXPECT_EQ(spreadAlong({{500, 20}, {900, 20}}, 0, 2000), (std::vector{500, 900}))
        << "no shift without need";
}

// ---- What has no placement

TEST(CanvasArrangement, SetsEverythingOutOnTheGridWithNothingOverAnother)
{
    Job job = cabinetAndFrame();
    for (int i = 0; i < 12; ++i)
        addDevice(job, "WO" + std::to_string(i), "wave-actuator", job.places.begin()->id);
    std::vector<std::uint32_t> numbers;
    for (const Device& device : job.devices)
        numbers.push_back(device.id.number);

    const std::vector<Arranged> all = arranged(job, numbers, {300, 300});

    ASSERT_EQ(all.size(), numbers.size());
    std::vector<Area> areas;
    for (const Arranged& each : all) {
        EXPECT_EQ(onGrid(each.seat.at), each.seat.at);
        const Device& device = *job.devices.find({each.number});
        const Area area =
            stripShape(*kindOf(job, device), {device.tag, {}, {}}, each.seat.facing, Language::English)
                .area.movedBy(each.seat.at);
        for (const Area& other : areas)
            EXPECT_FALSE(area.meets(other)) << device.tag;
        areas.push_back(area);
    }
}

// ---- Colours

// Contrast of two colours.
// Source: WCAG 2.1, 'contrast ratio' and 'relative luminance', from memory
double luminance(QRgb colour)
{
    const auto part = [](int value) {
        const double share = value / 255.0;
        return share <= 0.03928 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
    };
    return 0.2126 * part(qRed(colour)) + 0.7152 * part(qGreen(colour)) + 0.0722 * part(qBlue(colour));
}

double contrast(QRgb a, QRgb b)
{
    const double x = luminance(a), y = luminance(b);
    return (std::max(x, y) + 0.05) / (std::min(x, y) + 0.05);
}

TEST(CanvasLook, WordsAndEdgesStandOutInLightAndDark)
{
    QPalette light, dark;
    light.setColor(QPalette::Window, Qt::white);
    dark.setColor(QPalette::Window, Qt::black);
    for (const QPalette& palette : {light, dark}) {
        const Look& look = lookOf(palette);
        for (const QRgb background : {look.device, look.head, look.paper, look.frame, look.note})
            EXPECT_GE(contrast(look.ink, background), 7) << std::hex << background;
        for (const QRgb background : {look.device, look.head, look.paper, look.frame})
            EXPECT_GE(contrast(look.softInk, background), 4.5) << std::hex << background;
        EXPECT_GE(contrast(look.frameInk, look.frame), 4.5);
        EXPECT_GE(contrast(look.jacketInk, look.paper), 4.5);
        for (const QRgb background : {look.paper, look.frame}) {
            EXPECT_GE(contrast(look.conductorEdge, background), 3);
            EXPECT_GE(contrast(look.deviceEdge, background), 3);
            EXPECT_GE(contrast(look.focus, background), 3);
            EXPECT_GE(contrast(look.waiting, background), 3);
        }
        // An insulation that melts into the paper is held apart by its edge.
        for (const ColourCode& code : colourCodes()) {
            const QRgb base = insulationOf(code.letters).base;
            EXPECT_TRUE(contrast(base, look.paper) >= 1.5 || contrast(look.conductorEdge, look.paper) >= 3)
                << code.letters;
        }
    }
    EXPECT_NE(lookOf(light).paper, lookOf(dark).paper);
}

TEST(CanvasLook, EveryLetterCodeHasAColourOfItsOwn)
{
    std::vector<Insulation> seen;
    for (const ColourCode& code : colourCodes()) {
        const Insulation insulation = insulationOf(code.letters);
        EXPECT_EQ(std::find(seen.begin(), seen.end(), insulation), seen.end()) << code.letters;
        EXPECT_FALSE(insulation == insulationOf("")) << code.letters;
        seen.push_back(insulation);
    }
    EXPECT_EQ(insulationOf("WH+BU").base, insulationOf("WH").base);
    EXPECT_EQ(insulationOf("WH+BU").stripe, insulationOf("BU").base);
    EXPECT_EQ(insulationOf("GNYE").stripe, insulationOf("YE").base);
    EXPECT_EQ(insulationOf("bare?"), insulationOf(""));
}

} // namespace
} // namespace doorloom
