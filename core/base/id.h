#pragma once

#include <compare>
#include <cstdint>
#include <functional>

namespace doorloom {

// Names a row of a job. Numbers are unique in the whole job, whatever the table, and never used twice.
template <class Thing>
struct Id {
    std::uint32_t number = 0; // 0 names nothing

    explicit operator bool() const { return number != 0; }
    friend auto operator<=>(Id, Id) = default;
};

} // namespace doorloom

template <class Thing>
struct std::hash<doorloom::Id<Thing>> {
    std::size_t operator()(doorloom::Id<Thing> id) const noexcept { return id.number; }
};
