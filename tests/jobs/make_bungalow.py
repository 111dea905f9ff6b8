"""Writes ../../public/demo/bungalow.json: five rooms on a slab. All numbers are invented.

python make_bungalow.py
"""
from houses import (ceiling, deg, door, floor, ft, ids, inch, job, room, station, wall, window,
                    write)

WALL, GLASS, LID, SLAB = "frame-wall-r11", "window-wood-double", "attic-ceiling-r19", "slab-bare"


def add(name, size, place, pipe, *walls, **fields):
    (length, width), (left, front) = size, place
    inside = [ceiling(LID), floor(SLAB, "ground")]
    return room(next(ids), name, [*walls, *inside], floor_length=ft(length), floor_width=ft(width),
                height=ft("8"), pipe_to=ft(pipe), from_left=ft(left), from_front=ft(front),
                **fields)


rooms = [
    add("Living room", ("18' 6\"", "14'"), ("0'", "0'"), "14",
        wall("south", "18' 6\"", WALL, window(GLASS, "6'", "4' 6\"", "5'")),
        wall("west", "14'", WALL, door("door-wood", "10' 6\""))),
    add("Kitchen", ("12'", "11' 4 1/2\""), ("0'", "14'"), "6",
        wall("north", "12'", WALL, window(GLASS, "3'", "3'", "4' 6\"")),
        wall("west", "11' 4 1/2\"", WALL, door("door-wood", "1'", "2' 8\""))),
    add("Bath", ("8'", "6'"), ("12'", "19' 4 1/2\""), "8",
        wall("north", "8'", WALL, window(GLASS, "2'", "3'", "3'")), temperature=deg("74")),
    add("North bedroom", ("12'", "10' 6\""), ("20'", "14' 10 1/2\""), "5",
        wall("north", "12'", WALL, window(GLASS, "3'", "4'", "2'"), window(GLASS, "3'", "4'", "7'")),
        wall("east", "10' 6\"", WALL)),
    add("South bedroom", ("13'", "11'"), ("19'", "0'"), "9",
        wall("east", "11'", WALL, window(GLASS, "3'", "4'", "4'")),
        wall("south", "13'", WALL, window(GLASS, "5'", "4'", "4'"))),
]

write("bungalow.json", job(
    "Heron Lane bungalow (demo)", rooms,
    house={"indoors": {"text": "70", "unit": "Fahrenheit"}},
    station=station("OH", "Dayton International AP"),
    ground={"soil": "clay-or-silt", "edge": "vertical", "slab_edge": "vertical-2-ft-r10",
            "entries": {"edge-depth": {"text": "2'", "unit": "Foot"},
                        "edge-r": {"text": "10", "unit": "UsR"},
                        "edge-thickness": dict(zip(("text", "unit"), inch("2")))}},
    circuit={"return-pipe": {"text": "22", "unit": "Foot"}}))
