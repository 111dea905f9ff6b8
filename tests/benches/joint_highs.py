#!/usr/bin/env python3
"""Solves one circuit's choice of stock pieces with HiGHS, and sets its cost beside the engine's.

usage: joint_highs.py FILE...    needs `pip install highspy==1.16.0 numpy`.

A developer's tool: no test runs it. FILE is what `cargo xtask solve JOB --choice` prints for a job with
prices, a list of circuits as `sizing::joint::export` writes them, or one of them, in JSON:
  stock: rows of length_sixteenths, price_cents, available (null: as many as wanted)
  bare_per_piece_m, joint_cents, run_cents
  rooms: fixed_finned_m, runs of free_sixteenths, fixed_pieces, is_inner
  lengths: rows of room, before (place in this list of the room before's length, null in the first
    room), finned_m, needed_m (null: the room gets the most): a tree of what may follow what, since
    longer finned lengths leave cooler water
  cost_cents: what the engine's answer costs (optional)

The integer programme: how many of each row stand on each run, whole numbers; which lengths are taken,
a flow of ones through the tree; a room's pieces have just the finned length that is taken for it.
"""
import json, sys, time
import highspy

SIXTEENTH_M = 0.0254 / 16
# More than any circuit's cost: a run on an inner wall is taken only where nothing else does.
INNER_CENTS = 10_000_000


def solve(case):
    h = highspy.Highs()
    h.setOptionValue("output_flag", False)
    h.setOptionValue("mip_rel_gap", 0.0)
    h.setOptionValue("mip_abs_gap", 0.0)
    h.setOptionValue("mip_feasibility_tolerance", 1e-9)
    h.setOptionValue("primal_feasibility_tolerance", 1e-9)
    stock, lengths = case["stock"], case["lengths"]
    fins = [max(0.0, row["length_sixteenths"] * SIXTEENTH_M - case["bare_per_piece_m"]) for row in stock]
    number, finned, inner = {}, [], []
    for r, room in enumerate(case["rooms"]):
        terms = []
        for s, run in enumerate(room["runs"]):
            free = run["free_sixteenths"]
            for k, row in enumerate(stock):
                most = free // row["length_sixteenths"]
                cents = row["price_cents"] + case["joint_cents"]
                number[r, s, k] = h.addIntegral(lb=0, ub=most, obj=cents)
                terms.append((fins[k], number[r, s, k]))
            opening = 0 if run["fixed_pieces"] else case["joint_cents"] + case["run_cents"]
            is_open = h.addBinary(obj=opening + (INNER_CENTS if run["is_inner"] else 0))
            if run["is_inner"]:
                inner.append(is_open)
            taken = sum(row["length_sixteenths"] * number[r, s, k] for k, row in enumerate(stock))
            h.addConstr(taken <= free * is_open)
        finned.append(terms)
    for k, row in enumerate(stock):
        if row["available"] is not None:
            h.addConstr(sum(x for key, x in number.items() if key[2] == k) <= row["available"])
    taken = [h.addBinary() for _ in lengths]
    after = {}
    for place, length in enumerate(lengths):
        after.setdefault((length["before"], length["room"]), []).append(place)
    for (before, room), places in after.items():
        h.addConstr(sum(taken[p] for p in places) == (1 if before is None else taken[before]))
    last = len(case["rooms"]) - 1
    for place, length in enumerate(lengths):
        # What nothing can follow is a dead end.
        if length["room"] < last and (place, length["room"] + 1) not in after:
            h.addConstr(taken[place] <= 0)
    for r, room in enumerate(case["rooms"]):
        wanted = sum(length["finned_m"] * taken[p] for p, length in enumerate(lengths) if length["room"] == r)
        given = sum(m * x for m, x in finned[r]) + room["fixed_finned_m"]
        h.addConstr(given - wanted <= 1e-6)
        h.addConstr(given - wanted >= -1e-6)
    before = time.perf_counter()
    h.run()
    seconds = time.perf_counter() - before
    if h.getModelStatus() != highspy.HighsModelStatus.kOptimal:
        return None, seconds
    value = round(h.getInfo().objective_function_value)
    return value % INNER_CENTS, seconds


def cases():
    """Each file's circuits; `cargo xtask solve JOB --choice` writes all of a job in a list."""
    for name in sys.argv[1:]:
        with open(name) as f:
            whole = json.load(f)
        for nth, case in enumerate(whole if isinstance(whole, list) else [whole], 1):
            yield "%s %d" % (name, nth), case


def main():
    for name, case in cases():
        cents, seconds = solve(case)
        known = case.get("cost_cents")
        print("%s: %d rooms, %d lengths, HiGHS %s cents in %.2f s, engine %s" % (
            name, len(case["rooms"]), len(case["lengths"]), cents, seconds, known))
        if known is not None and known != cents:
            sys.exit("they differ")


main()
