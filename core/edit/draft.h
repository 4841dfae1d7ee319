#pragma once

#include "edit/change.h"

#include <cstdint>
#include <map>
#include <utility>

namespace doorloom {

// A Change in the making: several parts of an operation alter one row, and one step comes out of it.
class Draft {
public:
    explicit Draft(const Job& job) : job_(job) {}

    const Job& job() const { return job_; }

    // The row as it will be, to alter; null when the job does not have it, or will not.
    template <class Row> Row* edit(Id<Row> id)
    {
        const auto found = steps_.find(id.number);
        if (found != steps_.end()) {
            auto* put = std::get_if<Put<Row>>(&found->second);
            return put && put->after ? &*put->after : nullptr;
        }
        const Row* row = tableOf<Row>(job_).find(id);
        if (!row)
            return nullptr;
        const auto [added, isNew] = steps_.emplace(id.number, Put<Row>{id, *row});
        return &*std::get<Put<Row>>(added->second).after;
    }

    template <class Row> void put(Row row)
    {
        const Id<Row> id = row.id;
        steps_.insert_or_assign(id.number, Put<Row>{id, std::move(row)});
    }

    template <class Row> void remove(Id<Row> id)
    {
        steps_.insert_or_assign(id.number, Put<Row>{id, std::nullopt});
    }

    // Rows that are drafted as they stand in the job already are left out.
    Change change() const
    {
        Change all;
        for (const auto& [number, step] : steps_)
            if (std::visit([&](const auto& drafted) { return alters(drafted); }, step))
                all.steps.push_back(step);
        return all;
    }

private:
    template <class Row> bool alters(const Put<Row>& drafted) const
    {
        const Row* row = tableOf<Row>(job_).find(drafted.id);
        return row ? !drafted.after || !(*row == *drafted.after) : drafted.after.has_value();
    }

    const Job& job_;
    std::map<std::uint32_t, Step> steps_; // by number: one step a row
};

} // namespace doorloom
