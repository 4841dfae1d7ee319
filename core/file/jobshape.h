#pragma once

#include "base/jsonshape.h"
#include "catalogue/kindshape.h"
#include "model/rows.h"

// The JSON of a job's rows (the format is in jobfile.h).
namespace doorloom {

template <>
inline constexpr auto wordsOf<Standing> = std::to_array<std::string_view>({"new", "existing", "moved",
                                                                           "byOthers", "leaveAlone"});
template <>
inline constexpr auto wordsOf<Mounting> = std::to_array<std::string_view>({"frame", "leaf", "wall", "ceiling",
                                                                           "cabinet", "elsewhere"});
template <>
inline constexpr auto wordsOf<ConductorMake> = std::to_array<std::string_view>({"core", "wire", "lead"});
template <>
inline constexpr auto wordsOf<Egress> = std::to_array<std::string_view>({"byHand", "byElectricity",
                                                                         "delayedInsideLock"});
template <> inline constexpr auto wordsOf<Audience> = std::to_array<std::string_view>({"public", "staff"});
template <>
inline constexpr auto wordsOf<Side> = std::to_array<std::string_view>({"inside", "outside", "both"});
template <>
inline constexpr auto wordsOf<SituationKind> = std::to_array<std::string_view>(
    {"rest", "request", "release", "occupied", "requestWhileOccupied", "otherDoorOpen", "mainsLost",
     "allPowerLost", "lostAlone", "fireAlarm", "fireReset"});
template <>
inline constexpr auto wordsOf<Promised> = std::to_array<std::string_view>({"nothing", "locked", "free",
                                                                           "freeButLatched", "mayStart",
                                                                           "mustNotStart"});

template <>
inline constexpr auto shapeOf<JobInfo> = std::tuple(
    must("id", &JobInfo::id), may("number", &JobInfo::number), may("title", &JobInfo::title),
    may("site", &JobInfo::site), may("client", &JobInfo::client), may("author", &JobInfo::author),
    may("revision", &JobInfo::revision), may("date", &JobInfo::date), may("notes", &JobInfo::notes),
    may("english", &JobInfo::english), may("spanish", &JobInfo::spanish));
template <>
inline constexpr auto shapeOf<Core> = std::tuple(must("number", &Core::number), may("colour", &Core::colour),
                                                 may("gauge", &Core::gauge), may("pair", &Core::pair),
                                                 may("drain", &Core::drain));
template <>
inline constexpr auto
    shapeOf<CableType> = std::tuple(must("id", &CableType::id), may("name", &CableType::name),
                                    may("words", &CableType::words), may("cores", &CableType::cores),
                                    may("shielded", &CableType::shielded),
                                    may("carriesMains", &CableType::carriesMains));
template <>
inline constexpr auto
    shapeOf<Place> = std::tuple(must("id", &Place::id), may("tag", &Place::tag), may("words", &Place::words),
                                may("mounting", &Place::mounting), may("isBox", &Place::isBox),
                                may("breaker", &Place::breaker));
template <>
inline constexpr auto
    shapeOf<Operator> = std::tuple(must("id", &Operator::id), may("tag", &Operator::tag),
                                   may("owner", &Operator::owner), may("ownerRole", &Operator::ownerRole),
                                   must("nature", &Operator::nature), must("throws", &Operator::throws),
                                   must("unpowered", &Operator::unpowered), must("idle", &Operator::idle));
template <>
inline constexpr auto shapeOf<Device> = std::tuple(
    must("id", &Device::id), must("tag", &Device::tag), may("words", &Device::words),
    must("kind", &Device::kind), may("place", &Device::place), may("standing", &Device::standing),
    may("choices", &Device::choices), may("settings", &Device::settings), may("bindings", &Device::bindings));
template <>
inline constexpr auto
    shapeOf<Cable> = std::tuple(must("id", &Cable::id), may("tag", &Cable::tag), must("type", &Cable::type),
                                may("from", &Cable::from), may("to", &Cable::to),
                                may("lengthMetres", &Cable::length), may("pull", &Cable::pull),
                                may("standing", &Cable::standing), may("notes", &Cable::notes));
template <>
inline constexpr auto shapeOf<Splice> = std::tuple(must("id", &Splice::id), may("tag", &Splice::tag),
                                                   may("place", &Splice::place),
                                                   may("connector", &Splice::connector),
                                                   may("capacity", &Splice::capacity));
template <>
inline constexpr auto shapeOf<Conductor> =
    std::tuple(must("id", &Conductor::id), may("tag", &Conductor::tag), may("make", &Conductor::make),
               may("cable", &Conductor::cable), may("core", &Conductor::core), may("from", &Conductor::from),
               may("to", &Conductor::to), may("colour", &Conductor::colour), may("gauge", &Conductor::gauge),
               may("lengthMetres", &Conductor::length), may("standing", &Conductor::standing));
template <>
inline constexpr auto shapeOf<Act> = std::tuple(must("name", &Act::name), may("side", &Act::side),
                                                may("throws", &Act::throws));
template <>
inline constexpr auto shapeOf<Situation> = std::tuple(must("situation", &Situation::kind),
                                                      may("act", &Situation::act),
                                                      may("lost", &Situation::lost));
template <>
inline constexpr auto shapeOf<Promise> = std::tuple(may("device", &Promise::device),
                                                    may("promised", &Promise::promised));
template <>
inline constexpr auto shapeOf<Opening> =
    std::tuple(must("id", &Opening::id), may("tag", &Opening::tag), may("words", &Opening::words),
               may("egress", &Opening::egress), may("fireRated", &Opening::fireRated),
               may("audience", &Opening::audience), may("door", &Opening::door), may("fire", &Opening::fire),
               may("locks", &Opening::locks), may("doorOperators", &Opening::doorOperators),
               may("requests", &Opening::requests), may("releases", &Opening::releases),
               may("occupied", &Opening::occupied), may("promises", &Opening::promises));
template <>
inline constexpr auto shapeOf<Sheet> = std::tuple(must("id", &Sheet::id), may("title", &Sheet::title),
                                                  may("order", &Sheet::order));
template <>
inline constexpr auto
    shapeOf<Placement> = std::tuple(must("id", &Placement::id), must("sheet", &Placement::sheet),
                                    must("what", &Placement::what), must("at", &Placement::at),
                                    may("quarterTurns", &Placement::quarterTurns));
template <>
inline constexpr auto shapeOf<Bends> = std::tuple(must("id", &Bends::id),
                                                  must("conductor", &Bends::conductor),
                                                  may("pinned", &Bends::pinned));
template <>
inline constexpr auto shapeOf<Note> = std::tuple(must("id", &Note::id), must("sheet", &Note::sheet),
                                                 must("at", &Note::at), may("words", &Note::words));
template <>
inline constexpr auto
    shapeOf<SetAside> = std::tuple(must("id", &SetAside::id), may("rule", &SetAside::rule),
                                   may("at", &SetAside::at), may("throws", &SetAside::throws),
                                   may("reason", &SetAside::reason), may("name", &SetAside::name),
                                   may("date", &SetAside::date));
template <>
inline constexpr auto shapeOf<Edition> = std::tuple(must("number", &Edition::number),
                                                    may("rows", &Edition::rows));
template <>
inline constexpr auto shapeOf<Typical> = std::tuple(must("id", &Typical::id), may("name", &Typical::name),
                                                    may("rows", &Typical::rows),
                                                    may("editions", &Typical::editions));
template <>
inline constexpr auto
    shapeOf<Stamp> = std::tuple(must("id", &Stamp::id), must("typical", &Stamp::typical),
                                may("name", &Stamp::name), may("rows", &Stamp::rows),
                                may("edition", &Stamp::edition), may("tagPattern", &Stamp::tagPattern));
template <> inline constexpr auto shapeOf<JobKind> = std::tuple(must("id", &JobKind::id));

// ---- Forms that are no plain object

using Placed = std::variant<DeviceId, SpliceId>;
using RowPair = std::pair<std::uint32_t, std::uint32_t>;

// id, hash and kind
template <> struct Form<JobKind> {
    static void write(JsonWriter& writer, const JobKind& value);
    static bool read(JsonReader& reader, const Json& json, JobKind& into);
};

// {"K1.JA": "wet"}
template <> struct Form<std::vector<Choice>> {
    static void write(JsonWriter& writer, const std::vector<Choice>& value);
    static bool read(JsonReader& reader, const Json& json, std::vector<Choice>& into);
};

// {"hold": 5}
template <> struct Form<std::vector<SettingChoice>> {
    static void write(JsonWriter& writer, const std::vector<SettingChoice>& value);
    static bool read(JsonReader& reader, const Json& json, std::vector<SettingChoice>& into);
};

// {"K1": 14}
template <> struct Form<std::vector<Binding>> {
    static void write(JsonWriter& writer, const std::vector<Binding>& value);
    static bool read(JsonReader& reader, const Json& json, std::vector<Binding>& into);
};

// [12, "K1.C"], [40], "spare" or "insulated"; nothing while it waits
template <> struct Form<End> {
    static void write(JsonWriter& writer, const End& value);
    static bool read(JsonReader& reader, const Json& json, End& into);
};

// [14, "in"]
template <> struct Form<Thrown> {
    static void write(JsonWriter& writer, const Thrown& value);
    static bool read(JsonReader& reader, const Json& json, Thrown& into);
};

// its situation's members beside its own
template <> struct Form<Promise> {
    static void write(JsonWriter& writer, const Promise& value);
    static bool read(JsonReader& reader, const Json& json, Promise& into);
};

// [x, y]
template <> struct Form<Point> {
    static void write(JsonWriter& writer, const Point& value);
    static bool read(JsonReader& reader, const Json& json, Point& into);
};

// {"device": 12} or {"splice": 40}
template <> struct Form<Placed> {
    static void write(JsonWriter& writer, const Placed& value);
    static bool read(JsonReader& reader, const Json& json, Placed& into);
};

// {"devices": {"id": 12, …}}: the row under its table's name
template <> struct Form<DoorRow> {
    static void write(JsonWriter& writer, const DoorRow& value);
    static bool read(JsonReader& reader, const Json& json, DoorRow& into);
};

// [12, 57]
template <> struct Form<RowPair> {
    static void write(JsonWriter& writer, const RowPair& value);
    static bool read(JsonReader& reader, const Json& json, RowPair& into);
};

} // namespace doorloom
