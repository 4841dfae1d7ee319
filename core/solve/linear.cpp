#include "solve/linear.h"

#include "graph/joinedsets.h"

#include <Eigen/SparseCholesky>

#include <algorithm>
#include <array>

namespace doorloom {

namespace {

// Eliminates vertices one after another, and gives them their volts in the opposite order.
class Folding {
public:
    Folding(Vertex vertices, const std::vector<Conductance>& conductances, std::vector<double> amperesInto)
        : around_(vertices), gone_(vertices), listed_(vertices, none), stale_(vertices), into_(std::move(amperesInto)),
          volts_(vertices)
    {
        for (const auto& [a, b, siemens] : conductances)
            if (a != b && siemens != 0) {
                around_[a].push_back({b, siemens});
                around_[b].push_back({a, siemens});
            }
    }

    // Out: false where it is not definite
    bool solve()
    {
        foldAll();
        if (!definite_ || !solveCore())
            return false;
        for (auto step = steps_.rbegin(); step != steps_.rend(); ++step)
            volts_[step->vertex] =
                step->siemens == 0
                    ? 0
                    : (step->into + step->ways[0].siemens * volts_[step->ways[0].to] + step->ways[1].siemens * volts_[step->ways[1].to]) /
                          step->siemens;
        return true;
    }

    std::vector<double> volts() { return std::move(volts_); }

private:
    static constexpr Vertex none = ~Vertex{0};
    static constexpr std::size_t few = 8; // ways; so many are looked through whenever one changes

    struct Way {
        Vertex to = 0;
        double siemens = 0;
    };
    struct Step {
        Vertex vertex = 0;
        double into = 0, siemens = 0; // of all its ways; 0: the piece ends here
        std::array<Way, 2> ways{};
    };

    void foldAll()
    {
        bool any = true;
        while (any && definite_) {
            any = false;
            for (Vertex vertex = 0; vertex < around_.size(); ++vertex)
                if (!gone_[vertex]) {
                    tidy(vertex);
                    any = queueIfFew(vertex) || any;
                }
            while (!queue_.empty() && definite_) {
                const Vertex vertex = queue_.back();
                queue_.pop_back();
                if (!gone_[vertex])
                    fold(vertex);
            }
        }
    }

    bool queueIfFew(Vertex vertex)
    {
        if (around_[vertex].size() > 2)
            return false;
        queue_.push_back(vertex);
        return true;
    }

    // Parallel ways become one; those to what is gone go.
    void tidy(Vertex vertex)
    {
        auto& ways = around_[vertex];
        std::size_t kept = 0;
        for (std::size_t i = 0; i < ways.size(); ++i) {
            const Way way = ways[i];
            if (gone_[way.to])
                continue;
            if (listed_[way.to] != none && listed_[way.to] < kept && ways[listed_[way.to]].to == way.to) {
                ways[listed_[way.to]].siemens += way.siemens;
            } else {
                listed_[way.to] = static_cast<Vertex>(kept);
                ways[kept++] = way;
            }
        }
        ways.resize(kept);
        stale_[vertex] = 0;
    }

    void fold(Vertex vertex)
    {
        tidy(vertex);
        const auto& ways = around_[vertex];
        if (ways.size() > 2)
            return;
        Step step{vertex, into_[vertex], 0, {}};
        for (std::size_t i = 0; i < ways.size(); ++i) {
            step.ways[i] = ways[i];
            step.siemens += ways[i].siemens;
        }
        if (!ways.empty() && step.siemens <= 0) {
            definite_ = false;
            return;
        }
        gone_[vertex] = 1;
        const std::size_t count = ways.size();
        for (std::size_t i = 0; i < count; ++i)
            into_[step.ways[i].to] += step.into * step.ways[i].siemens / step.siemens;
        if (count == 2) {
            const auto& [one, other] = step.ways;
            const double across = one.siemens * other.siemens / step.siemens;
            around_[one.to].push_back({other.to, across});
            around_[other.to].push_back({one.to, across});
        }
        steps_.push_back(step);
        for (std::size_t i = 0; i < count; ++i)
            changed(step.ways[i].to);
    }

    // Of many ways, so many change before they are looked through that each costs a constant.
    void changed(Vertex vertex)
    {
        if (++stale_[vertex] * 2 < around_[vertex].size() && around_[vertex].size() > few)
            return;
        tidy(vertex);
        queueIfFew(vertex);
    }

    // What has three neighbours or more. One vertex of each piece, that with the most, stands at nothing.
    bool solveCore()
    {
        std::vector<Vertex> core;
        for (Vertex vertex = 0; vertex < around_.size(); ++vertex)
            if (!gone_[vertex])
                core.push_back(vertex);
        if (core.empty())
            return true;
        const std::vector<char> grounded = groundsOf(core);
        std::vector<int> row(around_.size(), -1);
        int rows = 0;
        for (Vertex vertex : core)
            if (!grounded[vertex])
                row[vertex] = rows++;
        Eigen::VectorXi entries = Eigen::VectorXi::Zero(rows);
        for (Vertex vertex : core)
            if (!grounded[vertex])
                entries[row[vertex]] = static_cast<int>(around_[vertex].size()) + 1;
        Eigen::SparseMatrix<double> matrix(rows, rows);
        matrix.reserve(entries);
        Eigen::VectorXd into(rows);
        for (Vertex vertex : core) {
            if (grounded[vertex])
                continue;
            double sum = 0;
            for (const Way& way : around_[vertex]) {
                sum += way.siemens;
                if (row[way.to] > row[vertex]) // the lower half will do
                    matrix.insert(row[way.to], row[vertex]) = -way.siemens;
            }
            matrix.insert(row[vertex], row[vertex]) = sum;
            into[row[vertex]] = into_[vertex];
        }
        const Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factors(matrix);
        if (factors.info() != Eigen::Success || (rows > 0 && factors.vectorD().minCoeff() <= 0))
            return false;
        const Eigen::VectorXd volts = factors.solve(into);
        for (Vertex vertex : core)
            volts_[vertex] = grounded[vertex] ? 0 : volts[row[vertex]];
        return true;
    }

    std::vector<char> groundsOf(const std::vector<Vertex>& core) const
    {
        JoinedSets sets(around_.size());
        for (Vertex vertex : core)
            for (const Way& way : around_[vertex])
                sets.join(vertex, way.to);
        std::vector<Vertex> best(around_.size(), none); // by root
        for (Vertex vertex : core)
            if (Vertex& held = best[sets.find(vertex)]; held == none || around_[vertex].size() > around_[held].size())
                held = vertex;
        std::vector<char> grounded(around_.size());
        for (Vertex vertex : core)
            grounded[best[sets.find(vertex)]] = 1;
        return grounded;
    }

    std::vector<std::vector<Way>> around_;
    std::vector<char> gone_;
    std::vector<Vertex> listed_;      // where a neighbour stands in the list being tidied
    std::vector<std::size_t> stale_;  // changes since a list was tidied
    std::vector<double> into_, volts_;
    std::vector<Vertex> queue_;
    std::vector<Step> steps_;
    bool definite_ = true;
};

} // namespace

LinearAnswer solveLinear(Vertex vertices, const std::vector<Conductance>& conductances, std::vector<double> amperesInto)
{
    JoinedSets pieces(vertices);
    for (const Conductance& each : conductances)
        if (each.siemens != 0)
            pieces.join(each.a, each.b);
    LinearAnswer answer;
    Folding folding(vertices, conductances, std::move(amperesInto));
    answer.definite = folding.solve();
    answer.volts = folding.volts();
    answer.piece = pieces.numbers();
    return answer;
}

} // namespace doorloom
