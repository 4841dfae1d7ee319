#include "core/random.h"
#include "sheet/routes.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <sstream>

namespace doorloom {
namespace {

using State = DrawnWay::State;

constexpr int everything = 1 << 20;

// Boxes by number, with ways between their right and left sides.
struct Bench {
    Routes routes;
    std::map<std::uint32_t, Area> boxes;

    void stand(std::uint32_t number, const Area& area)
    {
        boxes[number] = area;
        routes.stand({number}, area);
    }
    WayEnd right(std::uint32_t box, int down) const
    {
        return {{{boxes.at(box).right, boxes.at(box).top + down}, Facing::Right}, {box}};
    }
    WayEnd left(std::uint32_t box, int down) const
    {
        return {{{boxes.at(box).left, boxes.at(box).top + down}, Facing::Left}, {box}};
    }
    DrawnWay way(std::uint32_t number) const { return *routes.find({number}); }
};

bool passes(const std::vector<Point>& line, Point point)
{
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
        if (areaOf(line[i], line[i + 1]).holds(point))
            return true;
    return false;
}

bool goesThrough(const std::vector<Point>& line, const Area& area)
{
    for (std::size_t i = 0; i + 1 < line.size(); ++i)
        if (areaOf(line[i], line[i + 1]).meets(area))
            return true;
    return false;
}

std::string listed(const Routes& routes, const std::vector<std::uint32_t>& rows)
{
    std::ostringstream out;
    for (const std::uint32_t row : rows) {
        const DrawnWay& way = *routes.find({row});
        out << row << " " << static_cast<int>(way.state) << ":";
        for (const Point point : way.line)
            out << " " << point.x << "," << point.y;
        out << "\n";
    }
    return out.str();
}

TEST(Routes, GoRoundWhatStandsBetweenWithAMargin)
{
    Bench bench;
    bench.stand(1, {0, 0, 300, 400});
    bench.stand(2, {1500, 0, 1800, 400});
    bench.stand(3, {700, -200, 1000, 600}); // in the middle
    bench.routes.wish({11}, WayWish{bench.right(1, 100), bench.left(2, 100)});
    EXPECT_EQ(bench.way(11).state, State::Waiting);

    EXPECT_EQ(bench.routes.settle(everything), std::vector<std::uint32_t>{11});

    const DrawnWay way = bench.way(11);
    EXPECT_EQ(way.state, State::Found);
    EXPECT_EQ(way.line.front(), bench.right(1, 100).port.at);
    EXPECT_EQ(way.line.back(), bench.left(2, 100).port.at);
    EXPECT_FALSE(goesThrough(way.line, bench.boxes[3].grownBy(gridStep - 1)));
    EXPECT_FALSE(bench.routes.isWaiting());
}

TEST(Routes, KeepPinnedPoints)
{
    Bench bench;
    bench.stand(1, {0, 0, 300, 400});
    bench.stand(2, {1500, 0, 1800, 400});
    bench.routes.wish({11}, WayWish{bench.right(1, 100), bench.left(2, 100), {{900, 800}, {1200, -300}}});
    bench.routes.settle(everything);

    ASSERT_EQ(bench.way(11).state, State::Found);
    EXPECT_TRUE(passes(bench.way(11).line, {900, 800}));
    EXPECT_TRUE(passes(bench.way(11).line, {1200, -300}));
}

TEST(Routes, SayWhereThereIsNoWay)
{
    Bench bench;
    bench.stand(1, {0, 0, 300, 400});
    bench.stand(2, {1500, 0, 1800, 400});
    bench.stand(3, {300, 50, 600, 150}); // right before the terminal
    bench.routes.wish({11}, WayWish{bench.right(1, 100), bench.left(2, 100)});
    bench.routes.wish({12}, WayWish{bench.right(1, 300), bench.left(2, 300)});
    bench.routes.settle(everything);

    EXPECT_EQ(bench.way(11).state, State::Impossible);
    EXPECT_EQ(bench.way(12).state, State::Found);

    bench.stand(3, {700, 50, 1000, 150}); // out of the way
    bench.routes.settle(everything);
    EXPECT_EQ(bench.way(11).state, State::Found);
}

TEST(Routes, KeepOffTheCoresOfACableThatLieAsPlanned)
{
    Bench bench;
    bench.stand(1, {0, 0, 300, 800});
    bench.stand(2, {2000, 0, 2300, 800});
    for (std::uint32_t core = 0; core < 4; ++core) { // straight across, all the way
        const int down = 300 + gridStep * static_cast<int>(core);
        bench.routes.wish({20 + core}, WayWish{bench.right(1, down), bench.left(2, down), {}, true});
    }
    bench.routes.wish({11}, WayWish{bench.right(1, 100), bench.left(2, 700)});
    bench.routes.wish({12}, WayWish{bench.right(1, 700), bench.left(2, 100)});
    bench.routes.settle(everything);

    for (const std::uint32_t number : {11u, 12u}) {
        const std::vector<Point> line = bench.way(number).line;
        ASSERT_EQ(bench.way(number).state, State::Found);
        for (std::size_t i = 0; i + 1 < line.size(); ++i)
            EXPECT_FALSE(line[i].y == line[i + 1].y && line[i].y > 300 - gridStep && line[i].y < 375 + gridStep)
                << "level pieces keep a grid step away from those of the cable";
    }
}

// A sheet with rows of boxes, any two of which are joined, and one of the boxes moved again and again.
struct RandomBench : Bench {
    explicit RandomBench(Random& random)
    {
        for (std::uint32_t i = 1; i <= 9; ++i)
            place(i, {static_cast<int>((i - 1) % 3) * 1200 + 25 * random.between(0, 10),
                      static_cast<int>((i - 1) / 3) * 900 + 25 * random.between(0, 8)});
        for (std::uint32_t i = 0; i < 25; ++i) {
            const auto from = static_cast<std::uint32_t>(random.between(1, 9));
            const auto to = static_cast<std::uint32_t>(random.between(1, 9));
            if (from != to && taken[{from, true}] < 9 && taken[{to, false}] < 9)
                ends[100 + i] = {from, 50 * ++taken[{from, true}], to, 50 * ++taken[{to, false}]};
        }
        wishAll();
    }

    struct Ends {
        std::uint32_t from;
        int down;
        std::uint32_t to;
        int downTo;
    };
    std::map<std::pair<std::uint32_t, bool>, int> taken;
    std::map<std::uint32_t, Ends> ends;

    void place(std::uint32_t box, Point at) { stand(box, {at.x, at.y, at.x + 300, at.y + 500}); }
    void wishAll()
    {
        for (const auto& [number, each] : ends)
            routes.wish({number}, WayWish{right(each.from, each.down), left(each.to, each.downTo)});
    }
    std::vector<std::uint32_t> rows() const
    {
        std::vector<std::uint32_t> all;
        for (const auto& [number, each] : ends)
            all.push_back(number);
        return all;
    }
    // The same wishes from nothing.
    std::string anew() const
    {
        Bench other;
        for (const auto& [number, area] : boxes)
            other.stand(number, area);
        for (const auto& [number, each] : ends)
            other.routes.wish({number}, WayWish{right(each.from, each.down), left(each.to, each.downTo)});
        other.routes.settle(everything);
        return listed(other.routes, rows());
    }
};

TEST(Routes, FollowWhatIsDraggedAndSettleToWhatTheyAreFromNothing)
{
    forEachSeed(10, [](Random& random) {
        RandomBench bench(random);
        bench.routes.settle(everything);
        const std::string before = listed(bench.routes, bench.rows());
        ASSERT_EQ(before, bench.anew());
        const auto dragged = static_cast<std::uint32_t>(random.between(1, 9));
        const Area stood = bench.boxes[dragged];
        int kept = 0;
        for (int step = 1; step <= 5; ++step) {
            bench.place(dragged, {stood.left + 25 * step, stood.top + 50 * random.between(-2, 2)});
            bench.wishAll();
            const std::vector<std::uint32_t> changed = bench.routes.follow();
            kept += static_cast<int>(bench.ends.size() - changed.size());
            for (const auto& [number, each] : bench.ends) {
                const DrawnWay way = bench.way(number);
                ASSERT_EQ(way.state, State::Found);
                EXPECT_EQ(way.line.front(), bench.right(each.from, each.down).port.at);
                EXPECT_EQ(way.line.back(), bench.left(each.to, each.downTo).port.at);
                for (const auto& [box, area] : bench.boxes)
                    EXPECT_FALSE(goesThrough(way.line, area.grownBy(-1))) << "step " << step;
            }
        }
        EXPECT_GT(kept, 0) << "what has nothing to do with it keeps its points";
        bench.routes.settle(everything);
        EXPECT_EQ(listed(bench.routes, bench.rows()), bench.anew());

        bench.stand(dragged, stood); // put back
        bench.wishAll();
        bench.routes.settle(everything);
        EXPECT_EQ(listed(bench.routes, bench.rows()), before);
    });
}

TEST(Routes, OfGroupsFarApartHaveNothingToDoWithEachOther)
{
    Bench bench;
    for (std::uint32_t group = 0; group < 3; ++group) {
        const int x = static_cast<int>(group) * 10'000;
        bench.stand(2 * group + 1, {x, 0, x + 300, 400});
        bench.stand(2 * group + 2, {x + 1500, 200, x + 1800, 600});
        bench.routes.wish({11 + group}, WayWish{bench.right(2 * group + 1, 100), bench.left(2 * group + 2, 100)});
    }
    EXPECT_EQ(bench.routes.settle(1), std::vector<std::uint32_t>{11}) << "one group and no more";
    EXPECT_TRUE(bench.routes.isWaiting());
    EXPECT_EQ(bench.way(12).state, State::Waiting);
    EXPECT_EQ(bench.routes.settle(everything), (std::vector<std::uint32_t>{12, 13}));
    EXPECT_FALSE(bench.routes.isWaiting());

    bench.stand(4, {11'500, 400, 11'800, 800});
    bench.routes.wish({12}, WayWish{bench.right(3, 100), bench.left(4, 100)});
    EXPECT_EQ(bench.routes.settle(everything), std::vector<std::uint32_t>{12});
}

// Two boxes with so many ways between them.
void standFarApart(Bench& bench, int ways)
{
    bench.stand(1, {0, 0, 300, 50 * ways + 200});
    bench.stand(2, {1500, 0, 1800, 50 * ways + 200});
    for (int i = 0; i < ways; ++i)
        bench.routes.wish({static_cast<std::uint32_t>(100 + i)}, WayWish{bench.right(1, 50 * i + 50), bench.left(2, 50 * i + 50)});
}

void settleAll(Routes& routes)
{
    do
        routes.settle(everything);
    while (routes.isWaiting());
}

TEST(Routes, OfALargeGroupAreFoundOnAThreadOfTheirOwn)
{
    Bench bench;
    standFarApart(bench, Routes::mostAtOnce + 1);
    bench.stand(3, {100'000, 0, 100'300, 400});
    bench.stand(4, {101'500, 0, 101'800, 400});
    bench.routes.wish({12}, WayWish{bench.right(3, 100), bench.left(4, 100)});
    EXPECT_EQ(bench.routes.settle(everything), std::vector<std::uint32_t>{12}) << "small groups do not wait for large ones";
    EXPECT_TRUE(bench.routes.isWaitingForThread());
    EXPECT_EQ(bench.way(100).state, State::Waiting);
    settleAll(bench.routes);
    EXPECT_EQ(bench.way(100).state, State::Found);
    EXPECT_EQ(bench.way(100 + Routes::mostAtOnce).state, State::Found);
}

TEST(Routes, OfALargeGroupStayWhereTheyFitUntilTheNewOnesAreFound)
{
    Bench bench;
    standFarApart(bench, Routes::mostAtOnce + 1);
    settleAll(bench.routes);
    const DrawnWay before = bench.way(101);
    bench.stand(3, {700, 60, 900, 160}); // in the way of some
    bench.stand(1, {0, 0, 300, 50 * Routes::mostAtOnce + 300});
    bench.routes.wish({100}, WayWish{bench.right(1, 25), bench.left(2, 50)});
    bench.routes.settle(everything);
    EXPECT_EQ(bench.way(100).state, State::Waiting) << "it ends elsewhere";
    EXPECT_EQ(bench.way(101), before);
    settleAll(bench.routes);
    EXPECT_EQ(bench.way(100).state, State::Found);

    Bench anew;
    standFarApart(anew, Routes::mostAtOnce + 1);
    anew.stand(3, {700, 60, 900, 160});
    anew.stand(1, {0, 0, 300, 50 * Routes::mostAtOnce + 300});
    anew.routes.wish({100}, WayWish{anew.right(1, 25), anew.left(2, 50)});
    settleAll(anew.routes);
    for (std::uint32_t way = 100; way <= 100 + Routes::mostAtOnce; ++way)
        EXPECT_EQ(bench.way(way), anew.way(way)) << way;
}

TEST(Routes, ThatAreNotWantedAnyMoreAreGivenUp)
{
    Bench bench;
    standFarApart(bench, 3000);
    bench.routes.settle(everything);
    EXPECT_TRUE(bench.routes.isWaitingForThread());
    bench.stand(2, {});
    bench.routes.settle(everything);
    EXPECT_FALSE(bench.routes.isWaiting());
    EXPECT_EQ(bench.way(100).state, State::Waiting);
}

} // namespace
} // namespace doorloom
