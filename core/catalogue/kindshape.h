#pragma once

#include "base/jsonshape.h"
#include "model/kind.h"

// The JSON of a kind's structs (the format is in kindjson.h), for readers and writers of kinds and jobs.
namespace doorloom {

template <>
inline constexpr auto wordsOf<ValueStanding> = std::to_array<std::string_view>({"sheet", "commonPractice",
                                                                                "memory"});
template <>
inline constexpr auto wordsOf<OperatorNature> =
    std::to_array<std::string_view>({"relay", "door", "hand", "keySwitch", "sensor", "selector", "bolt",
                                     "mains", "battery", "fire", "failure"});
template <>
inline constexpr auto wordsOf<Setting::Form> = std::to_array<std::string_view>({"dip", "potentiometer",
                                                                                "number", "choice"});
template <> inline constexpr auto wordsOf<Current> = std::to_array<std::string_view>({"dc", "ac", "either"});
template <>
inline constexpr auto wordsOf<LoadLaw> = std::to_array<std::string_view>({"resistive", "constantCurrent",
                                                                          "constantPower"});
template <>
inline constexpr auto wordsOf<Duty> = std::to_array<std::string_view>({"continuous", "intermittent"});
template <>
inline constexpr auto wordsOf<LoadUse> =
    std::to_array<std::string_view>({"electronics", "lock", "coil", "lamp", "sounder", "motor", "input"});
template <>
inline constexpr auto wordsOf<MoveManner> = std::to_array<std::string_view>({"plain", "follows",
                                                                             "programmed"});
template <>
inline constexpr auto wordsOf<FailMode> = std::to_array<std::string_view>({"safe", "secure", "staysPut"});

// The words of PartBody's alternatives, in their order.
inline constexpr auto partTypes = std::to_array<std::string_view>(
    {"link", "contact", "load", "move", "dryInput", "source", "batteryPort", "battery", "signal", "earth",
     "mains", "diode", "resistor", "suppressor", "fuse"});
static_assert(partTypes.size() == std::variant_size_v<PartBody>);

template <> inline constexpr auto shapeOf<Words> = std::tuple(may("en", &Words::en), may("es", &Words::es));
template <>
inline constexpr auto shapeOf<Throw> = std::tuple(must("key", &Throw::key), may("words", &Throw::words));
template <>
inline constexpr auto shapeOf<Role> = std::tuple(must("key", &Role::key), must("nature", &Role::nature),
                                                 may("words", &Role::words), must("throws", &Role::throws),
                                                 must("unpowered", &Role::unpowered),
                                                 must("idle", &Role::idle),
                                                 may("makesBeforeBreaks", &Role::makesBeforeBreaks));
template <>
inline constexpr auto shapeOf<WireRange> = std::tuple(may("thinnest", &WireRange::thinnest),
                                                      may("thickest", &WireRange::thickest));
template <>
inline constexpr auto shapeOf<TerminalSign> = std::tuple(may("when", &TerminalSign::when),
                                                         must("words", &TerminalSign::words));
template <>
inline constexpr auto shapeOf<Terminal> = std::tuple(
    must("key", &Terminal::key), must("printed", &Terminal::printed), may("words", &Terminal::words),
    may("required", &Terminal::required), may("lead", &Terminal::lead), may("wire", &Terminal::wire),
    may("clampCapacity", &Terminal::clampCapacity), may("stripMillimetres", &Terminal::stripLength),
    may("torqueNewtonMetres", &Terminal::torque), may("signs", &Terminal::signs),
    may("standing", &Terminal::standing));
template <>
inline constexpr auto shapeOf<Strip> = std::tuple(may("words", &Strip::words),
                                                  must("terminals", &Strip::terminals));
template <>
inline constexpr auto shapeOf<Jumper> = std::tuple(must("key", &Jumper::key), may("words", &Jumper::words));
template <>
inline constexpr auto
    shapeOf<Option> = std::tuple(must("key", &Option::key), may("words", &Option::words),
                                 must("values", &Option::values), must("jumpers", &Option::jumpers),
                                 may("factory", &Option::factory), may("standing", &Option::standing));
template <>
inline constexpr auto shapeOf<Setting> =
    std::tuple(must("key", &Setting::key), may("words", &Setting::words), must("form", &Setting::form),
               may("unit", &Setting::unit), may("least", &Setting::least), may("most", &Setting::most),
               may("values", &Setting::values), may("factory", &Setting::factory),
               may("beforePower", &Setting::beforePower), may("standing", &Setting::standing));
template <>
inline constexpr auto shapeOf<SwitchedOutput> = std::tuple(must("key", &SwitchedOutput::key),
                                                           may("option", &SwitchedOutput::option),
                                                           may("wetValue", &SwitchedOutput::wetValue),
                                                           must("terminals", &SwitchedOutput::terminals));
template <>
inline constexpr auto shapeOf<Lock> = std::tuple(must("failMode", &Lock::failMode), must("load", &Lock::load),
                                                 may("holdsDoorOpen", &Lock::holdsDoorOpen),
                                                 may("latches", &Lock::latches),
                                                 may("actsInMilliseconds", &Lock::actsIn));
template <>
inline constexpr auto shapeOf<Kind> = std::tuple(must("name", &Kind::name), must("title", &Kind::title),
                                                 may("words", &Kind::words), must("family", &Kind::family),
                                                 may("standing", &Kind::standing), may("roles", &Kind::roles),
                                                 may("strips", &Kind::strips), may("options", &Kind::options),
                                                 may("settings", &Kind::settings), may("parts", &Kind::parts),
                                                 may("outputs", &Kind::outputs), may("lock", &Kind::lock));

// ---- Parts

template <>
inline constexpr auto shapeOf<LinkPart> = std::tuple(must("a", &LinkPart::a), must("b", &LinkPart::b));
template <>
inline constexpr auto shapeOf<ContactRating> = std::tuple(
    may("dcResistiveAmperes", &ContactRating::dcResistive),
    may("dcInductiveAmperes", &ContactRating::dcInductive),
    may("acResistiveAmperes", &ContactRating::acResistive),
    may("acInductiveAmperes", &ContactRating::acInductive), may("mostVolts", &ContactRating::mostVolts),
    may("leastVolts", &ContactRating::leastVolts), may("leastAmperes", &ContactRating::leastCurrent));
template <>
inline constexpr auto shapeOf<ContactPart> = std::tuple(must("a", &ContactPart::a),
                                                        must("b", &ContactPart::b),
                                                        must("role", &ContactPart::role),
                                                        must("closedIn", &ContactPart::closedIn),
                                                        may("solidState", &ContactPart::solidState),
                                                        may("rating", &ContactPart::rating));
template <>
inline constexpr auto shapeOf<LoadAt> = std::tuple(must("volts", &LoadAt::volts),
                                                   must("amperes", &LoadAt::amperes));
template <>
inline constexpr auto shapeOf<LoadPart> =
    std::tuple(must("a", &LoadPart::a), must("b", &LoadPart::b), may("use", &LoadPart::use),
               may("polarised", &LoadPart::polarised), may("suppressed", &LoadPart::suppressed),
               may("accepts", &LoadPart::accepts), may("rated", &LoadPart::rated), may("law", &LoadPart::law),
               may("leastVolts", &LoadPart::leastVolts), may("mostVolts", &LoadPart::mostVolts),
               may("releaseVolts", &LoadPart::releaseVolts), may("pullInVolts", &LoadPart::pullInVolts),
               may("inrushAmperes", &LoadPart::inrush), may("inrushMilliseconds", &LoadPart::inrushTime),
               may("duty", &LoadPart::duty), may("powerFactor", &LoadPart::powerFactor));
template <>
inline constexpr auto shapeOf<MovePart> =
    std::tuple(must("role", &MovePart::role), may("manner", &MovePart::manner),
               may("powered", &MovePart::powered), may("poweredIn", &MovePart::poweredIn),
               may("by", &MovePart::by), may("sense", &MovePart::sense), may("latching", &MovePart::latching),
               may("delayMilliseconds", &MovePart::delay), may("holdMilliseconds", &MovePart::hold));
template <>
inline constexpr auto shapeOf<InputBand> = std::tuple(may("words", &InputBand::words),
                                                      must("leastOhms", &InputBand::least),
                                                      must("mostOhms", &InputBand::most));
template <>
inline constexpr auto shapeOf<DryInputPart> = std::tuple(
    must("terminal", &DryInputPart::terminal), must("reference", &DryInputPart::reference),
    may("wettingVolts", &DryInputPart::wettingVolts), may("wettingOhms", &DryInputPart::wettingOhms),
    may("isolated", &DryInputPart::isolated), may("mayShareContact", &DryInputPart::mayShareContact),
    may("mustBeClosed", &DryInputPart::mustBeClosed), may("closedBelowOhms", &DryInputPart::closedBelow),
    may("bands", &DryInputPart::bands));
template <>
inline constexpr auto shapeOf<SourcePart> = std::tuple(
    must("plus", &SourcePart::plus), must("minus", &SourcePart::minus), may("ac", &SourcePart::ac),
    may("mayParallel", &SourcePart::mayParallel), may("minusEarthed", &SourcePart::minusEarthed),
    must("lowestVolts", &SourcePart::lowest), must("nominalVolts", &SourcePart::nominal),
    must("highestVolts", &SourcePart::highest), may("lowestOnBatteryVolts", &SourcePart::lowestOnBattery),
    must("mostAmperes", &SourcePart::most), may("supplyClass", &SourcePart::supplyClass),
    may("live", &SourcePart::live));
template <>
inline constexpr auto shapeOf<BatteryPortPart> = std::tuple(must("plus", &BatteryPortPart::plus),
                                                            must("minus", &BatteryPortPart::minus),
                                                            must("nominalVolts", &BatteryPortPart::nominal),
                                                            may("chargeAmperes", &BatteryPortPart::charge));
template <>
inline constexpr auto shapeOf<BatteryPart> = std::tuple(must("plus", &BatteryPart::plus),
                                                        must("minus", &BatteryPart::minus),
                                                        must("nominalVolts", &BatteryPart::nominal),
                                                        may("ampereHours", &BatteryPart::capacity));
template <>
inline constexpr auto shapeOf<SignalPart> = std::tuple(must("terminal", &SignalPart::terminal),
                                                       must("reference", &SignalPart::reference),
                                                       may("line", &SignalPart::line));
template <> inline constexpr auto shapeOf<EarthPart> = std::tuple(must("terminal", &EarthPart::terminal));
template <>
inline constexpr auto shapeOf<MainsPart> = std::tuple(must("terminal", &MainsPart::terminal), may("role", &MainsPart::role));
template <>
inline constexpr auto shapeOf<DiodePart> = std::tuple(must("anode", &DiodePart::anode),
                                                      must("cathode", &DiodePart::cathode),
                                                      may("dropVolts", &DiodePart::drop));
template <>
inline constexpr auto shapeOf<ResistorPart> = std::tuple(must("a", &ResistorPart::a),
                                                         must("b", &ResistorPart::b),
                                                         must("ohms", &ResistorPart::ohms));
template <>
inline constexpr auto shapeOf<SuppressorPart> = std::tuple(must("a", &SuppressorPart::a),
                                                           must("b", &SuppressorPart::b),
                                                           must("ratingVolts", &SuppressorPart::rating));
template <>
inline constexpr auto shapeOf<FusePart> = std::tuple(must("a", &FusePart::a), must("b", &FusePart::b),
                                                     must("limitAmperes", &FusePart::limit));
template <>
inline constexpr auto shapeOf<Part> = std::tuple(must("key", &Part::key), may("when", &Part::when),
                                                 may("standing", &Part::standing));

// ---- Forms that are no plain object

// {"K1.JA": "wet"}: option, jumper and value.
template <> struct Form<Condition> {
    static void write(JsonWriter& writer, const Condition& condition);
    static bool read(JsonReader& reader, const Json& json, Condition& into);
};

// {"mains": "on"}: role and throw.
template <> struct Form<std::vector<std::pair<Key, Key>>> {
    static void write(JsonWriter& writer, const std::vector<std::pair<Key, Key>>& pairs);
    static bool read(JsonReader& reader, const Json& json, std::vector<std::pair<Key, Key>>& into);
};

// A number or a word.
template <> struct Form<SettingValue> {
    static void write(JsonWriter& writer, const SettingValue& value);
    static bool read(JsonReader& reader, const Json& json, SettingValue& into);
};

// The members of the part and of its type's body in one object.
template <> struct Form<Part> {
    static void write(JsonWriter& writer, const Part& part);
    static bool read(JsonReader& reader, const Json& json, Part& into);
};

// Option and jumper of "K1.JA"; false, with a problem, when it is no such key.
bool readJumperName(JsonReader& reader, const Json& json, const std::string& name, Key& option, Key& jumper);

} // namespace doorloom
