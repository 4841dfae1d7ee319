#include "judge/cells.h"

#include "graph/blocks.h"

#include <algorithm>
#include <map>
#include <utility>

namespace doorloom {

namespace {

void sortOnce(std::vector<std::uint32_t>& numbers)
{
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
}

// No jumper stands otherwise; one not chosen yet may stand so.
bool couldHold(const Device& device, const Condition& when)
{
    return std::all_of(when.begin(), when.end(), [&](const JumperAt& at) {
        const std::optional<Key> value = chosen(device, at.option, at.jumper);
        return !value || *value == at.value;
    });
}

template <class Visit> void forEachHardware(const Opening& opening, Visit visit)
{
    for (DeviceId lock : opening.locks)
        visit(lock);
    for (DeviceId door : opening.doorOperators)
        visit(door);
    for (const Promise& promise : opening.promises)
        visit(promise.device);
}

} // namespace

Cells::Cells(const Wiring& wiring, std::size_t mostWhole) : wiring_(wiring)
{
    findPieces(mostWhole);
    cellOf = {std::vector(wiring.devices.size(), none), std::vector(wiring.splices.size(), none),
              std::vector(wiring.conductors.size(), none), std::vector(wiring.openings.size(), none)};
    if (std::none_of(isDivided.begin(), isDivided.end(), [](char divided) { return divided != 0; }))
        return;
    findRails();
    findCells();
    placeWiring();
    placeConductors();
    findPassing();
    findContext();
}

template <class Visit> void Cells::forEachNet(std::size_t device, Visit visit) const
{
    for (std::size_t node = 0; node < wiring_.shapes[device]->nodes.size(); ++node)
        visit(wiring_.net[wiring_.base[device] + node]);
}

// Devices, then operators, openings, splices and conductors in one row of numbers.
void Cells::findPieces(std::size_t mostWhole)
{
    const auto devices = static_cast<std::uint32_t>(wiring_.devices.size());
    const auto operators = devices + static_cast<std::uint32_t>(wiring_.operators.size());
    const auto openings = operators + static_cast<std::uint32_t>(wiring_.openings.size());
    const auto splices = openings + static_cast<std::uint32_t>(wiring_.splices.size());
    JoinedSets sets(splices + wiring_.conductors.size());
    const auto join = [&](std::uint32_t one, std::uint32_t other) {
        if (other != none)
            sets.join(one, other);
    };
    const auto operatorAt = [&](OperatorId id) {
        const std::uint32_t index = wiring_.indexOf(id);
        return index == none ? none : devices + index;
    };
    for (std::uint32_t i = 0; i < devices; ++i)
        for (const Binding& binding : wiring_.devices[i]->bindings)
            join(i, operatorAt(binding.moved));
    for (std::uint32_t i = 0; i < wiring_.openings.size(); ++i) {
        forEachOperator(*wiring_.openings[i], [&](OperatorId id) { join(operators + i, operatorAt(id)); });
        forEachHardware(*wiring_.openings[i], [&](DeviceId id) { join(operators + i, wiring_.indexOf(id)); });
    }
    std::uint32_t landedNowhere = none; // spare cores, mostly: one piece of them all
    for (std::uint32_t i = 0; i < wiring_.conductors.size(); ++i) {
        for (Vertex end : {wiring_.ends[i].first, wiring_.ends[i].second})
            if (end != none && wiring_.deviceAt[end] != none)
                join(splices + i, wiring_.deviceAt[end]);
            else if (end != none)
                join(splices + i, openings + wiring_.spliceAt(end));
        if (wiring_.ends[i].first == none && wiring_.ends[i].second == none)
            join(splices + i, std::exchange(landedNowhere, splices + i));
    }

    const std::vector<std::uint32_t> number = sets.numbers();
    const auto part = [&](std::uint32_t from, std::size_t to) {
        return std::vector<std::uint32_t>(number.begin() + from, number.begin() + static_cast<std::ptrdiff_t>(to));
    };
    pieceOf = {part(0, devices), part(openings, splices), part(splices, number.size()), part(operators, openings)};
    pieces = number.empty() ? 0 : *std::max_element(number.begin(), number.end()) + 1;
    std::vector<std::size_t> sizes(pieces);
    for (std::uint32_t piece : pieceOf.devices)
        ++sizes[piece];
    isDivided.resize(pieces);
    std::transform(sizes.begin(), sizes.end(), isDivided.begin(), [&](std::size_t size) { return size > mostWhole; });
}

void Cells::findRails()
{
    isRail.resize(wiring_.nets);
    isRail[wiring_.net[wiring_.earth()]] = 1;
    std::vector<std::uint32_t> touching(wiring_.nets), last(wiring_.nets, none);
    for (std::uint32_t device = 0; device < wiring_.devices.size(); ++device) {
        if (!isActive(device))
            continue;
        for (const auto& [plus, minus] : wiring_.shapes[device]->sources)
            isRail[wiring_.net[wiring_.base[device] + plus]] = isRail[wiring_.net[wiring_.base[device] + minus]] = 1;
        forEachNet(device, [&](std::uint32_t net) {
            if (std::exchange(last[net], device) != device && ++touching[net] > mostOnNet)
                isRail[net] = 1;
        });
    }
}

void Cells::findCells()
{
    Members at{};
    at.nets = static_cast<std::uint32_t>(wiring_.devices.size());
    at.operators = at.nets + wiring_.nets;
    at.openings = at.operators + static_cast<std::uint32_t>(wiring_.operators.size());
    at.end = at.openings + static_cast<std::uint32_t>(wiring_.openings.size());
    JoinedSets ties(at.end);
    tieDevices(ties, at);
    tieContacts(ties);
    gather(ties, at);
}

void Cells::tieDevices(JoinedSets& ties, const Members& at) const
{
    // An operator that something moves ties what moves it to what it moves; hands and doors tie nothing.
    std::vector<char> driven(wiring_.operators.size());
    for (std::uint32_t device = 0; device < wiring_.devices.size(); ++device)
        for (const Key& role : wiring_.shapes[device]->drives)
            if (const std::uint32_t moved = wiring_.indexOf(boundTo(*wiring_.devices[device], role)); moved != none)
                driven[moved] = 1;
    const auto tie = [&](std::uint32_t to, OperatorId id) {
        if (const std::uint32_t moved = wiring_.indexOf(id); moved != none && driven[moved])
            ties.join(to, at.operators + moved);
    };
    for (std::uint32_t device = 0; device < wiring_.devices.size(); ++device) {
        if (!isActive(device))
            continue;
        forEachNet(device, [&](std::uint32_t net) {
            if (!isRail[net])
                ties.join(device, at.nets + net);
        });
        for (const Binding& binding : wiring_.devices[device]->bindings)
            tie(device, binding.moved);
    }
    for (std::uint32_t i = 0; i < wiring_.openings.size(); ++i) {
        forEachOperator(*wiring_.openings[i], [&](OperatorId id) { tie(at.openings + i, id); });
        forEachHardware(*wiring_.openings[i], [&](DeviceId id) {
            if (const std::uint32_t device = wiring_.indexOf(id); device != none)
                ties.join(at.openings + i, device);
        });
    }
}

void Cells::gather(JoinedSets& ties, const Members& at)
{
    std::vector<std::uint32_t> cellAt(at.end, none);
    const auto cellFor = [&](std::uint32_t member) {
        std::uint32_t& cell = cellAt[ties.find(member)];
        if (cell == none) {
            cell = static_cast<std::uint32_t>(cells.size());
            cells.emplace_back();
        }
        return cell;
    };
    cellOfNet.assign(wiring_.nets, none);
    for (std::uint32_t device = 0; device < wiring_.devices.size(); ++device) {
        if (!isActive(device))
            continue;
        const std::uint32_t cell = cellOf.devices[device] = cellFor(device);
        cells[cell].devices.push_back(device);
        cells[cell].hasSource = cells[cell].hasSource || !wiring_.shapes[device]->sources.empty();
        forEachNet(device, [&](std::uint32_t net) {
            if (isRail[net])
                cells[cell].rails.push_back(net);
            else
                cellOfNet[net] = cell;
        });
    }
    for (std::uint32_t i = 0; i < wiring_.openings.size(); ++i)
        if (isDivided[pieceOf.openings[i]]) {
            cellOf.openings[i] = cellFor(at.openings + i);
            cells[cellOf.openings[i]].openings.push_back(i);
        }
    for (std::uint32_t net = 0; net < wiring_.nets; ++net)
        if (cellOfNet[net] != none)
            cells[cellOfNet[net]].nets.push_back(net);
    for (Cell& cell : cells)
        sortOnce(cell.rails);
}

// A conductor from one device straight to another's contact, on a rail: whether that contact was meant to switch the one is
// asked of both together.
void Cells::tieContacts(JoinedSets& ties) const
{
    std::vector<char> isContact(wiring_.vertices);
    for (std::uint32_t device = 0; device < wiring_.devices.size(); ++device)
        for (const KindShape::Edge& edge : wiring_.shapes[device]->edges)
            if (isActive(device) && edge.passes && edge.when->empty())
                isContact[wiring_.base[device] + edge.a] = isContact[wiring_.base[device] + edge.b] = 1;
    for (const auto& [from, to] : wiring_.ends)
        if (from != none && to != none && (isContact[from] || isContact[to]) && wiring_.deviceAt[from] != none &&
            wiring_.deviceAt[to] != none && isActive(wiring_.deviceAt[from]) && isActive(wiring_.deviceAt[to]))
            ties.join(wiring_.deviceAt[from], wiring_.deviceAt[to]);
}

// A strip goes with the one cell that it carries.
void Cells::placeWiring()
{
    for (std::uint32_t device = 0; device < wiring_.devices.size(); ++device) {
        if (!inDivided(device) || isActive(device))
            continue;
        std::uint32_t& carried = cellOf.devices[device];
        forEachNet(device, [&](std::uint32_t net) {
            if (const std::uint32_t cell = cellOfNet[net]; cell != none)
                carried = carried == none || carried == cell ? cell : several;
        });
        if (carried != none && carried != several)
            cells[carried].devices.push_back(device);
    }
    for (Cell& cell : cells)
        sortOnce(cell.devices);
}

// Of a conductor: the first of its ends that belongs to one.
void Cells::placeConductors()
{
    for (std::uint32_t i = 0; i < wiring_.conductors.size(); ++i)
        for (Vertex end : {wiring_.ends[i].first, wiring_.ends[i].second}) {
            if (end == none || cellOf.conductors[i] != none)
                continue;
            const std::uint32_t device = wiring_.deviceAt[end];
            if (!isRail[wiring_.net[end]])
                cellOf.conductors[i] = cellOfNet[wiring_.net[end]];
            else if (device != none && cellOf.devices[device] != several)
                cellOf.conductors[i] = cellOf.devices[device];
        }
    for (std::uint32_t i = 0; i < wiring_.splices.size(); ++i)
        cellOf.splices[i] = cellOfNet[wiring_.net[wiring_.vertexOfSplice(i)]];
}

void Cells::findPassing()
{
    JoinedSets inner(wiring_.nets); // joined by what lets current pass, rails left apart
    const auto forEachPassing = [&](auto visit) {
        for (std::uint32_t device = 0; device < wiring_.devices.size(); ++device)
            if (isActive(device))
                for (const KindShape::Edge& edge : wiring_.shapes[device]->edges)
                    if (edge.passes && couldHold(*wiring_.devices[device], *edge.when))
                        visit(cellOf.devices[device], wiring_.net[wiring_.base[device] + edge.a],
                              wiring_.net[wiring_.base[device] + edge.b]);
    };
    forEachPassing([&](std::uint32_t, std::uint32_t a, std::uint32_t b) {
        if (!isRail[a] && !isRail[b])
            inner.join(a, b);
    });
    std::vector<std::uint32_t> railOf(wiring_.nets, none); // that a group of nets reaches
    forEachPassing([&](std::uint32_t cell, std::uint32_t a, std::uint32_t b) {
        if (isRail[a] && isRail[b])
            cells[cell].passes = cells[cell].passes || a != b;
        if (isRail[a] == isRail[b])
            return;
        const std::uint32_t rail = isRail[a] ? a : b;
        std::uint32_t& reached = railOf[inner.find(isRail[a] ? b : a)];
        if (reached != none && reached != rail)
            cells[cell].passes = true;
        reached = rail;
    });
}

// A way from rail to rail and back through a cell stays in the cell's block. Each cell is a ring through the rails that it
// touches: its sources are among them too.
Cells::Blocks Cells::findBlocks() const
{
    std::vector<std::pair<Vertex, Vertex>> edges;
    std::vector<std::uint32_t> edgeOf(cells.size(), none);
    for (std::uint32_t cell = 0; cell < cells.size(); ++cell) {
        const auto& rails = cells[cell].rails;
        if (rails.size() > 1)
            edgeOf[cell] = static_cast<std::uint32_t>(edges.size());
        for (std::size_t i = 0; i + 1 < rails.size(); ++i)
            edges.emplace_back(rails[i], rails[i + 1]);
        if (rails.size() > 2)
            edges.emplace_back(rails.back(), rails.front());
    }
    const std::vector<std::uint32_t> block = blocksOf(wiring_.nets, edges);
    Blocks blocks{std::vector<std::uint32_t>(cells.size(), none), {}};
    for (std::uint32_t cell = 0; cell < cells.size(); ++cell)
        if (edgeOf[cell] != none)
            blocks.ofCell[cell] = block[edgeOf[cell]];
    std::map<std::uint32_t, std::pair<Vertex, Vertex>> firstOf;
    for (std::size_t i = 0; i < edges.size(); ++i)
        if (firstOf.try_emplace(block[i], edges[i]).first->second != edges[i])
            blocks.ofManyRails.insert(block[i]);
    return blocks;
}

void Cells::findContext()
{
    using Lists = std::map<std::uint32_t, std::vector<std::uint32_t>>; // of cells
    const Blocks blocks = findBlocks();
    Lists inBlock, sourcesOn, shortedOn; // by block; by rail; by rail that both poles are on
    for (std::uint32_t cell = 0; cell < cells.size(); ++cell) {
        const bool hasSource = cells[cell].hasSource;
        const auto& rails = cells[cell].rails;
        // Between the two poles of a source, what passes from one to the other is a short, and makes no other difference.
        if (const std::uint32_t block = blocks.ofCell[cell];
            block != none && (hasSource || (cells[cell].passes && blocks.ofManyRails.contains(block))))
            inBlock[block].push_back(cell);
        if (hasSource && rails.size() == 1)
            shortedOn[rails.front()].push_back(cell);
        else if (hasSource)
            for (std::uint32_t rail : rails)
                if (auto& sources = sourcesOn[rail]; sources.size() < mostSources)
                    sources.push_back(cell);
    }
    for (std::uint32_t cell = 0; cell < cells.size(); ++cell) {
        Cell& here = cells[cell];
        if (here.hasSource)
            continue;
        const auto add = [&](const Lists& from, std::uint32_t key) {
            if (const auto found = from.find(key); found != from.end())
                here.context.insert(here.context.end(), found->second.begin(), found->second.end());
        };
        add(inBlock, blocks.ofCell[cell]);
        for (const Lists* sources : {&shortedOn, &sourcesOn})
            if (std::none_of(here.context.begin(), here.context.end(), [&](std::uint32_t each) { return cells[each].hasSource; }))
                for (std::uint32_t rail : here.rails)
                    add(*sources, rail);
        sortOnce(here.context);
        std::erase(here.context, cell);
    }
}

} // namespace doorloom
