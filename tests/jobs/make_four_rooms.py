"""Writes four-rooms.json: the job that four_rooms.py works by hand. All numbers are invented.

python make_four_rooms.py > four-rooms.json
"""
import json
import itertools

ids = itertools.count(1)


def entries(**fields):
    out = {}
    for name, (text, unit) in fields.items():
        out[name.replace("_", "-")] = {"text": text, "unit": unit}
    return dict(sorted(out.items()))


def ft(text):
    return (text, "Foot")


def deg(text):
    return (text, "Fahrenheit")


def opening(kind, u, width, height, left):
    return {"id": next(ids), "kind": kind, "u_value": "typed-u",
            "entries": entries(width=ft(width), height=ft(height), from_left=ft(left), u=(u, "UsU"))}


def surface(kind, value, behind="outdoors", name="", openings=(), **fields):
    basis, (text, unit) = value
    more = {"u" if basis == "typed-u" else "r": (text, unit)}
    return {"id": next(ids), "kind": kind, "name": name, "behind": behind, "u_value": basis,
            "entries": entries(**fields, **more), "openings": list(openings)}


def u(text):
    return ("typed-u", (text, "UsU"))


def r(text):
    return ("typed-r", (text, "UsR"))


def room(name, surfaces, **fields):
    return {"id": next(ids), "name": name, "entries": entries(**fields), "surfaces": surfaces}


bedroom_id = 100
wall, ceiling, floor = u("0.09"), r("32"), u("0.11")


def over_cellar():
    return surface("floor", floor, "unheated", behind_temperature=deg("50"))


rooms = [
    room("Living room", [
        surface("wall", wall, name="south", length=ft("16'"), openings=[
            opening("window", "0.50", "6'", "4'", "5'")]),
        surface("wall", wall, name="west", length=ft("13'")),
        surface("ceiling", ceiling),
        over_cellar(),
    ], floor_length=ft("16'"), floor_width=ft("13'"), pipe_to=ft("12"), elbows=("4", "Piece")),
    room("Kitchen", [
        surface("wall", wall, name="north", length=ft("12'"), openings=[
            opening("window", "0.50", "3'", "3'", "7' 6\""),
            opening("door", "0.40", "3'", "6' 8\"", "0' 6\"")]),
        surface("ceiling", ceiling),
        over_cellar(),
    ], floor_length=ft("12'"), floor_width=ft("10'"), pipe_to=ft("8"), elbows=("3", "Piece")),
    room("Bath", [
        surface("wall", wall, name="north", length=ft("8'"), openings=[
            opening("window", "0.50", "2'", "3'", "3'")]),
        surface("wall", r("2.5"), {"room": bedroom_id}, name="inside", length=ft("6'")),
        surface("ceiling", ceiling),
        over_cellar(),
    ], floor_length=ft("8'"), floor_width=ft("6'"), temperature=deg("74"),
        air_changes=("1", "PerHour"), pipe_to=ft("6"), elbows=("2", "Piece")),
    room("Bedroom", [
        surface("wall", wall, name="east", length=ft("12'"), openings=[
            opening("window", "0.50", "3'", "4'", "2'"),
            opening("window", "0.50", "3'", "4'", "7'")]),
        surface("wall", wall, name="south", length=ft("11'")),
        surface("ceiling", ceiling),
        over_cellar(),
    ], floor_length=ft("12'"), floor_width=ft("11'"), pipe_to=ft("9"), elbows=("4", "Piece")),
]
rooms[3]["id"] = bedroom_id

job = {
    "name": "Four rooms, worked by hand (invented numbers)",
    "units": "us",
    "house": entries(outdoors=deg("0"), indoors=deg("70"), altitude=ft("0"),
                     air_changes=("0.5", "PerHour")),
    "air_class": "average",
    "rooms": rooms,
    "element": {
        "rating_basis": "single",
        "heating_effect": "as-typed",
        "entries": entries(output=("560", "BtuPerHourFoot"), water=deg("180"), air=deg("65"),
                           exponent=("1.35", "One"), rating_flow=("1", "GallonPerMinute"),
                           derate=("100", "Percent"), bare_per_piece=("3", "InchSmall"),
                           end_allowance=("4", "InchSmall")),
        "points": [],
        "stock_ft": [2, 3, 4, 5, 6, 7, 8],
    },
    "tube": "copper-m-3/4",
    "flow_basis": "from-drop",
    "circuit": entries(supply=deg("180"), boiler_limit=deg("200"), drop=("20", "FahrenheitDegree"),
                       pipe_surroundings=deg("60"), pipe_film=("10", "SiU"),
                       return_pipe=ft("20"), return_elbows=("4", "Piece"),
                       boiler_elbows=("6", "Piece"), boiler_tees=("2", "Piece"),
                       boiler_valves=("4", "Piece"), equipment_head=("1", "HeadFoot")),
    "next_id": 101,
}
print(json.dumps({"finrun": 1, "job": job}, indent=1))
