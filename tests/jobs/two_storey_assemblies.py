"""What the two-storey house is built of, for two_storey.py: U-values by ISO 6946, combined method.

Thickness in m and conductivity in W/mK (EN 12524), or a fixed resistance in m2K/W; the second figure
of a layer is the wood's resistance where studs or joists interrupt it (softwood 0.13 W/mK).
"""
FT, BTUH = 0.3048, 1055.05585262 / 3600
US_U = BTUH / FT**2 * 9 / 5  # W/m2K in a Btu/h ft2 F
US_R = 1 / US_U
FILMS = {"out": 0.04, "level": 0.13, "up": 0.10, "down": 0.17}


def of(thickness, conductivity):
    return (thickness / conductivity, None)


def fixed(resistance):
    return (resistance, None)


def framed(resistance, depth):
    return (resistance, depth / 0.13)


DRYWALL, PLY, SIDING = of(0.0127, 0.25), of(0.0127, 0.13), of(0.0127, 0.13)
BOARDS = of(0.019, 0.13)
STUD_4, STUD_6, JOIST = 0.0889, 0.1397, 0.235
SHINGLES = fixed(0.077)                         # ASHRAE Handbook of Fundamentals, from memory
STILL_UP, STILL_LEVEL = 0.16, 0.18              # unventilated air of an inch and more, ISO 6946
# name: films inside and outside, share of framing, layers. Shares 0.23 of studs, 0.07 and 0.10 of
# joists and rafters.
ASSEMBLIES = {
    "frame-wall-r13": ("level", "out", 0.23, [SIDING, PLY, framed(13 * US_R, STUD_4), DRYWALL]),
    "garage-wall-r11": ("level", "level", 0.23, [DRYWALL, framed(11 * US_R, STUD_4), DRYWALL]),
    "partition": ("level", "level", 0.23, [DRYWALL, framed(STILL_LEVEL, STUD_4), DRYWALL]),
    "stud-wall-bare": ("level", "out", 0, [SIDING, PLY]),
    "attic-ceiling-r30": ("up", "up", 0.07,
                          [DRYWALL, framed(19 * US_R, STUD_6), fixed(11 * US_R)]),
    "cathedral-empty": ("up", "out", 0.10, [DRYWALL, framed(STILL_UP, STUD_6), PLY, SHINGLES]),
    "roof-deck": ("up", "out", 0, [PLY, SHINGLES]),
    "joist-floor-r11": ("down", "down", 0.10, [BOARDS, PLY, framed(11 * US_R, JOIST)]),
    "slab-bare": ("down", "out", 0, [of(0.102, 2.0)]),
    "basement-concrete-r5": ("level", "out", 0, [of(0.203, 2.0), fixed(5 * US_R)]),
}
# Btu/h ft2 F: IECC default tables R303.1.3 (some from memory), a state code for the R-5 door.
LABELS = {"window-wood-double": 0.55, "window-wood-single": 0.95, "window-metal-double": 0.80,
          "door-r5": 0.20, "door-metal-insulated": 0.60, "patio-door-double": 0.55,
          "garage-door-insulated": 0.60}


def combined(inside, outside, share, layers):
    """R upper and R lower, in m2K/W."""
    films = FILMS[inside] + FILMS[outside]
    cavity = films + sum(r for r, _ in layers)
    wood = films + sum(r if w is None else w for r, w in layers)
    upper = 1 / ((1 - share) / cavity + share / wood)
    lower = films + sum(r if w is None else 1 / ((1 - share) / r + share / w) for r, w in layers)
    return upper, lower


def u_of(name):
    if name in LABELS:
        return LABELS[name] * US_U
    return 2 / sum(combined(*ASSEMBLIES[name]))


def r_layers(name):
    """Of a slab or basement wall: its layers alone."""
    return sum(r for r, _ in ASSEMBLIES[name][3])
