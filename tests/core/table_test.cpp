#include "model/table.h"

#include "random.h"

#include <gtest/gtest.h>

#include <map>
#include <string>
#include <thread>

namespace doorloom {

namespace {

struct Entry {
    Id<Entry> id;
    std::string words;

    friend bool operator==(const Entry&, const Entry&) = default;
};
using Model = std::map<std::uint32_t, std::string>;

void expectSame(const Table<Entry>& table, const Model& model)
{
    ASSERT_EQ(table.size(), model.size());
    auto row = table.begin();
    for (const auto& [number, words] : model) {
        EXPECT_EQ(*row++, (Entry{{number}, words}));
        ASSERT_NE(table.find({number}), nullptr);
        EXPECT_EQ(table.find({number})->words, words);
    }
    EXPECT_EQ(row, table.end());
}

Table<Entry> tableOfNumbers(std::uint32_t count)
{
    Table<Entry> table;
    for (std::uint32_t number = 1; number <= count; ++number)
        table.put({number}, Entry{{number}, "row"});
    return table;
}

} // namespace

TEST(Table, HoldsWhatAMapWouldHold)
{
    forEachSeed(50, [](Random& random) {
        Table<Entry> table;
        Model model;
        for (int count = 0; count < 300; ++count) {
            const auto number = static_cast<std::uint32_t>(random.between(1, 400));
            const auto before = model.find(number);
            const std::optional<Entry> expected =
                before == model.end() ? std::nullopt : std::optional(Entry{{number}, before->second});
            if (random.oneIn(2)) {
                EXPECT_EQ(table.put({number}, std::nullopt), expected);
                model.erase(number);
            } else {
                const std::string words = std::to_string(count);
                EXPECT_EQ(table.put({number}, Entry{{number}, words}), expected);
                model[number] = words;
            }
        }
        expectSame(table, model);
        EXPECT_EQ(table.find({401}), nullptr);
    });
}

TEST(Table, KeepsItsRowsWhileACopyChanges)
{
    forEachSeed(20, [](Random& random) {
        Table<Entry> table;
        Model model;
        std::vector<std::pair<Table<Entry>, Model>> snapshots;
        for (int count = 0; count < 200; ++count) {
            const auto number = static_cast<std::uint32_t>(random.between(1, 300));
            if (random.oneIn(3)) {
                table.put({number}, std::nullopt);
                model.erase(number);
            } else if (Entry* row = random.oneIn(2) ? table.writable({number}) : nullptr) {
                row->words += "+";
                model[number] += "+";
            } else {
                table.put({number}, Entry{{number}, "row"});
                model[number] = "row";
            }
            if (count % 20 == 0)
                snapshots.emplace_back(table, model);
        }
        for (const auto& [copy, copyModel] : snapshots)
            expectSame(copy, copyModel);
    });
}

// The thread sanitizer sees here whether a writer waits for the readers of a chunk.
TEST(Table, KeepsItsRowsForAReaderInAnotherThread)
{
    Table<Entry> table = tableOfNumbers(1000);
    for (int round = 0; round < 50; ++round) {
        std::thread reader([copy = table, round] {
            for (const Entry& row : copy)
                ASSERT_EQ(row.words.size(), 3u + static_cast<std::size_t>(round));
        });
        for (std::uint32_t number = 1; number <= 1000; ++number)
            table.writable({number})->words += "+";
        reader.join();
    }
}

TEST(Table, IsEqualByItsRowsWhateverTheRoadToThem)
{
    Table<Entry> table = tableOfNumbers(200);
    Table<Entry> other = tableOfNumbers(300);
    EXPECT_FALSE(table == other);
    for (std::uint32_t number = 201; number <= 300; ++number)
        other.put({number}, std::nullopt);
    EXPECT_TRUE(table == other);
    other.writable({7})->words = "another";
    EXPECT_FALSE(table == other);
}

TEST(Table, VisitsExactlyTheRowsThatDiffer)
{
    forEachSeed(50, [](Random& random) {
        Table<Entry> older = tableOfNumbers(static_cast<std::uint32_t>(random.between(1, 300)));
        Table<Entry> newer = older;
        Model expected; // by number: "before>after"
        for (int count = random.between(0, 40); count > 0; --count) {
            const auto number = static_cast<std::uint32_t>(random.between(1, 500));
            if (random.oneIn(3))
                newer.put({number}, std::nullopt);
            else
                newer.put({number}, Entry{{number}, random.oneIn(3) ? "row" : "altered"});
        }
        for (std::uint32_t number = 1; number <= 500; ++number) {
            const Entry* before = older.find({number});
            const Entry* after = newer.find({number});
            const std::string was = before ? before->words : "", is = after ? after->words : "";
            if (was != is)
                expected[number] = was + ">" + is;
        }
        Model found;
        std::uint32_t last = 0;
        Table<Entry>::forEachDifference(older, newer, [&](const Entry* before, const Entry* after) {
            const std::uint32_t number = (before ? before : after)->id.number;
            EXPECT_GT(number, last);
            last = number;
            found[number] = (before ? before->words : "") + ">" + (after ? after->words : "");
        });
        EXPECT_EQ(found, expected);
    });
}

TEST(Table, LeavesOutChunksThatTwoTablesShare)
{
    static int compared = 0;
    struct Counted {
        Id<Counted> id;
        int words = 0;
        bool operator==(const Counted& other) const
        {
            ++compared;
            return words == other.words;
        }
    };
    Table<Counted> older;
    for (std::uint32_t number = 1; number <= 10000; ++number)
        older.put({number}, Counted{{number}, 1});
    Table<Counted> newer = older;
    newer.put({5000}, Counted{{5000}, 2});
    int visits = 0;
    Table<Counted>::forEachDifference(older, newer, [&](const Counted*, const Counted*) { ++visits; });
    EXPECT_EQ(visits, 1);
    EXPECT_LE(compared, static_cast<int>(Table<Counted>::chunkSpan));
}

} // namespace doorloom
