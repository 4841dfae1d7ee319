#pragma once

#include "graph/joinedsets.h"
#include "judge/wiring.h"

#include <set>
#include <vector>

namespace doorloom {

// Every operator that an opening names; some of them are nothing.
template <class Visit> void forEachOperator(const Opening& opening, Visit visit)
{
    for (const auto* acts : {&opening.requests, &opening.releases})
        for (const Act& act : *acts)
            for (const Thrown& thrown : act.throws)
                visit(thrown.moved);
    for (const Thrown& thrown : opening.occupied)
        visit(thrown.moved);
    for (const Promise& promise : opening.promises)
        visit(promise.situation.lost);
    visit(opening.door);
    visit(opening.fire);
}

// What hangs together in a job, and within it what hangs together without passing a rail; see judge/divider.h.
// Cost: linear
class Cells {
public:
    static constexpr std::uint32_t none = Wiring::none, several = none - 1;
    static constexpr std::uint32_t mostOnNet = 12; // devices; more, and the net is a rail
    static constexpr std::size_t mostSources = 8;  // of one rail that a cell is looked at with, where no block holds both

    Cells(const Wiring& wiring, std::size_t mostWhole);

    struct ByRow {
        std::vector<std::uint32_t> devices, splices, conductors, openings;
    };
    struct Cell {
        std::vector<std::uint32_t> devices, nets, openings, rails;
        bool hasSource = false;             // then it is judged with the rails' own wiring
        bool passes = false;                // current can pass from rail to rail with no load between
        std::vector<std::uint32_t> context; // others that make a difference to it
    };

    std::uint32_t pieces = 0;
    ByRow pieceOf;
    std::vector<char> isDivided; // by piece

    // Of divided pieces. A row of no cell belongs to the rails' own wiring; a device of several is wiring that they share.
    std::vector<Cell> cells;
    std::vector<char> isRail;             // by net
    std::vector<std::uint32_t> cellOfNet; // none: a rail, or nothing but wiring
    ByRow cellOf;                         // in which something is said about a row

private:
    // Devices, then nets, operators and openings in one row of numbers.
    struct Members {
        std::uint32_t nets, operators, openings, end;
    };
    // Blocks of the graph of rails.
    struct Blocks {
        std::vector<std::uint32_t> ofCell; // none: it touches less than two rails
        std::set<std::uint32_t> ofManyRails;
    };
    void findPieces(std::size_t mostWhole);
    void findRails();
    void findCells();
    void tieDevices(JoinedSets& ties, const Members& at) const;
    void tieContacts(JoinedSets& ties) const;
    void gather(JoinedSets& ties, const Members& at);
    void placeWiring();
    void placeConductors();
    void findPassing();
    void findContext();
    Blocks findBlocks() const;
    bool inDivided(std::size_t device) const { return isDivided[pieceOf.devices[device]] != 0; }
    bool isActive(std::size_t device) const { return inDivided(device) && !wiring_.shapes[device]->isWiring(); }
    template <class Visit> void forEachNet(std::size_t device, Visit visit) const; // of its nodes

    const Wiring& wiring_;
};

} // namespace doorloom
