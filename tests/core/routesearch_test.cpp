#include "core/random.h"
#include "route/search.h"

#include <gtest/gtest.h>

#include <functional>
#include <map>
#include <queue>
#include <tuple>

namespace doorloom::routing {
namespace {

// The same question, one cell after another: the least cost from end to end with no more bends than are
// allowed.
class SlowSearch {
public:
    SlowSearch(const Grid& grid, const Prices& prices) : grid_(grid), prices_(prices) {}

    int between(const End& from, const End& to)
    {
        if (grid_.isBlocked(from.cell) || grid_.isBlocked(to.cell))
            return never;
        lower({from.way, from.cell.x, from.cell.y, 0}, from.first + pass(from.way, from.cell));
        while (!open_.empty()) {
            const auto [cost, state] = open_.top();
            open_.pop();
            if (cost == costs_[state])
                goOn(state, cost);
        }
        int best = never;
        for (int bends = 0; bends <= Search::usualBends; ++bends)
            if (const auto found = costs_.find({to.way, to.cell.x, to.cell.y, bends}); found != costs_.end())
                best = std::min(best, found->second);
        return best;
    }

private:
    using State = std::tuple<Way, int, int, int>; // way, x, y, bends so far
    using Reached = std::pair<int, State>;

    int pass(Way way, Cell cell) const { return grid_.layer(way).pass[grid_.index(way, cell)]; }
    void lower(const State& state, int cost)
    {
        const auto [place, isNew] = costs_.emplace(state, cost);
        if (!isNew && place->second <= cost)
            return;
        place->second = cost;
        open_.push({cost, state});
    }
    void goOn(const State& state, int cost)
    {
        const auto [way, x, y, bends] = state;
        if (bends < Search::usualBends)
            lower({across(way), x, y, bends + 1},
                  cost + prices_.bend + grid_.layer(way).turn[grid_.index(way, {x, y})]);
        for (int by : {-1, 1}) {
            const Cell next = way == Way::Level ? Cell{x + by, y} : Cell{x, y + by};
            if (!grid_.has(next))
                continue;
            const int later = way == Way::Level ? std::max(x, next.x) : std::max(y, next.y);
            lower({way, next.x, next.y, bends}, cost + nth(grid_.along(way).step, later) + pass(way, next));
        }
    }

    const Grid& grid_;
    const Prices& prices_;
    std::map<State, int> costs_;
    std::priority_queue<Reached, std::vector<Reached>, std::greater<>> open_;
};

std::vector<double> randomPlaces(Random& random)
{
    std::vector<double> places;
    for (int i = random.between(2, 20); i > 0; --i)
        places.push_back(2.5 * random.between(0, 60));
    return places;
}

Grid randomGrid(Random& random, const Prices& prices)
{
    Grid grid(layLines(randomPlaces(random), 2, 40, prices.length),
              layLines(randomPlaces(random), 2, 40, prices.length), prices);
    std::vector<Box> boxes;
    for (int i = random.between(0, 6); i > 0; --i)
        boxes.push_back({"",
                         {1.0 * random.between(0, 150), 1.0 * random.between(0, 150)},
                         1.0 * random.between(0, 40),
                         1.0 * random.between(0, 40)});
    grid.standBoxes(boxes);
    for (int i = random.between(0, 40); i > 0; --i) {
        const Way way = random.oneIn(2) ? Way::Level : Way::Upright;
        const int last = grid.along(way).count() - 1;
        const int line = random.between(0, grid.along(across(way)).count() - 1);
        grid.occupy({Run{way, line, random.between(0, last), random.between(0, last)}}, i);
    }
    return grid;
}

End randomEnd(Random& random, const Grid& grid)
{
    End end;
    end.cell = {random.between(0, grid.x().count() - 1), random.between(0, grid.y().count() - 1)};
    end.way = random.oneIn(2) ? Way::Level : Way::Upright;
    end.first = random.between(0, 5);
    return end;
}

int costAlong(const Grid& grid, const Prices& prices, const Found& found)
{
    int cost = (static_cast<int>(found.runs.size()) - 1) * prices.bend;
    for (std::size_t i = 0; i < found.runs.size(); ++i) {
        const Run& run = found.runs[i];
        const Layer& layer = grid.layer(run.way);
        cost += grid.along(run.way).between(run.from, run.to);
        forEachCell(run, [&](Cell cell) {
            const bool isCorner = i > 0 && cell == cellOf(run, run.from);
            cost += isCorner ? layer.turn[grid.index(run.way, cell)] : layer.pass[grid.index(run.way, cell)];
        });
    }
    return cost;
}

TEST(RouteSearch, FindsWhatTheSlowSearchFinds)
{
    const Prices prices;
    forEachSeed(60, [&](Random& random) {
        const Grid grid = randomGrid(random, prices);
        Search search(prices);
        for (int i = 0; i < 4; ++i) {
            const End from = randomEnd(random, grid), to = randomEnd(random, grid);
            const Window whole{0, 0, grid.x().count() - 1, grid.y().count() - 1};
            const std::optional<Found> found = search.between(grid, from, to, whole);
            ASSERT_EQ(found ? found->cost - to.first : int{never},
                      SlowSearch(grid, prices).between(from, to));
            if (!found)
                continue;
            // With a bend more than is looked for it may even be cheaper.
            ASSERT_LE(costAlong(grid, prices, *found) + from.first + to.first, found->cost);
            ASSERT_EQ(cellOf(found->runs.front(), found->runs.front().from), from.cell);
            ASSERT_EQ(cellOf(found->runs.back(), found->runs.back().to), to.cell);
            EXPECT_FALSE(search.between(grid, from, to, whole, found->cost - to.first))
                << "nothing is cheaper";
        }
    });
}

TEST(RouteSearch, KnowsTheFewestBends)
{
    const Prices prices;
    const Grid grid(layLines({0, 100}, 2, 40, prices.length), layLines({0, 100}, 2, 40, prices.length),
                    prices);
    Search search(prices);
    const Window whole{0, 0, grid.x().count() - 1, grid.y().count() - 1};
    const auto endAt = [](int x, int y, Way way, int out) { return End{{x, y}, way, out, 0}; };
    for (const End& to :
         {endAt(15, 15, Way::Level, -1), endAt(15, 10, Way::Level, -1), endAt(15, 15, Way::Upright, -1)}) {
        const End from = endAt(10, 10, Way::Level, 1);
        const std::optional<Found> found = search.between(grid, from, to, whole);
        ASSERT_TRUE(found);
        EXPECT_EQ(static_cast<int>(found->runs.size()) - 1, fewestBends(from, to));
    }
}

TEST(Lines, KeepTheWantedGapWhereverThereIsRoom)
{
    const Lines lines = layLines({0, 12, 30, 33}, 2, 40, 0.4);
    EXPECT_EQ(lines.at, (std::vector<double>{-10, -5, 0, 5, 12, 17, 22, 30, 33, 38, 43}));
    EXPECT_EQ(lines.nearFirst[7], 7);
    EXPECT_EQ(lines.nearLast[7], 8);
    EXPECT_EQ(lines.nearest(31), 7);
    EXPECT_FALSE(lines.has(31));
}

} // namespace
} // namespace doorloom::routing
