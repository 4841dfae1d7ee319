#include "solve/linear.h"
#include "solve/network.h"

#include <nlohmann/json.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>

// 38 networks of textbooks; the source stands beside each in dc_networks.json. `computed` is compared, the exact solution of
// what the book draws; `published` are the book's own figures, rounded.
namespace doorloom {
namespace {

using Json = nlohmann::json;

Json publishedNetworks()
{
    std::ifstream file(SOURCE_FOLDER "/tests/external/dc_networks.json");
    return Json::parse(file);
}

// A published network as ours: a current source is a load of constant current.
class Drawn {
public:
    explicit Drawn(const Json& row)
    {
        for (const Json& node : row.at("nodes"))
            vertex_.emplace(node.get<std::string>(), static_cast<Vertex>(vertex_.size()));
        net_.vertices = static_cast<Vertex>(vertex_.size());
        for (const Json& element : row.at("elements")) {
            const auto name = element.at("name").get<std::string>(), kind = element.at("kind").get<std::string>();
            const Vertex a = at(element.at("a")), b = at(element.at("b"));
            const double value = element.at("value");
            ends_[name] = {a, b};
            if (kind == "R") {
                place_[name] = {kind, net_.resistors.size()};
                net_.resistors.push_back({a, b, value});
            } else if (kind == "V") {
                place_[name] = {kind, net_.sources.size()};
                net_.sources.push_back({a, b, value});
            } else {
                place_[name] = {kind, net_.draws.size()};
                net_.draws.push_back({a, b, LoadLaw::ConstantCurrent, value, 100, 0});
            }
        }
        solution_ = solved(net_);
    }

    const Solution& solution() const { return solution_; }
    // A current source from which current comes is no load.
    bool hasOnlyLoads() const { return solution_.notCarried.empty() && loadsTakeTheirs(); }

    // V(n), V(n,m), U(x), I(x), Is(x), P(x), Ps(x), Req(x); signs as the file's own page has them.
    double figure(const std::string& key) const
    {
        const std::string what = key.substr(0, key.find('(')), of = key.substr(key.find('(') + 1, key.size() - what.size() - 2);
        if (what == "V") {
            const auto comma = of.find(',');
            return volts(vertex_.at(of.substr(0, comma)), comma == std::string::npos ? vertex_.at("0") : vertex_.at(of.substr(comma + 1)));
        }
        const double across = volts(ends_.at(of).first, ends_.at(of).second), through = amperes(of);
        return what == "U" ? across
               : what == "I" ? through
               : what == "Is" ? -through
               : what == "P" ? across * through
               : what == "Ps" ? -across * through
               : what == "Req" ? across / -through
                               : throw std::runtime_error("no figure " + key);
    }

private:
    Vertex at(const Json& node) const { return vertex_.at(node.get<std::string>()); }
    double volts(Vertex x, Vertex y) const { return solution_.between(x, y).value(); }
    double amperes(const std::string& name) const // from a to b through it
    {
        const auto& [kind, index] = place_.at(name);
        return kind == "R" ? solution_.resistors[index] : kind == "V" ? -solution_.sources[index] : solution_.draws[index];
    }
    bool loadsTakeTheirs() const
    {
        for (std::size_t i = 0; i < net_.draws.size(); ++i)
            if (std::abs(solution_.draws[i] - net_.draws[i].amount) > 1e-9)
                return false;
        return true;
    }

    std::map<std::string, Vertex> vertex_;
    std::map<std::string, std::pair<Vertex, Vertex>> ends_;
    std::map<std::string, std::pair<std::string, std::size_t>> place_;
    Network net_;
    Solution solution_;
};

TEST(PublishedNetworks, AreSolvedAsTheyAreComputed)
{
    // Driven by a current source, which nothing of a door's wiring is.
    const std::vector<std::string> leftOut{"liec-bridge-current-source", "liec-norton-28V-7V", "fossee1370-ex1.13-24V-8A-2A"};
    int networks = 0, figures = 0;
    for (const Json& row : publishedNetworks()) {
        const auto name = row.at("id").get<std::string>();
        const Drawn drawn(row);
        const bool isLeftOut = std::find(leftOut.begin(), leftOut.end(), name) != leftOut.end();
        EXPECT_EQ(drawn.hasOnlyLoads(), !isLeftOut) << name;
        if (isLeftOut)
            continue;
        ++networks;
        for (const auto& [key, value] : row.at("computed").items()) {
            const double expected = value;
            EXPECT_NEAR(drawn.figure(key), expected, 1e-6 * std::max(std::abs(expected), 1e-3)) << name << " " << key;
            ++figures;
        }
    }
    std::printf("%d networks, %d figures\n", networks, figures);
    EXPECT_EQ(networks, 35);
}

// Half a unit of the last digit that the book prints; marked ones are wrong as published, or rounded on the way.
TEST(PublishedNetworks, AreSolvedAsThePublishedFiguresSay)
{
    int figures = 0;
    for (const Json& row : publishedNetworks()) {
        const Drawn drawn(row);
        if (row.at("status") != "ok" || !drawn.hasOnlyLoads())
            continue;
        for (const auto& [key, value] : row.at("published").items()) {
            const double expected = value, tolerance = row.at("tolerance").at(key);
            EXPECT_NEAR(drawn.figure(key), expected, tolerance * 1.0001) << row.at("id") << " " << key;
            ++figures;
        }
    }
    EXPECT_GT(figures, 50);
}

} // namespace
} // namespace doorloom
