#include "edit/lookups.h"

#include "model/tags.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace doorloom {

namespace {

// Rows without entries are taken out, so that equal jobs have equal look-ups.
template <class Row, class Entry>
void removeEntry(Table<Row>& table, Id<Row> id, std::vector<Entry> Row::*entries, const Entry& entry)
{
    Row* row = table.writable(id);
    if (!row)
        return;
    std::vector<Entry>& all = row->*entries;
    const auto at = std::lower_bound(all.begin(), all.end(), entry);
    if (at != all.end() && *at == entry)
        all.erase(at);
    if (all.empty())
        table.put(id, std::nullopt);
}

template <class Row, class Entry>
void addEntry(Table<Row>& table, Id<Row> id, std::vector<Entry> Row::*entries, Entry entry)
{
    Row* row = table.writable(id);
    if (!row) {
        table.put(id, Row{id, {}});
        row = table.writable(id);
    }
    std::vector<Entry>& all = row->*entries;
    all.insert(std::lower_bound(all.begin(), all.end(), entry), std::move(entry));
}

} // namespace

void relate(Job& job, std::uint32_t referrer, const std::vector<std::uint32_t>& before,
            const std::vector<std::uint32_t>& after)
{
    std::vector<std::uint32_t> lost, won;
    std::set_difference(before.begin(), before.end(), after.begin(), after.end(), std::back_inserter(lost));
    std::set_difference(after.begin(), after.end(), before.begin(), before.end(), std::back_inserter(won));
    for (std::uint32_t number : lost)
        removeEntry(job.referrers, {number}, &Referrers::numbers, referrer);
    for (std::uint32_t number : won)
        addEntry(job.referrers, {number}, &Referrers::numbers, referrer);
}

void addTag(Job& job, const std::string& tag, DeviceId device)
{
    addEntry(job.deviceTags, bucketOfTag(tag), &TagBucket::tags, {tag, device});
}

void removeTag(Job& job, const std::string& tag, DeviceId device)
{
    removeEntry(job.deviceTags, bucketOfTag(tag), &TagBucket::tags, {tag, device});
}

Job withLookupsRebuilt(Job job)
{
    job.referrers = {};
    job.deviceTags = {};
    forEachTable(std::as_const(job), [&]<class Row>(const char*, const Table<Row>& rows) {
        for (const Row& row : rows)
            followLookups<Row>(job, nullptr, &row);
    });
    return job;
}

} // namespace doorloom
