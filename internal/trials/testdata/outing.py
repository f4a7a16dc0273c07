"""Integrates one outing with a general-purpose solver, from the equations alone.

Reads one case as JSON on standard input (see outing_scipy_test.go) and prints
pedal seconds, clock seconds, metres and ampere-hours as JSON. Nothing of the
Go engine is used: motion, both wells, both branches, the pack's temperature
and the motors' are plain differential equations here. The winding inductance
is left out, as it is there. The solver locates the end.
"""
import json
import sys

import numpy as np
from scipy.integrate import solve_ivp

c = json.load(sys.stdin)
z_grid, ocv_v = np.array(c["z"]), np.array(c["ocv_v"])
ohms = [np.array(c[k]) for k in ("r0_ohm", "r1_ohm", "r2_ohm")]
temps, share_at = np.array(c["temp_c"]), np.array(c["capacity_share"])
r_factors = [np.array(c[k]) for k in ("r_factor", "r1_factor", "r2_factor")]
c_well, full_as = c["wells_c"], c["wells_ah"] * 3600


def reads_at(available, total, temp):
    """Charge at which the curves are read in the cold."""
    share = np.interp(temp, temps, share_at)
    fast = 1 + 2 * (total - available)  # a cold pack loses more when emptied fast
    return available - (1 - share) * fast * ((1 - available) / share) ** 3


def charge(y):
    available, total = y[0] / (c_well * full_as), (y[0] + y[1]) / full_as
    return reads_at(available, total, y[4])


def pack(y):
    z = charge(y)
    volts = np.interp(z, z_grid, ocv_v)
    now = [np.interp(z, z_grid, r) * np.interp(y[4], temps, f) for r, f in zip(ohms, r_factors)]
    return volts - y[2] - y[3], volts, now


def settles(straight, knee, temp):
    """Charge transfer with equal coefficients: knee * asinh(straight / knee)."""
    if knee == 0:
        return straight
    knee *= (temp + 273.15) / 298.15
    return knee * np.arcsinh(straight / knee)


def pack_flows(y, amps):
    _, volts, (r0, r1, r2) = pack(y)
    back = 0.0
    drop = amps * r0 + y[2] + y[3]
    if c_well < 1:
        back = c["valve_per_s"] * (y[1] / (1 - c_well) - y[0] / c_well)
        total = (y[0] + y[1]) / full_as
        rested = np.interp(reads_at(total, total, y[4]), z_grid, ocv_v)
        drop += rested - volts
    warm = (amps * drop - c["cooling_w_per_k"] * (y[4] - c["ambient_c"])) / c["heat_j_per_k"]
    to1, to2 = settles(amps * r1, c["knee1_v"], y[4]), settles(amps * r2, c["knee2_v"], y[4])
    return [back - amps, -back, (to1 - y[2]) / c["tau1_s"], (to2 - y[3]) / c["tau2_s"], warm]


def motor_ohm(y):
    return c["motor_ohm_20"] * (234.5 + y[7]) / 254.5


def motor_current(y):
    emf, _, (r0, _, _) = pack(y)
    supply = r0 + c["path_ohm"]
    return (emf - c["standby_a"] * supply - c["volt_per_ms"] * y[5]) / (supply + motor_ohm(y))


def motor_flows(y, copper_w, other_w):
    across = (y[7] - y[8]) / c["winding_to_case_k_per_w"]
    out = (y[8] - c["ambient_c"]) / c["case_to_air_k_per_w"]
    return [(copper_w - across) / c["winding_j_per_k"], (other_w + across - out) / c["case_j_per_k"]]


def driving(_, y):
    amps = motor_current(y)
    push = c["newton_per_a"] * amps - c["hold_n"]
    if amps > c["grip_a"]:
        amps, push = c["grip_a"], c["slip_n"]
    push -= c["drag"] * y[5] ** 2
    n = c["motors"]
    heat = motor_flows(y, amps ** 2 * motor_ohm(y) / n, c["friction_w_per_ms"] * y[5] / n)
    return pack_flows(y, amps + c["standby_a"]) + [push / c["inertia_kg"], y[5]] + heat


def pausing(_, y):
    return pack_flows(y, c["standby_a"]) + [0, 0] + motor_flows(y, 0, 0)


def volts(_, y):
    amps = min(motor_current(y), c["grip_a"]) + c["standby_a"]
    emf, _, (r0, _, _) = pack(y)
    return emf - amps * r0 - c["opens_at_v"]


def empty(_, y):
    return charge(y)


for event in (volts, empty):
    event.terminal, event.direction = True, -1

y = np.array(c["start"] + [0, 0, c["ambient_c"], c["ambient_c"]], dtype=float)
pedal = clock = 0.0
options = dict(method="LSODA", rtol=1e-8, atol=1e-8, events=(volts, empty))
while clock < 30 * 24 * 3600:
    y[5] = 0
    run = solve_ivp(driving, (0, c["drive_s"]), y, max_step=0.5, **options)
    y = run.y[:, -1]
    pedal += run.t[-1]
    clock += run.t[-1]
    if run.status == 1:
        break
    y[5] = 0
    run = solve_ivp(pausing, (0, c["pause_s"]), y, method="LSODA", rtol=1e-8, atol=1e-8)
    y = run.y[:, -1]
    clock += c["pause_s"]

used = (c["start"][0] + c["start"][1] - y[0] - y[1]) / 3600
print(json.dumps({"pedal_s": pedal, "clock_s": clock, "metres": y[6], "ah": used}))
