#pragma once

#include "edit/operations.h"

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

// What is said of single rows: names, places, lengths, standings.
namespace doorloom {

// ---- Places

// Errors: no tag, blanks in it, or the tag of another place
Result<std::pair<PlaceId, Change>> addPlace(const Job& job, Numbers& numbers, Place wanted);
// In: the place with its new tag, words, mounting …   Errors: as addPlace
Result<Change> alterPlace(const Job& job, Place wanted);
Result<Change> renamePlace(const Job& job, PlaceId place, std::string tag);
// Devices and splices are there from now on; an empty id: not said. Other rows are passed over.
Result<Change> setPlace(const Job& job, const std::vector<std::uint32_t>& rows, PlaceId place);

// ---- Devices, and what else has a standing

Result<Change> setWords(const Job& job, DeviceId device, std::string words);
// Of devices, conductors and cables; a cable's cores go along.
Change setStanding(const Job& job, const std::vector<std::uint32_t>& rows, Standing standing);
// The device's role gets an operator of its own again, as from the kind.
// Errors: a role that it does not have; nothing changes where it has its own already
Result<Change> releaseRole(const Job& job, Numbers& numbers, DeviceId device, const Key& role);

// ---- Cables

// Cores that are tagged after the cable follow.   Errors: no tag, blanks in it, or the tag of another cable
Result<Change> renameCable(const Job& job, CableId cable, std::string tag);
// Errors: a length below nothing, or none at all
Result<Change> setCableLength(const Job& job, CableId cable, Metres length);
Result<Change> setCablePull(const Job& job, CableId cable, std::string pull);
Result<Change> setCableNotes(const Job& job, CableId cable, std::string notes);
Result<Change> setCableEnds(const Job& job, CableId cable, PlaceId from, PlaceId to);
// In:     the type as in the job (by name) or from stock; taken into the job when it is not there
// Out:    cores of both types stay as they are landed, new ones wait
// Errors: a core that the new type does not have is landed
Result<Change> setCableType(const Job& job, Numbers& numbers, CableId cable, const CableType& type);
// The job's own of this name, or a new row of it.
std::pair<CableTypeId, Change> takeCableType(const Job& job, Numbers& numbers, const CableType& type);

// ---- Conductors and splices

Result<Change> renameConductor(const Job& job, ConductorId conductor, std::string tag);
// Errors: a core has its colour, gauge and length from its cable
Result<Change> setWire(const Job& job, ConductorId conductor, std::string colour, std::string gauge,
                       Metres length);
// Errors: no tag, or the tag of another splice
Result<Change> renameSplice(const Job& job, SpliceId splice, std::string tag);
// In: its size in words, and how many ends it takes   Errors: fewer than two
Result<Change> setSpliceConnector(const Job& job, SpliceId splice, std::string connector, int capacity);

} // namespace doorloom
