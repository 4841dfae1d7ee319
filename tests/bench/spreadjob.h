#pragma once

#include "model/job.h"

namespace doorloom::bench {

Job spreadJob(); // the large job, its devices arranged on the sheet as the window arranges them

} // namespace doorloom::bench
