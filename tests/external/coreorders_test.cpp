#include "catalogue/stockcables.h"
#include "external/csv.h"
#include "external/samples.h"

#include <gtest/gtest.h>

namespace doorloom {
namespace {

struct PublishedCore {
    std::string colour;
    int pair = 0;
    friend bool operator==(const PublishedCore&, const PublishedCore&) = default;
};
using Order = std::vector<PublishedCore>;

// Source: beside each scheme in the head of the file. 130 rows are read, 36 from memory and 14 common
// practice without a source (the na- schemes); the column says which.
std::map<std::string, Order> publishedOrders()
{
    std::map<std::string, Order> orders;
    for (const CsvRow& row : publishedRows("core_orders.csv")) {
        std::string colour = row.at("base");
        if (!row.at("mark").empty())
            colour += "+" + row.at("mark");
        std::replace(colour.begin(), colour.end(), '/', '+');
        orders[row.at("scheme")].push_back({colour, row.at("pair").empty() ? 0 : std::stoi(row.at("pair"))});
    }
    return orders;
}

Order orderOf(const CableType& type)
{
    Order order;
    for (const Core& core : type.cores)
        if (!core.drain)
            order.push_back({core.colour, core.pair});
    return order;
}

// A cable of few cores uses the head of a longer scheme. A scheme that counts
// pairs says nothing of a cable that does not.
bool follows(const Order& order, const Order& scheme)
{
    return !order.empty() && order.size() <= scheme.size() &&
           std::equal(order.begin(), order.end(), scheme.begin(),
                      [](const PublishedCore& core, const PublishedCore& published) {
                          return core.colour == published.colour &&
                                 (core.pair == 0 || core.pair == published.pair);
                      });
}

bool followsAny(const Order& order)
{
    static const std::map<std::string, Order> orders = publishedOrders();
    return std::any_of(orders.begin(), orders.end(),
                       [&](const auto& scheme) { return follows(order, scheme.second); });
}

TEST(CoreOrders, AreReadWithTheirPairs)
{
    const std::map<std::string, Order> orders = publishedOrders();
    ASSERT_TRUE(orders.contains("tia-25-pair"));
    EXPECT_EQ(orders.at("tia-25-pair").size(), 50u);
    EXPECT_EQ(orders.at("tia-25-pair")[10], (PublishedCore{"RD+BU", 6}));
    EXPECT_EQ(orders.at("din-47100")[44], (PublishedCore{"WH+BN+BK", 23}));
    EXPECT_TRUE(followsAny({{"RD", 0}, {"BK", 0}, {"GN", 0}, {"WH", 0}}));
    EXPECT_FALSE(followsAny({{"RD", 0}, {"GN", 0}, {"BK", 0}, {"WH", 0}}));
    EXPECT_FALSE(followsAny({{"WH+BU", 2}, {"BU+WH", 2}}));
}

TEST(CoreOrders, OfTheSamplesCablesAreKnownOnes)
{
    int seen = 0;
    for (const auto& [name, job] : sampleJobs())
        for (const CableType& type : job.cableTypes) {
            ++seen;
            std::string colours;
            for (const PublishedCore& core : orderOf(type))
                colours += core.colour + " ";
            EXPECT_TRUE(followsAny(orderOf(type))) << name << ", cable type " << type.name << ": " << colours;
        }
    EXPECT_GT(seen, 0) << "no sample has a cable";
}

TEST(CoreOrders, OfTheStockCablesAreKnownOnes)
{
    EXPECT_GE(stockCables().size(), 10u);
    for (const CableType& type : stockCables()) {
        EXPECT_TRUE(followsAny(orderOf(type))) << type.name;
        EXPECT_EQ(stockCableNamed(type.name), &type);
        EXPECT_EQ(type.shielded, type.cores.back().drain) << type.name;
    }
    EXPECT_EQ(stockCableNamed("17/9"), nullptr);
}

} // namespace
} // namespace doorloom
