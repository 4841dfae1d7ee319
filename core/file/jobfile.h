#pragma once

#include "base/result.h"
#include "model/job.h"

#include <string>
#include <string_view>

// The job file, *.doorjob: JSON, UTF-8, LF, keys in a fixed order, one row a line.
//
//   {
//   "doorloom":1,
//   "nextNumber":61,
//   "kinds":[
//   {"id":1,"hash":"9f…","kind":{…}}
//   ],
//   "devices":[
//   {"id":12,"tag":"PS1","kind":1,"bindings":{"mains":13}},
//   {"id":14,"tag":"LM1","kind":2,"choices":{"K1.JA":"wet","K1.JB":""},"settings":{"hold":5},"bindings":{"K1":15}}
//   ],
//   "conductors":[
//   {"id":20,"make":"core","cable":9,"core":1,"from":[12,"+"],"to":[14,"+"]}
//   ]
//   }
//
// doorloom    the version of the file. Older ones are upgraded while they are read, newer ones refused.
// nextNumber  the job's counter: every id is less, none is 0 and none is used twice in the whole job.
// Then one list a table, in the order of forEachTable; empty ones are left out. A row has the members of its
// struct in model/rows.h under their own names, with these rules:
//  - what stands at its default is left out; an unknown key is refused, never dropped
//  - an id is a number, and so is a reference to it; a reference that is not set is left out
//  - an enum's word starts small ("leaveAlone"); Words, Throw and kinds are as in catalogue/kindjson.h
//  - a list or object inside a row has at most 5,000 entries (base/jsonshape.h)
//  - a length has its unit in its name: lengthMetres; points are [x,y] in tenths of a millimetre
// info        id number title site client author revision date notes english spanish
// kinds       id hash kind: hash is the SHA-256 of the kind as this program writes it, and must agree
// cableTypes  id name words cores:[{number,colour,gauge,pair,drain}] shielded carriesMains
// places      id tag words mounting isBox breaker
// operators   id tag owner ownerRole nature throws unpowered idle
// devices     id tag words kind place standing choices:{OPTION.JUMPER: value, "" while not chosen}
//             settings:{SETTING: number or word} bindings:{ROLE: operator}
// cables      id tag type from to lengthMetres pull standing notes
// splices     id tag place connector capacity
// conductors  id tag make cable core from to colour gauge lengthMetres standing
//             from and to: [device,"TERMINAL KEY"] or [splice] where landed, "spare" or "insulated"; left out
//             while it waits
// openings    id tag words egress fireRated audience door fire locks doorOperators
//             requests:[{name,side,throws:[[operator,"throw"]]}] releases:[as requests]
//             occupied:[[operator,"throw"]] promises:[{situation,act,lost,device,promised}]
// sheets      id title order
// placements  id sheet what:{device or splice} at quarterTurns
// bends       id conductor pinned:[point]
// notes       id sheet at words
// setAside    id rule at throws reason name date
// typicals    id name rows:[number] editions:[{number,rows:[{places: a row as above}, {devices: …}, …]}]
// stamps      id typical name rows:[[typical's row, stamp's row]] edition tagPattern
namespace doorloom {

// Version 2 has editions of typicals. A job without typicals is written as version 1, which says the same.
inline constexpr int jobFileVersion = 2;
inline constexpr std::uint32_t mostNextNumber = 16'000'000;

// Errors: with file, line, path and what to do; nothing is ever dropped: unknown keys are refused
// Cost:   linear in the text
Result<Job> readJob(std::string_view text, const std::string& name);
Result<Job> readJobFile(const std::string& path);

// Equal jobs (and counters) give equal bytes.
std::string jobText(const Job& job);

// Writes beside the file, syncs, renames: the old file survives everything that goes wrong.
Result<Done> saveJobFile(const Job& job, const std::string& path);

// The same for any output: CSV, text, PDF bytes. Errors: a folder that is not there, a full disk …
Result<Done> saveBytes(std::string_view bytes, const std::string& path);

// First 12 hexadecimal digits of SHA-256 of jobText, as printed in title blocks.
std::string digestOf(const Job& job);

} // namespace doorloom
