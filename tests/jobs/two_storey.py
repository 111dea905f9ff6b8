"""../../public/demo/two-storey.json worked by hand, independently of the engine.

python two_storey.py > two-storey.md    suite/two_storey.rs holds the engine to these numbers.

Only what is typed is read from the job: measures, kinds, what lies behind, names of assemblies, the
station's numbers. What each assembly is made of, what a blank means and every formula are written
anew, here and in two_storey_assemblies.py, from the sources named beside them. Calculated in SI,
printed in Btu/h, feet and °F.
"""
import json
import math
import pathlib
import re

from two_storey_assemblies import ASSEMBLIES, FT, BTUH, LABELS, US_R, US_U, combined, r_layers, u_of

HERE = pathlib.Path(__file__).parent
JOB = json.loads((HERE / "../../public/demo/two-storey.json").read_text())["job"]

INCH = 0.0254
US_G = BTUH * 9 / 5  # W/K in a Btu/h F
CFM = FT**3 / 60


def kelvin(f):
    return (f + 459.67) * 5 / 9


def fahrenheit(k):
    return k * 9 / 5 - 459.67


# --- what is typed ----------------------------------------------------------------------------
def number(text):
    """14, 14', 2 1/2, 14' 6", in the unit of the first figure."""
    total, rest = 0.0, text
    feet = re.match(r"([\d.]+)'\s*", rest)
    if feet:
        total, rest = float(feet[1]), rest[feet.end():].rstrip('"')
    parts = [float(p.split("/")[0]) / float(p.split("/")[1]) if "/" in p else float(p)
             for p in rest.split()]
    return total + sum(parts) / (12 if feet else 1)


UNITS = {"Foot": FT, "InchSmall": INCH, "SquareInch": INCH**2, "SquareFoot": FT**2}


def typed(thing, name, blank=None):
    entry = thing["entries"].get(name)
    if entry is None:
        return blank
    if entry["unit"] == "Fahrenheit":
        return kelvin(number(entry["text"]))
    return number(entry["text"]) * UNITS[entry["unit"]]


ROOMS, SPACES = JOB["rooms"], JOB["spaces"]
HOUSE = {"entries": JOB["house"]}
STATION = JOB["station"]
OUT, MEAN, COLDEST = (kelvin(STATION[key]) for key in ("t99_f", "mean_f", "coldest_month_f"))
WIND = STATION["wind_mph"] * 0.44704
INDOORS = typed(HOUSE, "indoors")
CEILING = typed(HOUSE, "ceiling-height")

# --- sizes ---------------------------------------------------------------------------------------
def height(room):
    return typed(room, "height", CEILING)


def floor_area(room):
    if "floor-length" in room["entries"]:
        return typed(room, "floor-length") * typed(room, "floor-width")
    # A space whose floor is not typed is as large as the ceilings that lead to it.
    return sum(floor_area(other) for other in ROOMS for s in other["surfaces"]
               if s["behind"] == {"room": room["id"]} and s["kind"] != "wall")


def volume(room):
    return floor_area(room) * height(room)


def gross(room, s):
    if "area" in s["entries"]:
        return typed(s, "area")
    if s["kind"] == "wall":
        return typed(s, "length") * height(room)
    # A roof that rises 6 in 12.
    return floor_area(room) * (1.118 if room["used"] == "attic" else 1)


def opening_area(o):
    return typed(o, "width") * typed(o, "height")


def buried(room, s):
    if s["behind"] != "ground":
        return 0.0
    return typed(s, "length") * typed(s, "depth") if s["kind"] == "wall" else gross(room, s)


# --- the ground: ISO 13370 ------------------------------------------------------------------------
LAMBDA, DELTA = {"clay-or-silt": (1.5, 2.2), "sand-or-gravel": (2.0, 3.2),
                 "rock": (3.5, 4.2)}[JOB["ground"]["soil"]]
W = typed(JOB["ground"], "wall-thickness")


def earth(space):
    """Rows to the ground, and the lines of working: area, conductance, is it the swing."""
    floor = next(s for s in space["surfaces"] if s["kind"] == "floor")
    walls = [s for s in space["surfaces"] if s["kind"] == "wall"]
    depth = {s["id"]: typed(s, "depth") if s["behind"] == "ground" else 0.0 for s in walls}
    along = {s["id"]: typed(s, "length") for s in walls}
    area, perimeter = floor_area(space), sum(along.values())
    z = sum(along[s] * depth[s] for s in along) / perimeter
    b = area / (0.5 * perimeter)
    d_f = W + LAMBDA * (0.17 + r_layers(floor["u_value"]["listed"]) + 0.04)
    d = d_f + z / 2
    if d < b:
        u = 2 * LAMBDA / (math.pi * b + d) * math.log(math.pi * b / d + 1)
    else:
        u = LAMBDA / (0.457 * b + d)
    notes = [f"A {area / FT**2:.1f} ft², P {perimeter / FT:.1f} ft, B = A/(P/2) = {b:.5f} m, "
             f"w {W:.5f} m, d_f = {d_f:.5f} m, mean depth z = {z:.5f} m, d_f + z/2 = {d:.5f} m: "
             f"U {u:.6f} W/m²K."]
    rows = [(f"{floor['id']} ground", "floor", area, u * area, False)]
    shallow = sum(along[s] for s in along if depth[s] == 0)
    if shallow:
        h = 0.37 * shallow * LAMBDA * math.log(DELTA / d_f + 1)
        notes.append(f"Swing along {shallow / FT:.1f} ft: {h:.5f} W/K.")
        rows.append((f"{floor['id']} swing", "edge", None, h, True))
    for s in walls:
        z = depth[s["id"]]
        if z == 0:
            continue
        d_w = LAMBDA * (0.13 + r_layers(s["u_value"]["listed"]) + 0.04)
        lesser = min(d_w, d_f)
        u = 2 * LAMBDA / (math.pi * z) * (1 + 0.5 * lesser / (lesser + z)) * math.log(z / d_w + 1)
        e = math.exp(-z / DELTA)
        h = 0.37 * along[s["id"]] * LAMBDA * (
            e * math.log(DELTA / d_f + 1) + 2 * (1 - e) * math.log(DELTA / d_w + 1))
        notes.append(f"Wall {s['name']}, z {z:.5f} m, d_w {d_w:.5f} m: U {u:.6f} W/m²K, swing "
                     f"{h:.5f} W/K.")
        a = along[s["id"]] * z
        rows.append((f"{s['id']} ground", f"wall {s['name']}, below", a, u * a, False))
        rows.append((f"{s['id']} swing", f"wall {s['name']}, below", None, h, True))
    return rows, notes


# --- air --------------------------------------------------------------------------------------
def rho_cp(at):
    pressure = 101325 * (1 - 2.25577e-5 * STATION["elevation_m"]) ** 5.25588
    return pressure / (287.055 * at) * 1006


def temperature(room):
    return typed(room, "temperature", INDOORS)


SPACE_IDS = {space["id"] for space in SPACES}


def exposed(room):
    """Gross area at outdoors or an unheated space."""
    return sum(gross(room, s) for s in room["surfaces"]
               if s["behind"] == "outdoors"
               or isinstance(s["behind"], dict) and s["behind"]["room"] in SPACE_IDS)


VOLUME = sum(map(volume, ROOMS))
INSIDE = sum(volume(room) * temperature(room) for room in ROOMS) / VOLUME
# Sherman and Grimsrud, two storeys, shelter class 3: (L/s)2/cm4 a kelvin and a (m/s)2.
C_S, C_W = 0.000290, 0.000231
LEAKAGE_CM2 = typed(JOB["air"], "leakage-area") * 1e4
FLOW = LEAKAGE_CM2 * math.sqrt(C_S * (INSIDE - OUT) + C_W * WIND**2) / 1000
EXPOSED = sum(map(exposed, ROOMS))
# Air changes an hour of unheated spaces where none are typed.
CHANGES = {"basement": 0.3, "garage": 1.5, "attic": 3.0}


def air(room):
    if room["used"] == "heated":
        return FLOW * exposed(room) / EXPOSED * rho_cp(temperature(room))
    return CHANGES[room["used"]] / 3600 * volume(room) * rho_cp(273.15)


# --- every path, as entered -----------------------------------------------------------------------
# (path, what, area, conductance, near, beyond): temperatures, or the id of a space to be found.
def paths(room):
    own = temperature(room) if room["used"] == "heated" else ("space", room["id"])
    for s in room["surfaces"]:
        behind = s["behind"]
        if isinstance(behind, dict):
            other = next(r for r in ROOMS + SPACES if r["id"] == behind["room"])
            beyond = temperature(other) if other["used"] == "heated" else ("space", other["id"])
        else:
            beyond = OUT
        what = f"{s['kind']} {s['name']}".strip()
        net = gross(room, s) - buried(room, s) - sum(map(opening_area, s["openings"]))
        if net > 0:
            yield (str(s["id"]), what, net, net * u_of(s["u_value"]["listed"]), own, beyond)
        for o in s["openings"]:
            a = opening_area(o)
            yield (f"{s['id']}/{o['id']}", o["kind"], a, a * u_of(o["u_value"]["listed"]), own,
                   beyond)
    if any(s["behind"] == "ground" for s in room["surfaces"]):
        for path, what, area, g, swing in earth(room)[0]:
            yield (path, what, area, g, MEAN if swing else own, COLDEST if swing else MEAN)
    yield ("air", "air", None, air(room), own, OUT)


PATHS = {room["id"]: list(paths(room)) for room in ROOMS + SPACES}


# --- the spaces: what comes in leaves again -------------------------------------------------------
def balance(space):
    """Sum of conductances, and of conductance times the temperature it leads to."""
    total, weighed, unknown = 0.0, 0.0, ("space", space["id"])
    for room in ROOMS + SPACES:
        for _, _, _, g, near, beyond in PATHS[room["id"]]:
            if room is space and near != unknown:
                weighed -= g * (near - beyond)  # the swing, a fixed loss
            elif unknown in (near, beyond):
                other = beyond if near == unknown else near
                total, weighed = total + g, weighed + g * other
    return total, weighed


FOUND = {}
for space in SPACES:
    total, weighed = balance(space)
    FOUND["space", space["id"]] = weighed / total


# --- the page -----------------------------------------------------------------------------------
def at(t):
    return FOUND.get(t, t)


def name(thing):
    return thing["name"] or thing["used"]


def rows_of(room):
    """Every path of a room as its own loss, those entered by its neighbours too."""
    out = [(path, what, area, g, at(near), at(beyond))
           for path, what, area, g, near, beyond in PATHS[room["id"]]]
    for other in ROOMS + SPACES:
        for path, what, area, g, near, beyond in PATHS[other["id"]]:
            s = next((s for s in other["surfaces"] if path.split("/")[0] == str(s["id"])), None)
            if s and s["behind"] == {"room": room["id"]}:
                out.append((f"{other['id']}:{path}", f"{what} of {name(other)}", area, g,
                            at(beyond), at(near)))
    return out


def table(room):
    print("| path | what | ft² | Btu/h ft² °F | Btu/h °F | from °F | to °F | Btu/h |")
    print("|---|---|---|---|---|---|---|---|")
    total = 0.0
    for path, what, area, g, near, beyond in rows_of(room):
        loss = g * (near - beyond)
        total += loss
        size = "| - | - " if area is None else f"| {area / FT**2:.3f} | {g / area / US_U:.6f} "
        print(f"| {path} | {what} {size}| {g / US_G:.5f} | {fahrenheit(near):.4f} "
              f"| {fahrenheit(beyond):.4f} | {loss / BTUH:.3f} |")
    print(f"| sum | | | | | | | {round(total / BTUH, 3) + 0:.3f} |\n")
    return total


def shortened(space):
    """An unheated basement's swing by the formula that has no wall in it, W/K."""
    d_f = W + LAMBDA * (0.17 + r_layers("slab-bare") + 0.04)
    return sum(0.37 * typed(s, "length") * LAMBDA * math.log(DELTA / d_f + 1)
               * (2 - math.exp(-typed(s, "depth") / DELTA))
               for s in space["surfaces"] if s["kind"] == "wall")


def main():
    print("# The two-storey house worked by hand\n")
    print("Printed by `two_storey.py`, which says what each number rests on and shares nothing with "
          "the engine.\n")
    print(f"Outdoors {STATION['t99_f']} °F, mean of the year {STATION['mean_f']} °F, of the coldest "
          f"month {STATION['coldest_month_f']} °F, wind {STATION['wind_mph']} mph, elevation "
          f"{STATION['elevation_m']} m ({STATION['name']}, {STATION['state']}).\n")
    print("## Assemblies: `U = 2/(R_upper + R_lower)`, ISO 6946 combined\n")
    print("| assembly | R upper | R lower | Btu/h ft² °F |\n|---|---|---|---|")
    used = sorted({x["u_value"]["listed"] for r in ROOMS + SPACES for s in r["surfaces"]
                   for x in [s, *s["openings"]]})
    for assembly in used:
        limits = "| label | label " if assembly in LABELS else "| {:.5f} | {:.5f} ".format(
            *(r / US_R for r in combined(*ASSEMBLIES[assembly])))
        print(f"| {assembly} {limits}| {u_of(assembly) / US_U:.6f} |")
    print("\n## Air: `Q = A_L sqrt(C_s dT + C_w v²)`, shared by exposed area\n")
    print(f"A_L {LEAKAGE_CM2:.3f} cm², indoors {fahrenheit(INSIDE):.5f} °F by volume, dT "
          f"{INSIDE - OUT:.5f} K, wind {WIND:.5f} m/s.\n")
    print("| room | exposed ft² | cfm |\n|---|---|---|")
    for room in ROOMS:
        share = FLOW * exposed(room) / EXPOSED
        print(f"| {name(room)} | {exposed(room) / FT**2:.3f} | {share / CFM:.4f} |")
    print(f"| house | {EXPOSED / FT**2:.3f} | {FLOW / CFM:.4f} |\n")
    print("## Ground: ISO 13370, soil of "
          f"{LAMBDA} W/mK into which a year's swing reaches {DELTA} m\n")
    print("The part of the swing is 0.37 lambda ln(delta/d_f + 1) for a metre of slab edge, and for "
          "a metre of basement wall 0.37 lambda [e ln(delta/d_f + 1) + 2 (1 - e) ln(delta/d_w + 1)], "
          "e = exp(-z/delta).\n")
    for space in SPACES:
        if any(s["behind"] == "ground" for s in space["surfaces"]):
            print(f"{name(space)}: " + " ".join(earth(space)[1]) + "\n")
    cellar = SPACES[0]
    swing = sum(g for _, _, _, g, swing in earth(cellar)[0] if swing)
    colder = (shortened(cellar) - swing) * (MEAN - COLDEST) / balance(cellar)[0]
    print(f"Not used: for an unheated basement the standard shortens the swing to 0.37 lambda (2 - e) "
          f"ln(delta/d_f + 1) a metre, which leaves out how its walls are insulated. That would be "
          f"{shortened(cellar):.3f} W/K instead of {swing:.3f}, and the basement {colder * 9 / 5:.2f} "
          "°F colder.\n")
    print("## Unheated spaces: the temperature at which the sum is nothing\n")
    for space in SPACES:
        total, weighed = balance(space)
        print(f"### {name(space)} at {fahrenheit(at(('space', space['id']))):.4f} °F\n")
        print(f"Sum of conductances {total / US_G:.5f} Btu/h °F.\n")
        table(space)
    print("## Rooms\n")
    loads = []
    for room in ROOMS:
        print(f"### {name(room)} at {fahrenheit(temperature(room)):.4f} °F\n")
        loads.append(table(room))
    print(f"## House\n\n{sum(loads) / BTUH:.3f} Btu/h")


main()
