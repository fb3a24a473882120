#!/usr/bin/env python3
"""Slides of holders by a rival solver: friction smeared over a small speed, lips as dampers, stiff implicit steps.

Writes fall.csv to standard output. Needs numpy and scipy. Undamped rope. Shares no code and no scheme with the program: dry
friction is mu*m*g*tanh(v/EPS), the rope creeps over the lip at a rate proportional to how far the tensions are
outside the sticking band, knots are left out, and scipy's LSODA integrates it all.
"""
import math
import sys

import numpy as np
from scipy.integrate import solve_ivp

G = 9.80665
EPS = 1e-3  # m/s
LIP_RATE = 2.0  # m/s of creep for each newton outside the band

# lip, mu_before, mu_after, slope_deg, delay_s, slack_m, modulus_n, spacing_m, beyond_m, victim_kg, holders
CASES = [
    (1.5, 0.2, 0.9, 0, 1.0, 0.0, 21212.8, 12, 3, 80, [80]),
    (1.5, 0.3, 1.0, 0, 0.8, 0.5, 21212.8, 20, 3, 80, [80]),
    (2.0, 0.3, 0.8, 10, 1.0, 1.0, 21212.8, 12, 3, 80, [80, 80]),
    (1.3, 0.3, 0.8, 0, 0.7, 0.5, 8000.0, 15, 2, 95, [60, 75]),
    (1.1, 0.1, 0.5, 5, 1.0, 0.2, 29000.0, 12, 4, 80, [80, 70, 90]),
    (1.6, 0.3, 0.7, 0, 0.8, 1.0, 21212.8, 15, 5, 70, [85]),
]


def tensions(z, u, s, p):
    lip, beyond, total, ea = p
    back = total["spacing"] - beyond - s[0]
    rest_back = total["length"] - u
    t_v = ea * max(0.0, (beyond + z - u) / u)
    t_h = ea * max(0.0, (back - rest_back) / rest_back)
    return t_v, t_h


def slide(case):
    lip0, mu_a, mu_b, slope, delay, slack, ea, spacing, beyond, m0, masses = case
    beta = math.radians(slope)
    lip = math.exp(math.log(lip0) / (math.pi / 2) * (math.pi / 2 - beta))
    n = len(masses)
    total = {"spacing": spacing, "length": spacing + slack}
    m = np.array(masses, float)
    k = ea / (spacing + slack)

    def rhs(mu):
        def f(_, y):
            z, v, u = y[0], y[1], y[2]
            s, w = y[3 : 3 + n], y[3 + n :]
            t_v, t_h = tensions(z, u, s, (lip, beyond, total, ea))
            rate = LIP_RATE * (max(0.0, t_v - lip * t_h) - max(0.0, t_h - lip * t_v))
            span = k * np.maximum(0.0, s[:-1] - s[1:] - slack)
            pull = np.concatenate(([t_h], span)) - np.concatenate((span, [0.0]))
            free = G * math.sin(beta) + pull / m
            grip = mu * G * math.cos(beta)
            acc = free - grip * np.tanh(w / EPS)
            # whoever has not been pulled yet stands
            pulled = np.concatenate(([t_h], span)) > 0
            acc = np.where(pulled | (np.abs(w) > EPS / 10), acc, 0.0)
            return np.concatenate(([v, G - t_v / m0, rate], w, acc))

        return f

    y = np.zeros(3 + 2 * n)
    y[0], y[1], y[2] = slack, math.sqrt(2 * G * slack), beyond + slack
    far = 0.0
    for mu, start, end in ((mu_a, 0.0, delay), (mu_b, delay, delay + 12.0)):
        sol = solve_ivp(rhs(mu), (start, end), y, method="LSODA", rtol=1e-7, atol=1e-8, max_step=0.002)
        assert sol.success, sol.message
        y = sol.y[:, -1]
        far = max(far, sol.y[3].max())
    return far


print("# Slide of the first holder, m, every one of them held.")
print("# From: scipy", __import__("scipy").__version__, "LSODA, friction and lip regularised.")
print("# Made by: tests/reference/fall.py. Tolerance: 1 % (what the smearing costs) + 20 mm (late creep).")
print("lip,mu_before,mu_after,slope_deg,delay_s,slack_m,modulus_n,spacing_m,beyond_m,victim_kg,holders_kg,slide_m")
for c in CASES:
    sys.stdout.write(",".join(str(x) for x in c[:-1]) + "," + "+".join(map(str, c[-1])) + f",{slide(c):.4f}\n")
    sys.stdout.flush()
