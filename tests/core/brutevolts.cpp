#include "core/brutevolts.h"

#include "external/csv.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <utility>

namespace doorloom {

namespace {

constexpr long double nearlyNothing = 1e-7L, leakSiemens = 1e-9L; // ohms of what has none; of a blocking diode
constexpr long double noAmperes = -1e-6L, noVolts = 1e-6L, noVoltsByLeak = 0.1L; // what rounding may leave
constexpr double withoutLimit = 1e5;                                // amperes

// Ohms of a metre, by the gauge's name.
std::map<std::string, double> copperTable()
{
    std::map<std::string, double> ohms;
    for (const CsvRow& row : publishedRows("awg.csv"))
        ohms[row.at("awg") + " AWG"] = std::stod(row.at("def_ohm_per_km_20C")) / 1000;
    for (const CsvRow& row : publishedRows("iec60228.csv"))
        ohms[row.at("area_mm2") + " mm2"] = std::stod(row.at("class5_plain")) / 1000;
    return ohms;
}

} // namespace

BruteVolts::BruteVolts(const Job& job, const Netlist& net) : circuit_(net.circuit())
{
    static const std::map<std::string, double> copper = copperTable();
    for (const Joint& joint : circuit_.joints) {
        const Conductor* conductor = job.conductors.find(net.origin(joint.origin).conductor);
        const auto found = conductor ? copper.find(conductor->gauge) : copper.end();
        ohmsOfJoint_.push_back(found == copper.end() ? 0 : found->second * conductor->length.value);
    }
    voltsOfFeed_.resize(3);
    for (const Feed& feed : circuit_.feeds) {
        const auto* source = partBehind<SourcePart>(job, net.origin(feed.origin));
        voltsOfFeed_[0].push_back(source->lowest.value);
        voltsOfFeed_[1].push_back(source->nominal.value);
        voltsOfFeed_[2].push_back(source->highest.value);
    }
    ohmsOfElement_.resize(circuit_.elements.size());
    wettingVolts_.resize(circuit_.elements.size());
    for (std::uint32_t i = 0; i < circuit_.elements.size(); ++i) {
        const Origin& origin = net.origin(circuit_.elements[i].origin);
        if (circuit_.elements[i].kind == ElementKind::Resistor)
            ohmsOfElement_[i] = circuit_.elements[i].ohms;
        if (const auto* input = partBehind<DryInputPart>(job, origin)) {
            ohmsOfElement_[i] = input->wettingOhms->value;
            wettingVolts_[i] = input->wettingVolts->value;
        }
        const auto* load = partBehind<LoadPart>(job, origin);
        if (!load)
            continue;
        const auto& [volts, amperes] = load->rated.at(0);
        if (load->law == LoadLaw::Resistive)
            ohmsOfElement_[i] = volts.value / amperes.value;
        else
            draws_.push_back({i, load->law, load->law == LoadLaw::ConstantPower ? volts.value * amperes.value : amperes.value,
                              volts.value / amperes.value, load->releaseVolts->value});
    }
}

BruteVolts::Branches BruteVolts::branchesIn(const Position& position, Level level) const
{
    Branches branches; // joints, feeds, elements, each in its place; those that are not there carry nothing
    for (std::size_t i = 0; i < circuit_.joints.size(); ++i) {
        const Joint& joint = circuit_.joints[i];
        const long double ohms = ohmsOfJoint_[i] > 0 ? static_cast<long double>(ohmsOfJoint_[i]) : nearlyNothing;
        branches.push_back({joint.a, joint.b, holds(joint.guard, position) ? 1 / ohms : 0, 0});
    }
    for (std::size_t i = 0; i < circuit_.feeds.size(); ++i) {
        const Feed& feed = circuit_.feeds[i];
        const bool isLive = holds(feed.live, position);
        const long double volts = voltsOfFeed_[static_cast<std::size_t>(level)][i];
        branches.push_back({feed.plus, feed.minus, isLive ? 1 / nearlyNothing : 0, isLive ? -volts / nearlyNothing : 0});
    }
    for (std::size_t i = 0; i < circuit_.elements.size(); ++i) {
        const long double ohms = ohmsOfElement_[i];
        branches.push_back({circuit_.elements[i].a, circuit_.elements[i].b, ohms > 0 ? 1 / ohms : 0,
                            ohms > 0 ? -static_cast<long double>(wettingVolts_[i]) / ohms : 0});
    }
    return branches;
}

std::vector<Vertex> BruteVolts::piecesOf(const Branches& branches) const
{
    std::vector<Vertex> piece(circuit_.vertices);
    std::iota(piece.begin(), piece.end(), Vertex{0});
    for (bool changed = true; changed;) {
        changed = false;
        for (const Branch& at : branches)
            if (at.siemens > 0 || at.constant != 0)
                if (const Vertex least = std::min(piece[at.a], piece[at.b]); piece[at.a] != piece[at.b]) {
                    piece[at.a] = piece[at.b] = least;
                    changed = true;
                }
    }
    return piece;
}

std::vector<Vertex> BruteVolts::withoutLeaks(Branches branches) const
{
    std::erase_if(branches, [](const Branch& at) { return at.isLeak; });
    return piecesOf(branches);
}

// The least vertex of each piece stands at nothing.
std::vector<long double> BruteVolts::dense(const Branches& branches) const
{
    const std::size_t n = circuit_.vertices;
    const std::vector<Vertex> piece = piecesOf(branches);
    std::vector<std::vector<long double>> rows(n, std::vector<long double>(n + 1));
    for (const Branch& at : branches)
        for (const auto& [one, other, sign] : {std::tuple(at.a, at.b, 1), std::tuple(at.b, at.a, -1)}) {
            rows[one][one] += at.siemens;
            rows[one][other] -= at.siemens;
            rows[one][n] -= sign * at.constant;
        }
    for (Vertex vertex = 0; vertex < n; ++vertex)
        if (piece[vertex] == vertex) {
            rows[vertex].assign(n + 1, 0);
            rows[vertex][vertex] = 1;
        }
    for (std::size_t column = 0; column < n; ++column) {
        std::size_t pivot = column;
        for (std::size_t row = column; row < n; ++row)
            if (std::abs(rows[row][column]) > std::abs(rows[pivot][column]))
                pivot = row;
        std::swap(rows[pivot], rows[column]);
        for (std::size_t row = column + 1; row < n; ++row)
            if (rows[row][column] != 0) {
                const long double times = rows[row][column] / rows[column][column];
                for (std::size_t i = column; i <= n; ++i)
                    rows[row][i] -= times * rows[column][i];
            }
    }
    std::vector<long double> volts(n);
    for (std::size_t row = n; row-- > 0;) {
        long double sum = rows[row][n];
        for (std::size_t i = row + 1; i < n; ++i)
            sum -= rows[row][i] * volts[i];
        volts[row] = sum / rows[row][row];
    }
    return volts;
}

// The first state that agrees with itself.
std::optional<BruteVolts::Solved> BruteVolts::withDiodes(Branches branches) const
{
    const std::size_t first = branches.size();
    branches.resize(first + circuit_.diodes.size());
    for (unsigned states = 0; states < 1u << circuit_.diodes.size(); ++states) {
        for (std::size_t i = 0; i < circuit_.diodes.size(); ++i) {
            const Diode& diode = circuit_.diodes[i];
            const bool conducts = (states >> i) & 1u;
            branches[first + i] = {diode.anode, diode.cathode, conducts ? 1 / nearlyNothing : leakSiemens,
                                   conducts ? -diode.drop / 1000.0L / nearlyNothing : 0, !conducts};
        }
        const Solved solved{dense(branches), branches};
        const std::vector<Vertex> piece = withoutLeaks(branches);
        bool agrees = true;
        for (std::size_t i = 0; i < circuit_.diodes.size() && agrees; ++i) {
            const Diode& diode = circuit_.diodes[i];
            const long double spare = piece[diode.anode] == piece[diode.cathode] ? noVolts : noVoltsByLeak;
            agrees = (states >> i) & 1u ? solved.through(first + i) > noAmperes
                                        : solved.volts[diode.anode] - solved.volts[diode.cathode] < diode.drop / 1000.0L + spare;
        }
        if (agrees)
            return solved;
    }
    return std::nullopt;
}

BruteVolts::Branches BruteVolts::asOhms(Branches plain) const
{
    for (const Draw& draw : draws_)
        plain.push_back({circuit_.elements[draw.element].a, circuit_.elements[draw.element].b, 1.0L / draw.ohms, 0});
    return plain;
}

// Each current follows from the volts of the round before, from no load on.
std::optional<BruteVolts::Solved> BruteVolts::withDraws(const Branches& plain, bool& isCarried) const
{
    Branches branches = asOhms(plain);
    std::optional<Solved> solved = withDiodes(branches);
    std::vector<std::size_t> fed;
    std::vector<long double> sign(draws_.size()), amperes(draws_.size());
    for (std::size_t i = 0; i < draws_.size() && solved; ++i) {
        const Element& at = circuit_.elements[draws_[i].element];
        const long double volts = solved->volts[at.a] - solved->volts[at.b];
        if (std::abs(volts) <= draws_[i].least)
            continue;
        fed.push_back(i);
        sign[i] = volts > 0 ? 1 : -1;
        amperes[i] = draws_[i].law == LoadLaw::ConstantCurrent ? draws_[i].amount : 0;
    }
    for (int round = 0; round < 400 && solved && !fed.empty(); ++round) {
        for (std::size_t i : fed)
            branches[plain.size() + i] = {circuit_.elements[draws_[i].element].a, circuit_.elements[draws_[i].element].b, 0,
                                          sign[i] * amperes[i]};
        solved = withDiodes(branches);
        long double moved = 0;
        for (std::size_t i : fed) {
            const Element& at = circuit_.elements[draws_[i].element];
            const long double volts = solved ? sign[i] * (solved->volts[at.a] - solved->volts[at.b]) : 0;
            isCarried = isCarried && volts > draws_[i].least;
            const long double next = draws_[i].law == LoadLaw::ConstantCurrent ? draws_[i].amount : draws_[i].amount / volts;
            moved = std::max(moved, std::abs(next - amperes[i]));
            amperes[i] = next;
        }
        if (moved < 1e-10L || !isCarried)
            return solved;
    }
    isCarried = isCarried && fed.empty();
    return solved;
}

std::optional<BruteVolts::Read> BruteVolts::read(const Position& position, Level level) const
{
    Read read;
    const std::optional<Solved> solved = withDraws(branchesIn(position, level), read.isCarried);
    if (!solved)
        return std::nullopt;
    if (!read.isCarried)
        return read;
    read.piece = withoutLeaks(solved->branches);
    read.volts.assign(solved->volts.begin(), solved->volts.end());
    for (std::size_t i = 0; i < circuit_.joints.size(); ++i)
        read.throughJoint.push_back(static_cast<double>(solved->through(i)));
    for (std::size_t i = 0; i < circuit_.feeds.size(); ++i)
        read.outOf.push_back(static_cast<double>(-solved->through(circuit_.joints.size() + i)));
    const auto isUnlimited = [](double amperes) { return !(std::abs(amperes) < withoutLimit); };
    if (std::any_of(read.throughJoint.begin(), read.throughJoint.end(), isUnlimited) ||
        std::any_of(read.outOf.begin(), read.outOf.end(), isUnlimited))
        return std::nullopt;
    return read;
}

} // namespace doorloom
