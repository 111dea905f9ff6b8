#!/usr/bin/env python3
"""Times HiGHS on the problems of benches/stock.rs, and that benchmark beside it.

usage: highs.py            from the repository; needs `pip install highspy==1.16.0 numpy` and cargo.

A developer's tool: no test runs it. What is timed of HiGHS is its run alone, with the problem already
given to it and nothing known from the run before, so neither building the problem nor Python counts;
of the engine all of `choose_all`. Of both sides the least time counts, which other work on the machine
disturbs least. HiGHS stops at no gap, as in reference g.

Where no choice meets every room, the engine leaves the least missing; so must HiGHS.
"""
import json, os, subprocess, sys, tempfile, time
import highspy

HERE = os.path.dirname(os.path.abspath(__file__))
REPEATS = 30
# More than any choice costs.
MISSING_CENTS_A_FOOT = 1_000_000


def ours(folder):
    """The least microseconds of a sample, by problem, from criterion's samples."""
    command = ["cargo", "bench", "-q", "-p", "finrun-tests", "--bench", "stock"]
    subprocess.run(command, cwd=HERE, env=dict(os.environ, CRITERION_HOME=folder), stdout=subprocess.DEVNULL,
                   stderr=subprocess.DEVNULL, check=True)
    found = {}
    for where, _, files in os.walk(folder):
        if "sample.json" in files and os.path.basename(where) == "new":
            with open(os.path.join(where, "benchmark.json")) as f:
                name = json.load(f)["function_id"]
            with open(os.path.join(where, "sample.json")) as f:
                sample = json.load(f)
            found[name] = min(time / count for time, count in zip(sample["times"], sample["iters"])) / 1000
    return found


def model(case):
    """As reference g was made: whole numbers of each piece on each segment."""
    h = highspy.Highs()
    h.setOptionValue("output_flag", False)
    h.setOptionValue("mip_rel_gap", 0.0)
    h.setOptionValue("mip_abs_gap", 0.0)
    lengths, joint = case["stock_lengths_ft"], case["joint_cost_cents_per_piece"]
    number = {}
    for r, room in enumerate(case["rooms"]):
        segments = room["segments_usable_ft"]
        for s, usable in enumerate(segments):
            for length, price in zip(lengths, case["price_cents"]):
                number[r, s, length] = h.addIntegral(lb=0, ub=int(usable // length), obj=price + joint)
            h.addConstr(sum(l * number[r, s, l] for l in lengths) <= usable)
        total = sum(l * number[r, s, l] for s in range(len(segments)) for l in lengths)
        if case["status"] == "infeasible":
            total = total + h.addVariable(lb=0, obj=MISSING_CENTS_A_FOOT)
        h.addConstr(total >= room["min_total_ft"])
    for length, most in (case["available"] or {}).items():
        h.addConstr(sum(x for key, x in number.items() if key[2] == int(length)) <= most)
    return h


def highs(case):
    """The least microseconds of a run."""
    h, least = model(case), float("inf")
    for _ in range(REPEATS):
        h.clearSolver()
        before = time.perf_counter()
        h.run()
        least = min(least, time.perf_counter() - before)
        cost = round(h.getInfo().objective_function_value)
        known = case["optimal_cost_cents"]
        if h.getModelStatus() != highspy.HighsModelStatus.kOptimal or (known is not None and cost != known):
            sys.exit("%s: HiGHS finds %s, kept is %s" % (case["id"], cost, known))
    return least * 1e6


def main():
    with tempfile.TemporaryDirectory() as folder:
        finrun = ours(folder)
    with open(os.path.join(HERE, "..", "reference", "g_stock_length_selection.json")) as f:
        cases = json.load(f)["instances"]
    print("microseconds, least of many        HiGHS   Finrun   HiGHS / Finrun")
    ratios = []
    for case in cases:
        theirs, mine = highs(case), finrun[case["id"]]
        ratios.append(theirs / mine)
        print("%s %d rooms %2d segments%s %10.1f %8.2f %10.0f" % (
            case["id"], len(case["rooms"]), sum(len(room["segments_usable_ft"]) for room in case["rooms"]),
            ", limits" if case["available"] else "        ", theirs, mine, theirs / mine))
    ratios.sort()
    print("least ratio %.0f, middle %.0f, greatest %.0f" % (ratios[0], ratios[len(ratios) // 2], ratios[-1]))


main()
