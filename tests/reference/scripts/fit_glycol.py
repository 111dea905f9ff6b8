#!/usr/bin/env python3
"""Fits the engine's propylene glycol to CoolProp 8.0.0 'MPG' (Melinder 2010). Prints coefficients and worst errors.

pip install numpy scipy CoolProp==8.0.0
Each property is that of water by the engine's own polynomials (copied below) times 1 + (a0 + a1 x + ...) y +
(b0 + b1 x + ...) y2 + ..., viscosity times the exponential of such a sum without the 1; x is the temperature on water's
own scale, -1 at 5 C and 1 at 105 C, y the share by mass over 0.5. So a share of nothing is water. Least worst relative error, by
linear programming, over shares 0.10 to 0.50 and 0 to 100 C; below 0.10 MPG's own water is off by up to 0.06 % in
density, 0.12 % in c_p, 1.2 % in viscosity, 0.9 % in conductivity, and is not followed. Coefficients are rounded first
and judged then.
"""
import CoolProp.CoolProp as CP
import numpy as np
from scipy.optimize import linprog

P = 200e3
WATER = {
    "density": [985.7328, -24.20043, -7.698446, 1.301012, -0.6521779, 0.2628061],
    "specific heat": [4182.718, 17.96035, 19.34582, -1.91681, 7.064115, -7.562762, 3.937022],
    "viscosity": [-7.593467, -0.796252, 0.2049372, -0.05803536, 0.02998427, -0.01373578],
    "conductivity": [0.6460284, 0.05154313, -0.02046321, 0.003940744, -0.00214873],
}
KEY = {"density": "D", "specific heat": "C", "viscosity": "V", "conductivity": "L"}
# Powers of the share from 1, and coefficients in temperature for each.
SHAPE = {"density": (2, 3), "specific heat": (3, 3), "viscosity": (2, 4), "conductivity": (2, 3)}
DIGITS = 5


def water(name, celsius):
    value = np.polynomial.polynomial.polyval((celsius - 55) / 50, WATER[name])
    return np.exp(value) if name == "viscosity" else value


def least_worst(a, b):
    """The x with the least worst |a x - b|."""
    n, one = a.shape[1], np.ones((a.shape[0], 1))
    found = linprog(np.r_[np.zeros(n), 1], A_ub=np.vstack([np.hstack([a, -one]), np.hstack([-a, -one])]),
                    b_ub=np.r_[b, -b], bounds=[(None, None)] * n + [(0, None)])
    return found.x[:-1]


share, celsius = [grid.ravel() for grid in np.meshgrid(np.linspace(0.10, 0.50, 17), np.linspace(0, 100, 41))]
x, y = (celsius - 55) / 50, share / 0.5
for name, (powers, terms) in SHAPE.items():
    data = np.array([CP.PropsSI(KEY[name], "T", t + 273.15, "P", P, "INCOMP::MPG[%.4f]" % w) for w, t in zip(share, celsius)])
    base = water(name, celsius)
    columns = np.array([y ** i * x ** j for i in range(1, powers + 1) for j in range(terms)]).T
    if name == "viscosity":
        c = least_worst(columns, np.log(data / base))
    else:
        c = least_worst(columns * (base / data)[:, None], 1 - base / data)
    c = np.round(c, DIGITS)
    fitted = base * (np.exp(columns @ c) if name == "viscosity" else 1 + columns @ c)
    print("%s: worst %.3f %%" % (name, 100 * np.abs(fitted / data - 1).max()))
    for row in c.reshape(powers, terms):
        print("    [%s]," % ", ".join("%g" % v for v in row))

# Freezing point, in kelvin below that of water: a1 y + a2 y2 + a3 y3.
state = CP.AbstractState("INCOMP", "MPG")
shares, below = np.linspace(0.05, 0.50, 46), []
for w in shares:
    state.set_mass_fractions([w])
    below.append(273.15 - state.keyed_output(CP.iT_freeze))
columns = np.array([(shares / 0.5) ** i for i in (1, 2, 3)]).T
c = np.round(least_worst(columns, np.array(below)), 3)
print("freezing point: worst %.3f K, %s" % (np.abs(columns @ c - below).max(), c))
