#pragma once

#include "edit/details.h"
#include "edit/jointerminals.h"
#include "edit/lineforms.h"
#include "edit/linenames.h"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace doorloom {

// Reads one line for a job. Each function takes words from the line and returns nothing once there is a
// problem; where the line ends early, what may follow has been noted (LineWords).
class LineReader {
public:
    LineReader(const Job& job, const Stock& stock, LineWords words, Language language);

    std::optional<Typed> line();
    const LineWords& words() const { return words_; }

private:
    std::optional<Typed> command(LineCommand command);
    std::optional<Typed> join();
    std::optional<Typed> landCable(const Cable& cable);
    std::optional<Typed> place();
    std::optional<Typed> pull();
    std::optional<Typed> end(EndState state);
    std::optional<Typed> lift();
    std::optional<Typed> liftAll(const Landing& landing);
    std::optional<Typed> splice();
    std::optional<Typed> set();
    std::optional<Typed> move();
    std::optional<Typed> rename();
    std::optional<Typed> remove();

    // ---- Names
    void offerFirst(Offers& offers) const;
    std::optional<LandingPoint> point(const Offering& offering);
    std::optional<LandingPoint> pointWritten(const LineWord& word);
    const Device* deviceCalled(const LineWord& word, std::string_view tag);
    const Terminal* terminalCalled(const LineWord& word, const Device& device, std::string_view name);
    std::optional<ConductorWish> wish(const LandingPoint& a, const LandingPoint& b);
    const Conductor* conductorCalled(const LineWord& word);
    const Kind* kind();
    std::vector<const Kind*> kindsToChoose() const;
    std::vector<std::string> takeKindWords(const LineWord& first, std::vector<const Kind*>& fitting);
    const CableType* cableType();
    // A place of the job, or a new one whose words stand in the line; its change is kept.
    std::optional<PlaceId> placeOrNew();
    std::optional<PlaceId> placeOrDevices(); // where a cable may end
    const Place* placeCalled(const LineWord& word);
    bool length(Metres& length);
    bool cableTagAndLength(Cable& cable);
    std::vector<std::uint32_t> rowsTagged(std::string_view tag) const;
    std::optional<Typed> setOptionOrSetting(const Device& device, const Kind& kind);
    bool spliceEnds(const std::vector<const Conductor*>& cores, const Place* at,
                    std::vector<ConductorEnd>& ends);

    std::optional<Typed> typed(Message what, Result<Change> change, std::vector<std::uint32_t> rows);
    Message naming(Text what, std::string names) const { return {what, {{"names", std::move(names)}}}; }

    const Job& job_;
    const Stock& stock_;
    LineWords words_;
    Language language_;
    Numbers numbers_;
    Change before_; // what must be there first: a new place
};

} // namespace doorloom
