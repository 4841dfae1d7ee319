#pragma once

#include "core/random.h"
#include "route/sheet.h"

#include <string>
#include <vector>

// Sheets for the router, and the rules that its routes keep, written the slow and obvious way.
namespace doorloom::routing {

// Boxes on a jittered grid at least 70 apart, every coordinate a multiple of five; each port carries one
// connector.
Sheet randomSheet(Random& random, int boxes, int connectors);

// Rows of boxes, ports and connectors in another order; names stay.
Sheet shuffled(const Sheet& sheet, Random& random);
Sheet shifted(Sheet sheet, Spot by);
void moveOn(Sheet& sheet, int box, Spot corner);

// Broken rules, in words: missing routes, ends that are not at their ports or not square to the side, oblique
// pieces, through boxes, two on one line, bends on another conductor, parallels nearer than `gap`.
std::vector<std::string> faultsOf(const Sheet& sheet, const std::vector<Route>& routes, double gap);

int crossingsOf(const std::vector<Route>& routes);
double lengthRatio(const Sheet& sheet, const std::vector<Route>& routes);

} // namespace doorloom::routing
