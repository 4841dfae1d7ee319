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
        : first_(vertices, none), count_(vertices), gone_(vertices), listed_(vertices), listedIn_(vertices), stale_(vertices),
          into_(std::move(amperesInto)), volts_(vertices)
    {
        ways_.reserve(2 * conductances.size() + 2 * vertices);
        steps_.reserve(vertices);
        for (const auto& [a, b, siemens] : conductances)
            if (a != b && siemens != 0)
                join(a, b, siemens);
    }

    // Out: false where it is not definite
    bool solve()
    {
        foldAll();
        if (!definite_ || !solveCore())
            return false;
        for (auto step = steps_.rbegin(); step != steps_.rend(); ++step)
            volts_[step->vertex] = step->volts + step->share[0] * volts_[step->to[0]] + step->share[1] * volts_[step->to[1]];
        return true;
    }

    std::vector<double> volts() { return std::move(volts_); }

private:
    static constexpr Vertex none = ~Vertex{0};
    static constexpr std::uint32_t few = 8; // ways; so many are looked through whenever one changes

    struct Way { // in the list of ways of one vertex
        Vertex to = 0;
        std::uint32_t next = none;
        double siemens = 0;
    };
    struct Step {
        Vertex vertex = 0;
        std::array<Vertex, 2> to{};
        std::array<double, 2> share{}; // of all its siemens
        double volts = 0;              // above what its neighbours' come to
    };

    void join(Vertex a, Vertex b, double siemens)
    {
        for (const auto& [from, to] : {std::pair(a, b), std::pair(b, a)}) {
            ways_.push_back({to, first_[from], siemens});
            first_[from] = static_cast<std::uint32_t>(ways_.size() - 1);
            ++count_[from];
        }
    }

    void foldAll()
    {
        bool any = true;
        while (any && definite_) {
            any = false;
            for (Vertex vertex = 0; vertex < first_.size(); ++vertex)
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
        if (count_[vertex] > 2)
            return false;
        queue_.push_back(vertex);
        return true;
    }

    // Parallel ways become one; those to what is gone go.
    void tidy(Vertex vertex)
    {
        ++round_;
        count_[vertex] = 0;
        for (std::uint32_t* link = &first_[vertex]; *link != none;) {
            Way& way = ways_[*link];
            if (gone_[way.to] || listedIn_[way.to] == round_) {
                if (!gone_[way.to])
                    ways_[listed_[way.to]].siemens += way.siemens;
                *link = way.next;
                continue;
            }
            listedIn_[way.to] = round_;
            listed_[way.to] = *link;
            ++count_[vertex];
            link = &way.next;
        }
        stale_[vertex] = 0;
    }

    void fold(Vertex vertex)
    {
        tidy(vertex);
        if (count_[vertex] > 2)
            return;
        Step step;
        step.vertex = vertex;
        std::size_t count = 0;
        double siemens = 0;
        for (std::uint32_t at = first_[vertex]; at != none; at = ways_[at].next) {
            step.to[count] = ways_[at].to;
            step.share[count++] = ways_[at].siemens;
            siemens += ways_[at].siemens;
        }
        if (count > 0 && siemens <= 0) {
            definite_ = false;
            return;
        }
        gone_[vertex] = 1;
        if (count == 2)
            join(step.to[0], step.to[1], step.share[0] * step.share[1] / siemens);
        for (std::size_t i = 0; i < count; ++i) {
            step.share[i] /= siemens;
            into_[step.to[i]] += into_[vertex] * step.share[i];
        }
        step.volts = count > 0 ? into_[vertex] / siemens : 0; // nothing: the piece ends here
        steps_.push_back(step);
        for (std::size_t i = 0; i < count; ++i)
            changed(step.to[i]);
    }

    // Of many ways, so many change before they are looked through that each costs a constant.
    void changed(Vertex vertex)
    {
        if (++stale_[vertex] * 2 < count_[vertex] && count_[vertex] > few)
            return;
        tidy(vertex);
        queueIfFew(vertex);
    }

    // What has three neighbours or more. One vertex of each piece, that with the most, stands at nothing.
    bool solveCore()
    {
        std::vector<Vertex> core;
        for (Vertex vertex = 0; vertex < first_.size(); ++vertex)
            if (!gone_[vertex])
                core.push_back(vertex);
        if (core.empty())
            return true;
        const std::vector<char> grounded = groundsOf(core);
        std::vector<int> row(first_.size(), -1);
        int rows = 0;
        for (Vertex vertex : core)
            if (!grounded[vertex])
                row[vertex] = rows++;
        Eigen::VectorXi entries = Eigen::VectorXi::Zero(rows);
        for (Vertex vertex : core)
            if (!grounded[vertex])
                entries[row[vertex]] = static_cast<int>(count_[vertex]) + 1;
        Eigen::SparseMatrix<double> matrix(rows, rows);
        matrix.reserve(entries);
        Eigen::VectorXd into(rows);
        for (Vertex vertex : core) {
            if (grounded[vertex])
                continue;
            double sum = 0;
            for (std::uint32_t at = first_[vertex]; at != none; at = ways_[at].next) {
                const Way& way = ways_[at];
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
        JoinedSets sets(first_.size());
        for (Vertex vertex : core)
            for (std::uint32_t at = first_[vertex]; at != none; at = ways_[at].next)
                sets.join(vertex, ways_[at].to);
        std::vector<Vertex> best(first_.size(), none); // by root
        for (Vertex vertex : core)
            if (Vertex& held = best[sets.find(vertex)]; held == none || count_[vertex] > count_[held])
                held = vertex;
        std::vector<char> grounded(first_.size());
        for (Vertex vertex : core)
            grounded[best[sets.find(vertex)]] = 1;
        return grounded;
    }

    std::vector<Way> ways_;
    std::vector<std::uint32_t> first_, count_; // by vertex: its first way, how many
    std::vector<char> gone_;
    std::uint32_t round_ = 0;
    std::vector<std::uint32_t> listed_, listedIn_; // by neighbour: its way in the list being tidied, and in which round
    std::vector<std::uint32_t> stale_;             // changes since a list was tidied
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
