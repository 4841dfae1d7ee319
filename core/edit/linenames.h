#pragma once

#include "base/folded.h"
#include "edit/landcores.h"
#include "edit/linewords.h"
#include "model/job.h"

#include <string>
#include <string_view>
#include <vector>

// What the words of a typed line name in a job, and what they could name.
namespace doorloom {

// Rows with this tag: the one that is written so, else all that differ in capitals or accents alone.
template <class Row> std::vector<const Row*> tagged(const Table<Row>& rows, std::string_view tag)
{
    std::vector<const Row*> found;
    const std::string wanted = folded(tag);
    for (const Row& row : rows) {
        if (row.tag == tag)
            return {&row};
        if (row.tag.size() <= 2 * tag.size() + 2 && folded(row.tag) == wanted)
            found.push_back(&row);
    }
    return found;
}

// By the tag, or by cable and number where the core has a tag of its own.
std::vector<const Conductor*> conductorsTagged(const Job& job, std::string_view tag);

// By key, as printed, or a lead by its colour; all that fit equally well.
std::vector<const Terminal*> terminalsNamed(const Kind& kind, std::string_view name);
bool isFree(const Job& job, const Landing& landing);

// A kind's words begin with each of these words: a name, its parts, or the title's in either language.
bool fitsKind(const Kind& kind, const std::vector<std::string>& words);

// A new tag is written as tags are, in capitals.
std::string capitals(std::string tag);

// ---- What could be named, the most useful first

void offerDevices(const Job& job, Offers& offers);
void offerTerminals(const Job& job, const Device& device, std::string_view before, Offers& offers);
void offerPlaces(const Job& job, Offers& offers);
void offerCables(const Job& job, Offers& offers);
void offerSplices(const Job& job, Offers& offers);
enum class Cores { Waiting, Landed };
void offerConductors(const Job& job, Cores first, Offers& offers);
void offerKinds(const std::vector<const Kind*>& kinds, Offers& offers);

} // namespace doorloom
