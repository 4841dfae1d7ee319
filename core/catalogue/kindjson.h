#pragma once

#include "base/json.h"
#include "base/result.h"
#include "model/kind.h"

#include <string>
#include <vector>

// The JSON of a kind has the members of the structs in model/kind.h under their own names, with these rules:
//  - Words {"en": "...", "es": "..."}; Throw {"key": "in", "words": {...}}; an enum's word starts small:
//    "commonPractice", "relay", "keySwitch", "byHand", "constantCurrent"
//  - a number has its unit in its name: nominalVolts, mostAmperes, actsInMilliseconds, stripMillimetres,
//    torqueNewtonMetres, closedBelowOhms, ampereHours
//  - Condition {"K1.JA": "wet", "K1.JB": "wet"}: option.jumper and its value
//  - what stands at its default is left out
// kind     name title words family standing roles strips options settings parts outputs lock
// role     key nature words throws unpowered idle makesBeforeBreaks
// strip    words terminals
// terminal key printed words required:[Condition] lead wire:{thinnest,thickest} clampCapacity
//          stripMillimetres torqueNewtonMetres signs:[{when,words}] standing
// option   key words values jumpers:[{key,words}] factory standing
// setting  key words form unit least most values factory beforePower standing; one in seconds that is called after a role
//          or an input, "delay.K2", says how long that one's move, or what that input starts, waits by itself; a value
//          called "none" is one with which the device does nothing; "spacing", in mm, is from its centre to that of the
//          next touchless actuator on its wall
// part     key type when standing, and by type:
//  link        a b
//  contact     a b role closedIn:[throw] solidState rating:{dcResistiveAmperes dcInductiveAmperes
//              acResistiveAmperes acInductiveAmperes mostVolts leastVolts leastAmperes}
//  load        a b use polarised suppressed accepts rated:[{volts,amperes}] law leastVolts mostVolts
//              releaseVolts pullInVolts inrushAmperes inrushMilliseconds duty
//  move        role manner powered poweredIn:{role:throw} by:[input] sense latching delayMilliseconds
//              holdMilliseconds
//  dryInput    terminal reference wettingVolts wettingOhms isolated mayShareContact mustBeClosed
//              closedBelowOhms bands:[{words,leastOhms,mostOhms}]; a door operator starts by its first one that
//              need not be closed all the time
//  source      plus minus ac mayParallel minusEarthed lowestVolts nominalVolts highestVolts
//              lowestOnBatteryVolts mostAmperes supplyClass live:[{role:throw, ...}]
//  batteryPort plus minus nominalVolts chargeAmperes
//  battery     plus minus nominalVolts ampereHours
//  signal      terminal reference line
//  earth       terminal
//  diode       anode cathode dropVolts
//  resistor    a b ohms
//  suppressor  a b ratingVolts
//  fuse        a b limitAmperes
// output   key option wetValue terminals:[common, NO, NC]
// lock     failMode load holdsDoorOpen latches actsInMilliseconds
namespace doorloom {

// A kind as JSON, keys in a fixed order; equal kinds give equal bytes.
std::string kindText(const Kind& kind);
// Errors: unknown keys, wrong types, words that are no member of a list, with line and path ("parts[3].a");
//         does not run checkKind
Result<Kind> readKind(const Json& json, const std::string& file, const std::string& path);

// SHA-256 of kindText, as 64 hexadecimal digits.
std::string contentHash(const Kind& kind);

// What a kind says against itself: keys used twice, parts on terminals that are not there, throws that a role
// does not have, printed names used twice, a lock without a load, more than 4,096 option combinations …
// Out: each `where` is the path in the kind's JSON ("parts[3].a")
std::vector<Problem> checkKind(const Kind& kind);

// Reads and checks.
// Errors: those of readKind; the first of checkKind, with file and line
Result<Kind> readCheckedKind(const Json& json, const std::string& file, const std::string& path);

} // namespace doorloom
