#pragma once

#include "judge/wiring.h"

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

// What hangs together in a job, and within it what hangs together without passing a rail; see judge/division.h.
// Cost: linear
class Cells {
public:
    static constexpr std::uint32_t none = Wiring::none, several = none - 1;
    static constexpr std::uint32_t mostOnNet = 12; // devices; more, and the net is a rail
    static constexpr std::size_t mostSources = 8;  // of one rail that a cell is looked at with, where no block holds both

    Cells(const Wiring& wiring, std::size_t mostWhole);

    struct Cell {
        std::uint32_t piece = 0;
        std::vector<std::uint32_t> devices, nets, openings, rails;
        bool hasSource = false;             // then it is judged with the rails' own wiring
        bool isContext = false;             // it has a source, or lets current pass from rail to rail
        std::vector<std::uint32_t> context; // others that make a difference to it
    };

    std::uint32_t pieces = 0;
    std::vector<std::uint32_t> pieceOfDevice, pieceOfOperator, pieceOfSplice, pieceOfConductor, pieceOfOpening;
    std::vector<char> isDivided; // by piece

    // Of divided pieces.
    std::vector<Cell> cells;
    std::vector<char> isRail;                // by net
    std::vector<std::uint32_t> cellOfNet;    // none: a rail, or nothing but wiring
    std::vector<std::uint32_t> cellOfDevice; // none: wiring of rails alone; several: wiring that several cells pass through

private:
    void findPieces(std::size_t mostWhole);
    void findRails();
    void findCells();
    void tieContacts(Sets& cellsOfDevices) const;
    void placeWiring();
    void findPassing();
    void findContext();
    bool inDivided(std::size_t device) const { return isDivided[pieceOfDevice[device]] != 0; }
    bool isActive(std::size_t device) const { return inDivided(device) && !wiring_.shapes[device]->isWiring(); }
    template <class Visit> void forEachNet(std::size_t device, Visit visit) const; // of its nodes

    const Wiring& wiring_;
};

} // namespace doorloom
