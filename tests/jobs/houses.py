"""What the makers of the shipped houses share: a job file of version 2, piece by piece.

Every house is invented; the weather is that of a station in ../reference/climate/embed_us.csv.
"""
import csv
import itertools
import json
import pathlib

HERE = pathlib.Path(__file__).parent
DEMO = HERE / "../../public/demo"
ids = itertools.count(1)


def ft(text):
    return (text, "Foot")


def inch(text):
    return (text, "InchSmall")


def deg(text):
    return (text, "Fahrenheit")


def cfm(text):
    return (text, "AirCubicFootPerMinute")


def entries(fields):
    out = {}
    for name, (text, unit) in fields.items():
        out[name.replace("_", "-")] = {"text": text, "unit": unit}
    return dict(sorted(out.items()))


def listed(name):
    return {"listed": name}


def station(state, name):
    with open(HERE / "../reference/climate/embed_us.csv") as file:
        [row] = [row for row in csv.DictReader(file) if (row["st"], row["name"]) == (state, name)]
    return {"state": state, "name": name, "elevation_m": int(row["elev_m"]),
            "t99_f": int(row["t99_f"]), "t996_f": int(row["t996_f"]), "mean_f": int(row["mean_f"]),
            "coldest_month_f": int(row["jan_f"]), "degree_days_65_f": int(row["hdd65"]),
            "wind_mph": int(row["wind_mph"])}


def opening(kind, built, width, height, left=None):
    fields = {"width": ft(width), "height": ft(height)}
    if left is not None:
        fields["from_left"] = ft(left)
    return {"id": next(ids), "kind": kind, "u_value": listed(built), "entries": entries(fields)}


def window(built, width, height, left=None):
    return opening("window", built, width, height, left)


def door(built, left, width="3'", height="6' 8\""):
    return opening("door", built, width, height, left)


def surface(kind, built, behind="outdoors", name="", openings=(), **fields):
    """`built` is the name of a listed assembly, or a U-value as the file has it."""
    value = listed(built) if isinstance(built, str) and "typed" not in built else built
    return {"id": next(ids), "kind": kind, "name": name, "behind": behind, "u_value": value,
            "entries": entries(fields), "openings": list(openings),
            "wall_use": "as-needed", "fixed": []}


def wall(name, length, built, *openings, behind="outdoors", **fields):
    return surface("wall", built, behind, name, openings, length=ft(length), **fields)


def ceiling(built, behind="outdoors", **fields):
    return surface("ceiling", built, behind, **fields)


def floor(built, behind, **fields):
    return surface("floor", built, behind, **fields)


def room(id, name, surfaces, used="heated", level="first", shape="rectangle", **fields):
    return {"id": id, "name": name, "used": used, "level": level, "shape": shape,
            "entries": entries(fields), "surfaces": surfaces, "zone": 0, "branch": 0, "route": [],
            "diverters": "one", "shut_off": "open", "mass": "as-house"}


def through(material, **fields):
    return {"material": material, "place": "through", "entries": entries(fields)}


def between(material, **fields):
    return {"material": material, "place": "between-framing", "entries": entries(fields)}


def job(name, rooms, **parts):
    """A whole job; `parts` stand in for what a new one starts with."""
    air = {"basis": "class", "storeys": "one", "shelter": "moderate", "flue": "none",
           "entries": {}}
    ground = {"soil": "sand-or-gravel", "method": "iso-13370", "edge": "none",
              "slab_edge": "uninsulated", "entries": {}}
    whole = {
        "name": name, "units": "us", "house": {}, "station": None, "design_hours": "99",
        "air_class": "average", "air": air | parts.pop("air", {}),
        "ground": ground | parts.pop("ground", {}), "rooms": rooms, "spaces": [],
        "assemblies": [], "bills": {"fuel": "natural-gas-therm", "entries": {}, "list": []},
        "certainty": {},
        "element": {"rating_basis": "single", "heating_effect": "unknown", "entries": {},
                    "points": [], "stock_ft": [2, 3, 4, 5, 6, 7, 8, 9, 10], "stock": [],
                    "objective": "closest"},
        "prices": {}, "sized_prices": [], "spare": {},
        "cutting": {"sticks": "10-and-20-ft", "entries": {}},
        "tube": "copper-m-3/4", "flow_basis": "from-drop", "circuit": {}, "part": {},
        "pipe_cover": "bare", "zoning": "valves",
        "pump": {"kind": {"typical": "small"}, "set": "one", "points": []},
    }
    whole |= parts
    tube = whole["tube"]
    whole["zones"] = [{"id": 0, "name": "", "arrangement": "series", "main": tube, "pipe": tube,
                       "balancing": "none", "back": "own-way", "pump": {"typical": "small"},
                       "holds": "first-room", "entries": {}}]
    whole["plant"] = {"boiler": "non-condensing", "tank": "none", "metal": "copper",
                      "valve": "motor", "antifreeze": "none", "entries": {}}
    whole["control"] = {"supply": "fixed", "mass": "light", "entries": {}}
    whole["progress"] = {"steps": [], "measured": {}, "spots": []}
    whole["what_if"] = []
    whole["existing"] = {"standing": "planned", "ran": "a-while"}
    whole["next_id"] = next(ids)
    return whole


def write(file, whole):
    with open(DEMO / file, "w") as out:
        out.write(json.dumps({"finrun": 6, "job": whole}, indent=1) + "\n")
