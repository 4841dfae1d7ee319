#include "graph/blocks.h"

#include "graph/joinedsets.h"

#include <boost/graph/adjacency_list.hpp>
#include <boost/graph/biconnected_components.hpp>
#include <boost/property_map/property_map.hpp>

#include <algorithm>
#include <cstddef>
#include <map>

namespace doorloom {

namespace {

using EdgeNumber = boost::property<boost::edge_index_t, std::size_t>;
using Graph = boost::adjacency_list<boost::vecS, boost::vecS, boost::undirectedS, boost::no_property, EdgeNumber>;

Graph graphOf(Vertex vertices, const std::vector<std::pair<Vertex, Vertex>>& edges)
{
    Graph graph(vertices);
    for (std::size_t edge = 0; edge < edges.size(); ++edge)
        boost::add_edge(edges[edge].first, edges[edge].second, EdgeNumber(edge), graph);
    return graph;
}

} // namespace

std::vector<std::uint32_t> blocksOf(Vertex vertices, const std::vector<std::pair<Vertex, Vertex>>& edges)
{
    std::vector<std::pair<Vertex, Vertex>> proper; // Boost's walk takes no loops and skips the second of two like edges
    std::map<std::pair<Vertex, Vertex>, std::size_t> numberOf;
    for (const auto& edge : edges)
        if (edge.first != edge.second && numberOf.try_emplace(std::minmax(edge.first, edge.second), proper.size()).second)
            proper.push_back(edge);
    const Graph graph = graphOf(vertices, proper);
    std::vector<std::uint32_t> properBlock(proper.size(), 0);
    const auto blockMap = boost::make_iterator_property_map(properBlock.begin(), boost::get(boost::edge_index, graph));
    const std::size_t count = proper.empty() ? 0 : boost::biconnected_components(graph, blockMap);
    std::vector<std::uint32_t> block(edges.size());
    for (std::size_t edge = 0; edge < edges.size(); ++edge) {
        const auto [a, b] = edges[edge];
        block[edge] = a == b ? static_cast<std::uint32_t>(count + edge) : properBlock[numberOf.at(std::minmax(a, b))];
    }
    return block;
}

std::vector<std::uint32_t> piecesOf(Vertex vertices, const std::vector<std::pair<Vertex, Vertex>>& edges)
{
    JoinedSets sets(vertices);
    for (const auto& [a, b] : edges)
        sets.join(a, b);
    return sets.numbers();
}

} // namespace doorloom
