"""Charges integrated by a general-purpose solver, as a check on charge.Simulate.

Reads onecharge.json (the cells and the cases, all numbers made up for this
comparison) and prints hours to 80 % and to full and the charge put in, case by
case. The equations are those of the design: two wells (Manwell & McGowan
1993), two resistor-capacitor branches, one thermal node, the further
resistance of a filling lead-acid cell and the current that goes into gas
(Tafel's law); constant current until the charger's voltage is met, then
whatever current meets it. Nothing of the Go code is used.

    python3 onecharge.py onecharge.json
"""
import json
import sys

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import brentq


def table(t):
    x, y = np.array(t["x"]), np.array(t["y"])
    return lambda z: float(np.interp(z, x, y))


def run(case, cell):
    n, ah = case["cells"], case["capacity_ah"]
    c, k = cell["wells_c"], cell["wells_k_per_s"]
    full = ah
    both = ah * cell["ratio"]
    ocv, r0 = table(cell["ocv"]), table(cell["ohm_ah"])
    temp = table(cell["temp_factor"])
    r1, tau1 = cell["fast_ohm_ah"], cell["fast_tau_s"]
    r2, tau2 = cell["slow_ohm_ah"], cell["slow_tau_s"]
    over = cell["over_full_v"]
    store = 1 / cell["return_factor"]
    heat_jk = case["mass_kg"] * cell["specific_j_kg_k"]
    cool_wk = cell["cooling_w_m2_k"] * cell["area"] * case["mass_kg"] ** (2 / 3)
    acc = cell["acceptance"]
    droop = case.get("droop_ohm", 0)

    def volts(z):
        if z > 1:
            return n * (ocv(1) + over * (z - 1))
        return n * ocv(z)

    def look(y):
        y1, y2, v1, v2, t = y
        head = y1 / (c * both)
        z = 1 - (both - y1 - y2) / full
        inside = min(max(head, 0), 1)
        ohm = n / ah * r0(inside) * temp(t)
        takes = 0
        if acc["ohm_ah"]:
            missing = 1 - (y1 + y2) / both
            takes = acc["ohm_ah"] * n / ah / (max(missing, 0) ** acc["power"] + acc["offset"])
        emf = volts(head) - v1 - v2

        def at(main):
            # terminal volts and charging current while so much is stored
            v = emf + main * (ohm + takes)
            gas = 0
            if acc["gas_c"]:
                gas = acc["gas_c"] * ah * acc["gas_per_100mv"] ** ((v / n - acc["gas_v"]) / 0.1)
                gas *= 2 ** ((t - 25) / acc["gas_doubling_k"])
            return v, main / store + gas

        most = case["current_a"]
        if at(most * store)[1] > most:
            main = brentq(lambda m: at(m)[1] - most, 0, most, xtol=1e-12)
        else:
            main = most * store
        v, amps = at(main)
        if v + amps * droop > case["end_v"]:
            off = lambda m: at(m)[0] + at(m)[1] * droop - case["end_v"]
            main = brentq(off, 0, main, xtol=1e-12) if off(0) < 0 else 0
            v, amps = at(main)
        return amps, main, v, ohm, takes, head, z

    def slope(_, y):
        y1, y2, v1, v2, t = y
        amps, main, v, ohm, takes, head, _ = look(y)
        i = -main  # as the battery sees it, positive discharging
        flow = k * (y2 / (1 - c) - y1 / c) if c < 1 else 0
        drop = i * ohm + v1 + v2 + volts((y1 + y2) / both) - volts(head)
        power = i * drop + main * main * takes + (amps - main) * v
        f = n / ah * temp(t)
        return [
            -i / 3600 + flow,
            -flow,
            (f * r1 * i - v1) / tau1,
            (f * r2 * i - v2) / tau2,
            (power - cool_wk * (t - case["ambient_c"])) / heat_jk,
        ]

    def filled(_, y):
        return look(y)[6] - 1

    def tapered(_, y):
        amps = look(y)[0]
        return amps - case["end_a"]

    def most(_, y):
        return look(y)[6] - 0.8

    filled.terminal = tapered.terminal = True
    tapered.direction = -1
    y = both - (1 - case["charge"]) * full
    s = solve_ivp(
        slope, (0, 100 * 3600), [c * y, (1 - c) * y, 0, 0, case["ambient_c"]],
        method="LSODA", rtol=1e-9, atol=1e-10, max_step=30, events=[filled, tapered, most],
    )
    amps = np.array([look(v)[0] for v in s.y.T])
    put_in = np.trapz(amps, s.t) / 3600
    to80 = s.t_events[2][0] / 3600 if len(s.t_events[2]) else 0
    return to80, s.t[-1] / 3600, put_in


def main():
    with open(sys.argv[1]) as f:
        data = json.load(f)
    for case in data["cases"]:
        to80, to_full, put_in = run(case, data["cells"][case["cell"]])
        print(f"{case['name']}\t{to80:.5f}\t{to_full:.5f}\t{put_in:.5f}")


main()
