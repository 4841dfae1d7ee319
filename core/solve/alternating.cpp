#include "solve/alternating.h"

#include "graph/joinedsets.h"

#include <Eigen/SparseLU>

#include <algorithm>
#include <cmath>

namespace doorloom {

namespace {

using Complex = std::complex<double>;

constexpr double leastOhms = 1e-6;

Complex siemensOf(double ohms, double powerFactor)
{
    const double factor = std::clamp(powerFactor, 0.0, 1.0);
    return ohms <= leastOhms ? Complex{1 / leastOhms} : 1.0 / (ohms * Complex{factor, std::sqrt(1 - factor * factor)});
}

// One vertex of each piece, against which the others are.
std::vector<char> groundsOf(const Network& network)
{
    JoinedSets pieces(network.vertices);
    for (const auto& [a, b, ohms] : network.resistors)
        pieces.join(a, b);
    for (const auto& [plus, minus, volts] : network.sources)
        pieces.join(plus, minus);
    std::vector<char> isGround(network.vertices);
    for (Vertex vertex = 0; vertex < network.vertices; ++vertex)
        isGround[vertex] = pieces.find(vertex) == vertex;
    return isGround;
}

} // namespace

std::optional<Alternating> solvedAlternating(const Network& network, const std::vector<double>& powerFactor)
{
    // Volts of the vertices, then amperes of the sources, are unknown.
    const auto size = static_cast<Eigen::Index>(network.vertices + network.sources.size());
    const std::vector<char> isGround = groundsOf(network);
    std::vector<Eigen::Triplet<Complex>> entries;
    const auto add = [&](std::size_t row, std::size_t column, Complex value) {
        if (row >= network.vertices || !isGround[row])
            entries.emplace_back(static_cast<int>(row), static_cast<int>(column), value);
    };
    for (Vertex vertex = 0; vertex < network.vertices; ++vertex)
        if (isGround[vertex])
            entries.emplace_back(static_cast<int>(vertex), static_cast<int>(vertex), 1.0);
    std::vector<Complex> siemens;
    for (std::size_t i = 0; i < network.resistors.size(); ++i) {
        const auto& [a, b, ohms] = network.resistors[i];
        siemens.push_back(siemensOf(ohms, powerFactor[i]));
        for (const auto& [one, other] : {std::pair(a, b), std::pair(b, a)}) {
            add(one, one, siemens.back());
            add(one, other, -siemens.back());
        }
    }
    Eigen::VectorXcd right = Eigen::VectorXcd::Zero(size);
    for (std::size_t i = 0; i < network.sources.size(); ++i) {
        const auto& [plus, minus, volts] = network.sources[i];
        const std::size_t own = network.vertices + i;
        add(plus, own, -1.0);
        add(minus, own, 1.0);
        add(own, plus, 1.0);
        add(own, minus, -1.0);
        right[static_cast<Eigen::Index>(own)] = volts;
    }
    Eigen::SparseMatrix<Complex> matrix(size, size);
    matrix.setFromTriplets(entries.begin(), entries.end());
    Eigen::SparseLU<Eigen::SparseMatrix<Complex>> factors(matrix);
    if (factors.info() != Eigen::Success)
        return std::nullopt;
    const Eigen::VectorXcd found = factors.solve(right);
    if (factors.info() != Eigen::Success || !found.allFinite())
        return std::nullopt;
    Alternating result;
    result.volts.assign(found.begin(), found.begin() + network.vertices);
    for (std::size_t i = 0; i < network.resistors.size(); ++i)
        result.resistors.push_back(std::abs((result.volts[network.resistors[i].a] - result.volts[network.resistors[i].b]) * siemens[i]));
    for (std::size_t i = 0; i < network.sources.size(); ++i)
        result.sources.push_back(std::abs(found[static_cast<Eigen::Index>(network.vertices + i)]));
    return result;
}

} // namespace doorloom
