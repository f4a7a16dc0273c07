"""Integrates one outing with a general-purpose solver, from the equations alone.

Reads one case as JSON on standard input (see outing_scipy_test.go) and prints
pedal seconds, clock seconds, metres and ampere-hours as JSON. Nothing of the
Go engine is used: the motion, the two wells, both RC branches and the pack's
temperature are plain differential equations here, the winding inductance is
left out as it is there, and events are located by the solver.
"""
import json
import sys

import numpy as np
from scipy.integrate import solve_ivp

c = json.load(sys.stdin)
z_grid = np.array(c["z"])
ocv_v = np.array(c["ocv_v"])
r0_ohm = np.array(c["r0_ohm"])
temp_c = np.array(c["temp_c"])
r_factor = np.array(c["r_factor"])
r1_ohm = np.array(c["r1_ohm"])
r2_ohm = np.array(c["r2_ohm"])

share, rate = c["wells_c"], c["wells_rate_per_s"]  # rate is k' of the closed form
full_as = c["full_ah"] * 3600


def pack(y):
    """emf, ohmic resistance and branch resistances at state y."""
    z = y[0] / (share * full_as)
    f = np.interp(y[4], temp_c, r_factor)
    emf = np.interp(z, z_grid, ocv_v) - y[2] - y[3]
    return (emf, np.interp(z, z_grid, r0_ohm) * f,
            np.interp(z, z_grid, r1_ohm) * f, np.interp(z, z_grid, r2_ohm) * f)


def flows(y, amps):
    """Time derivatives of wells, branches and temperature at a current."""
    emf, r0, r1, r2 = pack(y)
    head1, head2 = y[0] / share, (y[1] / (1 - share) if share < 1 else y[0])
    k = rate * share * (1 - share)
    back = k * (head2 - head1)
    heat = amps * amps * r0
    if r1 > 0:
        heat += y[2] * y[2] / r1
    if r2 > 0:
        heat += y[3] * y[3] / r2
    warm = (heat - c["cooling_w_per_k"] * (y[4] - c["ambient_c"])) / c["heat_j_per_k"]
    return [back - amps, -back,
            (amps * r1 - y[2]) / c["tau1_s"], (amps * r2 - y[3]) / c["tau2_s"], warm]


def current(y, v):
    emf, r0, _, _ = pack(y)
    return (emf - c["volt_per_ms"] * v) / (r0 + c["path_ohm"] + c["motor_ohm"])


def driving(t, y):
    amps = current(y, y[5])
    push = c["newton_per_a"] * amps - c["hold_n"] - c["drag"] * y[5] ** 2
    return flows(y, amps) + [push / c["inertia_kg"], y[5]]


def pausing(t, y):
    return flows(y, 0) + [0, 0]


def volts(t, y):
    amps = current(y, y[5])
    emf, r0, _, _ = pack(y)
    return emf - amps * r0 - c["opens_at_v"]


volts.terminal = True
volts.direction = -1

y = np.array(c["start"] + [0, 0], dtype=float)  # wells As, branch V, temp, speed, metres
pedal = clock = 0.0
while clock < 30 * 24 * 3600:
    y[5] = 0
    emf, r0, _, _ = pack(y)
    run = solve_ivp(driving, (0, c["drive_s"]), y, method="LSODA", events=volts,
                    rtol=1e-8, atol=1e-8, max_step=1.0)
    y = run.y[:, -1]
    pedal += run.t[-1]
    clock += run.t[-1]
    if run.status == 1:
        break
    run = solve_ivp(pausing, (0, c["pause_s"]), y, method="LSODA", rtol=1e-8, atol=1e-8)
    y = run.y[:, -1]
    clock += c["pause_s"]

used = (c["start"][0] + c["start"][1] - y[0] - y[1]) / 3600
print(json.dumps({"pedal_s": pedal, "clock_s": clock, "metres": y[6], "ah": used}))
