#include "fuzz/insist.h"
#include "route/readsheet.h"
#include "route/router.h"

#include <cmath>

// Any bytes are read or refused in words; what is read is routed, from port to port in level and upright
// pieces.
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size)
{
    using namespace doorloom;
    using namespace doorloom::routing;
    const Result<Sheet> sheet = readSheet(textOf(data, size));
    if (!sheet.ok()) {
        insistOnWords(sheet.problem());
        return 0;
    }
    Router router(sheet.value());
    router.routeAll();
    const auto portAt = [&](int port) { return nth(sheet.value().ports, port).at; };
    for (std::size_t i = 0; i < sheet.value().connectors.size(); ++i) {
        const Connector& connector = sheet.value().connectors[i];
        const Route route = router.route(static_cast<int>(i));
        if (route.empty())
            continue;
        insist(route.front() == portAt(connector.from) && route.back() == portAt(connector.to),
               "ends at its ports");
        for (std::size_t k = 1; k < route.size(); ++k)
            insist(std::abs(route[k].x - route[k - 1].x) < 1e-3 ||
                       std::abs(route[k].y - route[k - 1].y) < 1e-3,
                   "every piece is level or upright");
    }
    if (!sheet.value().boxes.empty())
        router.moveBox(0, {0, 0});
    return 0;
}
