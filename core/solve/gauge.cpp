#include "solve/gauge.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <numbers>

namespace doorloom {

namespace {

// Annealed copper standard at 20 °C: 0.017241 Ω·mm²/m, 0.00393 per °C (IEC 60028; from memory).
constexpr double resistivity = 0.017241, perDegree = 0.00393;

struct MetricSize {
    double squareMillimetres, ohmsPerKilometre;
};
// IEC 60228:2004 table 3, class 5, plain, at 20 °C.
constexpr MetricSize metricSizes[] = {{0.5, 39.0}, {0.75, 26.0}, {1, 19.5}, {1.5, 13.3},
                                      {2.5, 7.98}, {4, 4.95},    {6, 3.30}, {10, 1.91}};

constexpr std::string_view awgSizes[] = {"24 AWG", "22 AWG", "20 AWG", "18 AWG", "16 AWG", "14 AWG", "12 AWG", "10 AWG"};
constexpr std::string_view metricNames[] = {"0.5 mm2", "0.75 mm2", "1 mm2", "1.5 mm2", "2.5 mm2", "4 mm2", "6 mm2", "10 mm2"};

std::optional<double> numberIn(std::string_view text)
{
    double number = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    const bool isWhole = error == std::errc{} && end == text.data() + text.size();
    return isWhole && std::isfinite(number) && number >= 0 ? std::optional(number) : std::nullopt;
}

// 18, 0, -1 for 2/0, -3 for 4/0.
std::optional<double> awgNumber(std::string_view text)
{
    if (const auto slash = text.find("/0"); slash != std::string_view::npos && slash + 2 == text.size()) {
        const auto noughts = numberIn(text.substr(0, slash));
        return noughts && *noughts >= 1 && *noughts <= 4 ? std::optional(1 - *noughts) : std::nullopt;
    }
    const auto number = numberIn(text);
    return number && *number <= 40 ? number : std::nullopt;
}

std::optional<std::string_view> before(std::string_view text, std::string_view unit)
{
    if (!text.ends_with(unit))
        return std::nullopt;
    text.remove_suffix(unit.size());
    while (text.ends_with(' '))
        text.remove_suffix(1);
    return text;
}

// d = 0.127 mm · 92^((36 − n)/39) (ASTM B258; from memory).
double areaOfAwg(double number)
{
    const double diameter = 0.127 * std::pow(92.0, (36 - number) / 39);
    return std::numbers::pi / 4 * diameter * diameter;
}

std::optional<double> metricSizeOf(std::string_view gauge)
{
    for (std::string_view unit : {"mm2", "mm²"})
        if (const auto text = before(gauge, unit))
            if (const auto size = numberIn(*text); size && *size > 0)
                return size;
    return std::nullopt;
}

} // namespace

std::optional<double> squareMillimetresOf(std::string_view gauge)
{
    if (const auto text = before(gauge, "AWG")) {
        const auto number = awgNumber(*text);
        return number ? std::optional(areaOfAwg(*number)) : std::nullopt;
    }
    return metricSizeOf(gauge);
}

std::optional<Ohms> ohmsOf(std::string_view gauge, Metres length, double celsius)
{
    const auto area = squareMillimetresOf(gauge);
    if (!area)
        return std::nullopt;
    double perMetre = resistivity / *area;
    if (metricSizeOf(gauge))
        for (const auto& [size, perKilometre] : metricSizes)
            if (size == *area)
                perMetre = perKilometre / 1000;
    return Ohms{perMetre * length.value * (1 + perDegree * (celsius - ordinaryCelsius))};
}

std::span<const std::string_view> gaugesLike(std::string_view like)
{
    return metricSizeOf(like) ? std::span(metricNames) : std::span(awgSizes);
}

} // namespace doorloom
