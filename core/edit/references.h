#pragma once

#include "model/job.h"

#include <algorithm>
#include <cstdint>
#include <variant>
#include <vector>

// Which rows a row refers to: the one place that knows, for look-ups, checks and removals alike.
namespace doorloom {

// Each visits the ids that are set, some of them more than once: visit(Id<Thing>), or visit(std::uint32_t)
// where a row of any table may stand.
template <class Visit> void forEachReference(const JobInfo&, Visit) {}

template <class Visit> void forEachReference(const JobKind&, Visit) {}

template <class Visit> void forEachReference(const CableType&, Visit) {}

template <class Visit> void forEachReference(const Place&, Visit) {}

template <class Visit> void forEachReference(const Sheet&, Visit) {}

template <class Visit> void forEachReference(const SetAside&, Visit) {}

template <class Thing, class Visit> void visitIfSet(Id<Thing> id, Visit& visit)
{
    if (id)
        visit(id);
}

template <class Visit> void forEachReference(const Operator& row, Visit visit)
{
    visitIfSet(row.owner, visit);
}

template <class Visit> void forEachReference(const Device& row, Visit visit)
{
    visitIfSet(row.kind, visit);
    visitIfSet(row.place, visit);
    for (const Binding& binding : row.bindings)
        visitIfSet(binding.moved, visit);
}

template <class Visit> void forEachReference(const Cable& row, Visit visit)
{
    visitIfSet(row.type, visit);
    visitIfSet(row.from, visit);
    visitIfSet(row.to, visit);
}

template <class Visit> void forEachReference(const Splice& row, Visit visit)
{
    visitIfSet(row.place, visit);
}

template <class Visit> void forEachReference(const Conductor& row, Visit visit)
{
    visitIfSet(row.cable, visit);
    for (const End* end : {&row.from, &row.to}) {
        if (const auto* landing = std::get_if<Landing>(&end->on))
            visitIfSet(landing->device, visit);
        else if (const auto* splice = std::get_if<SpliceId>(&end->on))
            visitIfSet(*splice, visit);
    }
}

template <class Visit> void forEachReference(const Opening& row, Visit visit)
{
    const auto visitThrows = [&](const std::vector<Thrown>& throws) {
        for (const Thrown& thrown : throws)
            visitIfSet(thrown.moved, visit);
    };
    visitIfSet(row.door, visit);
    visitIfSet(row.fire, visit);
    for (const auto* devices : {&row.locks, &row.doorOperators})
        for (DeviceId device : *devices)
            visitIfSet(device, visit);
    for (const auto* acts : {&row.requests, &row.releases})
        for (const Act& act : *acts)
            visitThrows(act.throws);
    visitThrows(row.occupied);
    for (const Promise& promise : row.promises) {
        visitIfSet(promise.situation.lost, visit);
        visitIfSet(promise.device, visit);
    }
}

template <class Visit> void forEachReference(const Placement& row, Visit visit)
{
    visitIfSet(row.sheet, visit);
    std::visit([&](auto id) { visitIfSet(id, visit); }, row.what);
}

template <class Visit> void forEachReference(const Bends& row, Visit visit)
{
    visitIfSet(row.conductor, visit);
}

template <class Visit> void forEachReference(const Note& row, Visit visit)
{
    visitIfSet(row.sheet, visit);
}

template <class Visit> void forEachReference(const Typical& row, Visit visit)
{
    for (std::uint32_t number : row.rows)
        visit(number);
}

template <class Visit> void forEachReference(const Stamp& row, Visit visit)
{
    visitIfSet(row.typical, visit);
    for (const auto& [ofTypical, ofStamp] : row.rows)
        visit(ofStamp);
}

inline std::uint32_t numberOf(std::uint32_t number)
{
    return number;
}

template <class Thing> std::uint32_t numberOf(Id<Thing> id)
{
    return id.number;
}

// Numbers of all rows that a row refers to: sorted, each once.
template <class Row> std::vector<std::uint32_t> referencesOf(const Row& row)
{
    std::vector<std::uint32_t> numbers;
    forEachReference(row, [&](auto id) { numbers.push_back(numberOf(id)); });
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    return numbers;
}

// Visits the row of this number, whatever its table: visit(const Row&). Out: how many tables have it.
template <class Visit> int visitRow(const Job& job, std::uint32_t number, Visit visit)
{
    int tables = 0;
    forEachTable(job, [&]<class Row>(const char*, const Table<Row>& rows) {
        if (const Row* row = rows.find({number})) {
            ++tables;
            visit(*row);
        }
    });
    return tables;
}

inline int tablesWith(const Job& job, std::uint32_t number)
{
    return visitRow(job, number, [](const auto&) {});
}

} // namespace doorloom
