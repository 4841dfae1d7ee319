#include "bench/manydoors.h"

#include "core/jobs.h"

#include <string>
#include <vector>

namespace doorloom::bench {

namespace {

constexpr int spareCores = 12;

class Doors {
public:
    explicit Doors(Feeding feeding) : feeding_(feeding) {}

    Job drawn(int devices)
    {
        // A seventh of a strip for each end that is gathered, and a seventh of that …
        const double perDoor = feeding_ == Feeding::EachItsOwn ? 9 : feeding_ == Feeding::SharedMinus ? 9.18 : 8.36;
        const int doors = static_cast<int>(devices / perDoor);
        if (feeding_ == Feeding::OneSupply)
            job_.device("PS1", "dc-supply-24");
        std::vector<std::string> pluses, minuses;
        for (int door = 1; door <= doors; ++door) {
            const std::string n = std::to_string(door);
            addDoor(n);
            pluses.push_back("P" + n + ":1");
            minuses.push_back("N" + n + ":1");
        }
        if (feeding_ == Feeding::OneSupply)
            job_.wire("PS1:+", gathered("TP", std::move(pluses))).wire("PS1:−", gathered("TN", std::move(minuses)));
        if (feeding_ == Feeding::SharedMinus)
            gathered("TN", std::move(minuses));
        return job_.job();
    }

private:
    // Strips upon strips, seven ways each. Out: the first way of the last one.
    std::string gathered(const std::string& tag, std::vector<std::string> ends)
    {
        for (int level = 1; ends.size() > 1; ++level) {
            std::vector<std::string> next;
            for (std::size_t i = 0; i < ends.size(); ++i) {
                const std::string strip = tag + std::to_string(level) + "." + std::to_string(i / 7);
                if (i % 7 == 0) {
                    job_.device(strip, "terminal-strip-8");
                    next.push_back(strip + ":1");
                }
                job_.wire(strip + ":" + std::to_string(i % 7 + 2), ends[i]);
            }
            ends = std::move(next);
        }
        return ends.front();
    }

    void addDoor(const std::string& n)
    {
        const std::string p = "P" + n, m = "N" + n, lm = "LM" + n, wi = "WI" + n, wo = "WO" + n, es = "ES" + n, ol = "OL" + n,
                          ds = "DS" + n;
        job_.device(p, "terminal-strip-8").device(m, "terminal-strip-8").device(lm, "relay-module-negative");
        job_.device(wi, "wave-actuator").device(wo, "wave-actuator").device(es, "strike-fail-secure");
        job_.device(ol, "lamp").device(ds, "door-switch");
        job_.option(lm, "K1", "wet").option(lm, "K3", "dry");
        if (feeding_ != Feeding::OneSupply)
            job_.device("PS" + n, "dc-supply-24").wire("PS" + n + ":+", p + ":8").wire("PS" + n + ":−", m + ":8");
        job_.wire(p + ":2", lm + ":+").wire(m + ":2", lm + ":−");
        int way = 3;
        for (const std::string& wave : {wi, wo}) {
            job_.wire(p + ":" + std::to_string(way), wave + ":+").wire(m + ":" + std::to_string(way), wave + ":−");
            job_.wire(lm + ":COM", wave + ":C").wire(lm + ":IN" + std::to_string(way - 2), wave + ":NO");
            ++way;
        }
        job_.wire(lm + ":COM", ds + ":A").wire(lm + ":IN3", ds + ":B");
        job_.wire(lm + ":K1.C", es + ":1").wire(lm + ":K1.NO", es + ":2");
        job_.wire(p + ":5", lm + ":K3.C").wire(lm + ":K3.NO", ol + ":+").wire(ol + ":−", m + ":5");
        for (int spare = 0; spare < spareCores; ++spare)
            job_.wire("spare", "spare");
        job_.opening({.tag = "DOOR" + n,
                      .locks = {es},
                      .requests = {{"inside", wi + "=waved " + lm + ":K1=in"}, {"outside", wo + "=waved " + lm + ":K1=in"}},
                      .promises = {{"rest", Promised::Locked},
                                   {"request inside", Promised::Free},
                                   {"request outside", Promised::Free},
                                   {"all power lost", Promised::Locked}}});
    }

    Feeding feeding_;
    JobBuilder job_{Clamps::Roomy};
};

} // namespace

Job manyDoors(Feeding feeding, int devices) { return Doors(feeding).drawn(devices); }

} // namespace doorloom::bench
