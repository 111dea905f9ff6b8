"""A house of one loop at rest and in time, by scipy.

    cargo xtask solve tests/jobs/four-rooms.json --nodes > four-rooms.json
    python gen_j_house_in_time.py four-rooms.json ... > ../j_house_in_time.json

Each file is what --nodes prints: conductances, heat stored, the loop. Nothing of the engine is used but
those numbers. The loop is marched here by the rating's formula, element by element, with the specific
heat of water interpolated in a1_water_properties.csv (CoolProp's IAPWS-95); rest is found by
scipy.optimize.root, the night by scipy.integrate.solve_ivp (Radau, relative 1e-9), a piece for every
state of the thermostat, which is exact: its share of the time is what keeps its room from moving.
"""
import csv
import json
import pathlib
import sys

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import root

HERE = pathlib.Path(__file__).parent
WATER = [(float(r["T_C"]) + 273.15, float(r["cp_cp95"]))
         for r in csv.DictReader(open(HERE.parent / "a1_water_properties.csv"))]
SETBACK_K, SETBACK_H, DAY_H, EVERY_S = 8 / 1.8, 8.0, 24.0, 600.0


def specific_heat(kelvin):
    return np.interp(kelvin, *zip(*WATER))


def element_out(element, inlet, air, length, flow):
    """Outlet of an element: theta^(1-n) grows in proportion to the length."""
    if inlet <= air or length <= 0:
        return inlet
    n = element["exponent"]
    per_metre = (element["output_w_m"] * element["water_share"]
                 * (flow / element["flow_kg_s"]) ** 0.04
                 / (element["water_k"] - element["air_k"]) ** n)
    out = inlet
    for _ in range(50):
        c = specific_heat((inlet + out) / 2)
        theta = ((inlet - air) ** (1 - n) + (n - 1) * per_metre * length / (flow * c)) ** (1 / (1 - n))
        new = air + theta
        if abs(new - out) < 1e-12:
            break
        out = new
    return out


def loop(case, rooms):
    """Heat to each room while the water runs, W."""
    flow, water = case["mass_flow_kg_s"], case["supply_k"]
    heat = np.zeros(len(rooms))
    for s in case["stretches"]:
        air = s["surroundings_k"] if s["room"] is None else rooms[s["room"]]
        if s.get("element"):
            out = element_out(s["element"], water, air, s["length_m"], flow)
        else:
            out = water
            for _ in range(20):
                c = specific_heat((water + out) / 2)
                out = air + (water - air) * np.exp(-s["pipe_w_mk"] * s["length_m"] / (flow * c))
        given = flow * specific_heat((water + out) / 2) * (water - out)
        if s["room"] is not None:
            e = s.get("element")
            heat[s["room"]] += given * (e["room_share"] / e["water_share"] if e else 1.0)
        water = out
    return heat


def house(case):
    """Matrix and right side of the losses, rooms first."""
    day = case["day"]
    a = np.diag(day["own_w_k"]).astype(float)
    for i, j, g in day["between"]:
        a[i, i] += g
        a[j, j] += g
        a[i, j] -= g
        a[j, i] -= g
    return a, np.array(day["source_w"]) + np.array(case["gains_w"])


def free(case):
    return np.array([held is None for held in case["day"]["held_k"]])


def rest(case):
    """The temperatures and the thermostat's share at rest."""
    a, b = house(case)
    rooms, holder = case["day"]["rooms"], case["thermostat"]
    meant = case["set_k"][holder]
    held, moves = case["day"]["held_k"], free(case)

    def unpack(x, throughout):
        t = np.array([x[i] if moves[i] else held[i] for i in range(len(held))])
        share = 1.0
        if not throughout:
            share, t[holder] = x[holder], meant
        return t, share

    def off(x, throughout):
        t, share = unpack(x, throughout)
        q = np.zeros(len(t))
        q[:rooms] = share * loop(case, t[:rooms])
        return np.where(moves, b - a @ t + q, x - 0.0)

    start = np.array(case["set_k"] + [280.0] * (len(held) - rooms))
    start[~moves] = 0.0
    for throughout in (False, True):
        x0 = start.copy()
        if not throughout:
            x0[holder] = 0.7
        found = root(off, x0, args=(throughout,), tol=1e-13)
        t, share = unpack(found.x, throughout)
        if np.abs(off(found.x, throughout)).max() < 1e-5 and 0 <= share <= 1:
            return t, share
    raise SystemExit("no rest found")


def night(case):
    """Temperatures every ten minutes from turning the thermostat down."""
    a, b = house(case)
    c = np.array(case["capacities_j_k"])
    rooms, holder = case["day"]["rooms"], case["thermostat"]
    moves = free(case)
    usual = case["set_k"][holder]

    def rise(t, mode):
        q = np.zeros(len(t))
        share = {"off": 0.0, "full": 1.0}.get(mode)
        net = b - a @ t
        if mode != "off":
            q[:rooms] = loop(case, t[:rooms])
        if mode == "hold":
            share = -net[holder] / q[holder]
        rate = (net + share * q) / c
        rate[~moves] = 0.0
        if mode == "hold":
            rate[holder] = 0.0
        return rate, share

    def event(f, direction):
        f.terminal, f.direction = True, direction
        return f

    t, _ = rest(case)
    now, out = 0.0, [t.copy()]
    for end, meant in ((SETBACK_H * 3600, usual - SETBACK_K), (DAY_H * 3600, usual)):
        mode = "off" if t[holder] > meant else "full"
        while now < end - 1e-6:
            if mode == "off":
                events = [event(lambda s, y: y[holder] - meant, -1)]
            elif mode == "full":
                events = [event(lambda s, y: y[holder] - meant, 1)]
            else:
                events = [event(lambda s, y: rise(y, "hold")[1] - 1.0, 1),
                          event(lambda s, y: rise(y, "hold")[1], -1)]
            at = np.arange(len(out), int(end / EVERY_S) + 1) * EVERY_S
            run = solve_ivp(lambda s, y: rise(y, mode)[0], (now, end), t, "Radau", t_eval=at[at > now],
                            events=events, rtol=1e-9, atol=1e-9, max_step=900.0, dense_output=True)
            assert run.success, run.message
            out += [y.copy() for y in run.y.T]
            if run.status == 0:
                t, now = run.sol(end), end
                break
            # The samples end before the event.
            now = max(times[-1] for times in run.t_events if times.size)
            t = run.sol(now)
            if mode == "hold":
                mode = "full" if run.t_events[0].size else "off"
            else:
                t[holder] = meant
                share = rise(t, "hold")[1]
                mode = "hold" if 0 <= share <= 1 else ("full" if share > 1 else "off")
    return out


def case_of(path):
    case = json.load(open(path))
    t, share = rest(case)
    rooms = case["day"]["rooms"]
    samples = night(case)
    assert len(samples) == int(DAY_H * 3600 / EVERY_S) + 1, len(samples)
    return {
        "job": pathlib.Path(path).stem,
        "nodes": case,
        "rest_k": [round(x, 6) for x in t],
        "rest_share": round(share, 8),
        "night_k": [[round(x, 5) for x in s] for s in samples],
    }


json.dump({"cases": [case_of(p) for p in sys.argv[1:]]}, sys.stdout, indent=1)
print()
