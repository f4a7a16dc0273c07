"""Integrates the equations of the cell model with scipy, independently of the
Go code: two wells, open circuit over the available charge, ohmic resistance,
two branches and one temperature, as one system of differential equations.

Reads JSON on standard input: tables (dense, linear between points), constants
and a load as [seconds, amperes] pairs; writes JSON with one row per end of a
load piece: time, terminal volts at that piece's current, y1, y2, v1, v2, temp.
"""
import json
import sys

import numpy as np
from scipy.integrate import solve_ivp

q = json.load(sys.stdin)


def look(name, lo, hi, x):
    """Linear interpolation in a table of equal steps from lo to hi."""
    table = q[name]
    at = min(max((x - lo) / (hi - lo), 0.0), 1.0) * (len(table) - 1)
    i = min(int(at), len(table) - 2)
    return table[i] + (at - i) * (table[i + 1] - table[i])


def over_charge(name, z):
    return look(name, q["charge_lo"], q["charge_hi"], z)


def over_temp(name, t):
    return look(name, q["temp_lo"], q["temp_hi"], t)


c, full = q["c"], q["full_ah"]
k = q["k_per_s"]  # valve constant, 1/s


def effective(h, z, temp):
    lost = 1 - over_temp("capacity_factor", temp)
    d = (1 - h) / (1 - lost)
    return h - lost * (1 + 2 * (z - h)) * d**3


def settles(straight, knee, temp):
    """Charge transfer with equal coefficients: knee * asinh(straight / knee)."""
    if knee == 0:
        return straight
    knee *= (temp + 273.15) / 298.15
    return knee * np.arcsinh(straight / knee)


def derivative(_, x, amps):
    y1, y2, v1, v2, temp = x
    h1 = y1 / c
    h2 = y2 / (1 - c) if c < 1 else h1
    flow = k * (h2 - h1) if c < 1 else 0.0  # Ah/s
    z = (y1 + y2) / full
    zh = effective(h1 / full, z, temp)
    zr = effective(z, z, temp)
    r0 = over_charge("ohm0", zh) * over_temp("ohm_factor", temp)
    r1 = over_charge("ohm1", zh) * over_temp("fast_factor", temp)
    r2 = over_charge("ohm2", zh) * over_temp("slow_factor", temp)
    drop = amps * r0 + v1 + v2 + over_charge("volts", zr) - over_charge("volts", zh)
    heat = amps * drop
    return [
        -amps / 3600 + flow,
        -flow,
        (settles(amps * r1, q["knee1"], temp) - v1) / q["tau1"],
        (settles(amps * r2, q["knee2"], temp) - v2) / q["tau2"],
        (heat - q["cool_w_k"] * (temp - q["ambient_c"])) / q["heat_j_k"],
    ]


x = np.array([c * full, (1 - c) * full, 0.0, 0.0, q["start_c"]])
t = 0.0
rows = []
for seconds, amps in q["load"]:
    s = solve_ivp(derivative, (0, seconds), x, args=(amps,), method="LSODA", rtol=1e-7, atol=1e-9)
    x = s.y[:, -1]
    t += seconds
    z = (x[0] + x[1]) / full
    zh = effective(x[0] / c / full, z, x[4])
    f = over_temp("ohm_factor", x[4])
    volts = over_charge("volts", zh) - x[2] - x[3] - amps * over_charge("ohm0", zh) * f
    rows.append([t, volts, *x])
json.dump(rows, sys.stdout)
