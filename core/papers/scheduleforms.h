#pragma once

#include "papers/schedule.h"

#include <string>

// The terminal schedule's plain forms.
namespace doorloom {

// For people: aligned columns, UTF-8, LF.
std::string scheduleText(const Schedule& schedule, Language language);

// For programs and spreadsheets (see papers/csv.h for the form). One line for each row of the paper, in its
// order. Enough to build the wiring again without the job:
//   device, kind, options, settings   on every line of a device. options: 'K1.JA=wet; K1.JB=', nothing after
//   '='
//                                     where the jumper is not chosen
//   row        landing, empty, link, spare, waiting, insulated or bare
//   terminal   as printed; a landing on a line without kind is on a splice, all of whose landings are joined
//   far_device, far_terminal, far_state   the other end; every conductor landed at both ends stands on two
//   lines link: far_terminal lists the terminals joined to this one inside the device, '; ' between
// Column names and the words of 'row', 'standing' and 'far_state' are the same in every language.
std::string scheduleCsv(const Schedule& schedule, Language language);

} // namespace doorloom
