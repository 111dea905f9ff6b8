"""The house of v2-fixture.json worked by hand, independently of the engine.

python v2_fixture.py    prints each room's load and each space's temperature; suite/unheated.rs
holds the engine to these numbers.

Transmission by EN 12831-1; walls and floors from layers by ISO 6946, combined method; ground by ISO
13370, as read in public implementations; leakage by the basic model of the ASHRAE Handbook of
Fundamentals, coefficients from memory. Lengths in feet as typed, everything else in SI.
"""
import math

FT, INCH = 0.3048, 0.0254
CFM = FT**3 / 60
US_U = 1055.05585262 / 3600 / FT**2 * 9 / 5
US_R = 1 / US_U


def kelvin(fahrenheit):
    return (fahrenheit + 459.67) * 5 / 9


# --- U-values ---------------------------------------------------------------------------------
def combined(layers, inside, outside, framing=0.0):
    """Layers are resistances, or (cavity, wood) over the same depth."""
    films = inside + outside
    paths = [films + sum(l[k] if isinstance(l, tuple) else l for l in layers) for k in (0, 1)]
    side = lambda a, b: 1 / ((1 - framing) / a + framing / b)
    lower = films + sum(side(*l) if isinstance(l, tuple) else l for l in layers)
    upper = side(*paths)
    return 2 / (upper + lower)


DRYWALL, WOOD = 0.0127 / 0.25, 0.13
SIDING, SHEATHING, BOARDS = 0.0127 / WOOD, 0.0127 / 0.13, 0.019 / WOOD
STUD_4, STUD_6, JOIST = 0.0889, 0.1397, 0.235
wood = lambda depth: depth / WOOD
batt = lambda r, depth: (r * US_R, wood(depth))
wall = lambda layers, framing=0.23: combined(layers, 0.13, 0.04, framing)
U = {
    # 3 1/2 in of fiberglass batt at an inch, 11 mm of OSB, R-5, siding of 0.107.
    "our walls": wall([0.5 * INCH / 0.25, (3.5 * 3.2 * US_R, wood(3.5 * INCH)), 0.011 / 0.13,
                       5 * US_R, 0.107]),
    "raised roof": 0.05 * US_U,
    # 8 in of concrete, 20 mm of air and R-13 in 3.5 in between 17 % of framing, drywall.
    "furred wall": wall([8 * INCH / 2.0, (0.18, wood(0.020)), batt(13, 3.5 * INCH), DRYWALL], 0.17),
    "own slab": 1 / (1.3 * US_R),
    "frame r13": wall([SIDING, SHEATHING, batt(13, STUD_4), DRYWALL]),
    "frame empty": wall([SIDING, SHEATHING, (0.18, wood(STUD_4)), DRYWALL]),
    "bare studs": wall([SIDING, SHEATHING]),
    "r-15": 1 / (15 * US_R),
    "partition": combined([DRYWALL, (0.18, wood(STUD_4)), DRYWALL], 0.13, 0.13, 0.23),
    "garage wall": combined([DRYWALL, batt(11, STUD_4), DRYWALL], 0.13, 0.13, 0.23),
    "floor r11": combined([BOARDS, SHEATHING, batt(11, JOIST)], 0.17, 0.17, 0.10),
    "attic r30": combined([DRYWALL, batt(19, STUD_6), 11 * US_R], 0.10, 0.10, 0.07),
    "roof deck": combined([SHEATHING, 0.077], 0.10, 0.04),
    "flat roof": combined([DRYWALL, (0.16, wood(JOIST)), BOARDS, 20 * US_R, 0.0095 / 0.23],
                          0.10, 0.04, 0.10),
    "slab": combined([0.102 / 2.0], 0.17, 0.04),
    "slab r5": combined([0.102 / 2.0, 5 * US_R], 0.17, 0.04),
    "block": wall([0.20], 0),
    "stone": wall([0.457 / 1.7], 0),
}
for name, value in {"metal double": 0.80, "metal door": 0.60, "low-e": 0.30, "patio": 0.55,
                    "door r5": 0.20, "0.34": 0.34, "skylight": 0.50, "wood double": 0.55,
                    "garage door": 1.20}.items():
    U[name] = value * US_U


def through(u, area, *openings):
    """W/K of a surface with its openings; each of these (u, area)."""
    taken = sum(a for _, a in openings)
    return U[u] * (area - taken) + sum(U[v] * a for v, a in openings)


# --- climate ----------------------------------------------------------------------------------
OUT, MEAN, COLDEST = kelvin(-1), kelvin(47), kelvin(24)
WIND = 11 * 0.44704
PRESSURE = 101325 * (1 - 2.25577e-5 * 152) ** 5.25588
heat_of = lambda t: PRESSURE / (287.055 * t) * 1006
INSIDE = {"family": kelvin(66), "living": kelvin(69), "sun": kelvin(69), "bed": kelvin(69)}

# --- sizes, m2 and m3 -------------------------------------------------------------------------
HIGH = (8 + 2 / 12) * FT
LOW = (7 + 4 / 12) * FT
FLOOR = {
    "family": 18 * FT * 4.2,
    "living": 20 * FT * 16 * FT - 7 * FT * 1.5,
    "sun": 12 * FT * 10 * FT,
    "bed": 15 * FT * 12 * FT,
}
HEIGHT = {"family": LOW, "living": 2.6, "sun": HIGH, "bed": HIGH}
VOLUME = {room: FLOOR[room] * HEIGHT[room] for room in FLOOR}
NORTH_Z, WEST_Z = 5.5 * FT, LOW - 2 * FT
GUESSED_DOOR = 0.9144 * 2.032

# --- air --------------------------------------------------------------------------------------
# 50 Pa to 4 Pa, air of 20 C at sea level; a closed damper of 0.6 m2 at 69 cm2 a m2.
leak = 1450 * CFM * (4 / 50) ** 0.66 * math.sqrt(101325 / (287.055 * 293.15) / 8) + 0.6 * 0.0069
warm = sum(VOLUME[r] * INSIDE[r] for r in VOLUME) / sum(VOLUME.values())
cm2 = leak * 1e4
infiltration = cm2 * math.sqrt(0.000290 * (warm - OUT) + 0.000325 * WIND**2) / 1000
supply, exhaust = 60 * CFM, 0.040
leaked = math.hypot(infiltration, supply - exhaust)
balanced = min(supply, exhaust)
SHOWN = {
    "family": 18 * FT * (LOW - NORTH_Z) + 4.2 * (LOW - WEST_Z) + 18 * FT * LOW,
    "living": (20 + 16 + 12) * FT * 2.6 + FLOOR["living"],
    "sun": (10 + 12) * FT * HIGH + 140 * FT**2,
    "bed": (15 + 12) * FT * HIGH + FLOOR["bed"],
}
LEAST = {"living": 0.9}
air = {}
for room in FLOOR:
    share = leaked * SHOWN[room] / sum(SHOWN.values())
    least = LEAST.get(room, 0) * VOLUME[room] / 3600
    fans = balanced * VOLUME[room] / sum(VOLUME.values()) * (1 - 0.7)
    air[room] = (max(share, least) + fans) * heat_of(INSIDE[room])
print(f"leakage area {cm2:.2f} cm2, leaks in {infiltration * 1000:.3f} L/s, with fans "
      f"{leaked * 1000:.3f} L/s, balanced {balanced * 1000:.3f} L/s")

# --- ground: clay -----------------------------------------------------------------------------
LAMBDA, DELTA, W = 1.5, 2.2, 10 * INCH
FLOOR_FILMS, WALL_FILMS = 0.17 + 0.04, 0.13 + 0.04
swing = lambda d: 0.37 * LAMBDA * math.log(DELTA / d + 1)


class Plot:
    def __init__(self, u, area, edges):
        """Edges are (length, depth)."""
        self.area = area
        self.perimeter = sum(length for length, _ in edges)
        self.depth = sum(length * z for length, z in edges) / self.perimeter
        self.d = W + LAMBDA * (1 / U[u] - FLOOR_FILMS + FLOOR_FILMS)

    def floor(self):
        b = self.area / (0.5 * self.perimeter)
        d = self.d + self.depth / 2
        if d < b:
            return 2 * LAMBDA / (math.pi * b + d) * math.log(math.pi * b / d + 1) * self.area
        return LAMBDA / (0.457 * b + d) * self.area

    def edge(self):
        """2 ft 6 in down, R-7.5 and 40 mm thick: what it saves, and the swing with it, a metre."""
        reach = 2 * 2.5 * FT
        better = self.d + LAMBDA * (7.5 * US_R - 0.040 / LAMBDA)
        psi = -LAMBDA / math.pi * (math.log(reach / self.d + 1) - math.log(reach / better + 1))
        e = math.exp(-reach / DELTA)
        return psi, (1 - e) * swing(better) + e * swing(self.d)

    def wall(self, u, length, z):
        """Steady and swinging W/K of a wall that stands so deep."""
        d_w = LAMBDA / U[u]
        d = min(self.d, d_w)
        per_area = 2 * LAMBDA / (math.pi * z) * (1 + 0.5 * d / (d + z)) * math.log(z / d_w + 1)
        e = math.exp(-z / DELTA)
        return per_area * length * z, (e * swing(self.d) + 2 * (1 - e) * swing(d_w)) * length


def slab(plot):
    psi, swinging = plot.edge()
    return plot.floor() + psi * plot.perimeter, swinging * plot.perimeter


def walled(plot, walls):
    both = [plot.wall(*w) for w in walls]
    return plot.floor() + sum(s for s, _ in both), sum(p for _, p in both)


ground = {
    "family": walled(Plot("own slab", FLOOR["family"], [(18 * FT, NORTH_Z), (4.2, WEST_Z)]),
                     [("furred wall", 18 * FT, NORTH_Z), ("block", 4.2, WEST_Z)]),
    "sun": slab(Plot("slab", FLOOR["sun"], [(32 * FT, 0)])),
    "garage": slab(Plot("slab", 22 * 12 * FT**2, [(12 * FT, 0)])),
    "crawl": walled(Plot("slab r5", FLOOR["living"], [(20 * FT, FT), (16 * FT, FT)]),
                    [("block", 20 * FT, FT), ("block", 16 * FT, FT)]),
    "cellar": walled(Plot("slab", 18 * 6 * FT**2, [(24 * FT, 6 * FT)]),
                     [("stone", 24 * FT, 6 * FT)]),
}


# --- unheated spaces --------------------------------------------------------------------------
def balance(name, to_room, inside, outdoors, volume, changes, vents=0.0):
    """Where what comes from the room and the ground goes outdoors."""
    outdoors += (changes * volume / 3600 + vents) * heat_of(273.15)
    steady, swinging = ground.get(name, (0, 0))
    gain = to_room * inside + outdoors * OUT + steady * MEAN - swinging * (MEAN - COLDEST)
    t = gain / (to_room + outdoors + steady)
    print(f"{name:8} {t:.6f} K, {t * 9 / 5 - 459.67:.3f} F")
    return t


to_attic = through("attic r30", FLOOR["bed"])
to_garage = through("garage wall", 12 * FT * 2.6, ("door r5", GUESSED_DOOR))
to_crawl = through("floor r11", FLOOR["living"])
to_cellar = through("partition", 18 * FT * LOW, ("metal door", GUESSED_DOOR))
ROOF = 1.118 * 180 * FT**2
SPACES = {
    "attic": balance("attic", to_attic, INSIDE["bed"],
                     U["roof deck"] * ROOF + U["bare studs"] * 60 * FT**2, 180 * 4.5 * FT**3, 4),
    "garage": balance("garage", to_garage, INSIDE["living"],
                      through("frame empty", 12 * FT * HIGH, ("garage door", 63 * FT**2))
                      + through("flat roof", 264 * FT**2), 264 * FT**2 * HIGH, 1.5),
    # Vents of 240 in2 in a light shelter, wind shielding 0.05: a flow of 0.59 v f_w (ISO 13370).
    "crawl": balance("crawl", to_crawl, INSIDE["living"],
                     U["block"] * 36 * 2 * FT**2, FLOOR["living"] * 3 * FT, 1,
                     0.59 * WIND * 0.05 * 240 * INCH**2),
    "cellar": balance("cellar", to_cellar, INSIDE["family"], U["stone"] * 24 * FT**2,
                      18 * 6 * 7 * FT**3, 0.3),
    "porch": 277.15,
}

# --- rooms ------------------------------------------------------------------------------------
sky = {
    "family": through("furred wall", 18 * FT * (LOW - NORTH_Z), ("metal double", 4.5 * FT**2))
    + through("block", 4.2 * (LOW - WEST_Z)),
    "living": through("our walls", 20 * FT * 2.6, ("low-e", 27 * FT**2), ("patio", 40 * FT**2))
    + through("our walls", 16 * FT * 2.6),
    "sun": through("r-15", 10 * FT * HIGH, ("0.34", 35 * FT**2))
    + through("raised roof", 140 * FT**2, ("skylight", 8 * FT**2)),
    "bed": through("our walls", 15 * FT * HIGH, ("wood double", 12 * FT**2)),
}
beside = {
    "family": [(to_cellar, SPACES["cellar"])],
    "living": [(to_garage, SPACES["garage"]), (to_crawl, SPACES["crawl"])],
    "sun": [(through("frame r13", 12 * FT * HIGH), SPACES["porch"])],
    "bed": [(through("our walls", 12 * FT * HIGH), kelvin(52)), (to_attic, SPACES["attic"])],
}
total = 0.0
for room in FLOOR:
    t = INSIDE[room]
    steady, swinging = ground.get(room, (0, 0))
    load = (sky[room] + air[room]) * (t - OUT) + sum(g * (t - beyond) for g, beyond in beside[room])
    load += steady * (t - MEAN) + swinging * (MEAN - COLDEST)
    total += load
    print(f"{room:8} {load:.4f} W, of it air {air[room] * (t - OUT):.4f}")
print(f"house    {total:.4f} W")
