#pragma once

#include "base/result.h"
#include "graph/netlist.h"
#include "model/job.h"
#include "verdict/questions.h"

#include <string_view>
#include <utility>
#include <vector>

// What people write of terminals and positions. Capitals and accents are all one, '-' is '−'.
namespace doorloom {

// "PS1:+", "lm1:k1.no".
// Errors: no such device, no such terminal, several that fit; each with what there is
Result<Landing> landingNamed(const Job& job, std::string_view text);

// "KS1=on, LM1:K1=in", in the order given.
// Errors: no such operator or throw, one named twice
Result<std::vector<std::pair<MovedIndex, ThrowIndex>>> givenThrows(const Job& job, const Netlist& net, std::string_view text);

// "KS1=on, LM1:K1=in": these throws, every other operator as it is at rest, plain coils and what follows by itself as
// the circuit then gives. Empty: at rest.
// Errors: as givenThrows; a position in which coils never settle
Result<Position> positionNamed(const Job& job, const Netlist& net, const Questions& ask, std::string_view text);

} // namespace doorloom
