#include "catalogue/stockcables.h"

#include <algorithm>
#include <initializer_list>

namespace doorloom {
namespace {

struct Stock {
    std::string_view name, gauge;
    Words words;
    std::initializer_list<std::string_view> colours; // in the order in which they are used up
    bool paired = false;                             // each two are a pair
    bool shielded = false;                           // with a bare drain, thinner than the cores
};

CableType typeOf(const Stock& stock)
{
    CableType type{.id = {}, .name = std::string(stock.name), .words = stock.words, .cores = {}};
    type.shielded = stock.shielded;
    for (std::string_view colour : stock.colours) {
        const int number = static_cast<int>(type.cores.size()) + 1;
        type.cores.push_back({.number = number,
                              .colour = std::string(colour),
                              .gauge = std::string(stock.gauge),
                              .pair = stock.paired ? (number + 1) / 2 : 0});
    }
    if (stock.shielded)
        type.cores.push_back({.number = static_cast<int>(type.cores.size()) + 1,
                              .colour = {},
                              .gauge = "24 AWG",
                              .drain = true});
    return type;
}

std::vector<CableType> madeOf(std::initializer_list<Stock> stock)
{
    std::vector<CableType> types;
    std::transform(stock.begin(), stock.end(), std::back_inserter(types), typeOf);
    return types;
}

} // namespace

const std::vector<CableType>& stockCables()
{
    static const std::vector<CableType> types = madeOf({
        {"18/2", "18 AWG", {"two cores 18 AWG", "dos hilos 18 AWG"}, {"RD", "WH"}},
        {"18/3", "18 AWG", {"three cores 18 AWG", "tres hilos 18 AWG"}, {"RD", "WH", "GN"}},
        {"18/4", "18 AWG", {"four cores 18 AWG", "cuatro hilos 18 AWG"}, {"RD", "BK", "GN", "WH"}},
        {"18/5", "18 AWG", {"five cores 18 AWG", "cinco hilos 18 AWG"}, {"RD", "WH", "YE", "GN", "BU"}},
        {"16/2", "16 AWG", {"two cores 16 AWG", "dos hilos 16 AWG"}, {"RD", "WH"}},
        {"14/2", "14 AWG", {"two cores 14 AWG", "dos hilos 14 AWG"}, {"RD", "WH"}},
        {"22/2", "22 AWG", {"two cores 22 AWG", "dos hilos 22 AWG"}, {"RD", "WH"}},
        {"22/3", "22 AWG", {"three cores 22 AWG", "tres hilos 22 AWG"}, {"RD", "WH", "GN"}},
        {"22/4", "22 AWG", {"four cores 22 AWG", "cuatro hilos 22 AWG"}, {"RD", "BK", "GN", "WH"}},
        {"22/4 shielded",
         "22 AWG",
         {"four cores 22 AWG with foil and drain", "cuatro hilos 22 AWG con malla y dren"},
         {"RD", "BK", "GN", "WH"},
         false,
         true},
        {"24/4 pairs",
         "24 AWG",
         {"four pairs 24 AWG", "cuatro pares 24 AWG"},
         {"WH+BU", "BU+WH", "WH+OG", "OG+WH", "WH+GN", "GN+WH", "WH+BN", "BN+WH"},
         true},
    });
    return types;
}

const CableType* stockCableNamed(std::string_view name)
{
    const auto found = std::find_if(stockCables().begin(), stockCables().end(),
                                    [&](const CableType& type) { return type.name == name; });
    return found == stockCables().end() ? nullptr : &*found;
}

} // namespace doorloom
