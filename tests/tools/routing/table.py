#!/usr/bin/env python3
"""Routes the sheets of every seed and measures them: one table in one run.

    python3 table.py ROUTE_SHEET [SEED ...]     default seeds: 300 400 500 600 700 811

A row a sheet, from nothing and after its 50 moves; faults are named, and counted in the exit code.
"""
import os
import subprocess
import sys
import tempfile

HERE = os.path.dirname(os.path.abspath(__file__))
SEEDS = ["300", "400", "500", "600", "700", "811"]
FAULTS = ["missing", "bad_ends", "non_orthogonal", "through", "overlaps", "self_overlaps", "touches", "port_dir"]
# Crossings (s1 and s2: of seeds 300 to 700 together) and bends of the library in README.md.
THEIRS = {("s1", "sum"): 114, ("s2", "sum"): 587, ("s3", "300"): 493, ("s3", "400"): 560, ("s3", "500"): 571,
          ("s3", "600"): 613, ("s4", "300"): 1337}
THEIR_BENDS = {"s1": 51, "s2": 180, "s3": 598, "s4": 1491}    # seed 300


def said(*command):
    return subprocess.run(command, check=True, capture_output=True, text=True).stdout


def measured(tools, sheet, more, metrics_more):
    routes = said(tools["route_sheet"], sheet + ".sheet", *more)
    with open(tools["routes"], "w") as f:
        f.write(routes)
    values = said(tools["metrics"], sheet + ".sheet", tools["routes"], "-csv", *metrics_more).strip().split(",")
    return dict(zip(tools["names"], values)), routes.strip().split("\n")[-1]


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    seeds = sys.argv[2:] or SEEDS
    folder = tempfile.mkdtemp()
    tools = {"route_sheet": sys.argv[1], "metrics": os.path.join(folder, "metrics"), "routes": os.path.join(folder, "routes")}
    said("g++", "-O2", "-std=c++20", os.path.join(HERE, "metrics.cpp"), "-o", tools["metrics"])
    tools["names"] = said(tools["metrics"], "-header").strip().split(",")
    sums, faults = {}, 0
    print("%-12s %4s %-7s %9s %6s %6s %6s %6s  %s" % ("sheet", "seed", "", "crossings", "theirs", "bends", "ratio", "close", ""))
    for seed in seeds:
        where = os.path.join(folder, seed)
        said(sys.executable, os.path.join(HERE, "gen_sheets.py"), where, seed)
        for name in sorted(n[:-6] for n in os.listdir(where) if n.endswith(".sheet")):
            if name.startswith("o") and seed != seeds[0]:
                continue                                      # the odd sheets are the same for every seed
            sheet = os.path.join(where, name)
            moves = ["--moves", sheet + ".moves", "--n", "50"]
            for label, more, metrics_more in (("", [], []), ("moved", moves, ["-moves", sheet + ".moves", "-n", "50"])):
                m, time = measured(tools, sheet, more, metrics_more)
                impossible = 2 if name.startswith("o1") and not label else 0
                wrong = ["%s %s" % (k, m[k]) for k in FAULTS if int(m[k]) != (impossible if k == "missing" else 0)]
                if name in ("s1", "s2") and m["close_pairs"] != "0":
                    wrong.append("close_pairs " + m["close_pairs"])
                faults += len(wrong)
                if not label and seed in ("300", "400", "500", "600", "700"):
                    sums[name] = sums.get(name, 0) + int(m["crossings"])
                theirs = THEIRS.get((name, seed), "") if not label else ""
                bends = m["bends"] + ("/%d" % THEIR_BENDS[name] if name in THEIR_BENDS and seed == "300" and not label else "")
                print("%-12s %4s %-7s %9s %6s %9s %6s %5s  %s %s" % (name, seed, label, m["crossings"], theirs, bends,
                      m["length_ratio"], m["close_pairs"], time[2:], "; ".join(wrong)), flush=True)
    for name in ("s1", "s2") if set(SEEDS[:5]) <= set(seeds) else ():
        print("%s, seeds 300 to 700: %d crossings, theirs %d" % (name, sums.get(name, 0), THEIRS[(name, "sum")]))
    sys.exit(min(faults, 99))


if __name__ == "__main__":
    main()
