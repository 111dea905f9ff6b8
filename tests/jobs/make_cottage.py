"""Writes ../../public/demo/cottage.json: three rooms over a crawl space, one of them an L, with
walls of an assembly of their own. All numbers are invented.

python make_cottage.py
"""
from houses import (between, cfm, ceiling, deg, door, entries, floor, ft, ids, inch, job, listed,
                    room, station, surface, through, wall, window, write)

crawl, bath, walls = (next(ids) for _ in range(3))
WALL, GLASS = {"own": walls}, "window-low-e"


def add(name, size, place, pipe, *walls, id=None, **fields):
    (length, width), (left, front) = size, place
    inside = [ceiling("cathedral-r30"), floor("joist-floor-r19", {"room": crawl})]
    return room(id or next(ids), name, [*walls, *inside], floor_length=ft(length),
                floor_width=ft(width), pipe_to=ft(pipe), from_left=ft(left), from_front=ft(front),
                **fields)


rooms = [
    add("Great room", ("20'", "16'"), ("0'", "0'"), "8",
        wall("south", "20'", WALL, window(GLASS, "5'", "4'", "3'"), door("door-fiberglass", "12'")),
        wall("west", "16'", WALL, window(GLASS, "4'", "4'", "6'")),
        wall("north", "12'", WALL, window(GLASS, "3'", "3'", "5'")),
        wall("bath side", "6'", "partition", behind={"room": bath}),
        wall("bath front", "8'", "partition", behind={"room": bath}),
        shape="l-shape", cut_length=ft("8'"), cut_width=ft("6'"), height=ft("9'")),
    add("Bath", ("8'", "6'"), ("12'", "10'"), "5",
        wall("north", "8'", WALL, window(GLASS, "2'", "2' 6\"", "3'")),
        id=bath, temperature=deg("73")),
    add("Bedroom", ("12'", "16'"), ("20'", "0'"), "6",
        wall("north", "12'", WALL),
        wall("east", "16'", WALL, window(GLASS, "3'", "4'", "2'"), window(GLASS, "3'", "4'", "10'")),
        wall("south", "12'", WALL, window(GLASS, "4'", "4'", "4'")), temperature=deg("66")),
]

UNDER = {"behind": "ground", "depth": ft("1'")}
spaces = [
    room(crawl, "Crawl space", [
        *(wall(name, length, "basement-block", **UNDER)
          for name, length in [("south", "32'"), ("east", "16'"), ("north", "32'"), ("west", "16'")]),
        # Bare earth: nothing but the two films.
        surface("floor", "typed-r", "ground", r=("1.2", "UsR")),
    ], used="crawl-space", height=ft("3'"), vent_area=("240", "SquareInch")),
]

assemblies = [{
    "id": walls, "name": "Walls of 2 x 6 with foam", "position": "wall",
    "framing": "intermediate-wall", "entries": {},
    "layers": [
        through(listed("gypsum-board"), thickness=inch("1/2")),
        between(listed("fiberglass-dense-batt"), thickness=inch("5 1/2")),
        through(listed("osb"), thickness=inch("7/16")),
        through("typed-r", r=("5", "UsR")),
        through(listed("vinyl-siding")),
    ],
}]

write("cottage.json", job(
    "Sandpiper Point cottage (demo)", rooms, spaces=spaces, assemblies=assemblies,
    house=entries({"indoors": deg("69"), "ceiling_height": ft("8'")}),
    station=station("ME", "Bar Harbor"),
    air={"basis": "blower-door", "shelter": "light",
         "entries": entries({"blower_flow": cfm("420"), "supply": cfm("40"), "exhaust": cfm("55"),
                             "recovery": ("70", "Percent")})},
    tube="copper-m-1/2",
    circuit=entries({"return_pipe": ft("12")})))
