#include "edit/rownames.h"

#include <fmt/format.h>

namespace doorloom {

std::string nameOfRow(const Job&, const JobInfo& row)
{
    return row.title;
}
std::string nameOfRow(const Job&, const JobKind& row)
{
    return row.kind.name;
}
std::string nameOfRow(const Job&, const CableType& row)
{
    return row.name;
}
std::string nameOfRow(const Job&, const Place& row)
{
    return row.tag;
}
std::string nameOfRow(const Job& job, const Operator& row)
{
    return nameOf(job, row);
}
std::string nameOfRow(const Job&, const Device& row)
{
    return row.tag;
}
std::string nameOfRow(const Job&, const Cable& row)
{
    return row.tag;
}
std::string nameOfRow(const Job&, const Splice& row)
{
    return row.tag;
}

namespace {

std::string nameOfEnd(const Job& job, const End& end)
{
    if (const Landing* landing = landingOf(end))
        return nameOf(job, *landing);
    const SpliceId* id = spliceOf(end);
    const Splice* splice = id ? job.splices.find(*id) : nullptr;
    return splice ? splice->tag : "…";
}

} // namespace

std::string nameOfRow(const Job& job, const Conductor& row)
{
    const std::string ends = nameOfEnd(job, row.from) + " – " + nameOfEnd(job, row.to);
    return row.tag.empty() ? ends : row.tag + " (" + ends + ")";
}

std::string nameOfRow(const Job&, const Opening& row)
{
    return row.tag;
}
std::string nameOfRow(const Job&, const Sheet& row)
{
    return row.title;
}

std::string nameOfRow(const Job& job, const Placement& row)
{
    if (const auto* device = std::get_if<DeviceId>(&row.what))
        return tagOf(job, *device);
    const Splice* splice = job.splices.find(std::get<SpliceId>(row.what));
    return splice ? splice->tag : std::string();
}

std::string nameOfRow(const Job& job, const Bends& row)
{
    const Conductor* conductor = job.conductors.find(row.conductor);
    return conductor ? nameOfRow(job, *conductor) : std::string();
}

std::string nameOfRow(const Job&, const Note& row)
{
    return row.words;
}
std::string nameOfRow(const Job&, const SetAside& row)
{
    return row.rule + " " + row.at;
}
std::string nameOfRow(const Job&, const Typical& row)
{
    return row.name;
}
std::string nameOfRow(const Job&, const Stamp& row)
{
    return row.name;
}

Problem problemAt(std::string where, Text what, Text remedy, Gaps gaps)
{
    Message first(what, gaps);
    return {std::move(first), std::move(where), Message(remedy, std::move(gaps))};
}

std::string printedTerminals(const Kind& kind)
{
    std::string joined;
    for (const Terminal* terminal : terminalsOf(kind))
        joined += (joined.empty() ? "" : ", ") + terminal->printed;
    return joined;
}

std::string settingText(const SettingValue& value)
{
    const auto* number = std::get_if<double>(&value);
    return number ? fmt::format("{}", *number) : std::get<std::string>(value);
}

Problem leftAlone(const std::string& name)
{
    return problemAt(
        name, {.en = "'{name}' is marked to be left alone.", .es = "'{name}' está marcado para no tocarlo."},
        {.en = "Give it another standing first, if it may be touched.",
         .es = "Cambie antes su estado, si se puede tocar."},
        {{"name", name}});
}

Problem notInJob(Words noun)
{
    return problemAt(
        {},
        {.en = "That {noun} is not in the job any more.",
         .es = "Ese elemento ({noun}) ya no está en el trabajo."},
        {.en = "Choose another, or undo its removal.", .es = "Elija otro o deshaga su eliminación."},
        {{"noun", std::move(noun)}});
}

Problem noSuchTerminal(const Job& job, const Landing& landing)
{
    const std::string tag = tagOf(job, landing.device);
    const Kind* kind = kindOf(job, landing.device);
    return problemAt(
        tag, {.en = "{tag} has no terminal '{terminal}'.", .es = "{tag} no tiene el borne '{terminal}'."},
        {.en = "Use one of: {terminals}.", .es = "Use uno de: {terminals}."},
        {{"tag", tag},
         {"terminal", landing.terminal},
         {"terminals", kind ? printedTerminals(*kind) : std::string()}});
}

} // namespace doorloom
