#include "jobfromcsv.h"

#include "core/jobs.h"
#include "core/papercsv.h"

#include <map>
#include <set>
#include <stdexcept>
#include <tuple>

namespace doorloom {
namespace {

using papercsv::Record;
using Spot = std::pair<std::string, std::string>; // device or splice, terminal as printed

Spot hereOf(const Record& record)
{
    return {record.at("device"), record.at("terminal")};
}

Spot thereOf(const Record& record)
{
    return {record.at("far_device"), record.at("far_terminal")};
}

EndState stateNamed(const std::string& name)
{
    static const std::map<std::string, EndState> states = {{"waiting", EndState::Waiting},
                                                           {"landed", EndState::Landed},
                                                           {"spare", EndState::Spare},
                                                           {"insulated", EndState::Insulated}};
    return states.at(name);
}

class CsvReader {
public:
    explicit CsvReader(const std::function<Kind(const std::string&)>& kinds) : kinds_(kinds) {}

    Job read(const std::vector<Record>& records)
    {
        for (const Record& record : records)
            addBlock(record);
        for (const Record& record : records)
            if (record.at("row") == "landing")
                addEnd(record);
        for (const auto& [wire, ends] : between_) {
            if (ends % 2 != 0)
                throw std::runtime_error("a conductor is listed at one of its ends alone: " + std::get<2>(wire));
            for (int i = 0; i < ends / 2; ++i)
                draw(endAt(std::get<0>(wire)), endAt(std::get<1>(wire)), std::get<2>(wire));
        }
        return job_.job();
    }

private:
    // The device or splice whose row this is, if it was not met before.
    void addBlock(const Record& record)
    {
        const std::string& tag = record.at("device");
        if (tag.empty() || !met_.insert(tag).second)
            return;
        if (record.at("kind").empty())
            return addSplice(tag);
        job_.device(tag, kinds_(record.at("kind")));
        for (const auto& [jumper, value] : jumpersOf(record.at("options")))
            if (const auto dot = jumper.rfind('.'); !value.empty())
                job_.jumper(tag, jumper.substr(0, dot), jumper.substr(dot + 1), value);
    }

    void addSplice(const std::string& tag)
    {
        Splice splice;
        splice.id = {job_.job().nextNumber};
        splice.tag = tag;
        splices_[tag] = splice.id;
        job_.apply({{Put<Splice>{splice.id, splice}}});
    }

    // 'K1.JA=wet; K1.JB='
    static std::map<std::string, std::string> jumpersOf(std::string options)
    {
        std::map<std::string, std::string> jumpers;
        options += "; ";
        for (std::size_t at = 0, end; (end = options.find("; ", at)) != std::string::npos; at = end + 2) {
            const std::string one = options.substr(at, end - at);
            if (const auto equals = one.find('='); equals != std::string::npos)
                jumpers[one.substr(0, equals)] = one.substr(equals + 1);
        }
        return jumpers;
    }

    void addEnd(const Record& record)
    {
        const Spot here = hereOf(record), there = thereOf(record);
        if (record.at("far_state") == "landed") {
            // All that is told of a conductor must be told alike at both ends.
            const std::string told = record.at("conductor") + "|" + record.at("cable") + "|" + record.at("core") + "|" +
                                     record.at("colour") + "|" + record.at("gauge");
            ++between_[{std::min(here, there), std::max(here, there), told}];
        } else {
            draw(endAt(here), {stateNamed(record.at("far_state")), {}}, record.at("conductor"));
        }
    }

    End endAt(const Spot& spot) const
    {
        if (const auto splice = splices_.find(spot.first); splice != splices_.end())
            return {EndState::Landed, splice->second};
        const Device* device = deviceTagged(job_.job(), spot.first);
        const Terminal* terminal = device ? findPrinted(*kindOf(job_.job(), *device), spot.second) : nullptr;
        if (!terminal)
            throw std::runtime_error("no such terminal: " + spot.first + ":" + spot.second);
        return {EndState::Landed, Landing{device->id, terminal->key}};
    }

    void draw(End from, End to, const std::string& told)
    {
        Numbers numbers(job_.job());
        job_.apply(addWire(job_.job(), numbers, std::move(from), std::move(to), told.substr(0, told.find('|'))).second);
    }

    const std::function<Kind(const std::string&)>& kinds_;
    JobBuilder job_;
    std::set<std::string> met_;
    std::map<std::string, SpliceId> splices_;
    std::map<std::tuple<Spot, Spot, std::string>, int> between_; // rows that tell an end of such a conductor
};

} // namespace

Job jobFromCsv(const std::string& csv, const std::function<Kind(const std::string& name)>& kinds)
{
    return CsvReader(kinds).read(papercsv::readRecords(csv));
}

} // namespace doorloom
