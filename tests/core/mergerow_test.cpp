#include "edit/mergerow.h"

#include "edit/rownames.h"

#include "core/fulljob.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

// The view of a door whose rows have the same numbers as the typical's.
StampView sameNumbers(const Job& job)
{
    StampView view{job, {}, {}, {}, {}};
    for (std::uint32_t number = 1; number < job.nextNumber; ++number)
        view.again[number] = number;
    return view;
}

template <class Row> void expectHandedOn(const StampView& view, const Row& fresh)
{
    Row bare;
    bare.id = fresh.id;
    if constexpr (std::is_same_v<Row, Placement>)
        bare.what = fresh.what; // what a row is about is not altered
    else if constexpr (std::is_same_v<Row, Bends>)
        bare.conductor = fresh.conductor;
    DoorLines lines;
    const Row merged = mergedRow(view, bare, fresh, bare, lines);
    Row wanted = fresh;
    if constexpr (requires { wanted.tag; })
        wanted.tag.clear(); // each door has its own
    EXPECT_EQ(merged, wanted) << nounOf<Row>().en << ' ' << fresh.id.number;
    for (const DoorLine& line : lines)
        EXPECT_EQ(line.sort, DoorLineSort::Becomes) << inWords(line.words);
}

} // namespace

// A member that is forgotten here would stay behind in every stamped door.
TEST(MergedRow, HandsOnEveryMemberButTags)
{
    const Job job = fullJob();
    const StampView view = sameNumbers(job);
    int rows = 0;
    forEachTable(job, [&]<class Row>(const char*, const Table<Row>& table) {
        if constexpr (std::is_constructible_v<DoorRow, const Row&> && !std::is_same_v<Row, Sheet>)
            for (const Row& row : table) {
                expectHandedOn(view, row);
                ++rows;
            }
    });
    EXPECT_GT(rows, 9);
}

} // namespace doorloom
