#pragma once

#include "route/cost.h"

#include <cstddef>

#ifdef __SSE2__
#include <emmintrin.h>
#endif

namespace doorloom::routing {

// Lowers `into`, a block of eight rows of eight, to `from` with rows and columns exchanged, and `extra` added.
#ifdef __SSE2__
inline void lowerTransposed(Cost* into, std::ptrdiff_t intoStride, const Cost* from, std::ptrdiff_t fromStride,
                            const Cost* extra, std::ptrdiff_t extraStride, Cost more)
{
    const auto load = [](const Cost* place) { return _mm_loadu_si128(reinterpret_cast<const __m128i*>(place)); };
    __m128i a[8], b[8];
    for (int i = 0; i < 8; ++i)
        a[i] = load(from + i * fromStride);
    for (int i = 0; i < 4; ++i) { // pairs of cells, then fours, then all eight
        b[2 * i] = _mm_unpacklo_epi16(a[2 * i], a[2 * i + 1]);
        b[2 * i + 1] = _mm_unpackhi_epi16(a[2 * i], a[2 * i + 1]);
    }
    for (int half = 0; half < 2; ++half)
        for (int i = 0; i < 2; ++i) {
            a[4 * half + 2 * i] = _mm_unpacklo_epi32(b[4 * half + i], b[4 * half + 2 + i]);
            a[4 * half + 2 * i + 1] = _mm_unpackhi_epi32(b[4 * half + i], b[4 * half + 2 + i]);
        }
    for (int i = 0; i < 4; ++i) {
        b[2 * i] = _mm_unpacklo_epi64(a[i], a[4 + i]);
        b[2 * i + 1] = _mm_unpackhi_epi64(a[i], a[4 + i]);
    }
    const __m128i all = _mm_set1_epi16(more);
    for (int i = 0; i < 8; ++i) {
        const __m128i cost = _mm_add_epi16(b[i], _mm_add_epi16(load(extra + i * extraStride), all));
        const __m128i least = _mm_min_epi16(cost, load(into + i * intoStride));
        _mm_storeu_si128(reinterpret_cast<__m128i*>(into + i * intoStride), least);
    }
}
#else
inline void lowerTransposed(Cost* into, std::ptrdiff_t intoStride, const Cost* from, std::ptrdiff_t fromStride,
                            const Cost* extra, std::ptrdiff_t extraStride, Cost more)
{
    for (int i = 0; i < 8; ++i)
        for (int j = 0; j < 8; ++j) {
            const int cost = from[j * fromStride + i] + extra[i * extraStride + j] + more;
            Cost& cell = into[i * intoStride + j];
            cell = static_cast<Cost>(std::min<int>(cell, cost));
        }
}
#endif

} // namespace doorloom::routing
