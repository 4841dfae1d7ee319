#include "judge/division.h"

#include "judge/cells.h"
#include "judge/railtree.h"

#include <algorithm>
#include <map>

namespace doorloom {

namespace {

template <class Row> bool sameIn(const std::vector<const Row*>& one, const std::vector<const Row*>& other)
{
    return std::equal(one.begin(), one.end(), other.begin(), other.end(),
                      [](const Row* a, const Row* b) { return a == b || *a == *b; });
}

// Indices without repeats: each is taken once for one division.
class Taken {
public:
    explicit Taken(std::size_t count) : by_(count, 0) {}

    bool take(std::uint32_t index, std::uint32_t division)
    {
        if (std::exchange(by_[index], division) == division)
            return false;
        indices_.push_back(index);
        return true;
    }
    const std::vector<std::uint32_t>& indices() const { return indices_; }
    std::vector<std::uint32_t> sorted()
    {
        std::sort(indices_.begin(), indices_.end());
        return std::move(indices_);
    }
    void clear() { indices_.clear(); }

private:
    std::vector<std::uint32_t> by_; // the last division that took each
    std::vector<std::uint32_t> indices_;
};

// Takes the rows of one division after another out of a job's wiring.
class Divider {
public:
    Divider(const Wiring& wiring, std::size_t mostWhole)
        : wiring_(wiring), cells_(wiring, mostWhole), devices_(wiring.devices.size()), operators_(wiring.operators.size()),
          splices_(wiring.splices.size()), conductors_(wiring.conductors.size()), openings_(wiring.openings.size()),
          steps_(wiring.vertices)
    {
    }

    std::vector<Division> divided()
    {
        takeWholePieces();
        if (!cells_.cells.empty()) {
            tree_.emplace(wiring_, cells_);
            placeConductors();
            takeTrunks();
            for (std::uint32_t cell = 0; cell < cells_.cells.size(); ++cell)
                if (!cells_.cells[cell].hasSource)
                    takeCell(cell);
        }
        std::sort(all_.begin(), all_.end(), [](const Division& a, const Division& b) { return a.key < b.key; });
        return std::move(all_);
    }

private:
    static constexpr std::uint32_t none = Wiring::none;

    // ---- Pieces that are judged whole.

    void takeWholePieces()
    {
        std::vector<std::vector<std::uint32_t>> devices(cells_.pieces), conductors(cells_.pieces), splices(cells_.pieces),
            openings(cells_.pieces);
        const auto sortOut = [&](const std::vector<std::uint32_t>& pieceOf, std::vector<std::vector<std::uint32_t>>& into) {
            for (std::uint32_t i = 0; i < pieceOf.size(); ++i)
                if (!cells_.isDivided[pieceOf[i]])
                    into[pieceOf[i]].push_back(i);
        };
        sortOut(cells_.pieceOfDevice, devices);
        sortOut(cells_.pieceOfConductor, conductors);
        sortOut(cells_.pieceOfSplice, splices);
        sortOut(cells_.pieceOfOpening, openings);
        for (std::uint32_t piece = 0; piece < cells_.pieces; ++piece) {
            begin();
            takeAll(devices_, devices[piece]);
            full_ = devices[piece];
            takeAll(conductors_, conductors[piece]);
            takeAll(splices_, splices[piece]);
            takeAll(openings_, openings[piece]);
            finish([](auto...) { return true; });
        }
    }

    // ---- Pieces that are divided.

    // The cell in which something is said about a conductor; none: the rails' own wiring.
    void placeConductors()
    {
        cellOfConductor_.assign(wiring_.conductors.size(), none);
        onDevice_.assign(wiring_.devices.size(), {});
        onNet_.assign(wiring_.nets, {});
        for (std::uint32_t i = 0; i < wiring_.conductors.size(); ++i)
            for (Vertex end : {wiring_.ends[i].first, wiring_.ends[i].second}) {
                if (end == none || !cells_.isDivided[cells_.pieceOfConductor[i]])
                    continue;
                const std::uint32_t net = wiring_.net[end], device = wiring_.deviceAt[end];
                if (!cells_.isRail[net] && (onNet_[net].empty() || onNet_[net].back() != i))
                    onNet_[net].push_back(i);
                if (device != none && (onDevice_[device].empty() || onDevice_[device].back() != i))
                    onDevice_[device].push_back(i);
                if (cellOfConductor_[i] == none)
                    cellOfConductor_[i] = !cells_.isRail[net] ? cells_.cellOfNet[net]
                                          : device != none && cells_.cellOfDevice[device] != Cells::several
                                              ? cells_.cellOfDevice[device]
                                              : none;
            }
    }

    std::uint32_t cellOfSplice(std::uint32_t splice) const
    {
        const std::uint32_t net = wiring_.net[wiring_.vertexOf(std::size_t{splice})];
        return cells_.isRail[net] ? none : cells_.cellOfNet[net];
    }

    // The rails' own wiring, with the supplies.
    void takeTrunks()
    {
        const auto isTrunk = [&](std::uint32_t cell) {
            return cell == none || (cell != Cells::several && cells_.cells[cell].hasSource);
        };
        for (std::uint32_t piece = 0; piece < cells_.pieces; ++piece) {
            if (!cells_.isDivided[piece])
                continue;
            begin();
            for (std::uint32_t cell = 0; cell < cells_.cells.size(); ++cell)
                if (cells_.cells[cell].piece == piece && cells_.cells[cell].hasSource)
                    takeRowsOf(cell);
            for (std::uint32_t i = 0; i < wiring_.devices.size(); ++i)
                if (cells_.pieceOfDevice[i] == piece && isTrunk(cells_.cellOfDevice[i]))
                    takeWithConductors(i);
            for (std::uint32_t i = 0; i < wiring_.conductors.size(); ++i)
                if (cells_.pieceOfConductor[i] == piece && cellOfConductor_[i] == none)
                    conductors_.take(i, division_);
            for (std::uint32_t i = 0; i < wiring_.splices.size(); ++i)
                if (cells_.pieceOfSplice[i] == piece && cellOfSplice(i) == none)
                    splices_.take(i, division_);
            takeEndsOfOwn(isTrunk);
            takeWaysToPoles();
            finish(isTrunk);
        }
    }

    void takeCell(std::uint32_t cell)
    {
        begin();
        takeRowsOf(cell);
        for (std::uint32_t each : cells_.cells[cell].context)
            takeRowsOf(each);
        for (std::uint32_t rail : cells_.cells[cell].rails)
            if (!tree_->hasPole(rail))
                takeAll(conductors_, tree_->looseOn(rail));
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
        takeAll(openings_, rows.openings);
    }

    void takeWithConductors(std::uint32_t device)
    {
        devices_.take(device, division_);
        full_.push_back(device);
        takeAll(conductors_, onDevice_[device]);
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
        while (steps_.take(vertex, division_)) {
            takeRowAt(vertex);
            const RailTree::Step& step = tree_->from(vertex);
            if (step.up == vertex)
                return vertex;
            if (step.conductor != none)
                conductors_.take(step.conductor, division_);
            vertex = step.up;
        }
        return std::nullopt;
    }

    // A supply that is met on the way is here with all that it is.
    void takeSource(std::uint32_t device)
    {
        if (std::find(full_.begin(), full_.end(), device) == full_.end())
            takeRowsOf(cells_.cellOfDevice[device]);
    }

    void takeTies(Vertex pole)
    {
        while (const RailTree::Tie* tie = tree_->tieOf(pole)) {
            for (Vertex side : {tie->here, tie->there}) {
                takeWay(side);
                takeRowAt(side);
            }
            if (tie->conductor != none)
                conductors_.take(tie->conductor, division_);
            pole = tree_->endOf(tie->there);
        }
    }

    void takeRowAt(Vertex vertex)
    {
        if (wiring_.deviceAt[vertex] != none)
            devices_.take(wiring_.deviceAt[vertex], division_);
        else if (vertex != wiring_.earth())
            splices_.take(vertex - wiring_.vertexOf(std::size_t{0}), division_);
    }

    // ---- One division.

    void begin()
    {
        ++division_;
        for (Taken* taken : {&devices_, &operators_, &splices_, &conductors_, &openings_, &steps_})
            taken->clear();
        onRails_.clear();
        full_.clear();
    }

    void takeAll(Taken& into, const std::vector<std::uint32_t>& indices)
    {
        for (std::uint32_t index : indices)
            into.take(index, division_);
    }

    void takeWithItsEnds(std::uint32_t conductor)
    {
        conductors_.take(conductor, division_);
        for (Vertex end : {wiring_.ends[conductor].first, wiring_.ends[conductor].second})
            if (end != none)
                takeRowAt(end);
    }

    // A conductor that is judged here has both its ends here, and their ways. One that is judged elsewhere may lead to a
    // device that is not here: it ends there.
    template <class Judged> void takeEndsOfOwn(Judged isJudgedHere)
    {
        for (std::uint32_t conductor : conductors_.indices()) {
            if (!isJudgedHere(cellOfConductor_[conductor]))
                continue;
            takeWithItsEnds(conductor);
            for (Vertex end : {wiring_.ends[conductor].first, wiring_.ends[conductor].second})
                if (end != none && cells_.isRail[wiring_.net[end]])
                    onRails_.push_back(end);
        }
    }

    // `isJudgedHere`: of the cell that a row belongs to.
    template <class Judged> void finish(Judged isJudgedHere)
    {
        takeOperators();
        Division division;
        std::sort(full_.begin(), full_.end());
        for (std::uint32_t device : devices_.indices())
            if (!std::binary_search(full_.begin(), full_.end(), device))
                division.carriers.push_back(wiring_.devices[device]->id.number);
        std::sort(division.carriers.begin(), division.carriers.end());
        const auto put = [&](const auto& rows, std::vector<std::uint32_t> indices, auto& into, auto cellOf) {
            for (std::uint32_t i : indices) {
                into.push_back(rows[i]);
                const std::uint32_t number = rows[i]->id.number, cell = cellOf(i);
                if (cell == Cells::several)
                    continue; // judged in each, by what is in each
                if (!isJudgedHere(cell))
                    division.shared.push_back(number);
                else if (division.key == 0 || number < division.key)
                    division.key = number;
            }
        };
        const auto cellIn = [](const std::vector<std::uint32_t>& cells) {
            return [&cells](std::uint32_t i) { return cells.empty() ? none : cells[i]; };
        };
        put(wiring_.devices, devices_.sorted(), division.devices, cellIn(cells_.cellOfDevice));
        put(wiring_.conductors, conductors_.sorted(), division.conductors, cellIn(cellOfConductor_));
        put(wiring_.splices, splices_.sorted(), division.splices,
            [&](std::uint32_t i) { return cells_.cells.empty() ? none : cellOfSplice(i); });
        const auto cellOfOpening = [&](std::uint32_t i) { return openingCell(i); };
        put(wiring_.openings, openings_.sorted(), division.openings, cellOfOpening);
        for (std::uint32_t i : operators_.sorted())
            division.operators.push_back(wiring_.operators[i]);
        std::sort(division.shared.begin(), division.shared.end());
        takeKinds(division);
        if (division.key != 0)
            all_.push_back(std::move(division));
    }

    std::uint32_t openingCell(std::uint32_t opening)
    {
        if (cellOfOpening_.empty()) {
            cellOfOpening_.assign(wiring_.openings.size(), none);
            for (std::uint32_t cell = 0; cell < cells_.cells.size(); ++cell)
                for (std::uint32_t each : cells_.cells[cell].openings)
                    cellOfOpening_[each] = cell;
        }
        return cellOfOpening_[opening];
    }

    // Those of the devices and openings here, with the devices that they are named after.
    void takeOperators()
    {
        const auto take = [&](OperatorId id) {
            if (const std::uint32_t index = wiring_.indexOf(id); index != none)
                operators_.take(index, division_);
        };
        for (std::uint32_t device : full_)
            for (const Binding& binding : wiring_.devices[device]->bindings)
                take(binding.moved);
        for (std::uint32_t opening : openings_.indices())
            forEachOperator(*wiring_.openings[opening], take);
        for (std::uint32_t moved : operators_.indices())
            if (const std::uint32_t owner = wiring_.indexOf(wiring_.operators[moved]->owner); owner != none)
                devices_.take(owner, division_);
    }

    void takeKinds(Division& division) const
    {
        for (const Device* device : division.devices)
            if (const KindShape* shape = wiring_.shapes[wiring_.indexOf(device->id)]; shape->row)
                division.kinds.push_back(shape->row);
        std::sort(division.kinds.begin(), division.kinds.end(), [](const JobKind* a, const JobKind* b) { return a->id < b->id; });
        division.kinds.erase(std::unique(division.kinds.begin(), division.kinds.end()), division.kinds.end());
    }

    const Wiring& wiring_;
    const Cells cells_;
    std::optional<RailTree> tree_;
    std::vector<std::uint32_t> cellOfConductor_, cellOfOpening_;
    std::vector<std::vector<std::uint32_t>> onDevice_, onNet_; // conductors, by device and by net that is no rail
    std::uint32_t division_ = 0;
    Taken devices_, operators_, splices_, conductors_, openings_, steps_;
    std::vector<Vertex> onRails_;
    std::vector<std::uint32_t> full_; // devices that are here with all that they are; the others carry
    std::vector<Division> all_;
};

} // namespace

bool sameRows(const Division& one, const Division& other)
{
    return one.key == other.key && one.shared == other.shared && one.carriers == other.carriers && sameIn(one.kinds, other.kinds) &&
           sameIn(one.operators, other.operators) && sameIn(one.devices, other.devices) && sameIn(one.splices, other.splices) &&
           sameIn(one.conductors, other.conductors) && sameIn(one.openings, other.openings);
}

namespace {

// Its terminals, none of them wanted, and its links.
Kind onlyCarrying(Kind kind)
{
    for (Strip& strip : kind.strips)
        for (Terminal& terminal : strip.terminals)
            terminal.required.clear();
    std::erase_if(kind.parts, [](const Part& part) {
        return !part.when.empty() || !(std::get_if<LinkPart>(&part.body) || std::get_if<FusePart>(&part.body) ||
                                       std::get_if<EarthPart>(&part.body));
    });
    kind.options.clear();
    kind.outputs.clear();
    kind.lock.reset();
    return kind;
}

void putDevices(Job& part, const Division& division)
{
    std::map<KindId, KindId> carrying; // kinds of which some devices here only carry
    std::uint32_t next = part.nextNumber;
    for (const Device* row : division.devices) {
        Device device = *row;
        if (const Kind* kind = kindOf(part, device); kind && division.onlyCarries(device.id)) {
            const auto [found, isNew] = carrying.try_emplace(device.kind, KindId{next});
            if (isNew)
                part.kinds.put({next}, JobKind{{next}, onlyCarrying(*kind)});
            next += isNew;
            device.kind = found->second;
        }
        part.devices.put(device.id, std::move(device));
    }
}

} // namespace

Job jobOf(const Division& division, const Job& job)
{
    Job part;
    part.info = job.info;
    part.nextNumber = job.nextNumber;
    part.referrers = job.referrers;
    const auto put = [](auto& into, const auto& rows) {
        for (const auto* row : rows)
            into.put(row->id, *row);
    };
    put(part.kinds, division.kinds);
    put(part.operators, division.operators);
    putDevices(part, division);
    put(part.splices, division.splices);
    put(part.conductors, division.conductors);
    put(part.openings, division.openings);
    part.cableTypes = job.cableTypes;
    part.places = job.places;
    part.cables = job.cables;
    return part;
}

std::vector<Division> divisionsOf(const Wiring& wiring, std::size_t mostWhole) { return Divider(wiring, mostWhole).divided(); }

} // namespace doorloom
