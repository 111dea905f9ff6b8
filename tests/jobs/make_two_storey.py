"""Writes ../../public/demo/two-storey.json: nine rooms on two storeys over an unheated basement,
with a garage beside and an attic above. All numbers are invented.

The main block is 32 ft by 26 ft; left and front of each room are from its south-west corner.

python make_two_storey.py
"""
from houses import (ceiling, deg, door, entries, floor, ft, ids, inch, job, room, station, surface,
                    wall, window, write)

basement, garage, attic, bath, west = (next(ids) for _ in range(5))
WALL, GLASS, DECK = "frame-wall-r13", "window-wood-double", "stud-wall-bare"
UNDER, PANE = "basement-concrete-r5", "window-metal-double"
HIGH = "8' 6\""


def below(name, size, place, pipe, *walls):
    """A room on the first storey: its floor over the basement."""
    (length, width), (left, front) = size, place
    return room(next(ids), name, [*walls, floor("joist-floor-r11", {"room": basement})],
                floor_length=ft(length), floor_width=ft(width), height=ft(HIGH), pipe_to=ft(pipe),
                from_left=ft(left), from_front=ft(front))


def above(name, size, place, pipe, *walls, id=None, **fields):
    """A room on the second storey: its ceiling under the attic."""
    (length, width), (left, front) = size, place
    return room(id or next(ids), name, [*walls, ceiling("attic-ceiling-r30", {"room": attic})],
                level="second", floor_length=ft(length), floor_width=ft(width), pipe_to=ft(pipe),
                from_left=ft(left), from_front=ft(front), **fields)


def to_garage(length, *openings):
    return wall("garage", length, "garage-wall-r11", *openings, behind={"room": garage})


rooms = [
    below("Hall", ("14'", "14'"), ("18'", "0'"), "16",
          wall("south", "14'", WALL, door("door-r5", "1' 6\""), window(GLASS, "2'", "4'", "8'")),
          to_garage("14'", door("door-metal-insulated", "2'", "2' 8\""))),
    below("Dining room", ("14'", "12'"), ("18'", "14'"), "8",
          to_garage("8'"),
          wall("east", "4'", WALL),
          wall("north", "14'", WALL, window(GLASS, "5'", "4' 6\"", "4'"))),
    below("Kitchen", ("18'", "12'"), ("0'", "14'"), "9",
          wall("north", "18'", WALL, window(GLASS, "4'", "3' 6\"", "3'"),
               door("patio-door-double", "10'", "6'", "6' 8\"")),
          wall("west", "12'", WALL, window(GLASS, "3'", "3' 6\"", "4'"))),
    below("Living room", ("18'", "14'"), ("0'", "0'"), "7",
          wall("west", "14'", WALL, window(GLASS, "3'", "4' 6\"", "5'")),
          wall("south", "18'", WALL, window(GLASS, "8'", "4' 6\"", "5'"))),
    above("Main bedroom", ("18'", "14'"), ("0'", "0'"), "15",
          wall("south", "18'", WALL, window(GLASS, "6'", "4'", "6'")),
          wall("west", "14'", WALL, window(GLASS, "3'", "4'", "5'"))),
    above("West bedroom", ("14'", "12'"), ("0'", "14'"), "8",
          wall("west", "12'", WALL),
          wall("north", "14'", WALL, window(GLASS, "5'", "4'", "4'")), id=west),
    above("Bath", ("8'", "12'"), ("14'", "14'"), "6",
          wall("north", "8'", WALL, window(GLASS, "2' 6\"", "3'", "2'")),
          # Each of the bath's two inside walls is entered once, on either side.
          wall("west bedroom", "12'", "partition", behind={"room": west}),
          id=bath, temperature=deg("74")),
    above("East bedroom", ("10'", "12'"), ("22'", "14'"), "8",
          wall("bath", "12'", "partition", behind={"room": bath}),
          wall("north", "10'", WALL, window(GLASS, "4'", "4'", "3'")),
          wall("east", "12'", WALL)),
    above("Study", ("14'", "14'"), ("18'", "0'"), "7",
          wall("east", "14'", WALL, window(GLASS, "3'", "4'", "3'")),
          wall("south", "14'", WALL, window(GLASS, "5'", "4'", "5'"))),
]

spaces = [
    room(basement, "Basement", [
        wall("south", "32'", UNDER, window(PANE, "2' 8\"", "1' 3\"", "14'"),
             behind="ground", depth=ft("6' 6\"")),
        wall("east", "26'", UNDER, behind="ground", depth=ft("6' 6\"")),
        wall("north", "32'", UNDER, window(PANE, "2' 8\"", "1' 3\"", "14'"),
             behind="ground", depth=ft("6' 6\"")),
        wall("west", "26'", UNDER, behind="ground", depth=ft("5' 6\"")),
        floor("slab-bare", "ground"),
    ], used="basement", level="basement", floor_length=ft("32'"), floor_width=ft("26'"),
        height=ft("7' 6\""), from_left=ft("0'"), from_front=ft("0'")),
    room(garage, "Garage", [
        wall("south", "22'", DECK, door("garage-door-insulated", "3'", "16'", "7'")),
        wall("east", "22'", DECK, window("window-wood-single", "3'", "3'", "9'")),
        wall("north", "22'", DECK),
        ceiling("cathedral-empty"),
        floor("slab-bare", "ground"),
    ], used="garage", floor_length=ft("22'"), floor_width=ft("22'"), height=ft(HIGH),
        from_left=ft("32'"), from_front=ft("0'")),
    room(attic, "Attic", [
        # Two triangles, 26 ft wide and 6 1/2 ft high, and what rises 6 in 12 over the floor.
        surface("wall", DECK, name="gable west", area=("84.5", "SquareFoot")),
        surface("wall", DECK, name="gable east", area=("84.5", "SquareFoot")),
        ceiling("roof-deck"),
    ], used="attic", level="third", height=ft("3' 3\"")),
]

write("two-storey.json", job(
    "Alder Street two-storey (demo)", rooms, spaces=spaces,
    house=entries({"indoors": deg("70"), "ceiling_height": ft("8'")}),
    station=station("NY", "Albany County AP"),
    air={"basis": "leakage-area", "storeys": "two",
         "entries": entries({"leakage_area": ("90", "SquareInch")})},
    ground={"entries": entries({"wall_thickness": inch("10")})},
    circuit=entries({"return_pipe": ft("24"), "supply": deg("180")})))
