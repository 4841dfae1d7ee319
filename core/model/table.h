#pragma once

#include "base/id.h"
#include "base/shared.h"

#include <algorithm>
#include <cassert>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

namespace doorloom {

// Rows in the order of their numbers, in chunks that copies share until one of them writes.
// Cost:   copying a table costs its number of chunks (64 numbers each); find is a binary search;
//         put copies one chunk, when it is shared; comparing two tables skips the chunks that they share.
// Owns:   its chunks, together with the copies of the table.
template <class Row> class Table {
    using Chunk = std::vector<Row>; // sorted by id
    struct Slot {
        std::uint32_t number; // of the chunk: id / 64
        Shared<Chunk> chunk;
    };

public:
    using RowId = Id<Row>;
    static constexpr std::uint32_t chunkSpan = 64;

    const Row* find(RowId id) const
    {
        const auto slot = slotOf(id.number / chunkSpan);
        if (slot == slots_.end() || slot->number != id.number / chunkSpan)
            return nullptr;
        const auto row = rowIn(*slot->chunk, id);
        return row != slot->chunk->end() && row->id == id ? &*row : nullptr;
    }

    // Puts a row under its id, or nothing there. Out: what stood there before.
    std::optional<Row> put(RowId id, std::optional<Row> after)
    {
        assert(!after || after->id == id);
        if (!after && !find(id))
            return std::nullopt;
        auto slot = slots_.begin() + (slotOf(id.number / chunkSpan) - slots_.cbegin());
        if (slot == slots_.end() || slot->number != id.number / chunkSpan)
            slot = slots_.insert(slot, Slot{id.number / chunkSpan, Shared<Chunk>(Chunk())});
        Chunk& chunk = slot->chunk.writable();
        const auto row = chunk.begin() + (rowIn(chunk, id) - chunk.cbegin());
        const bool present = row != chunk.end() && row->id == id;
        std::optional<Row> before;
        if (present)
            before = std::move(*row);
        if (present && after)
            *row = std::move(*after);
        else if (after)
            chunk.insert(row, std::move(*after));
        else if (present)
            chunk.erase(row);
        size_ += (after ? 1u : 0u);
        size_ -= (present ? 1u : 0u);
        if (chunk.empty())
            slots_.erase(slot);
        return before;
    }

    // A row to alter in place; null when absent. Only for look-ups: what people see changes by put.
    Row* writable(RowId id)
    {
        if (!find(id))
            return nullptr;
        Slot& slot = slots_[static_cast<std::size_t>(slotOf(id.number / chunkSpan) - slots_.cbegin())];
        Chunk& chunk = slot.chunk.writable();
        return &chunk[static_cast<std::size_t>(rowIn(chunk, id) - chunk.cbegin())];
    }

    // Visits (before, after) of every row in which the two tables differ, in the order of numbers; null: not
    // there.
    template <class Visit> static void forEachDifference(const Table& older, const Table& newer, Visit visit)
    {
        static const Chunk none;
        auto a = older.slots_.begin(), b = newer.slots_.begin();
        while (a != older.slots_.end() || b != newer.slots_.end()) {
            const bool useA = b == newer.slots_.end() || (a != older.slots_.end() && a->number <= b->number);
            const bool useB = a == older.slots_.end() || (b != newer.slots_.end() && b->number <= a->number);
            if (!(useA && useB && a->chunk.sharesWith(b->chunk)))
                visitDifferences(useA ? *a->chunk : none, useB ? *b->chunk : none, visit);
            a += useA ? 1 : 0;
            b += useB ? 1 : 0;
        }
    }

    std::size_t size() const { return size_; }
    bool empty() const { return size_ == 0; }

    class Iterator {
    public:
        using value_type = Row;
        using reference = const Row&;
        using difference_type = std::ptrdiff_t;
        using iterator_category = std::forward_iterator_tag;
        using pointer = const Row*;

        Iterator() = default;
        reference operator*() const { return (*slot_->chunk)[row_]; }
        pointer operator->() const { return &**this; }
        Iterator& operator++()
        {
            if (++row_ == slot_->chunk->size()) {
                ++slot_;
                row_ = 0;
            }
            return *this;
        }
        Iterator operator++(int)
        {
            Iterator old = *this;
            ++*this;
            return old;
        }
        friend bool operator==(const Iterator& a, const Iterator& b)
        {
            return a.slot_ == b.slot_ && a.row_ == b.row_;
        }

    private:
        friend class Table;
        explicit Iterator(const Slot* slot) : slot_(slot) {}
        const Slot* slot_ = nullptr;
        std::size_t row_ = 0;
    };

    Iterator begin() const { return Iterator(slots_.data()); }
    Iterator end() const { return Iterator(slots_.data() + slots_.size()); }

    friend bool operator==(const Table& a, const Table& b)
    {
        return a.size_ == b.size_ &&
               std::equal(a.slots_.begin(), a.slots_.end(), b.slots_.begin(), b.slots_.end(),
                          [](const Slot& x, const Slot& y) {
                              return x.number == y.number &&
                                     (x.chunk.sharesWith(y.chunk) || *x.chunk == *y.chunk);
                          });
    }

private:
    auto slotOf(std::uint32_t number) const
    {
        return std::lower_bound(slots_.begin(), slots_.end(), number,
                                [](const Slot& slot, std::uint32_t n) { return slot.number < n; });
    }
    static auto rowIn(const Chunk& chunk, RowId id)
    {
        return std::lower_bound(chunk.cbegin(), chunk.cend(), id,
                                [](const Row& row, RowId wanted) { return row.id < wanted; });
    }

    template <class Visit> static void visitDifferences(const Chunk& older, const Chunk& newer, Visit& visit)
    {
        auto a = older.begin(), b = newer.begin();
        while (a != older.end() || b != newer.end()) {
            if (b == newer.end() || (a != older.end() && a->id < b->id)) {
                visit(&*a++, static_cast<const Row*>(nullptr));
            } else if (a == older.end() || b->id < a->id) {
                visit(static_cast<const Row*>(nullptr), &*b++);
            } else {
                if (!(*a == *b))
                    visit(&*a, &*b);
                ++a;
                ++b;
            }
        }
    }

    std::vector<Slot> slots_; // sorted by number, none empty
    std::size_t size_ = 0;
};

} // namespace doorloom
