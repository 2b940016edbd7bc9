"""Fifty convex mixing problems and their answers, for tests/mix_laws.rs.

Run from the repository's root with Python 3.11.7, numpy 2.4.6 and scipy 1.17.1:

    python3 tests/data/make_mix_problems.py > tests/data/mix_problems.json

Each asks for the shares m of three to six pitches that minimise  m'Qm/2 + c'm,  Q positive definite,
on the simplex, with a cap on the last pitch, a floor on the summed share of some pitches and a
ceiling on that of others: the bounds a mix of pitches can have. Sizes are those of runs per pitch.

scipy's SLSQP finds the answer from several starts. Two things certify it: trust-constr, an
interior-point method, stops within 1e-4 of it and no lower; and a linear programme (linprog, HiGHS)
shows that along its slopes no allowed mix is lower by more than 1e-9, which for a convex problem
bounds what any mix could still gain.
"""

import json
import sys

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, linprog, minimize


def problem(draw):
    count = int(draw.integers(3, 7))
    root = draw.normal(size=(count, count))
    kinds = draw.permutation(["fastball", "breaking"] + list(draw.choice(["fastball", "breaking", "other"], count - 2)))
    caps = np.ones(count)
    if draw.random() < 0.7:
        caps[-1] = round(draw.uniform(0.05, 0.4), 2)
    fastballs, breaking = kinds == "fastball", kinds == "breaking"
    # A lone capped fastball cannot fill a larger floor.
    floor = min(round(draw.uniform(0.0, 0.6), 2), round(0.8 * caps[fastballs].sum(), 2))
    ceiling = round(draw.uniform(0.2, 0.7), 2)
    if caps[~breaking].sum() + ceiling < 1.05:
        ceiling = 1.0
    return {
        "curvature": (0.02 * (root @ root.T / count + 0.1 * np.eye(count))).round(6).tolist(),
        "slope": (0.02 * draw.normal(size=count) - 0.05).round(6).tolist(),
        "caps": caps.tolist(),
        "fastballs": fastballs.tolist(),
        "fastball_floor": floor,
        "breaking": breaking.tolist(),
        "breaking_cap": ceiling,
    }


def solve(p, draw):
    q, c, caps = (np.array(p[name]) for name in ("curvature", "slope", "caps"))
    rows = np.array([np.ones(len(c)), p["fastballs"], p["breaking"]], dtype=float)
    low, high = [1, p["fastball_floor"], -np.inf], [1, np.inf, p["breaking_cap"]]
    scale = 100  # both methods like numbers near one

    def value(m):
        return scale * (m @ q @ m / 2 + c @ m)

    def slope(m):
        return scale * (q @ m + c)

    slsqp = [
        {"type": "eq", "fun": lambda m: m.sum() - 1},
        {"type": "ineq", "fun": lambda m: rows[1] @ m - p["fastball_floor"]},
        {"type": "ineq", "fun": lambda m: p["breaking_cap"] - rows[2] @ m},
    ]
    box = Bounds(0, caps)
    found = [
        minimize(value, draw.dirichlet(np.ones(len(c))), jac=slope, method="SLSQP", bounds=box, constraints=slsqp,
                 options={"ftol": 1e-15, "maxiter": 1000})
        for _ in range(5)
    ]
    best = min((f for f in found if f.success), key=lambda f: f.fun).x
    other = minimize(value, best * 0.5 + 0.5 * caps / caps.sum(), jac=slope, hess=lambda m: scale * q,
                     method="trust-constr", bounds=box, constraints=LinearConstraint(rows, low, high),
                     options={"gtol": 1e-12, "xtol": 1e-14, "barrier_tol": 1e-12, "maxiter": 5000})
    excess = (value(other.x) - value(best)) / abs(value(best))
    assert -1e-8 < excess < 1e-4, excess
    least = linprog(slope(best), A_ub=[-rows[1], rows[2]], b_ub=[-p["fastball_floor"], p["breaking_cap"]],
                    A_eq=rows[:1], b_eq=[1], bounds=list(zip(np.zeros(len(c)), caps)))
    gap = (slope(best) @ best - least.fun) / scale
    assert least.success and gap < 1e-9, gap
    assert abs(best.sum() - 1) < 1e-12
    return value(best) / scale


def main():
    draw = np.random.default_rng(50)
    problems = []
    for _ in range(50):
        p = problem(draw)
        p["value"] = float(f"{solve(p, draw):.12g}")
        problems.append(p)
    print("[\n" + ",\n".join(json.dumps(p) for p in problems) + "\n]")


if __name__ == "__main__":
    sys.exit(main())
