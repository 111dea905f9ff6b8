#!/usr/bin/env python3
"""Ground heat loss by ISO 13370:2017's formulas, written out plainly with Python's own math only. JSON on stdout.

usage: i_ground_iso13370.py SEED > i_ground_iso13370.json
The formulas are as read in two public implementations numbered after the standard, not in the standard itself.
Every logarithm is taken as ln(x + 1), as printed, not by log1p. Each case has whole numbers of millimetres and
hundredths, so that it can be worked by hand. SI throughout: m, m2, W/(m K), m2 K/W, W/(m2 K), W/K.
Kinds: slab; edge (a slab with a strip of edge insulation); basement (heated); suspended; unheated (basement).
"""
import json
import random
import sys
from math import exp, log, pi

R_SE = 0.04
SOILS = {"clay-or-silt": (1.5, 2.2), "sand-or-gravel": (2.0, 3.2), "rock": (3.5, 4.2)}

rng = random.Random(int(sys.argv[1]))


def hundredths(low, high):
    return rng.randint(round(100 * low), round(100 * high)) / 100


def slab_u(lam, b, d):
    if d < b:
        return 2 * lam / (pi * b + d) * log(pi * b / d + 1)
    return lam / (0.457 * b + d)


def common():
    soil = rng.choice(list(SOILS))
    lam, delta = SOILS[soil]
    area = hundredths(15, 300)
    # From a square with all sides exposed to a room with one wall outside, and long narrow wings.
    perimeter = round(rng.uniform(0.8, 6.0) * area ** 0.5, 2)
    return {
        "soil": soil,
        "conductivity_w_mk": lam,
        "periodic_depth_m": delta,
        "area_m2": area,
        "perimeter_m": perimeter,
        "wall_thickness_m": hundredths(0.10, 0.60),
        "floor_resistance_m2k_w": rng.choice([0.0, hundredths(0, 1), hundredths(1, 7)]),
    }


def floor_thickness(c):
    return c["wall_thickness_m"] + c["conductivity_w_mk"] * (0.17 + c["floor_resistance_m2k_w"] + R_SE)


def slab():
    c = common()
    lam, delta = c["conductivity_w_mk"], c["periodic_depth_m"]
    b = c["area_m2"] / (0.5 * c["perimeter_m"])
    d_f = floor_thickness(c)
    return c, {
        "characteristic_m": b,
        "floor_thickness_m": d_f,
        "floor_u_w_m2k": slab_u(lam, b, d_f),
        "periodic_w_k": 0.37 * c["perimeter_m"] * lam * log(delta / d_f + 1),
    }


def edge():
    c = common()
    # An uninsulated or thinly insulated slab: edge insulation on a well insulated one is not built.
    c["floor_resistance_m2k_w"] = hundredths(0, 1.5)
    c["placement"] = rng.choice(["horizontal", "vertical"])
    c["edge_depth_m"] = hundredths(0.2, 1.5)
    c["edge_thickness_m"] = hundredths(0.02, 0.20)
    c["edge_resistance_m2k_w"] = hundredths(0.5, 5.0)
    lam, delta, p = c["conductivity_w_mk"], c["periodic_depth_m"], c["perimeter_m"]
    b = c["area_m2"] / (0.5 * p)
    d_f = floor_thickness(c)
    added = lam * (c["edge_resistance_m2k_w"] - c["edge_thickness_m"] / lam)
    reach = c["edge_depth_m"] if c["placement"] == "horizontal" else 2 * c["edge_depth_m"]
    psi = -(lam / pi) * (log(reach / d_f + 1) - log(reach / (d_f + added) + 1))
    e = exp(-reach / delta)
    periodic = 0.37 * p * lam * ((1 - e) * log(delta / (d_f + added) + 1) + e * log(delta / d_f + 1))
    return c, {
        "psi_w_mk": psi,
        "floor_u_w_m2k": slab_u(lam, b, d_f) + 2 * psi / b,
        "periodic_w_k": periodic,
    }


def basement_u(c):
    """U of the floor and of the wall, and the two thicknesses."""
    lam, z = c["conductivity_w_mk"], c["depth_m"]
    b = c["area_m2"] / (0.5 * c["perimeter_m"])
    d_f = floor_thickness(c)
    d_w = lam * (0.13 + c["wall_resistance_m2k_w"] + R_SE)
    floor = slab_u(lam, b, d_f + z / 2)
    d = d_w if d_w < d_f else d_f
    wall = 2 * lam / (pi * z) * (1 + 0.5 * d / (d + z)) * log(z / d_w + 1)
    return floor, wall, d_f, d_w


def basement():
    c = common()
    c["depth_m"] = hundredths(0.3, 3.0)
    c["wall_resistance_m2k_w"] = rng.choice([hundredths(0, 0.4), hundredths(0.4, 5.0)])
    floor, wall, d_f, d_w = basement_u(c)
    lam, delta, p = c["conductivity_w_mk"], c["periodic_depth_m"], c["perimeter_m"]
    e = exp(-c["depth_m"] / delta)
    periodic = 0.37 * p * lam * (e * log(delta / d_f + 1) + 2 * (1 - e) * log(delta / d_w + 1))
    return c, {
        "floor_u_w_m2k": floor,
        "wall_u_w_m2k": wall,
        "wall_thickness_equivalent_m": d_w,
        "periodic_w_k": periodic,
    }


def suspended():
    c = common()
    c["floor_resistance_m2k_w"] = rng.choice([0.0, hundredths(0, 2)])  # on the ground under the floor
    c["height_m"] = hundredths(0.1, 1.2)
    c["wall_u_w_m2k"] = hundredths(0.2, 3.0)
    c["vent_m2_m"] = rng.randint(0, 60) / 10000
    c["wind_m_s"] = hundredths(0, 8)
    c["shield"], f_w = rng.choice([("sheltered", 0.02), ("average", 0.05), ("exposed", 0.10)])
    c["suspended_u_w_m2k"] = hundredths(0.15, 3.0)
    lam, delta, p = c["conductivity_w_mk"], c["periodic_depth_m"], c["perimeter_m"]
    b = c["area_m2"] / (0.5 * p)
    d_g = floor_thickness(c)
    u_f = c["suspended_u_w_m2k"]
    u_g = 2 * lam / (pi * b + d_g) * log(pi * b / d_g + 1)
    u_x = 2 * c["height_m"] * c["wall_u_w_m2k"] / b + 1450 * c["vent_m2_m"] * c["wind_m_s"] * f_w / b
    ground = 0.37 * p * lam * log(delta / d_g + 1)
    return c, {
        "ground_u_w_m2k": u_g,
        "vented_u_w_m2k": u_x,
        "floor_u_w_m2k": 1 / (1 / u_f + 1 / (u_g + u_x)),
        "ground_periodic_w_k": ground,
        "periodic_w_k": u_f * (ground + u_x * c["area_m2"]) / (lam / delta + u_x + u_f),
    }


def unheated():
    c = common()
    c["depth_m"] = hundredths(0.3, 3.0)
    c["wall_resistance_m2k_w"] = hundredths(0, 2)
    c["height_m"] = hundredths(0, 1.2)
    c["wall_u_w_m2k"] = hundredths(0.2, 3.0)
    c["air_changes_per_h"] = hundredths(0, 2)
    c["volume_m3"] = round(c["area_m2"] * (c["depth_m"] + c["height_m"]), 2)
    c["above_u_w_m2k"] = hundredths(0.15, 3.0)
    floor, wall, d_f, _ = basement_u(c)
    lam, delta, p, a = c["conductivity_w_mk"], c["periodic_depth_m"], c["perimeter_m"], c["area_m2"]
    z, u_f = c["depth_m"], c["above_u_w_m2k"]
    e = exp(-z / delta)
    open_air = c["height_m"] * p * c["wall_u_w_m2k"] + 0.33 * c["air_changes_per_h"] * c["volume_m3"]
    top = a * u_f * (0.37 * p * lam * (2 - e) * log(delta / d_f + 1) + open_air)
    return c, {
        "floor_u_w_m2k": floor,
        "wall_u_w_m2k": wall,
        "periodic_w_k": top / ((a + z * p) * lam / delta + open_air + a * u_f),
    }


KINDS = [(slab, 40), (edge, 50), (basement, 50), (suspended, 40), (unheated, 30)]
cases = []
for kind, count in KINDS:
    for i in range(count):
        inputs, expected = kind()
        case = {"id": "%s-%02d" % (kind.__name__, i + 1), "kind": kind.__name__}
        cases.append({**case, "inputs": inputs, "expected": expected})
lines = ",\n".join("  " + json.dumps(case) for case in cases)
print('{\n "description": %s,\n "cases": [\n%s\n ]\n}' % (json.dumps(__doc__.splitlines()[0]), lines))
