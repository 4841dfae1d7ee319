#pragma once

#include "edit/nexttag.h"

#include <set>
#include <string>

namespace doorloom {

// Tags for rows that are drawn again: each counted on until neither the job nor the copies have it.
class FreshTags {
public:
    explicit FreshTags(const Job& job)
    {
        for (const Device& row : job.devices)
            devices_.insert(row.tag);
        for (const Operator& row : job.operators)
            operators_.insert(row.tag);
        for (const Cable& row : job.cables)
            cables_.insert(row.tag);
        for (const Splice& row : job.splices)
            splices_.insert(row.tag);
        for (const Conductor& row : job.conductors)
            conductors_.insert(row.tag);
        for (const Place& row : job.places)
            places_.insert(row.tag);
        for (const Opening& row : job.openings)
            openings_.insert(row.tag);
        for (const Sheet& row : job.sheets)
            sheets_.insert(row.title);
    }

    std::string device(const std::string& tag) { return fresh(devices_, tag); }
    std::string moved(const std::string& tag) { return fresh(operators_, tag); }
    std::string cable(const std::string& tag) { return fresh(cables_, tag); }
    std::string splice(const std::string& tag) { return fresh(splices_, tag); }
    std::string wire(const std::string& tag) { return fresh(conductors_, tag); }
    std::string place(const std::string& tag) { return fresh(places_, tag); }
    std::string opening(const std::string& tag) { return fresh(openings_, tag); }
    std::string sheet(const std::string& title) { return fresh(sheets_, title); }

private:
    static std::string fresh(std::set<std::string>& taken, const std::string& tag)
    {
        if (tag.empty())
            return tag;
        std::string next = countedOn(tag, [&](const std::string& each) { return taken.count(each) > 0; });
        taken.insert(next);
        return next;
    }

    std::set<std::string> devices_, operators_, cables_, splices_, conductors_, places_, openings_, sheets_;
};

} // namespace doorloom
