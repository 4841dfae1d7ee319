#include "core/random.h"
#include "core/routesheets.h"
#include "route/readsheet.h"
#include "route/router.h"

#include <gtest/gtest.h>

#include <limits>
#include <map>
#include <numeric>

namespace doorloom::routing {
namespace {

std::string listed(const std::vector<std::string>& faults)
{
    std::string all;
    for (const std::string& fault : faults)
        all += fault + "\n";
    return all;
}

std::vector<Route> routed(const Sheet& sheet)
{
    Router router(sheet);
    router.routeAll();
    return router.routes();
}

Sheet sheetOf(const char* text)
{
    Result<Sheet> sheet = readSheet(text);
    EXPECT_TRUE(sheet.ok()) << inWords(sheet.problem());
    return sheet.ok() ? sheet.value() : Sheet{};
}

std::map<std::string, Route> byName(const Sheet& sheet, const std::vector<Route>& routes)
{
    std::map<std::string, Route> named;
    for (std::size_t i = 0; i < routes.size(); ++i)
        named[sheet.connectors[i].id] = routes[i];
    return named;
}

constexpr const char* twoBoxes = "box a 0 0 60 50\nbox b 200 100 60 50\n"
                                 "port a 1 R 60 20\nport b 1 L 200 120\nconn c a.1 b.1\n";

TEST(Route, KeepsEveryRuleOnRandomSheets)
{
    forEachSeed(25, [](Random& random) {
        const Sheet sheet = randomSheet(random, random.between(2, 14), random.between(1, 60));
        const std::vector<Route> routes = routed(sheet);
        EXPECT_EQ(listed(faultsOf(sheet, routes, 5)), "");
    });
}

TEST(Route, TogetherAreNoLongerThanTheLimit)
{
    double worst = 0;
    forEachSeed(25, [&](Random& random) {
        const Sheet sheet = randomSheet(random, 12, 40);
        worst = std::max(worst, lengthRatio(sheet, routed(sheet)));
    });
    EXPECT_LE(worst, 1.15);
}

TEST(Route, CrossLessOftenThanStraightLinesWould)
{
    int straight = 0, crossings = 0;
    forEachSeed(10, [&](Random& random) {
        const Sheet sheet = randomSheet(random, 12, 40);
        crossings += crossingsOf(routed(sheet));
        const auto side = [](Spot a, Spot b, Spot c) {
            return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        };
        for (std::size_t i = 0; i < sheet.connectors.size(); ++i)
            for (std::size_t k = 0; k < i; ++k) {
                const auto at = [&](int port) { return sheet.ports[static_cast<std::size_t>(port)].at; };
                const Spot a = at(sheet.connectors[i].from), b = at(sheet.connectors[i].to);
                const Spot c = at(sheet.connectors[k].from), d = at(sheet.connectors[k].to);
                straight += side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
            }
    });
    EXPECT_LT(crossings, straight);
}

TEST(Route, IsTheSameInWhateverOrderTheSheetNamesThings)
{
    forEachSeed(10, [](Random& random) {
        const Sheet sheet = randomSheet(random, 10, 40);
        const Sheet other = shuffled(sheet, random);
        EXPECT_EQ(byName(sheet, routed(sheet)), byName(other, routed(other)));
    });
}

TEST(Route, MovesAlongWithTheWholeSheet)
{
    forEachSeed(10, [](Random& random) {
        const Sheet sheet = randomSheet(random, 10, 30);
        const Spot by{1000.0 * random.between(-9, 9), 25.0 * random.between(-9, 9)};
        std::vector<Route> expected = routed(sheet);
        for (Route& route : expected)
            for (Spot& spot : route)
                spot = {spot.x + by.x, spot.y + by.y};
        EXPECT_EQ(routed(shifted(sheet, by)), expected);
    });
}

// A move that leaves every box clear of the others; none after many tries.
std::optional<Move> randomMove(const Sheet& sheet, Random& random)
{
    for (int i = 0; i < 50; ++i) {
        const int box = random.between(0, static_cast<int>(sheet.boxes.size()) - 1);
        const Box& moved = sheet.boxes[static_cast<std::size_t>(box)];
        const Spot corner{moved.corner.x + 5 * random.between(-20, 20),
                          moved.corner.y + 5 * random.between(-20, 20)};
        const bool isClear = std::all_of(sheet.boxes.begin(), sheet.boxes.end(), [&](const Box& other) {
            return &other == &moved || corner.x > other.corner.x + other.width + 39 ||
                   other.corner.x > corner.x + moved.width + 39 ||
                   corner.y > other.corner.y + other.height + 39 ||
                   other.corner.y > corner.y + moved.height + 39;
        });
        if (isClear)
            return Move{box, corner};
    }
    return std::nullopt;
}

TEST(Route, WhatIsLaidLiesAsTheSheetSaysAndTheOthersGoRoundItOrAcross)
{
    forEachSeed(15, [](Random& random) {
        Sheet sheet = randomSheet(random, 10, 40);
        const std::vector<Route> before = routed(sheet);
        for (std::size_t i = 0; i < 6; ++i) {
            Connector& laid = sheet.connectors[i * 5];
            laid.isLaid = true;
            laid.pinned.assign(before[i * 5].begin() + 1, before[i * 5].end() - 1);
        }
        for (Connector& connector : sheet.connectors) // those that are left have other ends: they must look anew
            if (!connector.isLaid)
                std::swap(connector.from, connector.to);
        const std::vector<Route> routes = routed(sheet);
        EXPECT_EQ(listed(faultsOf(sheet, routes, 5)), "");
        for (std::size_t i = 0; i < 6; ++i)
            EXPECT_EQ(routes[i * 5], before[i * 5]);
    });
}

TEST(Route, SeveralBoxesMovedAtOnceKeepEveryRule)
{
    forEachSeed(10, [](Random& random) {
        Sheet sheet = randomSheet(random, 10, 40);
        Router router(sheet);
        router.routeAll();
        for (int i = 0; i < 8; ++i) {
            for (int k = 0; k < 3; ++k)
                if (const std::optional<Move> move = randomMove(sheet, random))
                    moveOn(sheet, move->box, move->corner);
            router.update(sheet);
            ASSERT_EQ(listed(faultsOf(sheet, router.routes(), 5)), "") << "after " << i + 1 << " updates";
        }
    });
}

TEST(Route, RoutesThatAreTakenAsTheyAreStayWhereNothingChanges)
{
    forEachSeed(10, [](Random& random) {
        Sheet sheet = randomSheet(random, 10, 40);
        const std::vector<Route> routes = routed(sheet);
        Router router(sheet);
        router.layAs(routes);
        EXPECT_EQ(router.routes(), routes);
        router.update(sheet);
        EXPECT_EQ(router.routes(), routes);
        if (const std::optional<Move> move = randomMove(sheet, random)) {
            moveOn(sheet, move->box, move->corner);
            router.update(sheet);
            EXPECT_EQ(listed(faultsOf(sheet, router.routes(), 5)), "");
        }
    });
}

TEST(Route, KeepsEveryRuleWhileBoxesAreMoved)
{
    forEachSeed(10, [](Random& random) {
        Sheet sheet = randomSheet(random, 10, 40);
        Router router(sheet);
        router.routeAll();
        for (int i = 0; i < 12; ++i)
            if (const std::optional<Move> move = randomMove(sheet, random)) {
                router.moveBox(move->box, move->corner);
                moveOn(sheet, move->box, move->corner);
                ASSERT_EQ(listed(faultsOf(sheet, router.routes(), 5)), "") << "after " << i + 1 << " moves";
            }
    });
}

TEST(Route, SettlesAfterMovesToWhatItIsFromNothing)
{
    forEachSeed(10, [](Random& random) {
        Sheet sheet = randomSheet(random, 8, 30);
        Router router(sheet);
        router.routeAll();
        for (int i = 0; i < 6; ++i)
            if (const std::optional<Move> move = randomMove(sheet, random)) {
                router.moveBox(move->box, move->corner);
                moveOn(sheet, move->box, move->corner);
            }
        router.routeAll();
        EXPECT_EQ(router.routes(), routed(sheet));
    });
}

TEST(Route, OfConductorsThatAMoveDoesNotTouchStays)
{
    Sheet sheet = sheetOf("box a 0 0 60 50\nbox b 200 100 60 50\nbox c 0 400 60 50\nbox d 200 500 60 50\n"
                          "port a 1 R 60 20\nport b 1 L 200 120\nconn c1 a.1 b.1\n"
                          "port c 1 R 60 420\nport d 1 L 200 520\nconn c2 c.1 d.1\n");
    Router router(sheet);
    router.routeAll();
    const Route before = router.route(0);
    router.moveBox(3, {203.5, 507.25}); // between the lines: the grid is laid anew
    EXPECT_EQ(router.route(0), before);
    EXPECT_EQ(router.route(1).back(), (Spot{203.5, 527.25}));
}

TEST(Route, OfABundleThatTurnsHasNoCrossing)
{
    std::string text = "box a 0 0 80 210\nbox b 600 300 80 210\n";
    for (int i = 1; i <= 20; ++i) {
        const std::string name = std::to_string(i);
        text += "port a " + name + " R 80 " + std::to_string(10 * i) + "\n";
        text += "port b " + name + " L 600 " + std::to_string(300 + 10 * i) + "\n";
        text += "conn c" + name + " a." + name + " b." + name + "\n";
    }
    const Sheet sheet = sheetOf(text.c_str());
    const std::vector<Route> routes = routed(sheet);
    EXPECT_EQ(listed(faultsOf(sheet, routes, 5)), "");
    EXPECT_EQ(crossingsOf(routes), 0);
    for (const Route& route : routes)
        EXPECT_EQ(route.size(), 4u);
}

TEST(Route, IsFoundAcrossHundredsOfOthers)
{
    std::string text = "box top -100 0 3220 50\nbox low -100 400 3220 50\nbox left -100 50 20 350\n"
                       "box right 3100 50 20 350\n" // they shut all others in
                       "box a -70 180 60 50\nbox b 3030 180 60 50\n"
                       "port a 1 R -10 200\nport b 1 L 3030 200\nconn across a.1 b.1\n";
    for (int i = 1; i <= 300; ++i) {
        const std::string name = std::to_string(i), x = std::to_string(10 * i);
        text += "port top " + name + " B " + x + " 50\nport low " + name + " T " + x + " 400\n";
        text += "conn c" + name + " top." + name + " low." + name + "\n";
    }
    const Sheet sheet = sheetOf(text.c_str());
    EXPECT_EQ(listed(faultsOf(sheet, routed(sheet), 5)), "");
}

TEST(Route, JogsBetweenPortsThatFaceEachOtherClosely)
{
    const Sheet sheet = sheetOf("box a 0 0 80 160\nbox b 85 0 80 160\n"
                                "port a 1 R 80 20\nport b 1 L 85 20\nconn straight a.1 b.1\n"
                                "port a 2 R 80 60\nport b 2 L 85 90\nconn jog a.2 b.2\n");
    const std::vector<Route> routes = routed(sheet);
    EXPECT_EQ(listed(faultsOf(sheet, routes, 5)), "");
    EXPECT_EQ(routes[0].size(), 2u);
    EXPECT_EQ(routes[1].size(), 4u);
}

TEST(Route, IsLeftOutWhereBoxesLeaveNoWay)
{
    const Sheet sheet = sheetOf("box in 100 100 50 50\nbox n 50 50 150 20\nbox s 50 180 150 20\n"
                                "box w 50 70 20 110\nbox e 180 70 20 110\nbox far 400 100 50 50\n"
                                "port in 1 R 150 120\nport far 1 L 400 120\nconn shut in.1 far.1\n"
                                "port in 2 R 150 130\nport e 1 L 180 140\nconn open in.2 e.1\n");
    Router router(sheet);
    router.routeAll();
    EXPECT_TRUE(router.route(0).empty());
    EXPECT_FALSE(router.route(1).empty());

    router.moveBox(4, {180, 300}); // the ring opens
    EXPECT_FALSE(router.route(0).empty());
}

TEST(Route, PassesItsPinnedBends)
{
    Sheet sheet = sheetOf(twoBoxes);
    sheet.connectors[0].pinned = {{102.5, 300}, {170, 300}};
    const std::vector<Route> routes = routed(sheet);
    EXPECT_EQ(listed(faultsOf(sheet, routes, 5)), "");
    for (const Spot& pin : sheet.connectors[0].pinned) {
        bool isPassed = false;
        for (std::size_t i = 1; i < routes[0].size(); ++i) {
            const Spot a = routes[0][i - 1], b = routes[0][i];
            isPassed = isPassed || (pin.x >= std::min(a.x, b.x) && pin.x <= std::max(a.x, b.x) &&
                                    pin.y >= std::min(a.y, b.y) && pin.y <= std::max(a.y, b.y));
        }
        EXPECT_TRUE(isPassed) << pin.x << "," << pin.y;
    }
}

TEST(Route, OfConductorsThatShareAPortPartsInFrontOfIt)
{
    const Sheet sheet = sheetOf("box a 0 100 60 50\nbox b 200 0 60 50\nbox c 200 200 60 50\n"
                                "port a 1 R 60 120\nport b 1 L 200 20\nport c 1 L 200 220\n"
                                "conn up a.1 b.1\nconn down a.1 c.1\n");
    const std::vector<Route> routes = routed(sheet);
    ASSERT_FALSE(routes[0].empty());
    ASSERT_FALSE(routes[1].empty());
    EXPECT_EQ(routes[0].front(), routes[1].front());
    for (const std::string& fault : faultsOf(sheet, routes, 5)) // on one line as far as the first bend
        EXPECT_TRUE(fault.find("60.0") != std::string::npos || fault.find("bends on") != std::string::npos)
            << fault;
}

// Whether a fault is between two conductors of one port.
bool isBetweenSharers(const Sheet& sheet, const std::string& fault)
{
    std::vector<const Connector*> named;
    for (const Connector& connector : sheet.connectors)
        if ((" " + fault + " ").find(" " + connector.id + " ") != std::string::npos)
            named.push_back(&connector);
    if (named.size() != 2)
        return false;
    const Connector &a = *named[0], &b = *named[1];
    return a.from == b.from || a.from == b.to || a.to == b.from || a.to == b.to;
}

TEST(Route, TouchesNoneButThoseThatShareAPort)
{
    forEachSeed(10, [](Random& random) {
        Sheet sheet = randomSheet(random, 8, 30);
        for (Connector& connector : sheet.connectors)
            if (const int port = random.oneOf(sheet.connectors).to; random.oneIn(4) && port != connector.to)
                connector.from = port;
        Router router(sheet);
        router.routeAll();
        for (int i = 0; i < 5; ++i) {
            std::size_t missing = 0;
            for (const std::string& fault : faultsOf(sheet, router.routes(), 0))
                if (fault.find("missing") != std::string::npos)
                    ++missing;
                else
                    EXPECT_TRUE(isBetweenSharers(sheet, fault)) << fault;
            EXPECT_LE(missing, sheet.connectors.size() / 5);
            if (const std::optional<Move> move = randomMove(sheet, random)) {
                router.moveBox(move->box, move->corner);
                moveOn(sheet, move->box, move->corner);
            }
        }
    });
}

TEST(Route, OfAPinThatCannotBePassedIsLeftOut)
{
    Sheet sheet =
        sheetOf("box a 0 0 60 50\nbox b 200 0 60 50\nport a 1 R 60 20\nport b 1 L 200 20\nconn c a.1 b.1\n"
                "box n 90 60 30 5\nbox w 90 60 5 60\nbox s 90 115 30 5\n");
    sheet.connectors[0].pinned = {{100, 62}}; // inside a box
    EXPECT_TRUE(routed(sheet)[0].empty());
    sheet.connectors[0].pinned = {{100, 90}}; // in a bay: in and out again by another line
    const std::vector<Route> routes = routed(sheet);
    EXPECT_EQ(listed(faultsOf(sheet, routes, 5)), "");
}

TEST(Route, OfOddSheetsIsFoundOrLeftOut)
{
    const char* const odd[] = {
        "",
        "box a 0 0 0 0\nbox b 100 0 0 0\nport a 1 R 0 0\nport b 1 L 100 0\nconn c a.1 b.1\n",
        "box a 0 0 60 50\nbox b 0 0 60 50\nport a 1 R 60 20\nport b 1 L 0 20\nconn c a.1 b.1\n",
        "box a 0 0 60 50\nport a 1 R 30 20\nport a 2 L 20 10\nconn c a.1 a.2\n",
        "box a 0 0 60 50\nbox b 60 0 60 50\nport a 1 R 60 20\nport b 1 L 60 20\nconn c a.1 b.1\n",
        "box a -1e9 -1e9 60 50\nbox b 999999900 999999900 60 50\nport a 1 R -999999940 -999999980\n"
        "port b 1 L 999999900 999999920\nconn c a.1 b.1\n",
        "box a 0 0 1e9 1e9\nport a 1 R 1e9 5\nport a 2 R 1e9 15\nconn c a.1 a.2\n",
    };
    for (const char* text : odd) {
        const Sheet sheet = sheetOf(text);
        const std::vector<Route> routes = routed(sheet);
        for (const std::string& fault : faultsOf(sheet, routes, 0))
            EXPECT_NE(fault.find("missing"), fault.npos) << text << fault;
    }
}

TEST(Route, OfCoordinatesThatAreNoNumbersIsLeftOut)
{
    for (double wrong :
         {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(), -1e300}) {
        Sheet sheet = sheetOf(twoBoxes);
        sheet.ports[0].at.y = wrong;
        EXPECT_TRUE(routed(sheet)[0].empty());
        sheet = sheetOf(twoBoxes);
        sheet.boxes[0].corner.x = wrong;
        EXPECT_EQ(routed(sheet).size(), 1u);
    }
}

// All those that go straight are there; of those that have to turn, as many as there is room and work for.
TEST(Route, OfTenThousandBetweenTwoBoxesEndsInBoundedTime)
{
    for (const bool isStraight : {true, false}) {
        Sheet sheet;
        sheet.boxes = {{"a", {0, 0}, 60, 100'020}, {"b", {200, 0}, 60, 100'020}};
        for (int i = 0; i < 10'000; ++i) {
            const double y = 10 + 10 * i, to = isStraight ? y : 10 + 10 * ((i * 7919) % 10'000);
            sheet.ports.push_back({"l" + std::to_string(i), 0, Side::Right, {60, y}});
            sheet.ports.push_back({"r" + std::to_string(i), 1, Side::Left, {200, to}});
            sheet.connectors.push_back({"c" + std::to_string(i), 2 * i, 2 * i + 1});
        }
        const std::vector<Route> routes = routed(sheet);
        const auto found =
            std::count_if(routes.begin(), routes.end(), [](const Route& route) { return !route.empty(); });
        EXPECT_TRUE(isStraight ? found == 10'000 : found > 0) << found;
    }
}

TEST(ReadSheet, NamesTheLineThatItCannotRead)
{
    const std::pair<const char*, const char*> wrong[] = {
        {"box a 0 0 60\n", "line 1: 'box' takes 5 words after it. Write: box ID x y w h."},
        {"# fine\n\nboks a 0 0 60 50\n",
         "line 3: A sheet has no line that begins with 'boks'. Begin it with box, port, conn, pin or #."},
        {"box a 0 0 60 5o\n",
         "line 1: '5o' is no number between −1e9 and 1e9. Write digits with a point, as in 12.5; a "
         "width or height is not below 0."},
        {"box a 0 0 nan 50\n",
         "line 1: 'nan' is no number between −1e9 and 1e9. Write digits with a point, as in 12.5; "
         "a width or height is not below 0."},
        {"box a 0 0 60 50\nbox a 9 9 60 50\n", "line 2: 'a' is there already. Give it another name."},
        {"port a 1 R 60 20\n",
         "line 1: There is no 'a' before this line. Name it in a line above, or correct the name."},
        {"box a 0 0 60 50\nport a 1 X 60 20\n", "line 2: 'X' is no side. Use L, R, T or B."},
        {"conn c a.1 b.1\n",
         "line 1: There is no 'a.1' before this line. Name it in a line above, or correct the name."},
    };
    for (const auto& [text, message] : wrong) {
        const Result<Sheet> sheet = readSheet(text);
        ASSERT_FALSE(sheet.ok()) << text;
        EXPECT_EQ(inWords(sheet.problem()), message);
    }
}

TEST(ReadSheet, RefusesRubbishWithoutFallingOver)
{
    forEachSeed(300, [](Random& random) {
        std::string text = twoBoxes;
        for (int i = 0; i < 6; ++i)
            text[random.below(text.size())] = static_cast<char>(random.below(256));
        const Result<Sheet> sheet = readSheet(text);
        if (sheet.ok())
            routed(sheet.value());
        else
            EXPECT_FALSE(sheet.problem().where.empty());
    });
}

TEST(ReadSheet, TakesBlanksCommentsAndPins)
{
    const Sheet sheet = sheetOf("  # note\r\n\tbox  a 0 0 60 50 \r\n\nbox b 200 100 60 50\nport a 1 R 60 20\n"
                                "port b 1 L 200 120\nconn c a.1 b.1\npin c 100 200");
    ASSERT_EQ(sheet.connectors.size(), 1u);
    EXPECT_EQ(sheet.connectors[0].pinned, std::vector<Spot>{(Spot{100, 200})});
}

TEST(ReadMoves, NamesABoxThatIsNotThere)
{
    const Sheet sheet = sheetOf(twoBoxes);
    const Result<std::vector<Move>> moves = readMoves("move a 5 5\nmove z 5 5\n", sheet);
    ASSERT_FALSE(moves.ok());
    EXPECT_EQ(inWords(moves.problem()),
              "line 2: There is no 'z' before this line. Name it in a line above, or correct the name.");
}

} // namespace
} // namespace doorloom::routing
