"""The job four-rooms.json worked by hand, independently of the engine.

python four_rooms.py    prints each step; suite/whole_job.rs holds the engine to these numbers.

The cooling along each element and pipe is integrated step by step (Runge-Kutta), not taken from a
closed solution. Water properties are read off ../reference/a1_water_properties.csv (IAPWS-95) by
a cubic through the four nearest rows, not from the engine's fits.
"""
import csv
import math
import pathlib

HERE = pathlib.Path(__file__).parent
FT, INCH, BTUH = 0.3048, 0.0254, 1055.05585262 / 3600
G = 9.80665


def kelvin(fahrenheit):
    return (fahrenheit + 459.67) * 5 / 9


def fahrenheit(kelvins):
    return kelvins * 9 / 5 - 459.67


# --- water -----------------------------------------------------------------------------------
with open(HERE / "../reference/a1_water_properties.csv") as file:
    ROWS = list(csv.DictReader(file))
T_ROWS = [float(row["T_C"]) + 273.15 for row in ROWS]


def water(column, t):
    """Cubic through the four rows around t."""
    i = min(max(sum(1 for x in T_ROWS if x <= t) - 2, 0), len(T_ROWS) - 4)
    total = 0.0
    for j in range(i, i + 4):
        weight = 1.0
        for k in range(i, i + 4):
            if k != j:
                weight *= (t - T_ROWS[k]) / (T_ROWS[j] - T_ROWS[k])
        total += weight * float(ROWS[j][column])
    return total


def rho(t):
    return water("rho_iapws95", t)


def cp(t):
    return water("cp_iapws95", t)


def mu(t):
    return water("mu_iapws95", t)


# --- 1. areas (square feet) and heat loss (Btu/h) -----------------------------------------------
OUT, IN, CELLAR = 0.0, 70.0, 50.0
U_WALL, U_WINDOW, U_DOOR, U_CEILING, U_FLOOR = 0.09, 0.50, 0.40, 1 / 32, 0.11


def air_factor(room_f):
    """Btu/h per cfm and F: density of dry air at sea level and the room's temperature, c_p 1006."""
    density = 101325 / (287.055 * kelvin(room_f))
    watts = (0.3048**3 / 60) * density * 1006 * 5 / 9
    return watts / BTUH


# name: (outside wall in feet, windows, doors, floor, temperature, least air changes an hour)
ROOMS = {
    "Living room": (16 + 13, 6 * 4, 0, 16 * 13, 70, 0),
    "Kitchen": (12, 3 * 3, 3 * (6 + 8 / 12), 12 * 10, 70, 0),
    "Bath": (8, 2 * 3, 0, 8 * 6, 74, 1),
    "Bedroom": (12 + 11, 2 * 3 * 4, 0, 12 * 11, 70, 0),
}

# Half an air change of the whole house, shared by gross area that faces outdoors or the cellar:
# walls, ceiling and floor, not the wall between bath and bedroom.
HOUSE_CFM = 0.5 * sum(floor * 8 for _, _, _, floor, _, _ in ROOMS.values()) / 60
EXPOSED = {name: wall * 8 + 2 * floor for name, (wall, _, _, floor, _, _) in ROOMS.items()}
print(f"house {HOUSE_CFM:.4f} cfm over {sum(EXPOSED.values())} square feet")


def cfm(name):
    """A room's share, or what it is known to take at least; the others keep their shares."""
    _, _, _, floor, _, least = ROOMS[name]
    share = HOUSE_CFM * EXPOSED[name] / sum(EXPOSED.values())
    known = least * floor * 8 / 60
    print(f"{name:12} {EXPOSED[name]} square feet, share {share:.4f} cfm, at least {known:.4f}")
    return max(share, known)


def room(name, to_neighbour=0.0):
    wall_ft, windows, doors, floor, temperature, _ = ROOMS[name]
    gross = wall_ft * 8
    dt = temperature - OUT
    parts = {
        "walls": U_WALL * (gross - windows - doors) * dt,
        "windows": U_WINDOW * windows * dt,
        "doors": U_DOOR * doors * dt,
        "ceiling": U_CEILING * floor * dt,
        "floor": U_FLOOR * floor * (temperature - CELLAR),
        "air": cfm(name) * air_factor(temperature) * dt,
        "between": to_neighbour,
    }
    parts["total"] = sum(parts.values())
    print(f"{name:12}", {key: round(value, 2) for key, value in parts.items()})
    return parts["total"]


partition = 6 * 8 / 2.5 * (74 - 70)
print("1.08 is", round(air_factor(70), 5), "at 70 F and", round(air_factor(74), 5), "at 74 F")
LOADS = [room("Living room"), room("Kitchen"), room("Bath", partition), room("Bedroom", -partition)]
print("house", round(sum(LOADS), 2))

# --- 2. flow for a drop of 20 F ---------------------------------------------------------------
SUPPLY, DROP = kelvin(180), 20 * 5 / 9
FLOW = sum(LOADS) * BTUH / (cp(SUPPLY - DROP / 2) * DROP)
GPM = FLOW / rho(SUPPLY) / (231 * INCH**3 / 60)
print(f"flow {FLOW:.6f} kg/s, {GPM:.5f} gpm")

# --- 3. tube, element ---------------------------------------------------------------------------
OUTSIDE, INSIDE = 0.875 * INCH, (0.875 - 2 * 0.032) * INCH
# Copper wall at 340 W/m K, then the film of 10 W/m2 K on the outside.
U_PIPE = 1 / (math.log(OUTSIDE / INSIDE) / (2 * math.pi * 340) + 1 / (10 * math.pi * OUTSIDE))
RATED, N = 560 * BTUH / FT, 1.35
FLOW_FACTOR = (FLOW / (500 * 0.45359237 / 3600)) ** 0.04
print(f"pipe {U_PIPE:.6f} W/mK, flow factor {FLOW_FACTOR:.6f}")


def element_output(t, air):
    return RATED * ((t - air) / (115 * 5 / 9)) ** N * FLOW_FACTOR


def pipe_output(t, air):
    return U_PIPE * (t - air)


def march(output, t, air, length):
    """Outlet of `length`, with c_p at the mean of inlet and outlet, found by repetition."""
    c = cp(t)
    for _ in range(6):
        steps, x = 400, t
        h = length / steps
        for _ in range(steps):
            slope = lambda at: -output(at, air) / (FLOW * c)
            k1 = slope(x)
            k2 = slope(x + h / 2 * k1)
            k3 = slope(x + h / 2 * k2)
            k4 = slope(x + h * k3)
            x += h / 6 * (k1 + 2 * k2 + 2 * k3 + k4)
        c = cp((t + x) / 2)
    return x, FLOW * c * (t - x)


def needed(t, air, load):
    """The length whose heat is `load`, by halving."""
    low, high = 0.0, 30.0
    for _ in range(45):
        middle = (low + high) / 2
        low, high = (middle, high) if march(element_output, t, air, middle)[1] < load else (low, middle)
    return high


# --- 4. friction ------------------------------------------------------------------------------
AREA = math.pi / 4 * INSIDE**2


def pressure(t, length, k):
    """Darcy-Weisbach with Colebrook by repeated substitution; Reynolds is above 4000 throughout,
    or in the straight bridge from 0.032 at 2000 to Colebrook's value at 4000."""
    v = FLOW / rho(t) / AREA
    reynolds = rho(t) * v * INSIDE / mu(t)

    def colebrook(re):
        f = 0.03
        for _ in range(100):
            f = (-2 * math.log10(1.5e-6 / (3.7 * INSIDE) + 2.51 / (re * math.sqrt(f)))) ** -2
        return f

    if reynolds >= 4000:
        f = colebrook(reynolds)
    else:
        f = 0.032 + (colebrook(4000) - 0.032) * (reynolds - 2000) / 2000
    return (f * length / INSIDE + k) * rho(t) * v**2 / 2, v, reynolds, f


# Crane TP-410, from memory: f_T 0.025 for 3/4 in; elbow 30, tee straight through 20, ball valve 3.
ELBOW, TEE, VALVE = 30 * 0.025, 20 * 0.025, 3 * 0.025

# --- 5. round the loop ---------------------------------------------------------------------------
t, head_pa, heat, pipe_heat = SUPPLY, 0.0, 0.0, 0.0
dp, v, re, f = pressure(t, 0, 6 * ELBOW + 2 * TEE + 4 * VALVE)
head_pa += dp + rho(t) * G * 1.0 * FT
print(f"boiler room: {dp:.3f} Pa + {rho(t) * G * FT:.3f} Pa, {v / FT:.4f} ft/s")


def pipe(t, feet, elbows):
    after, lost = march(pipe_output, t, kelvin(60), feet * FT)
    dp, v, re, f = pressure((t + after) / 2, feet * FT, elbows * ELBOW)
    print(f"  pipe {feet} ft: {fahrenheit(t):.4f} -> {fahrenheit(after):.4f} F, {lost / BTUH:.3f} Btu/h, "
          f"Re {re:.1f}, f {f:.6f}, {dp:.3f} Pa")
    return after, lost, dp


# Pieces, chosen by eye from 2 to 8 ft with 3 in of bare tube each: the least total whose fins reach.
PIECES = {"Living room": (7, 2), "Kitchen": (6,), "Bath": (4,), "Bedroom": (8,)}
for (name, pieces), load, feet, elbows, room_f in zip(
        PIECES.items(), LOADS, (12, 8, 6, 9), (4, 3, 2, 4), (70, 70, 74, 70)):
    t, lost, dp = pipe(t, feet, elbows)
    heat, pipe_heat, head_pa = heat + lost, pipe_heat + lost, head_pa + dp
    wanted = needed(t, kelvin(room_f), load * BTUH) / FT
    finned = sum(pieces) - 0.25 * len(pieces)
    after, given = march(element_output, t, kelvin(room_f), finned * FT)
    dp, v, re, f = pressure((t + after) / 2, sum(pieces) * FT, 0)
    print(f"{name}: needs {wanted:.5f} ft, {pieces} with {finned} ft of fins give "
          f"{given / BTUH:.3f} Btu/h of {load:.3f}; {fahrenheit(t):.4f} -> {fahrenheit(after):.4f} F, "
          f"Re {re:.1f}, f {f:.6f}, {dp:.3f} Pa")
    t, heat, head_pa = after, heat + given, head_pa + dp
t, lost, dp = pipe(t, 20, 4)
heat, pipe_heat, head_pa = heat + lost, pipe_heat + lost, head_pa + dp
print(f"back {fahrenheit(t):.4f} F, drop {(SUPPLY - t) * 9 / 5:.4f} F")
print(f"heat {heat / BTUH:.2f} Btu/h, of it pipes {pipe_heat / BTUH:.2f}")
print(f"pressure {head_pa:.2f} Pa, head {head_pa / (rho(SUPPLY) * G) / FT:.5f} ft")
