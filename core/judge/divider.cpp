#include "judge/divider.h"

#include "judge/cells.h"
#include "judge/railtree.h"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

namespace doorloom {

namespace {

// Indices without repeats: each is taken once for one division.
class Taken {
public:
    explicit Taken(std::size_t count) : by_(count, 0) {}

    bool take(std::uint32_t index)
    {
        if (std::exchange(by_[index], division_) == division_)
            return false;
        indices_.push_back(index);
        return true;
    }
    void takeAll(const std::vector<std::uint32_t>& indices)
    {
        for (std::uint32_t index : indices)
            take(index);
    }
    bool has(std::uint32_t index) const { return by_[index] == division_; }
    const std::vector<std::uint32_t>& indices() const { return indices_; }
    std::vector<std::uint32_t> sorted() const
    {
        std::vector<std::uint32_t> all = indices_;
        std::sort(all.begin(), all.end());
        return all;
    }
    void next()
    {
        ++division_;
        indices_.clear();
    }

private:
    std::uint32_t division_ = 0;
    std::vector<std::uint32_t> by_; // the last division that took each
    std::vector<std::uint32_t> indices_;
};

// Takes the rows of one division after another out of a job's wiring.
class Divider {
public:
    Divider(const Wiring& wiring, std::size_t mostWhole)
        : wiring_(wiring), cells_(wiring, mostWhole), devices_(wiring.devices.size()), full_(wiring.devices.size()),
          operators_(wiring.operators.size()), splices_(wiring.splices.size()), conductors_(wiring.conductors.size()),
          openings_(wiring.openings.size()), steps_(wiring.vertices)
    {
    }

    std::vector<Division> divided()
    {
        const ByPiece rows = sortedOut();
        for (std::uint32_t piece = 0; piece < cells_.pieces; ++piece)
            if (!cells_.isDivided[piece])
                takeWhole(rows[piece]);
        if (!cells_.cells.empty()) {
            tree_.emplace(wiring_, cells_);
            placeConductors();
            for (std::uint32_t piece = 0; piece < cells_.pieces; ++piece)
                if (cells_.isDivided[piece])
                    takeTrunk(rows[piece]);
            for (std::uint32_t cell = 0; cell < cells_.cells.size(); ++cell)
                if (!cells_.cells[cell].hasSource)
                    takeCell(cell);
        }
        std::sort(all_.begin(), all_.end(), [](const Division& a, const Division& b) { return a.key < b.key; });
        return std::move(all_);
    }

private:
    static constexpr std::uint32_t none = Wiring::none;
    using ByPiece = std::vector<Cells::ByRow>; // the rows of each

    ByPiece sortedOut() const
    {
        ByPiece rows(cells_.pieces);
        for (auto table : {&Cells::ByRow::devices, &Cells::ByRow::splices, &Cells::ByRow::conductors, &Cells::ByRow::openings}) {
            const std::vector<std::uint32_t>& pieceOf = cells_.pieceOf.*table;
            for (std::uint32_t row = 0; row < pieceOf.size(); ++row)
                (rows[pieceOf[row]].*table).push_back(row);
        }
        return rows;
    }

    void placeConductors()
    {
        onDevice_.resize(wiring_.devices.size());
        onNet_.resize(wiring_.nets);
        const auto put = [](std::vector<std::uint32_t>& list, std::uint32_t conductor) {
            if (list.empty() || list.back() != conductor)
                list.push_back(conductor);
        };
        for (std::uint32_t i = 0; i < wiring_.conductors.size(); ++i)
            forEachEnd(i, [&](Vertex end) {
                if (!cells_.isRail[wiring_.net[end]])
                    put(onNet_[wiring_.net[end]], i);
                if (wiring_.deviceAt[end] != none)
                    put(onDevice_[wiring_.deviceAt[end]], i);
            });
    }

    // A piece that is judged whole.
    void takeWhole(const Cells::ByRow& rows)
    {
        begin();
        devices_.takeAll(rows.devices);
        full_.takeAll(rows.devices);
        conductors_.takeAll(rows.conductors);
        splices_.takeAll(rows.splices);
        openings_.takeAll(rows.openings);
        finish([](std::uint32_t) { return true; });
    }

    // The rails' own wiring, with the supplies.
    void takeTrunk(const Cells::ByRow& rows)
    {
        begin();
        for (std::uint32_t device : rows.devices)
            if (const std::uint32_t cell = cells_.cellOf.devices[device]; cell == none)
                takeWithConductors(device);
            else if (cell != Cells::several && cells_.cells[cell].hasSource)
                takeSource(device);
        for (std::uint32_t conductor : rows.conductors)
            if (cells_.cellOf.conductors[conductor] == none)
                conductors_.take(conductor);
        for (std::uint32_t splice : rows.splices)
            if (cells_.cellOf.splices[splice] == none)
                splices_.take(splice);
        const auto isTrunk = [&](std::uint32_t cell) { return cell == none || cells_.cells[cell].hasSource; };
        takeEndsOfOwn(isTrunk);
        takeWaysToPoles();
        finish(isTrunk);
    }

    void takeCell(std::uint32_t cell)
    {
        begin();
        takeRowsOf(cell);
        for (std::uint32_t each : cells_.cells[cell].context)
            takeRowsOf(each);
        for (std::uint32_t rail : cells_.cells[cell].rails)
            if (!tree_->hasPole(rail))
                conductors_.takeAll(tree_->looseOn(rail));
        const auto isOwn = [&](std::uint32_t in) { return in == cell; };
        takeEndsOfOwn(isOwn);
        takeWaysToPoles();
        finish(isOwn);
    }

    void takeRowsOf(std::uint32_t cell)
    {
        const Cells::Cell& rows = cells_.cells[cell];
        for (std::uint32_t device : rows.devices)
            takeWithConductors(device);
        for (std::uint32_t net : rows.nets)
            for (std::uint32_t conductor : onNet_[net])
                takeWithItsEnds(conductor);
        openings_.takeAll(rows.openings);
    }

    void takeWithConductors(std::uint32_t device)
    {
        if (!full_.take(device))
            return;
        devices_.take(device);
        conductors_.takeAll(onDevice_[device]);
        for (std::size_t node = 0; node < wiring_.shapes[device]->nodes.size(); ++node)
            if (const Vertex vertex = wiring_.base[device] + static_cast<Vertex>(node); cells_.isRail[wiring_.net[vertex]])
                onRails_.push_back(vertex);
    }

    // Ways of everything here that is on a rail, and of the supplies here to each other.
    void takeWaysToPoles()
    {
        std::map<std::uint32_t, std::vector<Vertex>> poles; // by rail
        for (std::size_t next = 0; next < onRails_.size(); ++next)
            if (const auto end = takeWay(onRails_[next]); end && tree_->hasPole(wiring_.net[*end])) {
                poles[wiring_.net[*end]].push_back(*end);
                takeSource(wiring_.deviceAt[*end]);
            }
        for (const auto& [rail, ends] : poles)
            if (ends.size() > 1)
                for (Vertex pole : ends)
                    takeTies(pole);
    }

    // Where the way ends; nothing where it meets one that is taken already.
    std::optional<Vertex> takeWay(Vertex vertex)
    {
        while (steps_.take(vertex)) {
            takeRowAt(vertex);
            const RailTree::Step& step = tree_->from(vertex);
            if (step.up == vertex)
                return vertex;
            if (step.conductor != none)
                conductors_.take(step.conductor);
            vertex = step.up;
        }
        return std::nullopt;
    }

    // A supply is here with all that hangs on it.
    void takeSource(std::uint32_t device)
    {
        if (!full_.has(device))
            takeRowsOf(cells_.cellOf.devices[device]);
    }

    void takeTies(Vertex pole)
    {
        while (const RailTree::Tie* tie = tree_->tieOf(pole)) {
            for (Vertex side : {tie->here, tie->there}) {
                takeWay(side);
                takeRowAt(side);
            }
            if (tie->conductor != none)
                conductors_.take(tie->conductor);
            pole = tree_->endOf(tie->there);
        }
    }

    void takeRowAt(Vertex vertex)
    {
        if (wiring_.deviceAt[vertex] != none)
            devices_.take(wiring_.deviceAt[vertex]);
        else if (vertex != wiring_.earth())
            splices_.take(wiring_.spliceAt(vertex));
    }

    // ---- One division.

    void begin()
    {
        for (Taken* taken : {&devices_, &full_, &operators_, &splices_, &conductors_, &openings_, &steps_})
            taken->next();
        onRails_.clear();
    }

    template <class Visit> void forEachEnd(std::uint32_t conductor, Visit visit) const // that is landed
    {
        for (Vertex end : {wiring_.ends[conductor].first, wiring_.ends[conductor].second})
            if (end != none)
                visit(end);
    }

    void takeWithItsEnds(std::uint32_t conductor)
    {
        conductors_.take(conductor);
        forEachEnd(conductor, [&](Vertex end) { takeRowAt(end); });
    }

    // A conductor that is judged here has both its ends here, and their ways. One that is judged elsewhere may lead to a
    // device that is not here: it ends there.
    template <class Judged> void takeEndsOfOwn(Judged isJudgedHere)
    {
        for (std::uint32_t conductor : conductors_.indices())
            if (isJudgedHere(cells_.cellOf.conductors[conductor]))
                forEachEnd(conductor, [&](Vertex end) {
                    takeRowAt(end);
                    if (cells_.isRail[wiring_.net[end]])
                        onRails_.push_back(end);
                });
    }

    // `isJudgedHere`: of the cell that a row belongs to.
    template <class Judged> void finish(Judged isJudgedHere)
    {
        takeOperators();
        Division division;
        const auto put = [&](const auto& rows, const Taken& taken, auto& into, const std::vector<std::uint32_t>& cellOf) {
            for (std::uint32_t i : taken.sorted()) {
                into.push_back(rows[i]);
                const std::uint32_t number = rows[i]->id.number;
                if (cellOf[i] == Cells::several)
                    continue; // judged in each, by what is in each
                if (!isJudgedHere(cellOf[i]))
                    division.shared.push_back(number);
                else if (division.key == 0 || number < division.key)
                    division.key = number;
            }
        };
        put(wiring_.devices, devices_, division.devices, cells_.cellOf.devices);
        put(wiring_.conductors, conductors_, division.conductors, cells_.cellOf.conductors);
        put(wiring_.splices, splices_, division.splices, cells_.cellOf.splices);
        put(wiring_.openings, openings_, division.openings, cells_.cellOf.openings);
        if (division.key == 0)
            return;
        std::sort(division.shared.begin(), division.shared.end());
        for (std::uint32_t i : operators_.sorted())
            division.operators.push_back(wiring_.operators[i]);
        putKinds(division);
        all_.push_back(std::move(division));
    }

    // Kinds of the devices here, and which devices only carry.
    void putKinds(Division& division) const
    {
        for (std::uint32_t device : devices_.sorted()) {
            if (!full_.has(device))
                division.carriers.push_back(wiring_.devices[device]->id.number);
            if (const JobKind* kind = wiring_.shapes[device]->row)
                division.kinds.push_back(kind);
        }
        std::sort(division.kinds.begin(), division.kinds.end(), [](const JobKind* a, const JobKind* b) { return a->id < b->id; });
        division.kinds.erase(std::unique(division.kinds.begin(), division.kinds.end()), division.kinds.end());
    }

    // Those of the devices and openings here, with the devices that they are named after.
    void takeOperators()
    {
        const auto take = [&](OperatorId id) {
            if (const std::uint32_t index = wiring_.indexOf(id); index != none)
                operators_.take(index);
        };
        for (std::uint32_t device : full_.indices())
            for (const Binding& binding : wiring_.devices[device]->bindings)
                take(binding.moved);
        for (std::uint32_t opening : openings_.indices())
            forEachOperator(*wiring_.openings[opening], take);
        for (std::uint32_t moved : operators_.indices())
            if (const std::uint32_t owner = wiring_.indexOf(wiring_.operators[moved]->owner); owner != none)
                devices_.take(owner);
    }

    const Wiring& wiring_;
    const Cells cells_;
    std::optional<RailTree> tree_;
    std::vector<std::vector<std::uint32_t>> onDevice_, onNet_; // conductors, by device and by net that is no rail
    Taken devices_, full_, operators_, splices_, conductors_, openings_, steps_; // full: with all that they are; the others carry
    std::vector<Vertex> onRails_;
    std::vector<Division> all_;
};

} // namespace

std::vector<Division> divisionsOf(const Wiring& wiring, std::size_t mostWhole) { return Divider(wiring, mostWhole).divided(); }

} // namespace doorloom
