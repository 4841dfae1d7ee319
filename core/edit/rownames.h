#pragma once

#include "base/result.h"
#include "model/job.h"

#include <string>
#include <utility>
#include <vector>

// What a problem calls a row: its noun and its tag, never its number.
namespace doorloom {

std::string nameOfRow(const Job& job, const JobInfo& row);
std::string nameOfRow(const Job& job, const JobKind& row);
std::string nameOfRow(const Job& job, const CableType& row);
std::string nameOfRow(const Job& job, const Place& row);
std::string nameOfRow(const Job& job, const Operator& row);
std::string nameOfRow(const Job& job, const Device& row);
std::string nameOfRow(const Job& job, const Cable& row);
std::string nameOfRow(const Job& job, const Splice& row);
std::string nameOfRow(const Job& job, const Conductor& row); // "W1 (PS1:+ – LM1:+)"
std::string nameOfRow(const Job& job, const Opening& row);
std::string nameOfRow(const Job& job, const Sheet& row);
std::string nameOfRow(const Job& job, const Placement& row); // the tag of what is placed
std::string nameOfRow(const Job& job, const Bends& row);     // the conductor's
std::string nameOfRow(const Job& job, const Note& row);
std::string nameOfRow(const Job& job, const SetAside& row);
std::string nameOfRow(const Job& job, const Typical& row);
std::string nameOfRow(const Job& job, const Stamp& row);

template <class Row> Words nounOf()
{
    if constexpr (std::is_same_v<Row, JobInfo>)
        return {"title block", "cajetín"};
    else if constexpr (std::is_same_v<Row, JobKind>)
        return {"kind", "tipo"};
    else if constexpr (std::is_same_v<Row, CableType>)
        return {"cable type", "tipo de cable"};
    else if constexpr (std::is_same_v<Row, Place>)
        return {"place", "lugar"};
    else if constexpr (std::is_same_v<Row, Operator>)
        return {"operator", "operador"};
    else if constexpr (std::is_same_v<Row, Device>)
        return {"device", "dispositivo"};
    else if constexpr (std::is_same_v<Row, Cable>)
        return {"cable", "cable"};
    else if constexpr (std::is_same_v<Row, Splice>)
        return {"splice", "empalme"};
    else if constexpr (std::is_same_v<Row, Conductor>)
        return {"conductor", "conductor"};
    else if constexpr (std::is_same_v<Row, Opening>)
        return {"opening", "puerta"};
    else if constexpr (std::is_same_v<Row, Sheet>)
        return {"sheet", "hoja"};
    else if constexpr (std::is_same_v<Row, Placement>)
        return {"placement", "posición en la hoja"};
    else if constexpr (std::is_same_v<Row, Bends>)
        return {"drawn line", "línea dibujada"};
    else if constexpr (std::is_same_v<Row, Note>)
        return {"note", "nota"};
    else if constexpr (std::is_same_v<Row, SetAside>)
        return {"finding set aside", "hallazgo apartado"};
    else if constexpr (std::is_same_v<Row, Typical>)
        return {"typical", "puerta tipo"};
    else
        return {"stamp", "copia de puerta tipo"};
}

using Gaps = std::vector<std::pair<std::string, Argument>>;

// A problem whose sentences fill their gaps from the same arguments.
Problem problemAt(std::string where, Text what, Text remedy, Gaps gaps);

// "C, NO, NC" of a list of things with keys.
template <class Keyed> std::string keysOf(const std::vector<Keyed>& list)
{
    std::string joined;
    for (const Keyed& each : list)
        joined += (joined.empty() ? "" : ", ") + each.key;
    return joined;
}
std::string printedTerminals(const Kind& kind);
std::string settingText(const SettingValue& value);

// The sentences that several places say.
Problem notInJob(Words noun);               // an operation on a row that is gone
Problem leftAlone(const std::string& name); // marked 'leave alone'
Problem noSuchTerminal(const Job& job, const Landing& landing);

} // namespace doorloom
