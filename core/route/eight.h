#pragma once

#include "route/cost.h"

#include <array>

#ifdef __SSE2__
#include <emmintrin.h>
#endif

namespace doorloom::routing {

// Eight costs that are worked on at once. Sums must stay within sixteen bits.
#ifdef __SSE2__
struct Eight {
    __m128i cells;

    static Eight at(const Cost* place) { return {_mm_loadu_si128(reinterpret_cast<const __m128i*>(place))}; }
    static Eight all(Cost cost) { return {_mm_set1_epi16(cost)}; }
    void store(Cost* place) const { _mm_storeu_si128(reinterpret_cast<__m128i*>(place), cells); }
    friend Eight operator+(Eight a, Eight b) { return {_mm_add_epi16(a.cells, b.cells)}; }
    friend Eight least(Eight a, Eight b) { return {_mm_min_epi16(a.cells, b.cells)}; }
    // Whether any of the eight is below the one in the same place.
    friend bool anyBelow(Eight a, Eight b)
    {
        return _mm_movemask_epi8(_mm_cmplt_epi16(a.cells, b.cells)) != 0;
    }
};

// Rows and columns exchanged.
inline void transpose(std::array<Eight, 8>& rows)
{
    __m128i a[8], b[8];
    for (std::size_t i = 0; i < 4; ++i) { // pairs of cells, then fours, then all eight
        a[2 * i] = _mm_unpacklo_epi16(rows[2 * i].cells, rows[2 * i + 1].cells);
        a[2 * i + 1] = _mm_unpackhi_epi16(rows[2 * i].cells, rows[2 * i + 1].cells);
    }
    for (std::size_t half = 0; half < 2; ++half)
        for (std::size_t i = 0; i < 2; ++i) {
            b[4 * half + 2 * i] = _mm_unpacklo_epi32(a[4 * half + i], a[4 * half + 2 + i]);
            b[4 * half + 2 * i + 1] = _mm_unpackhi_epi32(a[4 * half + i], a[4 * half + 2 + i]);
        }
    for (std::size_t i = 0; i < 4; ++i) {
        rows[2 * i].cells = _mm_unpacklo_epi64(b[i], b[4 + i]);
        rows[2 * i + 1].cells = _mm_unpackhi_epi64(b[i], b[4 + i]);
    }
}
#else
struct Eight {
    std::array<Cost, 8> cells;

    static Eight at(const Cost* place)
    {
        Eight eight;
        std::copy(place, place + 8, eight.cells.begin());
        return eight;
    }
    static Eight all(Cost cost)
    {
        Eight eight;
        eight.cells.fill(cost);
        return eight;
    }
    void store(Cost* place) const { std::copy(cells.begin(), cells.end(), place); }
    friend Eight operator+(Eight a, Eight b)
    {
        for (std::size_t i = 0; i < 8; ++i)
            a.cells[i] = static_cast<Cost>(a.cells[i] + b.cells[i]);
        return a;
    }
    friend Eight least(Eight a, Eight b)
    {
        for (std::size_t i = 0; i < 8; ++i)
            a.cells[i] = std::min(a.cells[i], b.cells[i]);
        return a;
    }
    friend bool anyBelow(Eight a, Eight b)
    {
        bool any = false;
        for (std::size_t i = 0; i < 8; ++i)
            any = any || a.cells[i] < b.cells[i];
        return any;
    }
};

inline void transpose(std::array<Eight, 8>& rows)
{
    for (std::size_t i = 0; i < 8; ++i)
        for (std::size_t j = 0; j < i; ++j)
            std::swap(rows[i].cells[j], rows[j].cells[i]);
}
#endif

} // namespace doorloom::routing
